#pragma once
// The columns of a cable schedule: which heading means what, and what a row says of its ends.

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "cutback/error.hpp"
#include "cutback/job/input.hpp"
#include "cutback/schedule/cable_types.hpp"
#include "cutback/schedule/headings.hpp"
#include "cutback/text.hpp"

namespace cutback::schedule {

/// A column of ours, and a value for it as a cell of the schedule would hold it.
struct OwnValue {
  std::string column;
  std::string text;
};

/// A word of the user's own, and the value that it stands for.
struct OwnWord {
  std::string word;
  std::string value;
};

/// How the schedule at hand is written.
struct Format {
  /// Own headings: a column of ours, and the heading that stands for it, or its letter (H).
  std::vector<std::pair<std::string, std::string>> headings;
  std::vector<std::string> ignored;  ///< headings that nobody is to look at
  /// What the trade usually means; borrowed. Null: columns are known by their own names alone.
  const UsualHeadings* usual = nullptr;
  /// `.` or `,`. With a decimal comma, places of a reading are separated by `;`.
  char decimal = '.';
  std::vector<std::string> blanks;  ///< words that mean "not given", besides the usual ones
  std::vector<OwnWord> words;       ///< that stand for a value wherever they stand
  /// Of the figures of a row that says nothing of its evidence; absent: by their notation.
  std::optional<measure::Evidence> evidence;
  /// What blank cells are taken for, also of columns that the schedule does not have. They have
  /// passed check_defaults().
  std::vector<OwnValue> defaults;
  /// Ends per row, 1 or 2, where no heading tells; absent: one, and it is said that nothing tells.
  std::optional<int> ends;
  const CableTypes* types = nullptr;  ///< that the rows name in a column `type`; borrowed
  bool of_types = false;              ///< the table is one of types: a column `type` names its rows
};

/// Whose column it is. A row of a schedule describes the two ends of a cable, or one end.
enum class Side { both, from, to };

/// One column that is used.
struct Column {
  std::size_t cell = 0;  ///< its place in the row, from 0
  std::string heading;   ///< as it stands in the file
  Side side = Side::both;
  const job::Field* field = nullptr;
  bool inches = false;  ///< the heading says so: its readings are inches
  bool metric = false;  ///< the heading says so: a bare size of its entries is a metric thread's
};

/// What stands for the blank cells of a column.
struct Default {
  Column column;           ///< without a cell
  std::string text;        ///< in the notation of the schedule
  std::size_t number = 0;  ///< its place in Format::defaults
};

/// Where one end's value of a field stands, by the places of the columns in a layout: the prefixed
/// column first, where it is not blank.
struct Source {
  std::size_t prefixed;    ///< Layout::k_none where there is none
  std::size_t plain;       ///< the same
  std::size_t by_default;  ///< the same; in Layout::defaults
  const job::Field* field = nullptr;
};

/// A heading that is read, and its column.
struct Mapped {
  std::string heading;  ///< as it stands in the file
  std::string column;   ///< `from_entry`, `tag`
  std::size_t cell = 0;
};

/// The letter of a column of a sheet: A for 0, AB for 27.
[[nodiscard]] std::string column_letter(std::size_t place);

/// A column that no value is read from. What it says of the row as a whole is looked at.
struct UnreadColumn {
  std::size_t cell = 0;
  std::string heading;
  bool is_status = false;  ///< headed so: a single letter may be a code
  /// Headed as a remark on the row: a word in it may take the row out. Elsewhere it may be of
  /// something else, a shroud that is not required.
  bool is_of_row = true;
  /// It may ask more of the gland than the columns that are read: a greatest diameter, a tolerance
  /// in per cent, a degree of protection. A figure in it is named.
  bool may_ask = false;
};

/// A column that says how many glands or ends a row has. They are counted by the ends of the row;
/// where it says another number a person decides.
struct CountColumn {
  std::size_t cell = 0;
  std::string heading;
  bool one_end = false;  ///< of one of the two ends
};

/// The columns of one schedule. Two ends per row when there is a `from_` or `to_` column, or a
/// `from` or `to` column and no `end` column; a column of an end without a prefix then serves both
/// ends, and the prefixed one comes before it where it is not blank.
struct Layout {
  static constexpr std::size_t k_none = static_cast<std::size_t>(-1);

  std::vector<Column> columns;
  std::vector<UnreadColumn> unread;      ///< without those that the user wants ignored
  const UsualHeadings* usual = nullptr;  ///< borrowed; null: no word in a row is known
  std::vector<Default> defaults;
  /// What every end is asked although its row does not tell it, as the field `asked` has it: some of
  /// the first rows do.
  std::string asked;
  std::optional<Default> quantity_default;
  const CableTypes* types = nullptr;  ///< borrowed; null where rows name none
  std::size_t type = k_none;          ///< the cell that names the row's
  std::array<std::size_t, 3> diameters{k_none, k_none, k_none};  ///< cells, by job::Layer
  std::size_t tag = 0;
  std::size_t from = k_none;
  std::size_t to = k_none;
  std::size_t quantity = k_none;
  std::size_t quantity_unit = k_none;  ///< what the quantity is of: m, No.
  std::vector<CountColumn> counts;
  /// Columns that --append put there, by their headings; they are not read.
  std::vector<std::pair<std::string, std::size_t>> own_results;
  std::size_t area_name = k_none;
  std::size_t drawing = k_none;
  std::size_t width = 0;  ///< number of headings
  bool two_ends = false;
  bool ends_not_told = false;  ///< neither a heading nor Format::ends says that a row is one end
  /// The same, and what stands in the rows is told of whole cables.
  bool may_be_cables = false;
  char decimal = '.';
  std::optional<measure::Evidence> evidence;
  /// Words that mean "not given", in small letters; with others only as they are written.
  std::vector<std::string> blanks;
  std::uint32_t blank_lengths = 0;    ///< bit n: one of them has n bytes
  std::vector<OwnWord> words;         ///< the user's own, in small letters with one space between
  std::string where;                  ///< of the headings, for messages
  std::vector<std::string> warnings;  ///< headings that are not known, or left alone
  /// A column that is not read may tell a hazardous place: then every end is asked about its place.
  bool hazard_unread = false;
  /// Headings that were taken for a column because the trade usually means that, and the column.
  std::vector<std::pair<std::string, std::string>> matches;
  std::vector<Mapped> mapping;  ///< all headings that are read: what --save-columns writes
  std::string tag_heading;      ///< as it stands in the file
  /// The letters before the figure of most tags, in small letters: C where they are C1, C2, C3.
  std::string run_letters;
  /// Of each column, the rows of its heading in small letters, and all of them as one.
  std::vector<std::vector<std::string>> headings;

  /// Whether a cell says that there is nothing: TBC, N/A, -.
  [[nodiscard]] bool is_not_given(std::string_view text) const {
    if (text.empty()) return true;
    return text.size() < 32 && (blank_lengths >> text.size() & 1U) != 0 &&
           !is_digit(text.front()) && is_blank_word(text);
  }
  [[nodiscard]] bool is_blank_word(std::string_view text) const;
  /// The user's own word that a cell is; null where it is none.
  [[nodiscard]] const OwnWord* word_of(std::string_view text) const;
  [[nodiscard]] std::span<const Side> ends() const;
  /// The fields that a row gives of this end.
  [[nodiscard]] std::vector<Source> sources(Side side) const;
};

using Cells = std::span<const std::string_view>;

/// One row. `bare`: its cells stand in one text, a comma between every two and in none, so that
/// rows with the same text between two cells have the same cells there.
struct Row {
  Cells cells;
  bool bare = false;
};

/// How many of the headings are columns of a schedule; to find the row of headings.
struct KnownHeadings {
  std::size_t count = 0;
  std::size_t joined = 0;  ///< of them, by what stands in several rows
};
[[nodiscard]] KnownHeadings known_headings(std::span<const Heading> headings, const Format& format);

/// A fault for each own heading that is given to a column which a schedule does not have.
[[nodiscard]] std::vector<Fault> unknown_columns(const Format& format);

/// Some rows below the headings, to see what a column that may mean several things holds.
using Sample = std::span<const std::vector<std::string>>;

/// @param where   of the headings, for messages
/// @param sample  may be empty: then nothing speaks against a usual heading
/// @throws InputError with every fault: a heading given twice, an own heading that is not there or
/// stands there twice, a unit that is not the column's, no tag, nothing that tells the sheath
/// diameter, `end` together with prefixed columns
[[nodiscard]] Layout make_layout(std::span<const Heading> headings, const Format& format,
                                 const std::string& where, Sample sample = {});
/// The same of headings in one row.
[[nodiscard]] Layout make_layout(Cells headings, const Format& format, const std::string& where);

/// The cell without spaces round it; blank where the row is too short.
[[nodiscard]] inline std::string_view cell(Cells cells, std::size_t place) {
  if (place >= cells.size()) return {};
  const std::string_view text = cells[place];
  // Most cells have no space round them, and every space is at most ' '.
  return !text.empty() && text.front() > ' ' && text.back() > ' ' ? text : trimmed(text);
}

/// The tag of a row; empty where none is given.
[[nodiscard]] inline std::string_view tag_of(const Layout& layout, Cells cells) {
  const std::string_view text = cell(cells, layout.tag);
  return layout.is_not_given(text) ? std::string_view() : text;
}

/// How many cables a row stands for.
struct RowCount {
  std::uint64_t cables = 1;  ///< where it is not known: what is counted provisionally
  bool by_tag = false;       ///< the tag names so many: "P-8 to P-12"
  std::string unclear;       ///< why it is not known, a clause; empty where it is
};
/// What the column of quantities says, else the default, else what the tag names: 1 nearly always.
/// Nothing where the cell holds no such number.
[[nodiscard]] std::optional<RowCount> count_of(const Layout& layout, Cells cells);
/// The number alone.
[[nodiscard]] std::optional<std::uint64_t> quantity_of(const Layout& layout, Cells cells);

/// What the take-off may be grouped by.
enum class GroupBy { nothing, area_name, drawing };
/// The group of a row; empty where it names none.
[[nodiscard]] std::string_view group_of_row(const Layout& layout, Cells cells, GroupBy by);

/// The default that speaks for the number of cables, as a bit of RowNotes::defaults; 0 where none
/// does.
[[nodiscard]] std::uint64_t quantity_default_of(const Layout& layout, Cells cells);

/// What the type of a row says. Without a type it has no say at all.
struct RowType {
  std::string_view name;            ///< as the row has it; empty where it names none
  const CableType* type = nullptr;  ///< null where none is named, or none has this name
  /// False: its diameters are estimates, and the row has one of its own, which are not to be mixed.
  bool diameters = true;
  unsigned own = 0;  ///< bit n: the row gives this diameter itself (job::Layer)

  /// Null where the type does not say, or is not asked.
  [[nodiscard]] const TypeValue* find(const job::Field& field) const;
};
[[nodiscard]] RowType row_type(const Layout& layout, Cells cells);

/// What speaks for this end in this row: a cell, else the type, else a default.
struct Given {
  std::string_view text;
  const Column* column = nullptr;           ///< null where it is not a cell or a default
  std::size_t by_default = Layout::k_none;  ///< in Layout::defaults
  const TypeValue* typed = nullptr;

  [[nodiscard]] bool is_blank() const { return column == nullptr && typed == nullptr; }
  /// Whether it stands in the row.
  [[nodiscard]] bool is_cell() const { return column != nullptr && by_default == Layout::k_none; }
};
[[nodiscard]] inline Given given(const Layout& layout, const Source& source, Cells cells,
                                 const RowType& type = {}) {
  for (const std::size_t place : {source.prefixed, source.plain}) {
    if (place == Layout::k_none) continue;
    const Column& column = layout.columns[place];
    const std::string_view text = cell(cells, column.cell);
    if (!layout.is_not_given(text)) return {.text = text, .column = &column};
  }
  if (type.type != nullptr) {
    if (const TypeValue* const value = type.find(*source.field)) {
      return {.text = value->text, .typed = value};
    }
  }
  if (source.by_default == Layout::k_none) return {};
  const Default& taken = layout.defaults[source.by_default];
  return {.text = taken.text, .column = &taken.column, .by_default = source.by_default};
}

/// What the cells of a row say besides their values.
struct RowNotes {
  /// The cable is none that the built-in layer rules cover: a voltage beyond them, pairs, an earth
  /// core of unknown size. Its diameters are then not estimated from its construction.
  bool no_estimate = false;
  std::uint64_t defaults = 0;      ///< bit n: the default of this number was taken
  std::vector<std::string> taken;  ///< words, and what they were taken for
  /// What does not agree with the row's type, or that there is no such type.
  std::vector<std::string> remarks;
};

/// Puts a cell into the input, its notation that of the schedule.
/// @param notes  gets what the cell says besides its value
/// @return the faults, each with its column
[[nodiscard]] std::vector<Fault> set_cell(const Layout& layout, const Given& cell,
                                          job::JobInput& input, RowNotes& notes);
/// Puts cells into the input: first what stands in the row, then what its type says of the rest,
/// then the defaults of what is still open.
/// @return the faults, each with its column
[[nodiscard]] std::vector<Fault> put_cells(const Layout& layout, std::span<const Source> sources,
                                           Cells cells, const RowType& type, job::JobInput& input,
                                           RowNotes& notes);
/// Where a diameter that stands in the row is not that of its type: a sentence; else empty.
[[nodiscard]] std::string own_diameter_remark(const Layout& layout, const Source& source,
                                              Cells cells, const CableType& type);
/// After the last cell of a row that says something of the cable: the evidence of its figures, and
/// what must not be estimated.
void finish_input(const Layout& layout, const RowType& type, RowNotes& notes, job::JobInput& input);

/// Every column that a schedule may have, but `from` and `to`: those of a job, and its own.
[[nodiscard]] std::vector<const job::Field*> column_fields();

/// Whether a field may be a column: a schedule asks for glands, and one that is chosen already is a
/// job's.
[[nodiscard]] bool is_column(const job::Field& field);

/// Whether it describes an end and not the cable: its column may have `from_` or `to_` before it.
[[nodiscard]] bool is_of_end(const job::Field& field);

/// Whether a field decides anything: all but the names.
[[nodiscard]] bool decides(const job::Field& field);

/// Reads one end. `where` of each fault is the heading.
/// @param faults  what is wrong with its cells is added here
/// @param notes   where it is not null: what the cells say besides their values
[[nodiscard]] job::JobInput input_of(const Layout& layout, Cells cells, Side side,
                                     std::vector<Fault>& faults, RowNotes* notes = nullptr);

/// What a job file calls `entry.entry` is a column of the schedule, by its own heading: changes
/// `where` of the faults that name such a key.
void name_columns(const Layout& layout, Cells cells, Side side, std::vector<Fault>& faults);

/// The name of an end in the results: `from`, `to`, or what stands in the column `end`.
[[nodiscard]] std::string_view end_name(const Layout& layout, Cells cells, Side side);

}  // namespace cutback::schedule

#pragma once
// A cable schedule, read row by row.

#include <cstddef>
#include <deque>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "cutback/io/rows.hpp"
#include "cutback/schedule/layout.hpp"

namespace cutback::io {

/// What stands between the cells of a CSV text: the sign with which its first rows have the most
/// headings of a schedule; a comma where no sign is better. A first line such as `sep=;` says it.
[[nodiscard]] char find_separator(std::string_view beginning, const schedule::Format& format);

/// A text of a file in one line, its end cut off where it is long: for messages.
[[nodiscard]] std::string shortened(std::string_view text);

/// The headings of a table found and understood, and the rows below them.
class ScheduleFile {
 public:
  /// @param source      borrowed
  /// @param name        of the file, with its sheet, for messages
  /// @param header_row  first row of the headings, from 1; without it they are looked for in the
  /// first thirty rows: the row, or rows, with the most headings of a schedule, two at least
  /// @throws InputError when there are no headings, or no cable below them
  ScheduleFile(RowSource& source, const std::string& name, const schedule::Format& format,
               std::optional<std::size_t> header_row);

  [[nodiscard]] const schedule::Layout& layout() const { return layout_; }
  [[nodiscard]] const RowSource& source() const { return source_; }
  /// Which of several tables it is. @param place  before the row in messages, `sheet Level 2, `
  /// @param source  what results call the table; empty where there is no other
  void set_place(std::size_t number, const std::string& place, std::string source) {
    number_ = number;
    row_word_ = place + std::string(source_.row_word());
    source_name_ = std::move(source);
  }
  [[nodiscard]] const std::string& source_name() const { return source_name_; }
  /// The line of the headings, of several rows the last.
  [[nodiscard]] std::size_t heading_line() const { return last_heading_; }
  /// A number that no other row of any table has; ascending.
  [[nodiscard]] std::size_t row_id(std::size_t line) const {
    return (number_ << k_line_bits) | line;
  }
  static constexpr unsigned k_line_bits = 40;
  /// What a message calls the rows: `line`, or `sheet Level 2, row`.
  [[nodiscard]] const std::string& row_word() const { return row_word_; }
  /// The same of one row: `line 7`.
  [[nodiscard]] std::string row_name(std::size_t number) const;

  /// From now on texts that speak of a hazardous place are put into RowBlock::places: titles,
  /// notes, names of equipment, and columns that nobody reads.
  void look_for_places() { looks_for_places_ = true; }
  /// Those above the headings.
  [[nodiscard]] const std::vector<PlaceText>& places_above() const { return places_above_; }

  /// Whether its first rows tell their ends plain, and none of them tells another place.
  [[nodiscard]] bool is_told_plain() const { return is_told_plain_; }
  /// What stands over all rows.
  [[nodiscard]] const TitleSays& title() const { return title_; }
  /// Another sheet that lists whole cables, which the rows of this one may be of.
  void set_beside(std::string sheet) { title_.beside = std::move(sheet); }
  /// What tells a hazardous place there.
  void set_title_place(std::string text) { title_.place = std::move(text); }

  /// Takes the next rows; one thread at a time. @return false at the end
  bool read(RowBlock& block);
  /// Makes them ready, on any thread: rows that are no cables are taken out, and stand in
  /// `block.skipped`.
  /// @throws InputError where the text cannot be read as a table
  void finish(RowBlock& block) const;

 private:
  void keep_cables(RowBlock& block) const;
  [[nodiscard]] schedule::RowKind kind_of(CsvRecord& record) const;
  void note_title(const CsvRecord& record, RowBlock& block) const;
  void note_places(const CsvRecord& record, schedule::RowKind kind, RowBlock& block) const;

  RowSource& source_;
  std::size_t number_ = 0;
  std::string row_word_;
  std::string source_name_;
  schedule::Layout layout_;
  std::size_t last_heading_ = 0;  ///< the line of the last row of the headings
  bool looks_for_places_ = false;
  std::vector<PlaceText> places_above_;
  bool is_told_plain_ = false;
  TitleSays title_;
  std::deque<RowBlock> first_;  ///< what was read to find them, where the source cannot go back
};

}  // namespace cutback::io

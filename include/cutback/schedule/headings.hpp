#pragma once
// The headings of a schedule as people write them, and what the trade usually means by them.

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/tables/standards.hpp"

namespace cutback::schedule {

/// One way to read a heading.
struct HeadingForm {
  std::string shown;  ///< as it stands in the file, its rows with " / " between them
  /// Small letters, one space between two words; no line breaks, points, colons and brackets.
  std::string full;
  std::string plain;  ///< the same without its unit
  std::string unit;   ///< mm, mm2, m, kV, C ... as the field table writes it; in, cm ...; or empty
};

/// The heading of one column: its forms, the one that says most first. A heading of two rows is
/// read with both, and, where that means nothing, by its lower row alone.
struct Heading {
  std::vector<HeadingForm> forms;
  std::vector<std::string> rows;  ///< what stands in each of its rows
  [[nodiscard]] const std::string& shown() const;
};

/// @param text  UTF-8
[[nodiscard]] HeadingForm heading_form(std::string_view text);
/// `heading_form(text).full`, for names that a user gives.
[[nodiscard]] std::string plain_heading(std::string_view text);

/// The cells of some rows that are one row of headings, as texts. A cell that a merged cell covers
/// holds its text.
using HeadingRows = std::span<const std::vector<std::string>>;
/// One heading per column. What stands in the first of two rows over several columns counts for
/// those to the right of it that it leaves blank.
[[nodiscard]] std::vector<Heading> join_headings(HeadingRows rows);

/// Whether a row holds units and nothing else: mm, mm2, -, m.
[[nodiscard]] bool is_row_of_units(const std::vector<std::string>& row);
/// Gives the headings the units that stand in a row of their own under them.
/// @return the headings whose own unit is another, as they are shown
[[nodiscard]] std::vector<std::string> put_units(const std::vector<std::string>& row,
                                                 std::vector<Heading>& headings);

/// What the trade usually means: rows of the table schedule_headings.
struct UsualHeading {
  std::string plain;
  std::string column;      ///< key of the field; `from` and `to` are places
  bool by_values = false;  ///< it means other things too: only where the cells suit the column
  bool by_words = false;   ///< by_values, and bare figures are no such value
  bool lone = false;       ///< only where no other heading tells a diameter
  bool of_end = false;     ///< with a word for the end it is what stands at that end
  std::string instead;     ///< what else it may mean; for a heading that is never applied, why
  std::string otherwise;   ///< the column that it is where the cells do not suit the first
};

struct SideWord {
  std::string plain;
  bool from = false;
};

/// The end that the upper row of a heading speaks of: "To Equipment Gland".
struct EndInHeading {
  std::string rest;  ///< without the word for the end
  bool from = false;
};

/// What a word in a cell says of the whole row: a row of the table schedule_words.
struct ScheduleWord {
  enum class Means {
    deleted,
    doubt,
    again,
    leads,
    follows,
    of_cores,
    code,
    count,
    hazard,       ///< a place is told hazardous
    hazard_area,  ///< it may well be: a petrol store, without a word of its zone
    plain_place,  ///< a cell that says that a place is not
    is_not,       ///< in front of a word of hazard
    hazard_heading,
    no_hazard_heading,
    remark_heading,  ///< heads remarks on the row
    asking_heading,  ///< heads what may ask more of a gland
    other_gland,     ///< a remark that asks for another gland: barrier, submerged
    of_sheet         ///< a label at the foot of a list, where tags stand above it
  };
  std::string word;  ///< in small letters, one space between two words
  Means means = Means::doubt;
  /// Of deleted: only where nothing else stands beside it. Of doubt: not only at the beginning of
  /// a remark. Of hazard: in names of equipment too.
  /// Of hazard_heading: as a whole word.
  bool strict = false;
  bool begins = false;  ///< of hazard: a longer word that begins so is one as well
  /// Of hazard: in a name of equipment it may mean something else, and only asks about the place.
  bool asks = false;
};

/// The tables schedule_headings, schedule_sides and schedule_words.
struct UsualHeadings {
  std::vector<UsualHeading> headings;
  std::vector<SideWord> sides;
  std::vector<std::string> one_end;  ///< words of one end that do not say of which
  std::vector<ScheduleWord> words;
  /// The first words, or a later one, of some rows of schedule_words. Nearly no text of a schedule
  /// has one of them, and is looked at any further.
  class Starts {
   public:
    /// @param whole  a text with the first of several words alone has none of them
    void add(const ScheduleWord& word, bool whole = false);
    [[nodiscard]] bool any_in(std::string_view text) const;

   private:
    struct Start {
      std::string letters;
      bool word = false;  ///< a whole one
      bool more = false;  ///< others must follow
    };
    /// By their first two letters, or a letter and no letter behind it.
    std::array<std::vector<Start>, 1 + 26 * 27> starts_;
  };
  Starts of_deleted;  ///< and of doubt
  Starts of_hazard;   ///< and of areas that may be
  Starts of_labels;   ///< of hazard_heading, and of zones
  [[nodiscard]] bool is_word(ScheduleWord::Means means, std::string_view word) const;

  /// Null where the trade has no such heading.
  [[nodiscard]] const UsualHeading* find(std::string_view plain) const;
};
[[nodiscard]] UsualHeadings usual_headings(const tables::Standards& standards);

/// A heading without the word that says which end it is of, at its beginning or its end.
struct SidedHeading {
  std::string_view rest;
  bool from = false;
};
[[nodiscard]] std::optional<SidedHeading> sided(const UsualHeadings& usual, std::string_view plain);
/// The same of the upper row of a heading, in which the word may stand anywhere, or alone.
[[nodiscard]] std::optional<EndInHeading> end_in(const UsualHeadings& usual,
                                                 std::string_view plain);
/// Whether it speaks of one end without saying which: "Motor End".
[[nodiscard]] bool speaks_of_one_end(const UsualHeadings& usual, std::string_view plain);

}  // namespace cutback::schedule

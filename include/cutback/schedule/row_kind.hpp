#pragma once
// Which rows of a sheet are cables, and what the others are.

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/schedule/layout.hpp"

namespace cutback::schedule {

enum class RowKind : std::uint8_t {
  cable,
  blank,           ///< no cell says anything
  title,           ///< a text across the row, or alone in it
  no_tag,          ///< a subtotal, a note: nothing stands for the tag, and nothing tells a cable
  headings,        ///< the headings again
  goes_on,         ///< every cell belongs to a merged cell that begins above
  hidden,          ///< in the spreadsheet
  struck,          ///< struck through, as what was deleted
  deleted,         ///< a word of the row says that it is no cable any more
  other_headings,  ///< headings again, but of other columns: what is below it would be misread
  // Rows that are answered, and named because a person must look at them:
  may_be_deleted,  ///< a word of the row may say so
  several_cables,  ///< its tag names several
  count_unclear,   ///< how many cables it is, is not known
  date_as_tag,     ///< a spreadsheet may have made it of 1-2
};
inline constexpr std::size_t k_row_kinds = 14;
[[nodiscard]] constexpr bool is_answered(RowKind kind) {
  return kind == RowKind::cable || kind >= RowKind::may_be_deleted;
}

/// A cell that says more than its text, or less.
struct Covered {
  std::size_t cell = 0;
  bool above = false;  ///< the text is that of a merged cell that begins above; else to the left
};

/// A row as the sheet shows it.
struct RowLook {
  Cells cells;
  std::span<const Covered> covered;
  std::span<const std::size_t> struck;  ///< cells that are struck through
  bool hidden = false;
};

/// A row with all that a cable needs to be one is always `cable`, whatever may be wrong with it; so
/// is one that tells a diameter and has no tag.
[[nodiscard]] RowKind kind_of(const Layout& layout, const RowLook& row);

/// The text of a title that takes the cables under it away: "DELETED CABLES", "GLANDS BY VENDOR";
/// empty where none does.
[[nodiscard]] std::string_view title_of_deleted(const Layout& layout, Cells cells);

/// A row that is no end, or one that is to be looked at.
struct SkippedRow {
  std::size_t line = 0;
  RowKind kind = RowKind::blank;
  std::string text;  ///< its tag, or the first text of it; shortened
};

/// What the words of a cable's row say of it: that it is deleted, or may be, how many it is.
/// @return nothing where they say nothing; `line` is not set
[[nodiscard]] std::vector<SkippedRow> look_at_words(const Layout& layout, Cells cells);

/// Those of a whole table.
class SkippedRows {
 public:
  void add(const SkippedRow& row);
  [[nodiscard]] bool empty() const;
  [[nodiscard]] std::size_t count(RowKind kind) const {
    return counts_[static_cast<std::size_t>(kind)];
  }
  /// One line for people, without blank rows: "2 titles (row 4 PUMP HOUSE, row 19 TANK FARM), ...".
  [[nodiscard]] std::string text(std::string_view row_word) const;
  /// The same of the rows that are answered.
  [[nodiscard]] std::string answered_text(std::string_view row_word) const;

 private:
  void put(RowKind kind, std::string_view row_word, std::string& text) const;

  std::array<std::size_t, k_row_kinds> counts_{};
  std::vector<SkippedRow> named_;  ///< the first of each kind
};

}  // namespace cutback::schedule

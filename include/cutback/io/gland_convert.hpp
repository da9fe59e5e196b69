#pragma once
// Another table of glands made into a gland list, row by row.

#include <cstddef>
#include <span>
#include <string>
#include <utility>
#include <vector>

namespace cutback::io {

/// A row as it stands in its file.
struct TableRow {
  std::size_t line = 0;
  std::vector<std::string> cells;
};

/// What of the other table is which column of ours. Columns of a list, and `outer_mm`, `inner_mm`,
/// `armour_mm` for a range in one cell.
struct ConvertTerms {
  /// Ours, theirs. A column's own name is known as well; of price, stock, part and texts whatever
  /// its case.
  std::vector<std::pair<std::string, std::string>> headings;
  std::vector<std::pair<std::string, std::string>> values;  ///< ours, and what every gland has
  char decimal = '.';
};

struct Converted {
  std::string text;                   ///< a gland list that read_gland_list takes
  std::size_t glands = 0;             ///< in it
  std::vector<std::string> left_out;  ///< rows that are not in it, each with its reason
  std::vector<std::string> taken;     ///< which heading is which column
  std::vector<std::string> unread;    ///< headings that are none
  std::vector<std::string> unpriced;  ///< glands whose price is no figure, in the list without one
  /// Glands for armoured cable that seal by rings and have no figure for the one on the bedding:
  /// they count as glands without it.
  std::size_t without_inner = 0;
};

/// A value is taken as it stands, as the table of trade words reads it, or not at all: nothing is
/// guessed. Lengths whose heading says inches, or that have their unit, become mm.
/// @param row_word  `line` or `row`, for messages
/// @throws InputError with every fault of the terms: a column that is not one, a heading that is
/// not there; and where no row can be taken
[[nodiscard]] Converted convert_glands(std::span<const TableRow> rows, const std::string& name,
                                       const std::string& row_word, const ConvertTerms& terms);

}  // namespace cutback::io

#pragma once
// The paper that cards are printed on.

#include <optional>
#include <string_view>

namespace cutback::print {

/// How cards lie on paper: each on its long side. Lengths in mm.
struct Paper {
  double width_mm = 210.0;
  double height_mm = 297.0;
  int across = 1;      ///< cards beside each other
  int down = 1;        ///< and below each other
  bool small = false;  ///< a card is a quarter of a page: front and back
};

/// @param size   `a4`, `a5`, `a6` or `letter`, either case
/// @param cards  on one page: 1, 2 or 4; 1 alone on A5 and A6. 0: the usual number, two on A4 and
/// Letter
/// @return nothing when there is no such paper, or not with so many cards
[[nodiscard]] std::optional<Paper> paper_of(std::string_view size, int cards);

}  // namespace cutback::print

#include "cutback/print/paper.hpp"

#include <algorithm>
#include <array>
#include <string>

#include "cutback/text.hpp"

namespace cutback::print {
namespace {

struct Size {
  std::string_view name;
  double width_mm;
  double height_mm;
  bool divides;
  bool small;
};

// ISO 216 for the A sizes; 8.5 by 11 inches.
constexpr std::array<Size, 4> k_sizes{{{"a4", 210.0, 297.0, true, false},
                                       {"a5", 148.0, 210.0, false, false},
                                       {"a6", 105.0, 148.0, false, true},
                                       {"letter", 215.9, 279.4, true, false}}};

}  // namespace

std::optional<Paper> paper_of(std::string_view size, int cards) {
  const auto found = std::find_if(k_sizes.begin(), k_sizes.end(),
                                  [&](const Size& one) { return one.name == small_letters(size); });
  if (found == k_sizes.end()) return std::nullopt;
  if (cards == 0) cards = found->divides ? 2 : 1;
  if (cards != 1 && cards != 2 && cards != 4) return std::nullopt;
  if (cards != 1 && !found->divides) return std::nullopt;
  Paper paper{.width_mm = found->width_mm, .height_mm = found->height_mm, .small = found->small};
  // Two cards lie one above the other on upright paper; one, or four, lie as the paper does.
  if (cards == 2) {
    paper.down = 2;
  } else {
    std::swap(paper.width_mm, paper.height_mm);
  }
  if (cards == 4) {
    paper.across = paper.down = 2;
    paper.small = true;
  }
  return paper;
}

}  // namespace cutback::print

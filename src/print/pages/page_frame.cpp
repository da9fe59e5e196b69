#include "print/pages/page_frame.hpp"

#include <algorithm>

namespace cutback::print {
namespace {

constexpr double k_to_cut_mm = 3.0;  // from a card to its cut line
constexpr double k_bar_thick_mm = 0.8;
constexpr double k_bar_at_mm = 5.5;  // from the page's edge

}  // namespace

std::string day_of(const std::string& dated) {
  return dated.substr(0, 4) + "-" + dated.substr(4, 2) + "-" + dated.substr(6, 2);
}

std::vector<Cell> cells_of(const Paper& paper, const Margins& margins) {
  const double width = (paper.width_mm - margins.left - margins.right) / paper.across;
  const double height = (paper.height_mm - margins.top - margins.bottom) / paper.down;
  std::vector<Cell> cells;
  for (int row = 0; row < paper.down; ++row) {
    for (int column = 0; column < paper.across; ++column) {
      const bool first_column = column == 0;
      const bool first_row = row == 0;
      const double left = first_column ? 0.0 : k_to_cut_mm;
      const double above = first_row ? 0.0 : k_to_cut_mm;
      const double right = column + 1 < paper.across ? k_to_cut_mm : 0.0;
      const double below = row + 1 < paper.down ? k_to_cut_mm : 0.0;
      cells.push_back({.x = margins.left + column * width + left,
                       .y = margins.top + row * height + above,
                       .width = width - left - right,
                       .height = height - above - below});
    }
  }
  return cells;
}

void put_cut_lines(const Pen& pen, const Paper& paper, const Margins& margins) {
  const double width = (paper.width_mm - margins.left - margins.right) / paper.across;
  const double height = (paper.height_mm - margins.top - margins.bottom) / paper.down;
  constexpr double k_hair_mm = 0.15;
  constexpr double k_edge_mm = 3.0;
  for (int column = 1; column < paper.across; ++column) {
    const double x = margins.left + column * width;
    pen.dashed(x, k_edge_mm, x, paper.height_mm - margins.bottom + 1.0, k_hair_mm);
  }
  for (int row = 1; row < paper.down; ++row) {
    const double y = margins.top + row * height;
    pen.dashed(margins.left - 2.0, y, paper.width_mm - k_edge_mm, y, k_hair_mm);
  }
}

void put_check_bars(const Pen& pen, const Paper& paper, const std::string& foot) {
  const double x = k_bar_at_mm;
  const double y = paper.height_mm - k_bar_at_mm;
  const double from = x + 3.0;
  // Areas, not lines: the length ends exactly where it ends.
  pen.black({{from, y - k_bar_thick_mm / 2.0, k_check_bar_mm, k_bar_thick_mm},
             {x - k_bar_thick_mm / 2.0, y - 3.0 - k_check_bar_mm, k_bar_thick_mm, k_check_bar_mm}});
  const Font small{.size_mm = 1.9};
  const double words = from + k_check_bar_mm + 2.5;
  const double room = paper.width_mm - words - 5.0;
  constexpr double k_foot_mm = 60.0;
  const bool beside = room > 2.0 * k_foot_mm;
  const double wide = beside ? room - k_foot_mm : room;
  const std::string check =
      "Measure this bar and the one on the left before use: 50 mm each. If not, print again at "
      "100 %, not fitted to the page.";
  const double high = pen.height(check, small, wide);
  pen.text(words, y + 1.6 - high, check, small, wide);
  pen.label_upwards(x + 0.9, y - 3.0, "50 mm", small);
  Font right = small;
  right.align = Align::right;
  if (beside) {
    pen.label(paper.width_mm - 6.0, y + 1.6 - pen.height(foot, small, k_foot_mm), foot, right);
  } else {
    // Above the bar, which leaves the room beside it to the words.
    pen.label(from, y - 1.0 - pen.height(foot, small, 200.0), foot, small);
  }
}

}  // namespace cutback::print

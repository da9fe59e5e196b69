#include "print/pages/page_frame.hpp"

#include <algorithm>

namespace cutback::print {
namespace {

constexpr double k_bar_thick_mm = 0.8;
constexpr double k_bar_at_mm = 5.5;    // from the left and right edges
constexpr double k_bar_down_mm = 4.4;  // from the upper one

}  // namespace

std::string made_by(const PageNote& note) {
  const std::string& dated = note.dated;
  std::string day;
  if (!dated.empty()) {
    day = dated.substr(0, 4) + "-" + dated.substr(4, 2) + "-" + dated.substr(6, 2) + ", ";
  }
  return day + note.program;
}

std::vector<Frame> frames_of(const Paper& paper) {
  const double width = paper.width_mm / paper.across;
  const double height = paper.height_mm / paper.down;
  std::vector<Frame> frames;
  for (int row = 0; row < paper.down; ++row) {
    for (int column = 0; column < paper.across; ++column) {
      frames.push_back({.x = column * width, .y = row * height, .width = width, .height = height});
    }
  }
  return frames;
}

void put_cut_lines(const Pen& pen, const Paper& paper) {
  constexpr double k_hair_mm = 0.15;
  for (const Frame& frame : frames_of(paper)) {
    if (frame.x > 0.0 && frame.y == 0.0)
      pen.dashed(frame.x, 0.0, frame.x, paper.height_mm, k_hair_mm);
    if (frame.y > 0.0 && frame.x == 0.0)
      pen.dashed(0.0, frame.y, paper.width_mm, frame.y, k_hair_mm);
  }
}

void put_page_head(const Pen& pen, const Frame& frame, const std::string& running) {
  const double left = frame.x + k_bar_at_mm;
  const double top = frame.y + k_bar_down_mm;
  const double right = frame.x + frame.width - k_bar_at_mm;
  const double down = top + 6.0;
  // Areas, not lines: the length ends exactly where it ends.
  pen.black({{right - k_check_bar_mm, top - k_bar_thick_mm / 2.0, k_check_bar_mm, k_bar_thick_mm},
             {left - k_bar_thick_mm / 2.0, down, k_bar_thick_mm, k_check_bar_mm}});
  constexpr double k_small_mm = 7.0 * 25.4 / 72.0;
  Font small{.size_mm = k_small_mm};
  Font end = small;
  end.align = Align::right;
  pen.label(right - k_check_bar_mm - 1.0, top - 1.6, "50 mm", end);
  pen.label_upwards(left + 0.6, down + k_check_bar_mm,
                    "Measure both bars: 50 mm. If not, print at 100 %.", small);
  small.most_lines = 1;
  const double from = frame.x + Margins{}.left;
  pen.text(from, top - 1.6, running, small, right - k_check_bar_mm - 11.0 - from);
}

}  // namespace cutback::print

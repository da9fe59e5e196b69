#include "print/pages/page_frame.hpp"

#include <algorithm>

namespace cutback::print {
namespace {

constexpr double k_bar_thick_mm = 0.8;
constexpr double k_bar_at_mm = 5.5;  // from the page's edge

}  // namespace

std::string foot_of(const PageNote& note, const std::string& page) {
  const std::string& dated = note.dated;
  std::string day;
  if (!dated.empty()) {
    day = dated.substr(0, 4) + "-" + dated.substr(4, 2) + "-" + dated.substr(6, 2) + ", ";
  }
  return day + note.program + ", page " + page;
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

void put_check_bars(const Pen& pen, const Frame& frame, const std::string& foot) {
  const double x = frame.x + k_bar_at_mm;
  const double y = frame.y + frame.height - k_bar_at_mm;
  const double from = x + 3.0;
  // Areas, not lines: the length ends exactly where it ends.
  pen.black({{from, y - k_bar_thick_mm / 2.0, k_check_bar_mm, k_bar_thick_mm},
             {x - k_bar_thick_mm / 2.0, y - 3.0 - k_check_bar_mm, k_bar_thick_mm, k_check_bar_mm}});
  const Font small{.size_mm = 1.9};
  const double words = from + k_check_bar_mm + 2.5;
  const double room = frame.x + frame.width - words - 5.0;
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
    pen.label(frame.x + frame.width - 6.0, y + 1.6 - pen.height(foot, small, k_foot_mm), foot,
              right);
  } else {
    // Above the bar, which leaves the room beside it to the words.
    pen.label(from, y - 1.0 - pen.height(foot, small, 200.0), foot, small);
  }
}

}  // namespace cutback::print

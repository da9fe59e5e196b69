#include "print/pages/page_frame.hpp"

#include <algorithm>

namespace cutback::print {
namespace {

constexpr double k_bar_thick_mm = 0.8;
constexpr double k_bar_at_mm = 5.5;    // from the left and right edges
constexpr double k_bar_down_mm = 4.4;  // from the upper one
constexpr double k_small_mm = 7.0 * 25.4 / 72.0;

}  // namespace

std::string day_of(const PageNote& note) {
  const std::string& dated = note.dated;
  if (dated.empty()) return {};
  return dated.substr(0, 4) + "-" + dated.substr(4, 2) + "-" + dated.substr(6, 2);
}

std::string made_by(const PageNote& note) {
  const std::string day = day_of(note);
  return day + (day.empty() ? "" : ", ") + note.program;
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
    if (frame.x > 0.0) {
      // Short strokes at both ends: torn here, marks and signatures would part.
      constexpr double k_stroke_mm = 6.0;
      const double down = frame.y + frame.height;
      pen.line(frame.x, frame.y, frame.x, frame.y + k_stroke_mm, k_hair_mm);
      pen.line(frame.x, down - k_stroke_mm, frame.x, down, k_hair_mm);
      const Font small{.size_mm = k_small_mm, .align = Align::centre};
      const double high = pen.height("x", small, 20.0);
      pen.area(frame.x - 3.0, down - k_stroke_mm - high, 6.0, high, Fill{}, 0.0);
      pen.label(frame.x, down - k_stroke_mm - high, "fold", small);
    }
    if (frame.y > 0.0 && frame.x == 0.0)
      pen.dashed(0.0, frame.y, paper.width_mm, frame.y, k_hair_mm);
  }
}

void put_page_head(const Pen& pen, const Frame& frame, const std::string& running, bool bars) {
  const double left = frame.x + k_bar_at_mm;
  const double top = frame.y + k_bar_down_mm;
  const double right = frame.x + frame.width - k_bar_at_mm;
  const double down = top + 6.0;
  Font small{.size_mm = k_small_mm};
  small.most_lines = 1;
  const double from = frame.x + Margins{}.left;
  const double after = bars ? k_check_bar_mm + 11.0 : 0.0;
  pen.text(from, top - 1.6, running, small, right - after - from);
  if (!bars) return;
  // Areas, not lines: the length ends exactly where it ends.
  pen.black({{right - k_check_bar_mm, top - k_bar_thick_mm / 2.0, k_check_bar_mm, k_bar_thick_mm},
             {left - k_bar_thick_mm / 2.0, down, k_bar_thick_mm, k_check_bar_mm}});
  small.most_lines = 0;
  Font end = small;
  end.align = Align::right;
  pen.label(right - k_check_bar_mm - 1.0, top - 1.6, "50 mm", end);
  pen.label_upwards(left + 0.6, down + k_check_bar_mm,
                    "Measure both bars: 50 mm. If not, print at 100 %.", small);
}

}  // namespace cutback::print

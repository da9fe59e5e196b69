#include "print/pages/pen.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace cutback::print {
namespace {

constexpr double k_hatch_thick_mm = 0.12;

double points(double mm) { return mm * k_points_per_mm; }

}  // namespace

void Pen::stroke(double thick_mm, double grey) const {
  cairo_set_source_rgb(page_, grey, grey, grey);
  cairo_set_line_width(page_, points(thick_mm));
  cairo_stroke(page_);
}

void Pen::line(double x1, double y1, double x2, double y2, double thick_mm, double grey) const {
  if (!draws()) return;
  cairo_move_to(page_, points(x1), points(y1));
  cairo_line_to(page_, points(x2), points(y2));
  stroke(thick_mm, grey);
}

void Pen::dashed(double x1, double y1, double x2, double y2, double thick_mm) const {
  if (!draws()) return;
  const double dash = points(1.5);
  cairo_set_dash(page_, &dash, 1, 0.0);
  line(x1, y1, x2, y2, thick_mm);
  cairo_set_dash(page_, nullptr, 0, 0.0);
}

void Pen::path(double x, double y, double width, double height) const {
  cairo_rectangle(page_, points(x), points(y), points(width), points(height));
}

void Pen::rectangle(double x, double y, double width, double height, double thick_mm) const {
  if (!draws()) return;
  path(x, y, width, height);
  stroke(thick_mm, 0.0);
}

void Pen::dashed_rectangle(double x, double y, double width, double height, double thick_mm) const {
  if (!draws()) return;
  const double dash = points(1.0);
  cairo_set_dash(page_, &dash, 1, 0.0);
  rectangle(x, y, width, height, thick_mm);
  cairo_set_dash(page_, nullptr, 0, 0.0);
}

void Pen::area(double x, double y, double width, double height, const Fill& fill,
               double thick_mm) const {
  if (!draws()) return;
  path(x, y, width, height);
  fill_path(fill, thick_mm);
}

void Pen::area(const std::vector<std::pair<double, double>>& corners, const Fill& fill,
               double thick_mm) const {
  if (!draws() || corners.empty()) return;
  for (const auto& [x, y] : corners) cairo_line_to(page_, points(x), points(y));
  cairo_close_path(page_);
  fill_path(fill, thick_mm);
}

void Pen::fill_path(const Fill& fill, double thick_mm) const {
  cairo_set_source_rgb(page_, fill.grey, fill.grey, fill.grey);
  cairo_fill_preserve(page_);
  if (fill.every_mm > 0.0) {
    double left = 0.0;
    double top = 0.0;
    double right = 0.0;
    double bottom = 0.0;
    cairo_path_extents(page_, &left, &top, &right, &bottom);
    cairo_path_t* const outline = cairo_copy_path(page_);
    cairo_save(page_);
    cairo_clip(page_);
    // Lines through the middle and beside it, long enough for any direction.
    cairo_translate(page_, (left + right) / 2.0, (top + bottom) / 2.0);
    cairo_rotate(page_, fill.turned_deg * std::numbers::pi / 180.0);
    const double reach = std::hypot(right - left, bottom - top) / 2.0;
    const double step = points(fill.every_mm);
    const double first = -std::floor(reach / step) * step - points(k_hatch_thick_mm) / 2.0;
    stripe(0.0, first, 0.0, reach, 2.0 * reach, k_hatch_thick_mm, fill.every_mm);
    cairo_restore(page_);
    cairo_append_path(page_, outline);
    cairo_path_destroy(outline);
  }
  if (thick_mm > 0.0) {
    stroke(thick_mm, 0.0);
  } else {
    cairo_new_path(page_);
  }
}

/// One wide dashed line in place of many thin ones: a page says it in a few bytes.
void Pen::stripe(double x1, double y1, double x2, double y2, double width, double thick_mm,
                 double every_mm) const {
  const double dashes[2] = {points(thick_mm), points(every_mm - thick_mm)};
  cairo_set_dash(page_, dashes, 2, 0.0);
  cairo_set_source_rgb(page_, 0.0, 0.0, 0.0);
  cairo_set_line_width(page_, width);
  cairo_move_to(page_, x1, y1);
  cairo_line_to(page_, x2, y2);
  cairo_stroke(page_);
  cairo_set_dash(page_, nullptr, 0, 0.0);
}

void Pen::stripes(double x, double y, double to, double height, double thick_mm,
                  double every_mm) const {
  if (!draws()) return;
  const double middle = points(y + height / 2.0);
  stripe(points(x), middle, points(to), middle, points(height), thick_mm, every_mm);
}

void Pen::black(const std::vector<Area>& areas) const {
  if (!draws()) return;
  for (const Area& area : areas) path(area.x, area.y, area.width, area.height);
  cairo_set_source_rgb(page_, 0.0, 0.0, 0.0);
  cairo_fill(page_);
}

void Pen::disc(double x, double y, double radius) const {
  if (!draws()) return;
  cairo_new_sub_path(page_);
  cairo_arc(page_, points(x), points(y), points(radius), 0.0, 2.0 * std::numbers::pi);
  cairo_set_source_rgb(page_, 0.0, 0.0, 0.0);
  cairo_fill(page_);
}

double Pen::text(double x, double y, std::string_view words, const Font& font, double width) const {
  if (draws()) text_.draw(page_, x, y, words, font, width);
  return text_.height(words, font, width);
}

void Pen::label(double x, double y, std::string_view words, const Font& font) const {
  if (!draws()) return;
  const double wide = text_.width(words, font);
  const double left = font.align == Align::left     ? x
                      : font.align == Align::centre ? x - wide / 2.0
                                                    : x - wide;
  Font one_line = font;
  one_line.align = Align::left;
  text_.draw(page_, left, y, words, one_line, -1.0);
}

double Pen::on_line(double x, double y, std::string_view words, const Font& font) const {
  // Fonts of other scripts stand higher: each text by its own first line.
  label(x, y - text_.ascent(words, font), words, font);
  return width(words, font);
}

void Pen::label_upwards(double x, double y, std::string_view words, const Font& font) const {
  if (!draws()) return;
  cairo_save(page_);
  cairo_translate(page_, points(x), points(y));
  cairo_rotate(page_, -std::numbers::pi / 2.0);
  text_.draw(page_, 0.0, 0.0, words, font, -1.0);
  cairo_restore(page_);
}

}  // namespace cutback::print

#pragma once
// Lines, areas and text in millimetres on a page of any kind.

#include <cairo.h>
#include <string_view>
#include <utility>
#include <vector>

#include "print/pages/typesetter.hpp"

namespace cutback::print {

/// How an area is filled, so that layers can be told apart without colour: a shade, and lines on
/// it.
struct Fill {
  double grey = 1.0;        ///< 0 black to 1 white
  double every_mm = 0.0;    ///< distance of the hatching lines; 0: none
  double turned_deg = 0.0;  ///< their direction, 0 along the page's width
};

/// Draws in mm from the upper left corner. It borrows the page and the typesetter. Without a page
/// it only measures: every function that returns a height returns the same then.
class Pen {
 public:
  Pen(cairo_t* page, Typesetter& text) : page_(page), text_(text) {}

  [[nodiscard]] bool draws() const { return page_ != nullptr; }

  void line(double x1, double y1, double x2, double y2, double thick_mm, double grey = 0.0) const;
  void dashed(double x1, double y1, double x2, double y2, double thick_mm) const;
  void rectangle(double x, double y, double width, double height, double thick_mm) const;
  void dashed_rectangle(double x, double y, double width, double height, double thick_mm) const;
  /// Filled, and outlined where `thick_mm` is not 0.
  void area(double x, double y, double width, double height, const Fill& fill,
            double thick_mm) const;
  void area(const std::vector<std::pair<double, double>>& corners, const Fill& fill,
            double thick_mm) const;
  struct Area {
    double x;
    double y;
    double width;
    double height;
  };
  /// Many areas at once, solid black.
  void black(const std::vector<Area>& areas) const;
  /// Black lines across a band `height` high from x to `to`, so thick and so far apart.
  void stripes(double x, double y, double to, double height, double thick_mm,
               double every_mm) const;
  /// Filled with black.
  void disc(double x, double y, double radius) const;

  /// Wrapped to `width`. @return its height
  double text(double x, double y, std::string_view words, const Font& font, double width) const;
  /// In one line with its middle, beginning or end at x, as the font is aligned.
  void label(double x, double y, std::string_view words, const Font& font) const;
  /// In one line that stands on y, beginning, with its middle or ending at x. @return its width
  double on_line(double x, double y, std::string_view words, const Font& font) const;
  /// In one line, turned to be read from the right side; begins at x, y and goes up.
  void label_upwards(double x, double y, std::string_view words, const Font& font) const;
  [[nodiscard]] double height(std::string_view words, const Font& font, double width) const {
    return text_.height(words, font, width);
  }
  [[nodiscard]] double width(std::string_view words, const Font& font) const {
    return text_.width(words, font);
  }
  [[nodiscard]] double ascent(const Font& font) const { return text_.ascent("x", font); }
  [[nodiscard]] std::size_t without_glyph(std::string_view words) const {
    return text_.without_glyph(words);
  }

 private:
  void path(double x, double y, double width, double height) const;
  void fill_path(const Fill& fill, double thick_mm) const;
  void stroke(double thick_mm, double grey) const;
  void stripe(double x1, double y1, double x2, double y2, double width, double thick_mm,
              double every_mm) const;

  cairo_t* page_;
  Typesetter& text_;
};

}  // namespace cutback::print

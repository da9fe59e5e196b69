#pragma once
// Text set in lines by Pango: any script, the fonts of the machine, measured without rounding.

#include <cairo.h>
#include <cstddef>
#include <string>
#include <string_view>
#include <unordered_map>

// Pango's own names; its header stays out of the others.
struct _PangoFontMap;
struct _PangoContext;
struct _PangoLayout;
struct _PangoFontDescription;
struct _PangoAttrList;

namespace cutback::print {

/// PDF counts in points.
inline constexpr double k_points_per_mm = 72.0 / 25.4;

enum class Align { left, centre, right };

/// How a piece of text is set. Lengths in mm.
struct Font {
  double size_mm = 3.0;  ///< of the body, baseline to baseline is about 1.16 of it
  bool bold = false;
  Align align = Align::left;
  int most_lines = 0;  ///< what is longer is shortened with a mark; 0: as many as it needs
  double grey = 0.0;   ///< 0 black to 1 white
};

/// Sets texts for one thread. Control characters are taken out first, so that no text can break the
/// lines of a page. Lengths in mm.
class Typesetter {
 public:
  Typesetter();
  Typesetter(const Typesetter&) = delete;
  Typesetter& operator=(const Typesetter&) = delete;
  ~Typesetter();

  /// Height of the text wrapped to `width_mm`.
  [[nodiscard]] double height(std::string_view text, const Font& font, double width_mm);
  /// Width of the text in one line.
  [[nodiscard]] double width(std::string_view text, const Font& font);
  /// From the upper edge of a line to the line that its letters stand on.
  [[nodiscard]] double ascent(std::string_view text, const Font& font);
  /// Characters of the text for which no font of the machine has a glyph.
  [[nodiscard]] std::size_t without_glyph(std::string_view text);
  /// Draws it with its upper left corner at x, y (user space of `to`: points).
  void draw(cairo_t* to, double x_mm, double y_mm, std::string_view text, const Font& font,
            double width_mm);
  /// Characters drawn for which no font of the machine has a glyph, since the beginning.
  [[nodiscard]] std::size_t without_glyph() const { return without_glyph_; }

 private:
  /// A text as it was set once, for the next time that it is measured or drawn.
  struct SetText {
    _PangoLayout* layout;
    double width_mm;
    double height_mm;
    double ascent_mm;  ///< of the first line
    std::size_t without_glyph;
  };
  const SetText& set(std::string_view text, const Font& font, double width_mm);
  void forget();

  _PangoFontMap* fonts_;
  _PangoContext* context_;
  _PangoFontDescription* face_;
  _PangoAttrList* attributes_;
  std::string key_;
  std::unordered_map<std::string, SetText> known_;
  std::size_t without_glyph_ = 0;
};

}  // namespace cutback::print

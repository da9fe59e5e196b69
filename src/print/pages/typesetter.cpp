#include "print/pages/typesetter.hpp"

#include <pango/pangocairo.h>
#include <algorithm>
#include <cmath>
#include <cstring>

#include "cutback/print/words.hpp"

namespace cutback::print {
namespace {

constexpr const char* k_family = "DejaVu Sans Condensed, DejaVu Sans, sans-serif";
constexpr double k_one_line = -1.0;
constexpr std::size_t k_longest = 2000;     // bytes of one text; more is shortened with a mark
constexpr std::size_t k_remembered = 4096;  // texts that stay set

int to_pango(double mm) {
  return static_cast<int>(std::lround(mm * k_points_per_mm * PANGO_SCALE));
}
double to_mm(int pango) { return pango / static_cast<double>(PANGO_SCALE) / k_points_per_mm; }

/// Valid UTF-8 without control characters, not longer than a page can take.
std::string ready(std::string_view text) {
  std::string out = clean(text);
  if (out.size() > k_longest) {
    std::size_t end = k_longest;
    while (end > 0 && (static_cast<unsigned char>(out[end]) & 0xC0U) == 0x80U) --end;
    out.resize(end);
    out += "\u2026";
  }
  if (g_utf8_validate(out.data(), static_cast<gssize>(out.size()), nullptr) != FALSE) return out;
  gchar* const valid = g_utf8_make_valid(out.data(), static_cast<gssize>(out.size()));
  out = valid;
  g_free(valid);
  return out;
}

}  // namespace

Typesetter::Typesetter()
    : fonts_(pango_cairo_font_map_new()),
      context_(pango_font_map_create_context(fonts_)),
      face_(pango_font_description_from_string(k_family)),
      attributes_(pango_attr_list_new()) {
  // Sizes are given in points of PDF, 72 to the inch, and nothing is rounded to pixels.
  pango_cairo_context_set_resolution(context_, 72.0);
  pango_context_set_round_glyph_positions(context_, FALSE);
  cairo_font_options_t* const options = cairo_font_options_create();
  cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
  pango_cairo_context_set_font_options(context_, options);
  cairo_font_options_destroy(options);
  // The user's language must not change the page.
  pango_context_set_language(context_, pango_language_from_string("en"));
  // Letters run together are not found by who looks for the word in the file.
  pango_attr_list_insert(attributes_, pango_attr_font_features_new("liga=0, clig=0"));
  // A hyphen that is not in a tag would be read as one of it.
  pango_attr_list_insert(attributes_, pango_attr_insert_hyphens_new(FALSE));
}

Typesetter::~Typesetter() {
  forget();
  pango_attr_list_unref(attributes_);
  pango_font_description_free(face_);
  g_object_unref(context_);
  g_object_unref(fonts_);
}

void Typesetter::forget() {
  for (const auto& [key, text] : known_) g_object_unref(text.layout);
  known_.clear();
}

const Typesetter::SetText& Typesetter::set(std::string_view text, const Font& font,
                                           double width_mm) {
  // How a text is set depends on all of this, and on nothing else.
  key_.assign(text);
  const auto add = [&](const auto& value) {
    char bytes[sizeof value];
    std::memcpy(bytes, &value, sizeof value);
    key_.append(bytes, sizeof value);
  };
  add(font.size_mm);
  add(font.bold);
  add(font.align);
  add(font.most_lines);
  add(width_mm);
  if (const auto known = known_.find(key_); known != known_.end()) return known->second;
  if (known_.size() >= k_remembered) forget();

  PangoLayout* const layout = pango_layout_new(context_);
  // The layout keeps a copy of its own.
  pango_font_description_set_absolute_size(face_, font.size_mm * k_points_per_mm * PANGO_SCALE);
  pango_font_description_set_weight(face_, font.bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_layout_set_font_description(layout, face_);
  pango_layout_set_wrap(layout, PANGO_WRAP_WORD_CHAR);
  // A tag in a script that is read from the right begins at the left of its column all the same.
  pango_layout_set_auto_dir(layout, FALSE);
  pango_layout_set_width(layout, width_mm < 0.0 ? -1 : to_pango(width_mm));
  pango_layout_set_alignment(layout, font.align == Align::left     ? PANGO_ALIGN_LEFT
                                     : font.align == Align::centre ? PANGO_ALIGN_CENTER
                                                                   : PANGO_ALIGN_RIGHT);
  if (font.most_lines > 0 && width_mm >= 0.0) {
    pango_layout_set_ellipsize(layout, PANGO_ELLIPSIZE_END);
    pango_layout_set_height(layout, -font.most_lines);
  }
  pango_layout_set_attributes(layout, attributes_);
  const std::string shown = ready(text);
  pango_layout_set_text(layout, shown.data(), static_cast<int>(shown.size()));
  int width = 0;
  int height = 0;
  pango_layout_get_size(layout, &width, &height);
  const int unknown = pango_layout_get_unknown_glyphs_count(layout);
  const SetText entry{.layout = layout,
                      .width_mm = to_mm(width),
                      .height_mm = to_mm(height),
                      .ascent_mm = to_mm(pango_layout_get_baseline(layout)),
                      .without_glyph = static_cast<std::size_t>(std::max(0, unknown))};
  return known_.emplace(key_, entry).first->second;
}

double Typesetter::height(std::string_view text, const Font& font, double width_mm) {
  return set(text, font, width_mm).height_mm;
}

double Typesetter::width(std::string_view text, const Font& font) {
  Font one_line = font;
  one_line.align = Align::left;
  return set(text, one_line, k_one_line).width_mm;
}

double Typesetter::ascent(std::string_view text, const Font& font) {
  return set(text, font, k_one_line).ascent_mm;
}

std::size_t Typesetter::without_glyph(std::string_view text) {
  return set(text, Font{}, k_one_line).without_glyph;
}

void Typesetter::draw(cairo_t* to, double x_mm, double y_mm, std::string_view text,
                      const Font& font, double width_mm) {
  const SetText& known = set(text, font, width_mm);
  without_glyph_ += known.without_glyph;
  cairo_set_source_rgb(to, font.grey, font.grey, font.grey);
  cairo_move_to(to, x_mm * k_points_per_mm, y_mm * k_points_per_mm);
  pango_cairo_show_layout(to, known.layout);
}

}  // namespace cutback::print

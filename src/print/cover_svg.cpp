#include <fmt/format.h>

#include "cutback/number.hpp"
#include "cutback/print/cover.hpp"
#include "cutback/xml.hpp"
#include "print/cover_words.hpp"
#include "cutback/print/words.hpp"

namespace cutback::print {
namespace {

using fit::CoverMap;

// In mm on the paper.
constexpr double k_left = 22.0;
constexpr double k_top = 22.0;
constexpr double k_width = 230.0;
constexpr double k_height = 120.0;
constexpr double k_below = 34.0;

std::string number(double value) { return plain(value, 2); }

std::string text_at(double x, double y, std::string_view words, const char* more = "") {
  return fmt::format("<text x=\"{}\" y=\"{}\"{}>{}</text>\n", number(x), number(y), more,
                     xml_text(clean(words)));
}

std::string box(double x, double y, double width, double height, const char* fill) {
  return fmt::format("<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" fill=\"{}\"/>\n",
                     number(x), number(y), number(width), number(height), fill);
}

const char* fill_of(int count) {
  return count == 0 ? "url(#none)" : count == 1 ? "#c8c8c8" : "#404040";
}

/// Cells that are alike and beside each other are one box.
std::string cells(const CoverMap& map, double cell_width, double cell_height) {
  std::string text;
  for (std::size_t y = 0; y < map.bedding.cells; ++y) {
    for (std::size_t x = 0; x < map.sheath.cells;) {
      const int count = std::min(map.at(x, y), 2);
      std::size_t end = x + 1;
      while (end < map.sheath.cells && std::min(map.at(end, y), 2) == count) ++end;
      if (count != CoverMap::k_no_cable) {
        text += box(k_left + static_cast<double>(x) * cell_width,
                    k_top + k_height - static_cast<double>(y + 1) * cell_height,
                    static_cast<double>(end - x) * cell_width, cell_height, fill_of(count));
      }
      x = end;
    }
  }
  return text;
}

std::string figures(const CoverMap& map, double cell_width, double cell_height) {
  std::string text;
  constexpr std::size_t k_ticks = 10;
  const std::size_t every_x = std::max<std::size_t>(1, map.sheath.cells / k_ticks);
  for (std::size_t x = 0; x <= map.sheath.cells; x += every_x) {
    text += text_at(k_left + static_cast<double>(x) * cell_width, k_top + k_height + 5.0,
                    plain(map.sheath.edge_mm(x), 2), " text-anchor=\"middle\"");
  }
  text += text_at(k_left + k_width / 2.0, k_top + k_height + 11.0, "sheath, mm",
                  " text-anchor=\"middle\"");
  if (!map.armoured) return text;
  const std::size_t every_y = std::max<std::size_t>(1, map.bedding.cells / k_ticks);
  for (std::size_t y = 0; y <= map.bedding.cells; y += every_y) {
    text += text_at(k_left - 2.0, k_top + k_height - static_cast<double>(y) * cell_height + 1.2,
                    plain(map.bedding.edge_mm(y), 2), " text-anchor=\"end\"");
  }
  return text + text_at(2.0, k_top - 3.0, "bedding, mm");
}

std::string legend(double y) {
  std::string text;
  double x = k_left;
  const auto entry = [&](const char* fill, const char* words, double width) {
    text += fmt::format(
        "<rect x=\"{}\" y=\"{}\" width=\"6\" height=\"4\" fill=\"{}\" stroke=\"black\" "
        "stroke-width=\"0.2\"/>\n",
        number(x), number(y - 3.4), fill);
    text += text_at(x + 8.0, y, words);
    x += width;
  };
  entry("url(#none)", "no gland", 36.0);
  entry("#c8c8c8", "one", 24.0);
  entry("#404040", "two or more", 40.0);
  entry("none", "no such cable", 40.0);
  return text;
}

}  // namespace

std::string cover_svg(const fit::CoverMap& map, std::span<const fit::CoverGap> gaps,
                      const CoverTitle& title) {
  const double width = k_left + k_width + 10.0;
  const double height = k_top + k_height + k_below;
  const double cell_width = k_width / static_cast<double>(map.sheath.cells);
  const double cell_height = k_height / static_cast<double>(map.bedding.cells);
  std::string text = fmt::format(
      "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{0}mm\" height=\"{1}mm\" "
      "viewBox=\"0 0 {0} {1}\" font-family=\"sans-serif\" font-size=\"3.6\">\n"
      "<defs><pattern id=\"none\" width=\"2\" height=\"2\" patternUnits=\"userSpaceOnUse\">"
      "<rect width=\"2\" height=\"2\" fill=\"white\"/>"
      "<path d=\"M0,2 L2,0\" stroke=\"black\" stroke-width=\"0.15\"/></pattern></defs>\n",
      number(width), number(height));
  text += box(0.0, 0.0, width, height, "white");
  text += text_at(2.0, 6.0, fmt::format("Glands that fit, of {} in {}", title.glands, title.list),
                  " font-weight=\"bold\"");
  text += text_at(2.0, 11.5, title.asked);
  text += cells(map, cell_width, cell_height);
  text += fmt::format(
      "<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" fill=\"none\" stroke=\"black\" "
      "stroke-width=\"0.3\"/>\n",
      number(k_left), number(k_top), number(k_width), number(k_height));
  text += figures(map, cell_width, cell_height);
  text += legend(k_top + k_height + 18.5);
  constexpr std::size_t k_shown = 2;
  text += text_at(2.0, k_top + k_height + 26.0, "Gaps: " + gaps_words(map, gaps, k_shown));
  return text + "</svg>\n";
}

}  // namespace cutback::print

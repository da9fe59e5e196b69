#include <fmt/format.h>
#include <algorithm>
#include <cmath>

#include "cutback/number.hpp"
#include "cutback/print/cover.hpp"
#include "print/cover_words.hpp"
#include "print/json_number.hpp"
#include "print/layout.hpp"

namespace cutback::print {
namespace {

using fit::CoverMap;

constexpr std::size_t k_label = 7;
constexpr std::size_t k_gaps_shown = 3;

char mark_of(int count) {
  if (count == CoverMap::k_no_cable) return ' ';
  return count == 0 ? '.' : count == 1 ? '1' : '#';
}

/// The figures below the map, each under its cell.
std::string axis_lines(const fit::CoverAxis& axis) {
  constexpr std::size_t k_room = 8;
  std::string ticks(k_label, ' ');
  std::string figures(k_label, ' ');
  ticks.resize(k_label + axis.cells + 1, '-');
  figures.resize(k_label + axis.cells + k_room, ' ');
  for (std::size_t cell = 0; cell <= axis.cells; cell += k_room) {
    ticks[k_label + cell] = '+';
    const std::string figure = plain(axis.edge_mm(cell), 2);
    figures.replace(k_label + cell, figure.size(), figure);
  }
  return line_of(ticks) + line_of(figures);
}

}  // namespace

std::string gap_words(const fit::CoverGap& gap, bool armoured) {
  std::string text =
      "sheath " + plain(gap.sheath_low_mm, 2) + " to " + plain(gap.sheath_high_mm, 2);
  if (armoured) {
    text +=
        " with bedding " + plain(gap.bedding_low_mm, 2) + " to " + plain(gap.bedding_high_mm, 2);
  }
  return text + " mm";
}

std::string gaps_words(const fit::CoverMap& map, std::span<const fit::CoverGap> gaps,
                       std::size_t most) {
  if (gaps.empty()) {
    return "none: every such cable with a sheath of at most " + plain(fit::k_thickest_sheath_mm) +
           " mm is served";
  }
  std::string text;
  for (std::size_t i = 0; i < std::min(most, gaps.size()); ++i) {
    text += (text.empty() ? "" : "; ") + gap_words(gaps[i], map.armoured);
  }
  if (gaps.size() > most) text += fmt::format("; and {} smaller", gaps.size() - most);
  return text;
}

std::string cover_text(const fit::CoverMap& map, std::span<const fit::CoverGap> gaps,
                       const CoverTitle& title, const Style& style) {
  std::string text =
      line_of(cell(fmt::format("Glands that fit, of {} in {}", title.glands, title.list), 79));
  text += line_of(cell("  " + title.asked, 79));
  for (std::size_t y = map.bedding.cells; y-- > 0;) {
    std::string line(k_label, ' ');
    if (map.armoured && (map.bedding.cells - y) % 2 == 1) {
      line = right(plain(map.bedding.middle_mm(y), 2), k_label - 1) + " ";
    }
    for (std::size_t x = 0; x < map.sheath.cells; ++x) line += mark_of(map.at(x, y));
    text += line_of(line);
  }
  text += axis_lines(map.sheath);
  text += map.armoured
              ? "mm     bedding upwards, sheath to the right; a mark is the middle of its cell\n"
              : "mm     sheath\n";
  text += "       # two or more, 1 one, . none, blank: no such cable\n";
  return text + wrapped(style.colour ? "\x1b[1mGaps\x1b[0m   " : "Gaps   ",
                        gaps_words(map, gaps, style.all ? gaps.size() : k_gaps_shown));
}

std::string cover_json(const fit::CoverMap& map, std::span<const fit::CoverGap> gaps,
                       const CoverTitle& title) {
  nlohmann::ordered_json root = json_head();
  root["list"] = title.list;
  root["glands"] = title.glands;
  root["asked"] = title.asked;
  const auto middles = [](const fit::CoverAxis& axis) {
    nlohmann::ordered_json list = nlohmann::ordered_json::array();
    for (std::size_t i = 0; i < axis.cells; ++i) list.push_back(axis.middle_mm(i));
    return list;
  };
  root["sheath_od_mm"] = middles(map.sheath);
  root["bedding_mm"] =
      map.armoured ? middles(map.bedding) : nlohmann::ordered_json(nlohmann::ordered_json::array());
  nlohmann::ordered_json rows = nlohmann::ordered_json::array();
  for (std::size_t y = 0; y < map.bedding.cells; ++y) {
    nlohmann::ordered_json row = nlohmann::ordered_json::array();
    for (std::size_t x = 0; x < map.sheath.cells; ++x) {
      const int count = map.at(x, y);
      row.push_back(count == CoverMap::k_no_cable ? nlohmann::ordered_json()
                                                  : nlohmann::ordered_json(count));
    }
    rows.push_back(std::move(row));
  }
  root["fitting"] = std::move(rows);
  nlohmann::ordered_json list = nlohmann::ordered_json::array();
  for (const fit::CoverGap& gap : gaps) {
    nlohmann::ordered_json one;
    one["sheath_od_mm"] = {gap.sheath_low_mm, gap.sheath_high_mm};
    if (map.armoured) one["bedding_mm"] = {gap.bedding_low_mm, gap.bedding_high_mm};
    list.push_back(std::move(one));
  }
  root["gaps"] = std::move(list);
  return json_text(root);
}

}  // namespace cutback::print

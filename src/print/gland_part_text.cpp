#include <fmt/format.h>
#include <algorithm>
#include <cmath>

#include "cutback/gland/columns.hpp"
#include "cutback/number.hpp"
#include "cutback/print/glands.hpp"
#include "print/layout.hpp"
#include "cutback/print/words.hpp"

namespace cutback::print {
namespace {

using gland::Gland;

constexpr std::size_t k_name = 10;
constexpr std::size_t k_width = k_columns - 1 - k_name;

/// Positions along the gland [mm] from its shoulder, into the enclosure positive, on one line.
class Scale {
 public:
  Scale(double low_mm, double high_mm) : low_mm_(low_mm) {
    mm_per_column_ = (high_mm - low_mm) / static_cast<double>(k_width - 1);
  }
  [[nodiscard]] std::size_t column(double mm) const {
    const double at = std::round((mm - low_mm_) / mm_per_column_);
    return static_cast<std::size_t>(std::clamp(at, 0.0, static_cast<double>(k_width - 1)));
  }
  /// A line with a mark from one place to another.
  [[nodiscard]] std::string bar(std::string_view name, double from_mm, double to_mm, char mark,
                                bool ends) const {
    std::string line(k_width, ' ');
    for (std::size_t i = column(from_mm); i < column(to_mm); ++i) line[i] = mark;
    if (ends) line[column(to_mm)] = '|';
    return line_of(cell(name, k_name) + line);
  }
  /// The figures in mm and a tick over each.
  [[nodiscard]] std::string figures(const std::vector<double>& places_mm) const {
    std::string words(k_width, ' ');
    std::string ticks(k_width, ' ');
    std::size_t free = 0;
    for (const double place_mm : places_mm) {
      const std::string figure = plain(place_mm, 1);
      std::size_t at = column(place_mm);
      at = std::min(at, k_width - figure.size());
      ticks[column(place_mm)] = '+';
      if (at < free) continue;
      words.replace(at, figure.size(), figure);
      free = at + figure.size() + 1;
    }
    return line_of(cell("mm", k_name) + words) + line_of(cell("", k_name) + ticks);
  }

 private:
  double low_mm_;
  double mm_per_column_ = 1.0;
};

std::string range(const std::optional<double>& low, const std::optional<double>& high) {
  return (low ? plain(*low, 2) : "?") + " to " + (high ? plain(*high, 2) : "?") + " mm";
}

std::string drawing(const Gland& gland) {
  const double thread_mm = gland.entry_length_mm.value_or(0.0);
  const bool armoured = gland.armour != cable::ArmourKind::none;
  const bool barrier = sealing_of(gland) == gland::Sealing::barrier;
  const bool ends = barrier ? gland.bedding_end_mm.has_value() : gland.entry_length_mm.has_value();
  const double bedding_mm = !ends     ? 0.0
                            : barrier ? gland.bedding_end_mm.value_or(0.0)
                                      : thread_mm + gland.bedding_past_mm;
  const double stop_mm = armoured ? gland.armour_stop_mm.value_or(0.0) : 0.0;
  const double exposed_mm = armoured ? gland.exposed_armour_mm.value_or(0.0) : 0.0;
  constexpr double k_room_mm = 8.0;
  const double low_mm = -(stop_mm + exposed_mm) - k_room_mm;
  const double high_mm = std::max(thread_mm, bedding_mm) + k_room_mm;
  const Scale scale(low_mm, high_mm);
  const bool placed = armoured && gland.armour_stop_mm.has_value();
  std::vector<double> places{0.0};
  if (placed) places.push_back(-stop_mm);
  if (placed && gland.exposed_armour_mm) places.push_back(-(stop_mm + exposed_mm));
  if (gland.entry_length_mm) places.push_back(thread_mm);
  if (ends) places.push_back(bedding_mm);
  std::sort(places.begin(), places.end());
  places.erase(std::unique(places.begin(), places.end()), places.end());
  std::string text = scale.bar("body", low_mm, 0.0, '#', true);
  if (gland.entry_length_mm) text += scale.bar("thread", 0.0, thread_mm, '=', true);
  if (placed && gland.exposed_armour_mm) {
    text += scale.bar("sheath", low_mm, -(stop_mm + exposed_mm), '_', true);
    text += scale.bar("bare wire", -(stop_mm + exposed_mm), -stop_mm, '/', true);
  }
  if (ends) text += scale.bar("bedding", low_mm, bedding_mm, '-', true);
  text += scale.bar("cores", ends ? bedding_mm : low_mm, high_mm, '.', false);
  text += scale.figures(places);
  return text + wrapped(cell("", k_name),
                        "to scale, from the shoulder (0), which meets the enclosure or its washer");
}

std::string joined_words(const Gland& gland, std::initializer_list<std::string_view> names) {
  std::string text;
  for (const std::string_view name : names) {
    const auto value = gland::text_of(gland, gland::columns()[gland::column_place(name)]);
    if (value) text += (text.empty() ? "" : "; ") + *value;
  }
  return text;
}

}  // namespace

std::string gland_part_text(const Gland& gland, const Style& style) {
  const auto line = [](const char* name, const std::string& words) {
    return words.empty() ? std::string() : wrapped(cell(name, k_name), words);
  };
  const auto mm = [](const std::optional<double>& value) {
    return value ? plain(*value, 2) + " mm" : std::string("not stated");
  };
  const bool armoured = gland.armour != cable::ArmourKind::none;
  constexpr std::size_t k_longest = 28;
  std::string name =
      cell(clean(gland.part), std::min(k_longest, std::max<std::size_t>(1, gland.part.size())));
  if (style.colour) name = "\x1b[1m" + name + "\x1b[0m";
  std::string text = line_of(name + "  " + cell(clean(gland.description), 48));
  text +=
      line("Entry", entry::to_text(gland.entry_thread) + ", thread " + mm(gland.entry_length_mm) +
                        "; washer " + mm(gland.washer_mm) + ", locknut " + mm(gland.locknut_mm));
  text += line("Sheath", range(gland.outer.low_mm, gland.outer.high_mm));
  std::string bedding =
      gland.inner ? range(gland.inner->low_mm, gland.inner->high_mm) : std::string("no inner seal");
  if (armoured) bedding += "; bore " + mm(gland.bore_mm);
  text += line("Bedding", bedding + "; " + std::string(to_string(sealing_of(gland))));
  if (armoured) {
    text += line("Armour", std::string(to_string(gland.armour)) + " " +
                               range(gland.armour_clamp.low_mm, gland.armour_clamp.high_mm) +
                               "; bare wire " + mm(gland.exposed_armour_mm) + "; armour stop " +
                               mm(gland.armour_stop_mm));
  }
  text += line("Marked", joined_words(gland, {"protection", "level", "gas_group", "dust_group"}) +
                             (gland.ip.empty() ? "" : "; IP" + area::to_text(gland.ip)));
  std::string rated = gland.fault_ka ? plain(*gland.fault_ka, 2) + " kA for 1 s" : "";
  if (gland.material) rated += (rated.empty() ? "" : "; ") + *gland.material;
  text += line("Rated", rated);
  text += "\n" + drawing(gland);
  if (armoured && !gland.armour_stop_mm) {
    text += wrapped("",
                    "The armour stop is not stated, so the cuts have no figure from the end. "
                    "Measure it once: cutback glands FILE --measure " +
                        clean(gland.part));
  }
  return text;
}

}  // namespace cutback::print

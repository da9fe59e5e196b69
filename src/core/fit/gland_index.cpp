#include "core/fit/gland_index.hpp"

#include <algorithm>
#include <array>
#include <cstring>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>

#include "core/fit/parts.hpp"

namespace cutback::fit::detail {
namespace {

using gland::Gland;
using gland::Sealing;
using Places = std::vector<const Gland*>;

void add(std::string& key, const std::optional<double>& value) {
  std::array<char, sizeof(double)> bytes{};
  if (value) std::memcpy(bytes.data(), &*value, bytes.size());
  key += value ? '1' : '0';
  key.append(bytes.data(), bytes.size());
}

void add(std::string& key, std::string_view text) {
  key += text;
  key += '\n';
}

/// Everything of a gland that the checks of entry, thread, area, material and earth may read: all
/// but its names, its ranges of diameters, its price and what only the cut plan needs.
std::string kind_of(const Gland& gland) {
  std::string key;
  add(key, entry::to_text(gland.entry_thread));
  for (const auto& value :
       {gland.entry_length_mm, gland.bore_mm, gland.chamber_bore_mm, gland.chamber_length_mm,
        gland.max_bundle_mm, gland.temp_min_degc, gland.temp_max_degc, gland.fault_ka,
        gland.washer_mm, gland.locknut_mm}) {
    add(key, value);
  }
  add(key, std::optional<double>(gland.max_cores));
  add(key, to_string(gland.armour));
  add(key, to_string(gland.sealing));
  for (const auto& text : {gland.gas_group, gland.dust_group, gland.material}) {
    add(key, text ? *text : std::string_view("-"));
  }
  for (const auto* words : {&gland.protection, &gland.level, &gland.ip}) {
    for (const std::string& word : *words) add(key, word);
    add(key, ";");
  }
  return key;
}

bool alike(const Section& section, const Gland& gland) {
  return section.thread == gland.entry_thread && section.armour == gland.armour &&
         section.sealing == gland.sealing && section.clamp.low_mm == gland.armour_clamp.low_mm &&
         section.clamp.high_mm == gland.armour_clamp.high_mm;
}

Section section_for(const Gland& gland) {
  return {.thread = gland.entry_thread,
          .armour = gland.armour,
          .sealing = gland.sealing,
          .clamp = gland.armour_clamp};
}

/// A limit of each of a section's glands; none at an empty place.
/// @param of  what is asked for of a gland
template <class Of>
LimitSets limits_of(std::span<const Gland* const> places, LimitSets::Kind kind, Of of) {
  std::vector<std::optional<double>> limits(places.size());
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (places[i] != nullptr) limits[i] = of(*places[i]);
  }
  return {limits, kind};
}

template <class Of>
RangeSets ranges_of(std::span<const Gland* const> places, Of of) {
  return {limits_of(places, LimitSets::Kind::lower, [&](const Gland& g) { return of(g).low_mm; }),
          limits_of(places, LimitSets::Kind::upper, [&](const Gland& g) { return of(g).high_mm; })};
}

/// Lays the glands out section by section, each section's by preference and then by part code.
Places lay_out(std::span<const Gland> glands, Prefer prefer, std::vector<Section>& sections) {
  std::vector<Places> members;
  for (const Gland& gland : glands) {
    const auto at = std::find_if(sections.begin(), sections.end(),
                                 [&](const Section& section) { return alike(section, gland); });
    const auto number = static_cast<std::size_t>(at - sections.begin());
    if (at == sections.end()) {
      sections.push_back(section_for(gland));
      members.emplace_back();
    }
    members[number].push_back(&gland);
  }
  Places places;
  for (std::size_t i = 0; i < sections.size(); ++i) {
    Places& list = members[i];
    std::sort(list.begin(), list.end(), [&](const Gland* a, const Gland* b) {
      const double preference_a = preference(*a, prefer);
      const double preference_b = preference(*b, prefer);
      return preference_a != preference_b ? preference_a < preference_b : a->part < b->part;
    });
    constexpr std::size_t k_block_places = k_block * k_word;
    list.resize((list.size() + k_block_places - 1) / k_block_places * k_block_places, nullptr);
    sections[i].first_word = places.size() / k_word;
    sections[i].end_word = (places.size() + list.size()) / k_word;
    places.insert(places.end(), list.begin(), list.end());
  }
  return places;
}

void add_limits(Section& section, const Places& all) {
  const std::span<const Gland* const> places(all.data() + section.first_word * k_word,
                                             (section.end_word - section.first_word) * k_word);
  section.outer = ranges_of(places, [](const Gland& g) { return g.outer; });
  section.inner =
      ranges_of(places, [](const Gland& g) { return g.inner.value_or(measure::Range{}); });
  section.bore =
      limits_of(places, LimitSets::Kind::upper, [](const Gland& g) { return g.bore_mm; });
}

bool states_no_limit(const Gland& gland) {
  const auto blank = [](const measure::Range& range) { return !range.low_mm && !range.high_mm; };
  return blank(gland.outer) || (gland.inner && blank(*gland.inner)) ||
         (gland.armour != cable::ArmourKind::none && blank(gland.armour_clamp));
}

}  // namespace

GlandIndex::GlandIndex(std::span<const Gland> list, Prefer preferred)
    : glands(list),
      prefer(preferred),
      places(lay_out(list, preferred, sections)),
      taken(places.size() / k_word, 0),
      without_range(places.size() / k_word, 0) {
  for (Section& section : sections) add_limits(section, places);
  std::unordered_map<std::string, std::uint32_t> known;
  preference.resize(places.size());
  kind.resize(places.size());
  for (std::size_t place = 0; place < places.size(); ++place) {
    if (places[place] == nullptr) continue;
    const Gland& gland = *places[place];
    preference[place] = detail::preference(gland, prefer);
    kind[place] =
        known.emplace(kind_of(gland), static_cast<std::uint32_t>(known.size())).first->second;
    put(taken, place);
    if (states_no_limit(gland)) put(without_range, place);
  }
  kinds = known.size();
}

}  // namespace cutback::fit::detail

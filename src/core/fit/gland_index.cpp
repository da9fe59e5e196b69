#include "core/fit/gland_index.hpp"

#include <algorithm>
#include <bit>
#include <string>
#include <string_view>

#include "core/fit/parts.hpp"

namespace cutback::fit::detail {
namespace {

using gland::Gland;
using gland::Sealing;
using Places = std::vector<const Gland*>;

void add(std::string& key, const std::optional<double>& value) {
  key += value ? std::to_string(std::bit_cast<std::uint64_t>(*value)) : "-";
  key += ' ';
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
  add(key, std::to_string(gland.max_cores.value_or(-1)));
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

/// Lays the glands out thread by thread, each thread's by preference and then by part code.
Places lay_out(std::span<const Gland> glands, Prefer prefer, std::vector<ThreadPlaces>& threads) {
  std::vector<std::pair<entry::Thread, Places>> by_thread;
  for (const Gland& gland : glands) {
    auto at = std::find_if(by_thread.begin(), by_thread.end(),
                           [&](const auto& known) { return known.first == gland.entry_thread; });
    if (at == by_thread.end()) at = by_thread.insert(at, {gland.entry_thread, {}});
    at->second.push_back(&gland);
  }
  Places places;
  for (auto& [thread, list] : by_thread) {
    std::sort(list.begin(), list.end(), [&](const Gland* a, const Gland* b) {
      const double preference_a = preference(*a, prefer);
      const double preference_b = preference(*b, prefer);
      return preference_a != preference_b ? preference_a < preference_b : a->part < b->part;
    });
    constexpr std::size_t k_block_places = k_block * k_word;
    list.resize((list.size() + k_block_places - 1) / k_block_places * k_block_places, nullptr);
    threads.push_back({thread, places.size() / k_word, (places.size() + list.size()) / k_word});
    places.insert(places.end(), list.begin(), list.end());
  }
  return places;
}

template <class Of>
std::vector<std::optional<double>> limits_of(const Places& places, Of of) {
  std::vector<std::optional<double>> limits(places.size());
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (places[i] != nullptr) limits[i] = of(*places[i]);
  }
  return limits;
}

/// @param of  the range that is asked for of a gland
template <class Of>
RangeSets ranges_of(const Places& places, Of of) {
  return {LimitSets(limits_of(places, [&](const Gland& g) { return of(g).low_mm; }),
                    LimitSets::Kind::lower),
          LimitSets(limits_of(places, [&](const Gland& g) { return of(g).high_mm; }),
                    LimitSets::Kind::upper)};
}

measure::Range inner_range(const Gland& gland, bool asked) {
  return asked && gland.inner ? *gland.inner : measure::Range{};
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
      places(lay_out(list, preferred, threads)),
      without_range(places.size() / k_word, 0),
      outer(ranges_of(places, [](const Gland& g) { return g.outer; })),
      inner(ranges_of(
          places,
          [](const Gland& g) { return inner_range(g, g.sealing == Sealing::compression); })),
      inner_or_either(ranges_of(
          places, [](const Gland& g) { return inner_range(g, g.sealing != Sealing::barrier); })),
      bore(limits_of(places, [](const Gland& g) { return g.bore_mm; }), LimitSets::Kind::upper),
      clamp(ranges_of(places, [](const Gland& g) { return g.armour_clamp; })) {
  std::map<std::string, std::uint32_t> known;
  preference.resize(places.size());
  kind.resize(places.size());
  for (std::size_t place = 0; place < places.size(); ++place) {
    if (places[place] == nullptr) continue;
    const Gland& gland = *places[place];
    preference[place] = detail::preference(gland, prefer);
    kind[place] =
        known.emplace(kind_of(gland), static_cast<std::uint32_t>(known.size())).first->second;
    put(armour.try_emplace(gland.armour, GlandSet(words(), 0)).first->second, place);
    if (states_no_limit(gland)) put(without_range, place);
  }
  kinds = known.size();
}

}  // namespace cutback::fit::detail

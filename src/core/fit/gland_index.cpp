#include "core/fit/gland_index.hpp"

#include <algorithm>
#include <tuple>
#include <utility>

#include "core/fit/gland_reads.hpp"
#include "core/fit/order.hpp"

namespace cutback::fit::detail {
namespace {

using gland::Gland;
using Places = std::vector<const Gland*>;

auto neighbourhood(const Gland& gland) {
  const entry::Thread& thread = gland.entry_thread;
  return std::tuple(gland.armour, thread.kind, thread.size, thread.pitch_mm);
}

Places lay_out(std::span<const Gland> glands, Prefer prefer) {
  Places sorted;
  sorted.reserve(glands.size());
  for (const Gland& gland : glands) sorted.push_back(&gland);
  std::sort(sorted.begin(), sorted.end(), [&](const Gland* a, const Gland* b) {
    return std::tuple(neighbourhood(*a), preference(*a, prefer), std::string_view(a->part)) <
           std::tuple(neighbourhood(*b), preference(*b, prefer), std::string_view(b->part));
  });
  Places places;
  for (const Gland* gland : sorted) {
    const bool next = !places.empty() && places.back() != nullptr &&
                      neighbourhood(*places.back()) != neighbourhood(*gland);
    while (next && places.size() % k_word != 0) places.push_back(nullptr);
    places.push_back(gland);
  }
  while (places.size() % k_word != 0) places.push_back(nullptr);
  return places;
}

Kinds kinds_for(const Rule& rule, const Places& places, const GlandColumns& columns) {
  std::vector<std::uint32_t> of_place = columns.told_apart_by(rule.name);
  Places members;
  for (std::size_t place = 0; place < places.size(); ++place) {
    if (places[place] == nullptr) {
      of_place[place] = Kinds::k_none;
    } else if (of_place[place] == members.size()) {
      members.push_back(places[place]);
    }
  }
  return {std::move(of_place), std::move(members)};
}

}  // namespace

GlandIndex::GlandIndex(std::span<const Gland> list, Prefer preferred)
    : glands(list),
      prefer(preferred),
      places(lay_out(list, preferred)),
      preference(places.size(), 0.0),
      taken(places.size() / k_word, 0) {
  const GlandColumns columns(places);
  for (const Rule& rule : rules()) {
    kinds.push_back(is_of_gland(rule) ? kinds_for(rule, places, columns) : Kinds{});
  }
  place_of.resize(list.size());
  for (std::size_t place = 0; place < places.size(); ++place) {
    if (places[place] == nullptr) continue;
    place_of[static_cast<std::size_t>(places[place] - list.data())] =
        static_cast<std::uint32_t>(place);
    preference[place] = detail::preference(*places[place], prefer);
    put(taken, place);
  }
}

}  // namespace cutback::fit::detail

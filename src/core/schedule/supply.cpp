#include "cutback/schedule/supply.hpp"

#include <algorithm>
#include <string>
#include <tuple>

#include "cutback/text.hpp"

namespace cutback::schedule {
namespace {

constexpr std::size_t k_parts_named = 3;
constexpr std::size_t k_takers_named = 3;

/// The ends that took a part, the first of them by name.
struct Takers {
  std::vector<std::string> names;
  std::size_t more = 0;
};

void add_taker(const WantedEnd& end, Takers& takers) {
  if (takers.names.size() < k_takers_named) {
    takers.names.push_back(end.name);
  } else {
    ++takers.more;
  }
}

std::string takers_text(const Takers& takers) {
  std::string text = joined(takers.names, ", ");
  if (takers.more > 0) text += " and " + std::to_string(takers.more) + " more";
  return text;
}

/// The parts of a group, the cheapest first.
PartSet cheapest_first(const Wanted& wanted, PartSet parts) {
  std::sort(parts.begin(), parts.end(), [&](std::uint32_t a, std::uint32_t b) {
    return cheaper(wanted.parts[a], wanted.parts[b]);
  });
  return parts;
}

std::string out_of_stock_text(const Wanted& wanted, const PartSet& parts,
                              const std::vector<Takers>& takers) {
  std::string text = "out of stock: ";
  for (std::size_t i = 0; i < std::min(k_parts_named, parts.size()); ++i) {
    const Part& part = wanted.parts[parts[i]];
    if (i > 0) text += "; ";
    text += part.code;
    const std::int64_t stock = part.stock.value_or(0);
    text += stock == 0 ? ", of which there is none"
                       : ", whose " + std::to_string(stock) +
                             (stock == 1 ? " goes to " : " go to ") + takers_text(takers[parts[i]]);
  }
  if (parts.size() > k_parts_named) {
    const std::size_t more = parts.size() - k_parts_named;
    text += "; and " + std::to_string(more) + (more == 1 ? " more part" : " more parts") +
            " with none left";
  }
  return text;
}

std::string order_text(const std::string& part, std::int64_t ends) {
  std::string text = "order " + std::to_string(ends) + " of " + part;
  if (ends > 1) {
    text += ", for this end and " + std::to_string(ends - 1) + " more that the same glands fit";
  }
  return text;
}

}  // namespace

Supplies::Supplies(const Wanted& wanted, const Share& share, std::span<const WantedEnd> ends,
                   std::span<const gland::Gland> glands) {
  std::vector<std::uint32_t> first(wanted.groups.size());  // supply of each group
  std::vector<std::int64_t> left(wanted.groups.size());    // ends, without a part
  for (std::size_t group = 0; group < wanted.groups.size(); ++group) {
    const PartSet order = cheapest_first(wanted, wanted.groups[group].parts);
    first[group] = static_cast<std::uint32_t>(supplies_.size());
    left[group] = wanted.groups[group].ends;
    for (const Handed& one : share.groups[group]) {
      const auto place =
          std::find(order.begin(), order.end(), static_cast<std::uint32_t>(one.part));
      supplies_.push_back({.gland = &glands[one.part],
                           .place = static_cast<std::size_t>(place - order.begin()) + 1,
                           .reason = {},
                           .change = {}});
      left[group] -= one.ends;
    }
    if (!order.empty())
      supplies_.push_back({.cheapest = &glands[order.front()], .reason = {}, .change = {}});
  }

  std::vector<Takers> takers(wanted.parts.size());
  std::vector<std::size_t> portion(wanted.groups.size(), 0);  // being given out
  std::vector<std::int64_t> given(wanted.groups.size(), 0);   // of it
  for (const WantedEnd& end : ends) {
    const std::vector<Handed>& handed = share.groups[end.group];
    std::size_t& at = portion[end.group];
    places_.push_back({end.row, end.side, first[end.group] + static_cast<std::uint32_t>(at)});
    if (at == handed.size()) continue;
    add_taker(end, takers[handed[at].part]);
    if (++given[end.group] < handed[at].ends) continue;
    ++at;
    given[end.group] = 0;
  }

  for (std::size_t group = 0; group < wanted.groups.size(); ++group) {
    if (left[group] == 0) continue;
    const PartSet order = cheapest_first(wanted, wanted.groups[group].parts);
    Supply& none = supplies_[first[group] + share.groups[group].size()];
    none.reason = out_of_stock_text(wanted, order, takers);
    none.change = order_text(wanted.parts[order.front()].code, left[group]);
  }
}

const Supply* Supplies::of(std::size_t row, Side side) const {
  const auto at =
      std::lower_bound(places_.begin(), places_.end(), std::tuple(row, side),
                       [](const Place& place, const std::tuple<std::size_t, Side>& key) {
                         return std::tuple(place.row, place.side) < key;
                       });
  if (at == places_.end() || at->row != row || at->side != side) return nullptr;
  return &supplies_[at->supply];
}

}  // namespace cutback::schedule

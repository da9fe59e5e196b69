#include "cutback/schedule/tally.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace cutback::schedule {
namespace {

template <class Counts>
void merge(Counts& into, const Counts& from) {
  for (const auto& [key, count] : from) {
    into[key].proven += count.proven;
    into[key].not_proven += count.not_proven;
  }
}

/// Spares rounded up; a hair under a whole part is the part.
std::uint64_t with_spare(std::uint64_t ends, double spare_percent) {
  const double spare = static_cast<double>(ends) * spare_percent / 100.0;
  return ends + static_cast<std::uint64_t>(std::ceil(spare - 1e-9));
}

TakeoffLine line_of(const gland::Gland& gland, const Count& count, double spare_percent) {
  TakeoffLine line;
  line.part = gland.part;
  line.description = gland.description;
  line.ends = count.proven;
  line.not_proven = count.not_proven;
  line.quantity = with_spare(count.proven, spare_percent);
  if (gland.stock) line.stock = static_cast<std::uint64_t>(*gland.stock);
  line.to_order = line.quantity - std::min(line.quantity, line.stock.value_or(0));
  line.unit_price = gland.price;
  if (gland.price) line.total = *gland.price * static_cast<double>(line.to_order);
  return line;
}

}  // namespace

void Tally::add(const Decision& decision, std::uint64_t quantity) {
  ends += quantity;
  if (!decision.proven) {
    exceptions += quantity;
    groups[group_of(decision)] += quantity;
  }
  if (!decision.usable()) {
    unusable += quantity;
    return;
  }
  if (const auto evidence = weakest_evidence(decision)) {
    by_evidence[static_cast<std::size_t>(*evidence)] += quantity;
  }
  (decision.out_of_stock ? out_of_stock : by_verdict[static_cast<std::size_t>(decision.verdict)]) +=
      quantity;
  if (!decision.remarks.empty()) remarked += quantity;
  if (decision.wavering) wavering += quantity;
  if (decision.gland == nullptr) return;
  if (decision.barrier.value_or(false)) barrier += quantity;
  const auto count = [&](Count& one) {
    (decision.proven ? one.proven : one.not_proven) += quantity;
  };
  count(glands[decision.gland]);
  if (decision.accessories != nullptr) count(accessories[decision.accessories]);
}

void Tally::add(Tally&& other) {
  rows += other.rows;
  ends += other.ends;
  for (std::size_t i = 0; i < std::size(by_verdict); ++i) by_verdict[i] += other.by_verdict[i];
  for (std::size_t i = 0; i < std::size(by_evidence); ++i) by_evidence[i] += other.by_evidence[i];
  defaults.add(other.defaults);
  unusable += other.unusable;
  out_of_stock += other.out_of_stock;
  exceptions += other.exceptions;
  barrier += other.barrier;
  remarked += other.remarked;
  wavering += other.wavering;
  merge(glands, other.glands);
  merge(accessories, other.accessories);
  for (const auto& [group, count] : other.groups) groups[group] += count;
  std::move(other.list.begin(), other.list.end(), std::back_inserter(list));
}

std::vector<TakeoffLine> takeoff(const Tally& tally, std::span<const gland::Gland> glands,
                                 double spare_percent) {
  std::vector<TakeoffLine> lines;
  for (const gland::Gland& gland : glands) {
    const auto count = tally.glands.find(&gland);
    if (count != tally.glands.end()) lines.push_back(line_of(gland, count->second, spare_percent));
  }
  std::sort(lines.begin(), lines.end(),
            [](const TakeoffLine& a, const TakeoffLine& b) { return a.part < b.part; });
  std::map<Accessory, Count> accessories;
  for (const auto& [list, count] : tally.accessories) {
    for (const Accessory& accessory : *list) {
      accessories[accessory].proven += count.proven;
      accessories[accessory].not_proven += count.not_proven;
    }
  }
  for (const auto& [accessory, count] : accessories) {
    TakeoffLine line;
    line.part = accessory.name;
    line.description = accessory.thread;
    line.ends = count.proven;
    line.not_proven = count.not_proven;
    line.quantity = with_spare(count.proven, spare_percent);
    line.to_order = line.quantity;
    lines.push_back(std::move(line));
  }
  return lines;
}

std::vector<const Exception*> grouped(const Tally& tally) {
  std::vector<const Exception*> list;
  for (const Exception& exception : tally.list) list.push_back(&exception);
  std::stable_sort(list.begin(), list.end(), [&](const Exception* a, const Exception* b) {
    const std::uint64_t size_a = tally.groups.at(a->group);
    const std::uint64_t size_b = tally.groups.at(b->group);
    return size_a != size_b ? size_a > size_b : a->group < b->group;
  });
  return list;
}

std::string group_of(const Decision& decision) {
  return decision.usable() ? decision.group : "unusable: " + decision.faults.front().what;
}

Exception exception_of(const EndName& name, const Decision& decision) {
  const bool usable = decision.usable();
  return {.line = name.line,
          .tag = std::string(name.tag),
          .end = std::string(name.end),
          .verdict = std::string(verdict_word(decision)),
          .group = group_of(decision),
          .nearest = decision.nearest != nullptr ? decision.nearest->part : "",
          .reason = usable ? decision.reason : unusable_text(decision),
          .change = decision.change,
          .source = std::string(name.source)};
}

}  // namespace cutback::schedule

#include "cutback/schedule/tally.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>

#include "cutback/compare.hpp"
#include "cutback/money.hpp"
#include "cutback/schedule/groups.hpp"

namespace cutback::schedule {
namespace {

constexpr std::string_view k_shroud = "shroud";

template <class Counts>
void merge(Counts& into, const Counts& from) {
  for (const auto& [key, count] : from) {
    into[key].proven += count.proven;
    into[key].not_proven += count.not_proven;
  }
}

void add_margin(const Decision& decision, std::uint64_t quantity,
                std::array<std::uint64_t, k_margin_bins>& bins) {
  std::optional<double> least = decision.outer_margin_mm;
  if (decision.inner_margin_mm) {
    least = std::min(least.value_or(*decision.inner_margin_mm), *decision.inner_margin_mm);
  }
  if (!least) return;
  std::size_t bin = 0;
  while (bin < k_margin_limits_mm.size() && !at_most(*least, k_margin_limits_mm[bin])) ++bin;
  bins[bin] += quantity;
}

/// Spares rounded up; a hair under a whole part is the part.
std::uint64_t with_spare(std::uint64_t ends, double spare_percent) {
  const double spare = static_cast<double>(ends) * spare_percent / 100.0;
  return ends + static_cast<std::uint64_t>(std::ceil(spare - 1e-9));
}

/// What is to be bought so that `needed` are there.
std::uint64_t order_of(std::uint64_t needed, std::uint64_t stock, const TakeoffLine& line) {
  if (needed <= stock) return 0;
  const std::uint64_t pack = line.pack.value_or(1);
  const std::uint64_t least = std::max(needed - stock, line.min_order.value_or(0));
  return (least + pack - 1) / pack * pack;
}

/// What is left of a stock for the groups that follow.
struct Left {
  std::uint64_t sure = 0;  ///< when the groups before took what is proven
  std::uint64_t all = 0;   ///< when they took what is provisional too
};

/// The quantities of a line whose stock and packs are known.
void put_count(const Count& count, double spare_percent, Left& left, TakeoffLine& line) {
  line.ends = count.proven;
  line.not_proven = count.not_proven;
  line.quantity = with_spare(count.proven, spare_percent);
  line.from_stock = std::min(line.quantity, left.sure);
  line.to_order = order_of(line.quantity, left.sure, line);
  const std::uint64_t all = with_spare(count.proven + count.not_proven, spare_percent);
  line.provisional = order_of(all, left.all, line) - line.to_order;
  left.sure -= line.from_stock;
  left.all -= std::min(all, left.all);
}

void put_price(std::optional<double> price, int decimals, TakeoffLine& line) {
  line.unit_price = price;
  if (!price) return;
  const std::int64_t units = price_units(*price, decimals);
  line.total = money_times(units, line.to_order);
  line.provisional_total = money_times(units, line.provisional);
}

const AccessoryPrice* find_price(const TakeoffTerms& terms, std::string_view name,
                                 std::string_view thread) {
  const AccessoryPrice* found = nullptr;
  for (const AccessoryPrice& each : terms.accessories) {
    if (each.name != name) continue;
    if (each.thread == thread) return &each;
    if (each.thread.empty()) found = &each;
  }
  return found;
}

void take_terms(const AccessoryPrice& terms, TakeoffLine& line) {
  if (terms.pack) line.pack = terms.pack;
  line.min_order = terms.min_order;
}

}  // namespace

bool is_accessory(std::string_view name) {
  constexpr std::array<std::string_view, 7> k_names{
      "locknut", "sealing washer", "serrated washer", "earth tag", "adaptor", "compound", k_shroud};
  return std::find(k_names.begin(), k_names.end(), name) != k_names.end();
}

std::string name_of(const TakeoffLine& line) {
  if (!is_accessory(line.part) || line.description.empty()) return line.part;
  return line.part + " " + line.description;
}

int decimals_of(std::span<const gland::Gland> glands, const TakeoffTerms& terms) {
  int decimals = decimals_of(glands);
  for (const AccessoryPrice& each : terms.accessories) {
    if (!each.price) continue;
    // The reader of the file refuses more.
    decimals = std::max(decimals, price_decimals(*each.price).value_or(k_most_price_decimals));
  }
  return decimals;
}

void Tally::add(const Decision& decision, std::uint64_t quantity, std::string_view by) {
  ends += quantity;
  if (!decision.proven) {
    exceptions += quantity;
    groups[group_of(decision)] += quantity;
  }
  if (decision.made) made += quantity;
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
  if (decision.gland == nullptr || decision.made) return;
  if (decision.proven) add_margin(decision, quantity, margins);
  if (decision.barrier.value_or(false)) barrier += quantity;
  const auto count = [&](Count& one) {
    (decision.proven ? one.proven : one.not_proven) += quantity;
  };
  auto at = parts.find(by);
  if (at == parts.end()) at = parts.emplace(by, PartCounts{}).first;
  count(at->second.glands[decision.gland]);
  if (decision.accessories != nullptr) count(at->second.accessories[decision.accessories]);
}

void Tally::add(Tally&& other) {
  rows += other.rows;
  one_end_rows += other.one_end_rows;
  ends_not_told += other.ends_not_told;
  may_be_cables += other.may_be_cables;
  ends += other.ends;
  for (std::size_t i = 0; i < std::size(by_verdict); ++i) by_verdict[i] += other.by_verdict[i];
  for (std::size_t i = 0; i < std::size(by_evidence); ++i) by_evidence[i] += other.by_evidence[i];
  defaults.add(other.defaults);
  for (std::size_t i = 0; i < margins.size(); ++i) margins[i] += other.margins[i];
  unusable += other.unusable;
  out_of_stock += other.out_of_stock;
  exceptions += other.exceptions;
  barrier += other.barrier;
  remarked += other.remarked;
  wavering += other.wavering;
  made += other.made;
  for (const auto& [by, counts] : other.parts) {
    merge(parts[by].glands, counts.glands);
    merge(parts[by].accessories, counts.accessories);
  }
  for (const auto& [group, count] : other.groups) groups[group] += count;
  std::move(other.list.begin(), other.list.end(), std::back_inserter(list));
}

namespace {

/// The lines of one group after the other, and what of the stock is left.
class TakeoffMaker {
 public:
  TakeoffMaker(std::span<const gland::Gland> glands, const TakeoffTerms& terms, int decimals)
      : glands_(glands), terms_(terms), decimals_(decimals) {}

  void add_group(const std::string& group, const PartCounts& counts,
                 std::vector<TakeoffLine>& lines) {
    std::map<Accessory, Count> accessories;
    const auto first = static_cast<std::ptrdiff_t>(lines.size());
    for (const gland::Gland& gland : glands_) {
      const auto counted = counts.glands.find(&gland);
      if (counted == counts.glands.end()) continue;
      lines.push_back(gland_line(gland, counted->second));
      const std::string thread = entry::to_text(gland.entry_thread);
      if (find_price(terms_, k_shroud, thread) == nullptr) continue;
      add_count(accessories[{std::string(k_shroud), thread}], counted->second);
    }
    std::stable_sort(lines.begin() + first, lines.end(),
                     [](const TakeoffLine& a, const TakeoffLine& b) { return a.part < b.part; });
    for (const auto& [list, count] : counts.accessories) {
      for (const Accessory& accessory : *list) add_count(accessories[accessory], count);
    }
    for (const auto& [accessory, count] : by_article(accessories)) {
      lines.push_back(accessory_line(accessory, count));
    }
    std::for_each(lines.begin() + first, lines.end(),
                  [&](TakeoffLine& line) { line.group = group; });
  }

 private:
  /// What one part code stands for, whatever its thread, is one line: it is bought together.
  [[nodiscard]] std::map<Accessory, Count> by_article(
      const std::map<Accessory, Count>& accessories) const {
    std::map<Accessory, Count> articles;
    for (const auto& [accessory, count] : accessories) {
      const auto* const sold = find_price(terms_, accessory.name, accessory.thread);
      const bool one = sold != nullptr && sold->thread.empty() && !sold->part.empty();
      add_count(articles[{accessory.name, one ? std::string() : accessory.thread}], count);
    }
    return articles;
  }

  static void add_count(Count& into, const Count& from) {
    into.proven += from.proven;
    into.not_proven += from.not_proven;
  }

  TakeoffLine gland_line(const gland::Gland& gland, const Count& count) {
    TakeoffLine line;
    line.part = gland.part;
    line.description = gland.description;
    if (gland.stock) line.stock = static_cast<std::uint64_t>(*gland.stock);
    if (gland.pack) line.pack = static_cast<std::uint64_t>(*gland.pack);
    if (terms_.supplier) line.supplier = terms_.supplier(gland);
    if (const auto* const sold = find_price(terms_, gland.part, "")) take_terms(*sold, line);
    finish(&gland, count, gland.price, line);
    return line;
  }

  TakeoffLine accessory_line(const Accessory& accessory, const Count& count) {
    TakeoffLine line;
    line.part = accessory.name;
    line.description = accessory.thread;
    const auto* const sold = find_price(terms_, accessory.name, accessory.thread);
    if (sold != nullptr) {
      if (!sold->part.empty()) {
        line.description += (line.description.empty() ? "" : ", ") + sold->part;
      }
      line.stock = sold->stock;
      take_terms(*sold, line);
    }
    finish(sold, count, sold != nullptr ? sold->price : std::nullopt, line);
    return line;
  }

  /// @param of  what has the stock
  void finish(const void* of, const Count& count, std::optional<double> price, TakeoffLine& line) {
    const std::uint64_t stock = line.stock.value_or(0);
    Left none;
    Left& left = line.stock ? left_.try_emplace(of, Left{stock, stock}).first->second : none;
    if (line.stock) line.stock = left.sure;
    put_count(count, terms_.spare_percent, left, line);
    put_price(price, decimals_, line);
  }

  std::span<const gland::Gland> glands_;
  const TakeoffTerms& terms_;
  int decimals_;
  std::map<const void*, Left> left_;  ///< of each stock
};

}  // namespace

Takeoff takeoff(const Tally& tally, std::span<const gland::Gland> glands,
                const TakeoffTerms& terms) {
  Takeoff takeoff;
  takeoff.decimals = decimals_of(glands, terms);
  takeoff.currency = terms.currency;
  TakeoffMaker maker(glands, terms, takeoff.decimals);
  for (const auto& [group, counts] : tally.parts) maker.add_group(group, counts, takeoff.lines);
  for (const TakeoffLine& line : takeoff.lines) {
    if (!line.total) continue;
    takeoff.total = money_sum(takeoff.total.value_or(0), *line.total);
    takeoff.provisional_total =
        money_sum(takeoff.provisional_total.value_or(0), *line.provisional_total);
  }
  return takeoff;
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

#include "cutback/fit/select.hpp"

#include <algorithm>
#include <bit>
#include <string>
#include <string_view>

#include "core/fit/verdicts.hpp"
#include "cutback/compare.hpp"

namespace cutback::fit {
namespace {

using gland::Gland;
using Limits = std::vector<std::optional<double>>;

constexpr std::size_t k_word = 64;
/// Sets kept of one limit at most: with 10,000 glands 1.3 MB.
constexpr std::size_t k_most_sets = 1024;

void put(GlandSet& set, std::size_t place) {
  set[place / k_word] |= std::uint64_t{1} << (place % k_word);
}

GlandSet empty_set(std::size_t glands) { return GlandSet((glands + k_word - 1) / k_word, 0); }

void keep(GlandSet& set, const GlandSet& other) {
  for (std::size_t i = 0; i < set.size(); ++i) set[i] &= other[i];
}

void join(GlandSet& set, const GlandSet& other) {
  for (std::size_t i = 0; i < set.size(); ++i) set[i] |= other[i];
}

template <class Of>
Limits limits_of(std::span<const Gland> glands, Of of) {
  Limits limits;
  limits.reserve(glands.size());
  for (const Gland& gland : glands) limits.push_back(of(gland));
  return limits;
}

/// A gland that is made off as a barrier, or may be, is not asked about its inner seal here.
measure::Range asked_inner(const Gland& gland) {
  const bool asked = gland.inner && gland.sealing == gland::Sealing::compression;
  return asked ? *gland.inner : measure::Range{};
}

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

}  // namespace

LimitSets::LimitSets(std::span<const std::optional<double>> limits, Kind kind) : kind_(kind) {
  std::vector<std::pair<double, std::size_t>> sorted;
  GlandSet set = empty_set(limits.size());
  for (std::size_t i = 0; i < limits.size(); ++i) {
    if (!limits[i]) {
      put(set, i);
    } else {
      sorted.emplace_back(kind == Kind::lower ? *limits[i] : -*limits[i], i);
    }
  }
  std::sort(sorted.begin(), sorted.end());
  const std::size_t step = std::max<std::size_t>(1, sorted.size() / k_most_sets);
  std::size_t since = 0;
  for (const auto& [limit, place] : sorted) {
    const bool new_limit = breakpoints_.empty() || limit > breakpoints_.back();
    if (new_limit && since == 0) {
      sets_.push_back(set);
      breakpoints_.push_back(limit);
    }
    put(set, place);
    since = (since + 1) % step;
  }
  sets_.push_back(std::move(set));
}

const GlandSet& LimitSets::passing(double diameter_mm) const {
  const double value = kind_ == Kind::lower ? diameter_mm : -diameter_mm;
  const auto above = std::partition_point(breakpoints_.begin(), breakpoints_.end(),
                                          [&](double limit) { return at_least(value, limit); });
  return sets_[static_cast<std::size_t>(above - breakpoints_.begin())];
}

Selector::Selector(std::span<const Gland> glands, Prefer prefer)
    : glands_(glands),
      prefer_(prefer),
      outer_low_(limits_of(glands, [](const Gland& g) { return g.outer.low_mm; }),
                 LimitSets::Kind::lower),
      outer_high_(limits_of(glands, [](const Gland& g) { return g.outer.high_mm; }),
                  LimitSets::Kind::upper),
      inner_low_(limits_of(glands, [](const Gland& g) { return asked_inner(g).low_mm; }),
                 LimitSets::Kind::lower),
      inner_high_(limits_of(glands, [](const Gland& g) { return asked_inner(g).high_mm; }),
                  LimitSets::Kind::upper),
      bore_(limits_of(glands, [](const Gland& g) { return g.bore_mm; }), LimitSets::Kind::upper),
      clamp_low_(limits_of(glands, [](const Gland& g) { return g.armour_clamp.low_mm; }),
                 LimitSets::Kind::lower),
      clamp_high_(limits_of(glands, [](const Gland& g) { return g.armour_clamp.high_mm; }),
                  LimitSets::Kind::upper) {
  std::map<std::string, std::size_t> kinds;
  for (std::size_t i = 0; i < glands.size(); ++i) {
    const Gland& gland = glands[i];
    kinds_.push_back(kinds.emplace(kind_of(gland), kinds.size()).first->second);
    put(armour_.try_emplace(gland.armour, empty_set(glands.size())).first->second, i);
    auto thread = std::find_if(threads_.begin(), threads_.end(), [&](const auto& known) {
      return known.first == gland.entry_thread;
    });
    if (thread == threads_.end()) {
      threads_.emplace_back(gland.entry_thread, empty_set(glands.size()));
      thread = threads_.end() - 1;
    }
    put(thread->second, i);
  }
}

void Selector::keep_threads(const entry::Entry& entry, GlandSet& set) const {
  if (!entry.thread) return;
  GlandSet suits = empty_set(glands_.size());
  for (const auto& [known, glands] : threads_) {
    const entry::Thread& thread = known;  // clang 14: a binding cannot be captured
    const bool adapted = std::any_of(
        entry.adaptors.begin(), entry.adaptors.end(),
        [&](const entry::Adaptor& adaptor) { return adaptor.a == thread || adaptor.b == thread; });
    if (adapted || thread == *entry.thread) join(suits, glands);
  }
  keep(set, suits);
}

void Selector::keep_bedding(const cable::Cable& cable, GlandSet& set) const {
  if (!cable.bedding) return;
  keep(set, bore_.passing(cable.bedding->high_mm()));
  GlandSet inner = inner_low_.passing(cable.bedding->low_mm());
  keep(inner, inner_high_.passing(cable.bedding->high_mm()));
  keep(set, inner);
}

GlandSet Selector::candidates(const Question& question) const {
  const cable::Cable& cable = question.job->cable;
  const auto kind = armour_.find(cable.armour);
  if (kind == armour_.end() || !cable.sheath_od) return empty_set(glands_.size());
  GlandSet set = kind->second;
  keep(set, outer_low_.passing(cable.sheath_od->low_mm()));
  keep(set, outer_high_.passing(cable.sheath_od->high_mm()));
  keep_threads(question.job->entry, set);
  if (cable.armour == cable::ArmourKind::none) return set;
  keep_bedding(cable, set);
  if (!cable.wire) return set;
  const bool nominal = cable.wire_nominal.has_value();
  const double low = nominal ? cable.wire_nominal->nominal_mm : cable.wire->low_mm();
  const double high = nominal ? cable.wire_nominal->nominal_mm : cable.wire->high_mm();
  keep(set, clamp_low_.passing(low));
  keep(set, clamp_high_.passing(high));
  return set;
}

Selection Selector::select(const Question& question) const {
  Selection selection;
  detail::Verdicts verdicts(question);
  std::vector<const Gland*> first;  // the glands that fit and that nothing is preferred to
  const GlandSet set = candidates(question);
  for (std::size_t word = 0; word < set.size(); ++word) {
    for (std::uint64_t bits = set[word]; bits != 0; bits &= bits - 1) {
      const std::size_t place = word * k_word + static_cast<std::size_t>(std::countr_zero(bits));
      const Gland& gland = glands_[place];
      if (verdicts.of(gland, kinds_[place]) != Verdict::fits) continue;
      ++selection.fits;
      const double preference = detail::preference_of(gland, prefer_);
      const double best =
          first.empty() ? preference : detail::preference_of(*first.front(), prefer_);
      if (preference > best) continue;
      if (preference < best) first.clear();
      first.push_back(&gland);
    }
  }
  if (selection.fits == 0) {
    selection.ranked = fit_all(question, glands_, prefer_);
    return selection;
  }
  for (const Gland* gland : first) selection.ranked.push_back(check_gland(question, *gland));
  rank(selection.ranked, prefer_);
  selection.ranked.resize(1);
  return selection;
}

}  // namespace cutback::fit

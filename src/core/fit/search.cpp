#include "core/fit/search.hpp"

#include <algorithm>
#include <bit>
#include <limits>

#include "cutback/error.hpp"

namespace cutback::fit::detail {
namespace {

using measure::Estimate;

/// Keeps the members of a set to which the fewest of some other sets apply.
/// @param applying  applying(rule, word) are the bits of a word to which a rule's set applies
template <class Rules, class Applying>
void keep_least_counted(SparseSet& set, const Rules& rules, Applying applying) {
  if (rules.empty()) return;
  constexpr std::size_t k_planes = 5;  // a number in binary, one bit per plane: up to 31 rules
  struct Word {
    std::uint64_t bits;
    std::array<std::uint64_t, k_planes> planes;
  };
  std::vector<Word> words(set.words());
  for (std::size_t i = 0; i < words.size(); ++i) {
    words[i].bits = set.bits(i);
    for (const RuleSets* rule : rules) {
      std::uint64_t carry = applying(*rule, i);
      for (std::uint64_t& plane : words[i].planes) {
        const std::uint64_t both = plane & carry;
        plane ^= carry;
        carry = both;
      }
    }
  }
  for (std::size_t plane = k_planes; plane-- > 0;) {
    const bool any = std::any_of(words.begin(), words.end(), [&](const Word& word) {
      return (word.bits & ~word.planes[plane]) != 0;
    });
    if (!any) continue;
    for (Word& word : words) word.bits &= ~word.planes[plane];
  }
  SparseSet least;
  for (std::size_t i = 0; i < words.size(); ++i) least.add(set.word(i), words[i].bits);
  set = std::move(least);
}

}  // namespace

DiameterSearch::DiameterSearch(const GlandIndex& index, const OpenGlands& open,
                               const Question& question)
    : index_(index), open_(open), question_(question) {
  const std::span<const Rule> all = detail::rules();
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (all[i].alone == nullptr) continue;
    const auto verdict = alone(all[i], question);
    if (!verdict) continue;
    of_end_ = worst(of_end_, *verdict);
    if (*verdict < Verdict::marginal_inside) failing_alone_ = failing_alone_ | Reads{all[i].name};
    if (*verdict < Verdict::marginal_inside && !is_of_gland(all[i])) ++failures_of_end_;
  }
  const cable::Cable& cable = question.job->cable;
  for (const Diameter diameter : {Diameter::sheath, Diameter::bedding, Diameter::wire}) {
    figures_[static_cast<std::size_t>(diameter)] = figures_of(cable, diameter);
  }
}

DiameterSearch::Figures DiameterSearch::figures_of(const cable::Cable& cable, Diameter diameter) {
  const Compared compared(cable, diameter);
  Figures out;
  out.known = compared.known();
  if (!out.known) return out;
  out.capped = !compared.estimate().caps.empty();
  if (compared.nominal_mm()) {
    out.whole = {*compared.nominal_mm(), *compared.nominal_mm()};
    out.middle = out.touch = out.whole;
    out.nominal = true;
    return out;
  }
  const Estimate& estimate = compared.estimate();
  out.middle = {estimate.value_mm, estimate.value_mm};
  out.touch = {estimate.high_mm(), estimate.low_mm()};
  out.whole = {estimate.low_mm(), estimate.high_mm()};
  for (const double reading : estimate.readings_mm) {
    out.whole.low_mm = std::min(out.whole.low_mm, reading);
    out.whole.high_mm = std::max(out.whole.high_mm, reading);
  }
  return out;
}

// ---- limits ---------------------------------------------------------------------------------

void DiameterSearch::add(const LimitSets& sets, double diameter_mm) {
  if (!sets.limits_any()) return;
  limits_.push_back({.passing = sets.at(diameter_mm),
                     .inexact = sets.exact() ? nullptr : &sets,
                     .diameter_mm = diameter_mm});
}

void DiameterSearch::add_range(const RuleSets& rule, const Interval& interval) {
  add(rule.low(), interval.low_mm);
  add(rule.high(), interval.high_mm);
}

void DiameterSearch::add_unlimited(const RuleSets& rule) {
  for (const LimitSets* sets : {&rule.low(), &rule.high()}) {
    if (sets->limits_any()) limits_.push_back({.passing = sets->unlimited()});
  }
}

/// The limits that a gland with at least this verdict passes.
/// @param width  of the diameters that are known
void DiameterSearch::add_limits(Verdict least, Width width) {
  limits_.clear();
  for (const RuleSets* rule : open_.comparing()) {
    const Figures& diameter = figures(*rule);
    if (rule->has_otherwise()) {
      if (diameter.known) {
        add(rule->high(), diameter.whole.high_mm);
      } else {
        add_unlimited(*rule);
      }
      if (!limits_.empty()) limits_.back().otherwise = rule->otherwise_at_least(least).data();
      continue;
    }
    if (!diameter.known) {
      // A gland that asks for a diameter which nobody knows is not known itself.
      if (least > Verdict::not_known) add_unlimited(*rule);
      continue;
    }
    switch (width) {
      case Width::whole:
        if (diameter.capped) {
          add_unlimited(*rule);
        } else {
          add_range(*rule, diameter.whole);
        }
        break;
      case Width::middle:
        add_range(*rule, diameter.middle);
        break;
      case Width::touch:
        add_range(*rule, diameter.touch);
        break;
    }
  }
}

/// The limits that a gland passes whose diameters miss by no more than this.
void DiameterSearch::add_within(double miss_mm) {
  limits_.clear();
  for (const RuleSets* rule : open_.comparing()) {
    const Figures& diameter = figures(*rule);
    if (rule->has_otherwise() || !diameter.known) continue;
    // Who is not outside misses nothing, however far the spread reaches beyond the limit.
    add_range(*rule, {std::max(diameter.touch.high_mm + miss_mm, diameter.middle.low_mm),
                      std::min(diameter.touch.low_mm - miss_mm, diameter.middle.high_mm)});
  }
}

void DiameterSearch::narrow(const SparseSet& in, SparseSet& out) const {
  out.clear();
  for (std::size_t i = 0; i < in.words(); ++i) {
    const std::uint32_t word = in.word(i);
    std::uint64_t bits = in.bits(i);
    for (const Limit& limit : limits_) {
      std::uint64_t passing = limit.passing[word];
      if (limit.otherwise != nullptr) passing |= limit.otherwise[word];
      bits &= passing;
    }
    out.add(word, bits);
  }
  const bool exact = std::all_of(limits_.begin(), limits_.end(),
                                 [](const Limit& limit) { return limit.inexact == nullptr; });
  if (exact) return;
  SparseSet checked;
  for (std::size_t i = 0; i < out.words(); ++i) {
    std::uint64_t bits = 0;
    out.for_each_in(i, [&](std::size_t place) {
      const bool passes = std::all_of(limits_.begin(), limits_.end(), [&](const Limit& limit) {
        return limit.inexact == nullptr || limit.inexact->passes(place, limit.diameter_mm) ||
               (limit.otherwise != nullptr &&
                (limit.otherwise[place / k_word] >> (place % k_word) & 1) != 0);
      });
      if (passes) bits |= std::uint64_t{1} << (place % k_word);
      return true;
    });
    checked.add(out.word(i), bits);
  }
  out = std::move(checked);
}

void DiameterSearch::glands(Verdict least, SparseSet& found) {
  found.clear();
  if (of_end_ < least) return;
  add_limits(least, least == Verdict::fits               ? Width::whole
                    : least == Verdict::marginal_outside ? Width::touch
                                                         : Width::middle);
  narrow(open_.at_least(least), found);
}

void DiameterSearch::glands_elsewhere(SparseSet& found) {
  found.clear();
  if (of_end_ < Verdict::fits) return;
  add_limits(Verdict::fits, Width::whole);
  narrow(open_.fitting_elsewhere(), found);
}

void DiameterSearch::touching(SparseSet& found) {
  found.clear();
  if (of_end_ < Verdict::fits) return;
  add_limits(Verdict::fits, Width::touch);
  narrow(open_.at_least(Verdict::fits), found);
}

// ---- one gland, and the best of many --------------------------------------------------------

Look DiameterSearch::look(std::size_t place, Verdict verdict) const {
  const cable::Cable& cable = question_.job->cable;
  Look look{.gland = index_.places[place],
            .standing = {.verdict = verdict,
                         .preference = index_.preference[place],
                         .part = index_.places[place]->part},
            .miss = {.other_failures = failures_of_end_, .failures = failures_of_end_}};
  std::optional<double> margin;
  for (const auto& rule : open_.rules()) {
    const std::optional<Against>& against = rule->of(place);
    const bool fails_alone = failing_alone_.has(rule->rule().name);
    if (!against && !fails_alone) continue;
    Finding found = against ? finding_of(*against, cable) : Finding{};
    if (fails_alone) found = {.verdict = Verdict::no_fit, .margin_mm = std::nullopt};
    look.miss.add(found.verdict, found.counts_for_margin ? found.margin_mm : std::nullopt);
    if (found.counts_for_margin && found.margin_mm) {
      margin = std::min(margin.value_or(*found.margin_mm), *found.margin_mm);
    }
  }
  look.standing.margin_mm = margin.value_or(k_no_margin_mm);
  return look;
}

/// The smallest margin of a gland that is not outside by any diameter.
double DiameterSearch::margin_of(std::size_t place) const {
  std::optional<double> margin;
  for (const RuleSets* rule : open_.comparing()) {
    const std::optional<Against>& against = rule->of(place);
    const Figures& diameter = figures(*rule);
    const bool counts = against && against->range && !against->otherwise && diameter.known &&
                        !diameter.nominal && against->verdict >= Verdict::marginal_inside;
    if (!counts) continue;
    double least = std::numeric_limits<double>::infinity();
    if (against->range->low_mm) least = diameter.touch.high_mm - *against->range->low_mm;
    if (against->range->high_mm) {
      least = std::min(least, *against->range->high_mm - diameter.touch.low_mm);
    }
    margin = std::min(margin.value_or(least), least);
  }
  return margin.value_or(k_no_margin_mm);
}

std::size_t DiameterSearch::first_of(const SparseSet& set) const {
  std::vector<std::size_t> tied;  // the most preferred
  for (std::size_t i = 0; i < set.words(); ++i) {
    // The places of a word are in order of preference.
    set.for_each_in(i, [&](std::size_t place) {
      const double preference = index_.preference[place];
      const double best = tied.empty() ? preference : index_.preference[tied.front()];
      if (preference > best) return false;
      if (preference < best) tied.clear();
      tied.push_back(place);
      return true;
    });
  }
  if (tied.empty()) throw InternalError("the first of no glands was asked for");
  if (tied.size() == 1) return tied.front();
  const auto standing = [&](std::size_t place) {
    return Standing{.margin_mm = margin_of(place), .part = index_.places[place]->part};
  };
  std::size_t first = tied.front();
  Standing best = standing(first);
  for (const std::size_t place : tied) {
    const Standing next = standing(place);
    if (!comes_before(next, best)) continue;
    first = place;
    best = next;
  }
  return first;
}

/// Of one word, the glands that fail by the diameter which a check compares.
std::uint64_t DiameterSearch::failing(const RuleSets& rule, std::size_t word) const {
  std::uint64_t settled = rule.at_least(Verdict::marginal_inside)[word];
  if (!rule.compares()) return ~settled;
  const Figures& diameter = figures(rule);
  const auto passing = [&](const LimitSets& sets, double value_mm) {
    std::uint64_t bits = diameter.known ? sets.at(value_mm)[word] : sets.unlimited()[word];
    if (sets.exact() || !diameter.known) return bits;
    for (std::uint64_t rest = bits; rest != 0; rest &= rest - 1) {
      const auto bit = static_cast<std::size_t>(std::countr_zero(rest));
      if (!sets.passes(word * k_word + bit, value_mm)) bits &= ~(std::uint64_t{1} << bit);
    }
    return bits;
  };
  if (rule.has_otherwise()) {
    return settled & ~(passing(rule.high(), diameter.whole.high_mm) |
                       rule.otherwise_at_least(Verdict::marginal_inside)[word]);
  }
  return settled & ~(passing(rule.low(), diameter.middle.low_mm) &
                     passing(rule.high(), diameter.middle.high_mm));
}

/// Of glands that fail alike in what no diameter plays in: first the fewest other failures, then
/// the fewest at all.
void DiameterSearch::keep_least_failures(SparseSet& set) const {
  std::vector<const RuleSets*> others;
  std::vector<const RuleSets*> diameters;
  for (const auto& rule : open_.rules()) {
    const bool counted = rule->rule().alone == nullptr && !rule->compares();
    if (counted || failing_alone_.has(rule->rule().name)) continue;
    const bool other = !rule->compares() || rule->has_otherwise() || !figures(*rule).known;
    (other ? others : diameters).push_back(rule.get());
  }
  const auto applying = [&](const RuleSets& rule, std::size_t i) {
    return failing(rule, set.word(i));
  };
  keep_least_counted(set, others, applying);
  keep_least_counted(set, diameters, applying);
}

/// Of glands with the same number of failures those that miss by the least, and some that miss by a
/// hair more.
/// @return false where none misses by a diameter
bool DiameterSearch::keep_least_miss(SparseSet& set, Verdict verdict) {
  constexpr double k_hair_mm = 2.5 * k_epsilon_mm;
  const auto middle_of = [&](const SparseSet& of) {
    std::size_t place = 0;
    of.for_each_in(of.words() / 2, [&](std::size_t at) {
      place = at;
      return false;
    });
    return place;
  };
  SparseSet nearer = set;
  double miss_mm = 0.0;
  while (!nearer.empty()) {
    miss_mm = look(middle_of(nearer), verdict).miss.largest_mm;
    if (miss_mm <= 0.0) break;
    add_within(miss_mm - k_hair_mm);
    narrow(set, nearer);
  }
  if (miss_mm <= 0.0) return false;
  add_within(miss_mm);
  narrow(set, nearer);
  set = std::move(nearer);
  return true;
}

Look DiameterSearch::nearest_of(const SparseSet& set, Verdict verdict) {
  SparseSet near = set;
  keep_least_failures(near);
  // Where no diameter misses, all are equally near, and the order decides.
  if (!keep_least_miss(near, verdict)) return look(first_of(near), verdict);
  std::optional<Look> best;
  near.for_each([&](std::size_t place) {
    const Look next = look(place, verdict);
    const bool nearer =
        !best || (next.miss != best->miss ? next.miss < best->miss
                                          : comes_before(next.standing, best->standing));
    if (nearer) best = next;
  });
  return *best;
}

}  // namespace cutback::fit::detail

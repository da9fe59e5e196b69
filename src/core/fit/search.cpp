#include "core/fit/search.hpp"

#include <algorithm>
#include <bit>
#include <limits>

#include "cutback/error.hpp"

namespace cutback::fit::detail {
namespace {

using measure::Estimate;

/// Keeps the members of a set which fail the fewest checks.
template <class Failing>
void keep_least_counted(SparseSet& set, const std::vector<Failing>& checks) {
  if (checks.empty()) return;
  std::vector<std::uint64_t> kept(set.words());
  std::vector<BitCount> counts(set.words());
  for (std::size_t i = 0; i < kept.size(); ++i) {
    kept[i] = set.bits(i);
    for (const Failing& check : checks) counts[i].add(check.bits(set.word(i)));
  }
  for (std::size_t plane = BitCount{}.planes().size(); plane-- > 0;) {
    std::uint64_t any = 0;
    for (std::size_t i = 0; i < kept.size(); ++i) any |= kept[i] & ~counts[i].planes()[plane];
    if (any == 0) continue;
    for (std::size_t i = 0; i < kept.size(); ++i) kept[i] &= ~counts[i].planes()[plane];
  }
  SparseSet least;
  for (std::size_t i = 0; i < kept.size(); ++i) least.add(set.word(i), kept[i]);
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

/// The limits of these checks that a gland with at least this verdict passes.
/// @param width  of the diameters that are known
void DiameterSearch::add_limits(const std::vector<const RuleSets*>& rules, Verdict least,
                                Width width) {
  for (const RuleSets* rule : rules) {
    const Figures& diameter = figures(*rule);
    if (rule->has_otherwise()) {
      const std::size_t before = limits_.size();
      if (diameter.known) {
        add(rule->high(), diameter.whole.high_mm);
      } else {
        add_unlimited(*rule);
      }
      if (limits_.size() > before) {
        limits_.back().otherwise = rule->otherwise_at_least(least).data();
      }
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

/// @param worst_preference  words that begin with a place that is preferred less are left out
void DiameterSearch::narrow(const SparseSet& in, SparseSet& out, double worst_preference) const {
  out.clear();
  for (std::size_t i = 0; i < in.words(); ++i) {
    const std::uint32_t word = in.word(i);
    // The places of a word are in order of preference, and its first is never empty.
    if (index_.preference[word * k_word] > worst_preference) continue;
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
  limits_.clear();
  add_limits(open_.comparing(), least,
             least == Verdict::fits               ? Width::whole
             : least == Verdict::marginal_outside ? Width::touch
                                                  : Width::middle);
  narrow(open_.at_least(least), found);
}

void DiameterSearch::glands_through_adaptor(SparseSet& found) {
  found.clear();
  if (of_end_ < Verdict::fits) return;
  const ThroughAdaptor& through = open_.through_adaptor(question_);
  limits_.clear();
  add_limits(through.whole, Verdict::fits, Width::whole);
  add_limits(through.passing, Verdict::not_known, Width::middle);
  narrow(through.open, found);
}

void DiameterSearch::touching(double worst_preference, SparseSet& found) {
  found.clear();
  if (of_end_ < Verdict::fits) return;
  limits_.clear();
  add_limits(open_.comparing(), Verdict::fits, Width::touch);
  narrow(open_.at_least(Verdict::fits), found, worst_preference);
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
    if (failing_alone_.has(rule->rule().name)) {
      look.miss.add(Verdict::no_fit, std::nullopt);
      continue;
    }
    if (!rule->compares()) {
      if (!has(rule->at_least(Verdict::marginal_inside), place)) {
        look.miss.add(Verdict::no_fit, std::nullopt);
      }
      continue;
    }
    const std::optional<Finding> found = rule->find(place, cable);
    if (!found) continue;
    look.miss.add(found->verdict, found->counts_for_margin ? found->margin_mm : std::nullopt);
    if (found->counts_for_margin && found->margin_mm) {
      margin = std::min(margin.value_or(*found->margin_mm), *found->margin_mm);
    }
  }
  look.standing.margin_mm = margin.value_or(k_no_margin_mm);
  return look;
}

/// A diameter that counts for how near a gland is to its limits; those of each check that compares
/// it, in the order of the table.
struct DiameterSearch::Counting {
  const RuleSets* rule;
  const Figures* figures;
  /// Whether the check fails in what no diameter plays in: then its margin says nothing.
  [[nodiscard]] bool fails_besides(std::size_t place) const {
    return !has(rule->at_least(Verdict::marginal_inside), place);
  }
};

std::vector<DiameterSearch::Counting> DiameterSearch::counting() const {
  std::vector<Counting> list;
  for (const RuleSets* rule : open_.comparing()) {
    const Figures& diameter = figures(*rule);
    if (diameter.known && !rule->has_otherwise()) list.push_back({rule, &diameter});
  }
  return list;
}

/// The smallest margin of a gland that is not outside by any diameter, as far as it is larger than
/// `least`; else something that is not.
double DiameterSearch::margin_of(const std::vector<Counting>& counting, std::size_t place,
                                 double least) {
  constexpr double k_none = std::numeric_limits<double>::infinity();
  double margin = k_none;
  for (const Counting& each : counting) {
    if (each.figures->nominal || each.fails_besides(place)) continue;
    margin = std::min({margin, each.rule->low().margin(place, each.figures->touch.high_mm),
                       each.rule->high().margin(place, each.figures->touch.low_mm)});
    if (margin < least) return margin;
  }
  return margin == k_none ? k_no_margin_mm : margin;
}

/// By how much a gland misses by the diameter that misses most; 0 where none does.
double DiameterSearch::miss_of(const std::vector<Counting>& counting, std::size_t place) {
  double miss = 0.0;
  for (const Counting& each : counting) {
    if (each.fails_besides(place)) continue;
    const auto add = [&](const LimitSets& sets, double middle_mm, double touch_mm) {
      if (!sets.passes(place, middle_mm)) miss = std::max(miss, -sets.margin(place, touch_mm));
    };
    add(each.rule->low(), each.figures->middle.low_mm, each.figures->touch.high_mm);
    add(each.rule->high(), each.figures->middle.high_mm, each.figures->touch.low_mm);
  }
  return miss;
}

std::size_t DiameterSearch::first_of(const SparseSet& set) const {
  constexpr std::size_t k_none = static_cast<std::size_t>(-1);
  std::size_t first = k_none;
  double least = 0.0;   // preference of the first
  double margin = 0.0;  // and its margin, where another one has the same preference
  bool tied = false;
  std::vector<Counting> counting;
  for (std::size_t i = 0; i < set.words(); ++i) {
    // The places of a word are in order of preference.
    set.for_each_in(i, [&](std::size_t place) {
      const double preference = index_.preference[place];
      if (first != k_none && preference > least) return false;
      if (first == k_none || preference < least) {
        first = place;
        least = preference;
        tied = false;
        return true;
      }
      if (!tied) {
        if (counting.empty()) counting = this->counting();
        margin = margin_of(counting, first, k_no_margin_mm);
      }
      tied = true;
      const double next = margin_of(counting, place, margin);
      if (next > margin ||
          (next == margin && index_.places[place]->part < index_.places[first]->part)) {
        first = place;
        margin = next;
      }
      return true;
    });
  }
  if (first == k_none) throw InternalError("the first of no glands was asked for");
  return first;
}

/// Which glands fail one check, word by word.
class DiameterSearch::Failing {
 public:
  Failing(const RuleSets& rule, const Figures& diameter)
      : settled_(rule.at_least(Verdict::marginal_inside).data()) {
    if (!rule.compares()) return;
    if (rule.has_otherwise()) {
      otherwise_ = rule.otherwise_at_least(Verdict::marginal_inside).data();
      high_ = Passing(rule.high(), diameter, diameter.whole.high_mm);
    } else {
      low_ = Passing(rule.low(), diameter, diameter.middle.low_mm);
      high_ = Passing(rule.high(), diameter, diameter.middle.high_mm);
    }
  }
  [[nodiscard]] std::uint64_t bits(std::size_t word) const {
    if (!high_.any()) return ~settled_[word];
    std::uint64_t passing = high_.bits(word);
    if (low_.any()) passing &= low_.bits(word);
    if (otherwise_ != nullptr) passing |= otherwise_[word];
    return settled_[word] & ~passing;
  }

 private:
  class Passing {
   public:
    Passing() = default;
    Passing(const LimitSets& sets, const Figures& diameter, double value_mm)
        : sets_(diameter.known ? sets.at(value_mm) : sets.unlimited()),
          inexact_(diameter.known && !sets.exact() ? &sets : nullptr),
          value_mm_(value_mm) {}
    [[nodiscard]] bool any() const { return sets_ != nullptr; }
    [[nodiscard]] std::uint64_t bits(std::size_t word) const {
      std::uint64_t bits = sets_[word];
      if (inexact_ == nullptr) return bits;
      for (std::uint64_t rest = bits; rest != 0; rest &= rest - 1) {
        const auto bit = static_cast<std::size_t>(std::countr_zero(rest));
        if (!inexact_->passes(word * k_word + bit, value_mm_)) bits &= ~(std::uint64_t{1} << bit);
      }
      return bits;
    }

   private:
    const std::uint64_t* sets_ = nullptr;
    const LimitSets* inexact_ = nullptr;
    double value_mm_ = 0.0;
  };

  const std::uint64_t* settled_;
  const std::uint64_t* otherwise_ = nullptr;
  Passing low_;
  Passing high_;
};

/// Of glands that fail alike in what no diameter plays in: first the fewest other failures, then
/// the fewest at all.
void DiameterSearch::keep_least_failures(SparseSet& set) const {
  std::vector<Failing> others;
  std::vector<Failing> diameters;
  for (const auto& rule : open_.rules()) {
    const bool counted = rule->rule().alone == nullptr && !rule->compares();
    if (counted || failing_alone_.has(rule->rule().name)) continue;
    const bool other = !rule->compares() || rule->has_otherwise() || !figures(*rule).known;
    (other ? others : diameters).emplace_back(*rule, figures(*rule));
  }
  keep_least_counted(set, others);
  keep_least_counted(set, diameters);
}

/// Of glands with the same number of failures those that miss by the least, and some that miss by a
/// hair more.
/// @return false where none misses by a diameter
bool DiameterSearch::keep_least_miss(SparseSet& set) {
  constexpr double k_hair_mm = 2.5 * k_epsilon_mm;
  const auto middle_of = [&](const SparseSet& of) {
    std::size_t place = 0;
    of.for_each_in(of.words() / 2, [&](std::size_t at) {
      place = at;
      return false;
    });
    return place;
  };
  const std::vector<Counting> counting = this->counting();
  SparseSet nearer = set;
  double miss_mm = 0.0;
  while (!nearer.empty()) {
    miss_mm = miss_of(counting, middle_of(nearer));
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
  if (!keep_least_miss(near)) return look(first_of(near), verdict);
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

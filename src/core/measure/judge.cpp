#include "cutback/measure/judge.hpp"

#include <algorithm>
#include <iterator>
#include <limits>

#include "core/measure/distributions.hpp"
#include "core/measure/look.hpp"
#include "cutback/compare.hpp"
#include "cutback/number.hpp"

namespace cutback::measure {
namespace {

/// Probability that the true value lies below `limit` (JCGM 106:2012 clause 7). With no spread at
/// all it is a step.
double share_below(const Estimate& estimate, double limit) {
  if (estimate.standard_mm <= 0.0) return at_least(estimate.value_mm, limit) ? 0.0 : 1.0;
  if (estimate.spread == Spread::rectangular) {
    return std::clamp((limit - estimate.low_mm()) / (2.0 * estimate.expanded_mm), 0.0, 1.0);
  }
  return detail::student_cdf((limit - estimate.value_mm) / estimate.standard_mm,
                             estimate.degrees_of_freedom);
}

/// The same above `limit`. Each tail is worked out by itself: 1 - p loses the small ones.
double share_above(const Estimate& estimate, double limit) {
  if (estimate.standard_mm <= 0.0) return at_most(estimate.value_mm, limit) ? 0.0 : 1.0;
  if (estimate.spread == Spread::rectangular) {
    return std::clamp((estimate.high_mm() - limit) / (2.0 * estimate.expanded_mm), 0.0, 1.0);
  }
  return detail::student_cdf((estimate.value_mm - limit) / estimate.standard_mm,
                             estimate.degrees_of_freedom);
}

bool above_low(double value, const Range& range) {
  return !range.low_mm || at_least(value, *range.low_mm);
}

bool below_high(double value, const Range& range) {
  return !range.high_mm || at_most(value, *range.high_mm);
}

bool is_inside(double value, const Range& range) {
  return above_low(value, range) && below_high(value, range);
}

Verdict by_interval(const Estimate& estimate, const Range& range) {
  const double low = estimate.low_mm();
  const double high = estimate.high_mm();
  if (above_low(low, range) && below_high(high, range)) return Verdict::fits;
  if (!above_low(high, range) || !below_high(low, range)) return Verdict::no_fit;
  return is_inside(estimate.value_mm, range) ? Verdict::marginal_inside : Verdict::marginal_outside;
}

std::string narrow_reason(const Estimate& estimate) {
  return "the range is narrower than the interval of " + plain(2.0 * estimate.expanded_mm) +
         " mm: " +
         (estimate.evidence == Evidence::measured ? "measure more places or use a better caliper"
                                                  : "measure the cable");
}

std::vector<double> readings_outside(const Estimate& estimate, const Range& range) {
  std::vector<double> outside;
  std::copy_if(estimate.readings_mm.begin(), estimate.readings_mm.end(),
               std::back_inserter(outside),
               [&](double reading) { return !is_inside(reading, range); });
  return outside;
}

}  // namespace

Outcome outcome_of(const Estimate& estimate, const Range& range) {
  Outcome out;
  if (!range.low_mm && !range.high_mm) return out;
  out.margin_mm = std::numeric_limits<double>::infinity();
  if (range.low_mm) out.margin_mm = estimate.low_mm() - *range.low_mm;
  if (range.high_mm) out.margin_mm = std::min(out.margin_mm, *range.high_mm - estimate.high_mm());
  out.verdict = by_interval(estimate, range);
  out.narrow = out.verdict != Verdict::fits && range.low_mm && range.high_mm &&
               !at_least(*range.high_mm - *range.low_mm, 2.0 * estimate.expanded_mm);
  if (out.verdict != Verdict::fits) return out;
  const bool proven = estimate.caps.empty() &&
                      std::all_of(estimate.readings_mm.begin(), estimate.readings_mm.end(),
                                  [&](double reading) { return is_inside(reading, range); });
  if (!proven) out.verdict = Verdict::marginal_inside;
  return out;
}

Judgement judge(const Estimate& estimate, const Range& range) {
  const Outcome outcome = outcome_of(estimate, range);
  Judgement out;
  out.verdict = outcome.verdict;
  out.margin_mm = outcome.margin_mm;
  out.narrow = outcome.narrow;
  if (!range.low_mm && !range.high_mm) {
    out.reasons.emplace_back("no limit is stated");
    return out;
  }
  if (range.low_mm) out.probability_below = share_below(estimate, *range.low_mm);
  if (range.high_mm) out.probability_above = share_above(estimate, *range.high_mm);
  out.probability = std::clamp(1.0 - out.probability_below - out.probability_above, 0.0, 1.0);
  if (out.verdict == Verdict::no_fit) return out;

  if (out.narrow) out.reasons.push_back(narrow_reason(estimate));
  for (const Cap& cap : estimate.caps) out.reasons.push_back(cap.reason);
  if (out.verdict == Verdict::marginal_outside) return out;
  const std::vector<double> outside = readings_outside(estimate, range);
  if (!outside.empty()) {
    out.reasons.push_back("reading outside the range: " + detail::listed(outside, " mm"));
  }
  return out;
}

}  // namespace cutback::measure

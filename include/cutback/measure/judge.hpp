#pragma once
// Is the diameter inside the range?

#include <optional>
#include <string>
#include <vector>

#include "cutback/measure/estimate.hpp"
#include "cutback/verdict.hpp"

namespace cutback::measure {

/// A closed range; a limit that is absent does not bind.
struct Range {
  std::optional<double> low_mm;
  std::optional<double> high_mm;
};

/// What a judgement comes to, without its reasons.
struct Outcome {
  Verdict verdict = Verdict::not_known;
  double margin_mm = 0.0;  ///< from [D-U, D+U] to the nearer limit, negative when it crosses
  bool narrow = false;     ///< no value could ever be proven inside: the range is under 2 U wide
};

/// Decides by the interval D +- U (JCGM 106:2012 clause 8 with a guard band of U): fits when wholly
/// inside, no-fit when wholly outside, otherwise marginal by the side on which D lies. A reading
/// outside the range or a cap of the estimate turns fits into marginal-inside. Without any limit
/// the answer is not-known.
[[nodiscard]] Outcome outcome_of(const Estimate& estimate, const Range& range);

struct Judgement {
  Verdict verdict = Verdict::not_known;
  double margin_mm = 0.0;    ///< as in Outcome
  double probability = 0.0;  ///< that the true value is inside
  double probability_below = 0.0;
  double probability_above = 0.0;
  bool narrow = false;               ///< as in Outcome
  std::vector<std::string> reasons;  ///< what stands in the way of a fits beside the interval
};

/// outcome_of(), with its reasons and probabilities.
[[nodiscard]] Judgement judge(const Estimate& estimate, const Range& range);

}  // namespace cutback::measure

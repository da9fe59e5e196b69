#pragma once
// Verdicts of many glands for one end, without words.

#include <cstddef>
#include <utility>
#include <vector>

#include "cutback/fit/fit.hpp"

namespace cutback::fit::detail {

/// Exactly the verdicts of check_gland, by the same checks. What does not depend on the gland's
/// ranges of diameters is asked once for each kind of gland.
class Verdicts {
 public:
  /// @param question  borrowed
  explicit Verdicts(const Question& question);
  /// @param kind  the same only for glands that agree in all that the other checks read
  Verdict of(const gland::Gland& gland, std::size_t kind);

 private:
  const Question& question_;
  Verdict of_cable_ = Verdict::fits;  ///< the check of the cable alone
  std::vector<std::pair<std::size_t, Verdict>> of_kind_;
};

/// What decides between glands of the same verdict, smaller first.
double preference_of(const gland::Gland& gland, Prefer prefer);

}  // namespace cutback::fit::detail

#pragma once
// The five answers to "does it fit?".

#include <algorithm>
#include <string_view>

namespace cutback {

/// Worst first, so that the worst of two verdicts is the smaller one.
enum class Verdict { no_fit, marginal_outside, not_known, marginal_inside, fits };

[[nodiscard]] constexpr std::string_view to_string(Verdict verdict) {
  switch (verdict) {
    case Verdict::no_fit:
      return "no-fit";
    case Verdict::marginal_outside:
      return "marginal-outside";
    case Verdict::not_known:
      return "not-known";
    case Verdict::marginal_inside:
      return "marginal-inside";
    case Verdict::fits:
      return "fits";
  }
  return "";
}

[[nodiscard]] constexpr Verdict worst(Verdict a, Verdict b) { return std::min(a, b); }

}  // namespace cutback

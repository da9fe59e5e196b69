#pragma once
// The one order of preference of glands.

#include <limits>
#include <string_view>

#include "cutback/fit/fit.hpp"

namespace cutback::fit::detail {

inline constexpr double k_no_margin_mm = -std::numeric_limits<double>::infinity();

/// What decides between glands of the same verdict, smaller first; a gland that does not state it
/// comes last. Of glands that state the same the preferred come first, but not before a larger
/// margin where the margin decides.
[[nodiscard]] double preference(const gland::Gland& gland, Prefer prefer);

/// What a gland's place in the order depends on.
struct Standing {
  Verdict verdict = Verdict::fits;
  double preference = 0.0;
  double margin_mm = k_no_margin_mm;
  std::string_view part;
};

/// By verdict, then preference, then the larger margin, then the part code by bytes.
[[nodiscard]] inline bool comes_before(const Standing& a, const Standing& b) {
  if (a.verdict != b.verdict) return a.verdict > b.verdict;
  if (a.preference != b.preference) return a.preference < b.preference;
  if (a.margin_mm != b.margin_mm) return a.margin_mm > b.margin_mm;
  return a.part < b.part;
}

}  // namespace cutback::fit::detail

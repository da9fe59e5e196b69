#pragma once
// The one helper through which every limit is compared.

namespace cutback {

/// Tolerance of every comparison of lengths [mm]. Limits are closed: equal passes.
inline constexpr double k_epsilon_mm = 1e-6;

/// True when `value` is at or above `limit` (equal passes, within k_epsilon_mm).
[[nodiscard]] constexpr bool at_least(double value, double limit) {
  return value >= limit - k_epsilon_mm;
}

/// True when `value` is at or below `limit` (equal passes, within k_epsilon_mm).
[[nodiscard]] constexpr bool at_most(double value, double limit) {
  return value <= limit + k_epsilon_mm;
}

/// True when `value` lies in the closed range [low, high].
[[nodiscard]] constexpr bool within(double value, double low, double high) {
  return at_least(value, low) && at_most(value, high);
}

}  // namespace cutback

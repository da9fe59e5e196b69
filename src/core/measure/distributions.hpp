#pragma once
// Quantiles and probabilities. The only place that knows the library behind them, which is slow to
// compile.

namespace cutback::detail {

/// P(Z <= z), Z standard normal.
[[nodiscard]] double normal_cdf(double z);

/// z with P(Z <= z) = `probability`, which lies in (0, 1).
[[nodiscard]] double normal_quantile(double probability);

/// P(T <= t), t distribution; `degrees` > 0, infinite gives the normal distribution.
[[nodiscard]] double student_cdf(double t, double degrees);

/// t with P(T <= t) = `probability` in (0, 1); `degrees` > 0, infinite gives the normal quantile.
[[nodiscard]] double student_quantile(double probability, double degrees);

}  // namespace cutback::detail

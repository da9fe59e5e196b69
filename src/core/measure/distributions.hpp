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

/// F with P(F <= f) = `probability` in (0, 1); both degrees of freedom > 0 and finite.
[[nodiscard]] double fisher_quantile(double probability, double numerator_degrees,
                                     double denominator_degrees);

/// Two-sided tolerance factor k: with `confidence`, mean +- k s holds at least the share `content`
/// of a normal population. The exact integral, as ISO 16269-6:2014 Annex F tabulates it.
/// @param places   whose mean it is, >= 1
/// @param degrees  of freedom of s, >= 1 and finite (places - 1, or pooled over samples)
/// @param content, confidence  in [0.5, 1) and (0, 1)
[[nodiscard]] double tolerance_factor(double places, double degrees, double content,
                                      double confidence);

}  // namespace cutback::detail

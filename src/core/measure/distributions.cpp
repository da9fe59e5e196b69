#include "core/measure/distributions.hpp"

#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/distributions/fisher_f.hpp>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <boost/math/tools/roots.hpp>
#include <cmath>
#include <cstdint>

#include "cutback/error.hpp"

namespace cutback::detail {
namespace {

namespace bm = boost::math;

// No exception of the library's own may leave this file: it answers a wrong argument with a value
// that is not finite, which `finite` turns into an error of ours. Doubles are exact enough.
using Policy =
    bm::policies::policy<bm::policies::domain_error<bm::policies::ignore_error>,
                         bm::policies::pole_error<bm::policies::ignore_error>,
                         bm::policies::overflow_error<bm::policies::ignore_error>,
                         bm::policies::evaluation_error<bm::policies::ignore_error>,
                         bm::policies::rounding_error<bm::policies::ignore_error>,
                         bm::policies::indeterminate_result_error<bm::policies::ignore_error>,
                         bm::policies::promote_double<false>>;
using Normal = bm::normal_distribution<double, Policy>;
using ChiSquared = bm::chi_squared_distribution<double, Policy>;
using Fisher = bm::fisher_f_distribution<double, Policy>;
using Student = bm::students_t_distribution<double, Policy>;

double finite(double value, const char* what) {
  if (!std::isfinite(value)) throw InternalError(std::string("not a finite value: ") + what);
  return value;
}

/// R with P(-R <= Z + offset <= R) = `content`: half the width about a mean that is off by
/// `offset`. Its square is a quantile of the noncentral chi-squared distribution with one degree of
/// freedom. Newton's method from below on a function that is concave there never overshoots.
double half_width(double offset, double content) {
  const Normal normal;
  double width = offset + bm::quantile(normal, content);
  for (int i = 0; i < 50; ++i) {
    const double lack =
        content - bm::cdf(normal, width - offset) + bm::cdf(normal, -width - offset);
    const double slope = bm::pdf(normal, width - offset) + bm::pdf(normal, width + offset);
    const double step = lack / slope;
    width += step;
    if (std::abs(step) < 1e-13 * width) break;
  }
  return width;
}

/// How sure it is that mean +- factor s holds `content`, over all means (offset z / sqrt n, by
/// symmetry twice the upper half) and all s.
double tolerance_confidence(double factor, double places, double degrees, double content) {
  constexpr double k_last_sigma = 9.0;
  constexpr unsigned k_deepest = 10;
  constexpr double k_tolerance = 1e-13;
  const Normal normal;
  const ChiSquared chi_squared(degrees);
  const auto density = [&](double z) {
    const double ratio = half_width(z / std::sqrt(places), content) / factor;
    return 2.0 * bm::pdf(normal, z) * bm::cdf(bm::complement(chi_squared, degrees * ratio * ratio));
  };
  return bm::quadrature::gauss_kronrod<double, 61, Policy>::integrate(density, 0.0, k_last_sigma,
                                                                      k_deepest, k_tolerance);
}

}  // namespace

double normal_cdf(double z) { return finite(bm::cdf(Normal(), z), "normal probability"); }

double normal_quantile(double probability) {
  return finite(bm::quantile(Normal(), probability), "normal quantile");
}

double student_cdf(double t, double degrees) {
  if (std::isinf(degrees)) return normal_cdf(t);
  return finite(bm::cdf(Student(degrees), t), "t probability");
}

double student_quantile(double probability, double degrees) {
  if (std::isinf(degrees)) return normal_quantile(probability);
  return finite(bm::quantile(Student(degrees), probability), "t quantile");
}

double fisher_quantile(double probability, double numerator_degrees, double denominator_degrees) {
  return finite(bm::quantile(Fisher(numerator_degrees, denominator_degrees), probability),
                "F quantile");
}

double tolerance_factor(double places, double degrees, double content, double confidence) {
  // Within a few per cent of the factor (NIST/SEMATECH e-Handbook 7.2.6.3): where the search
  // begins.
  const double normal = normal_quantile((1.0 + content) / 2.0);
  const double chi_squared = bm::quantile(ChiSquared(degrees), 1.0 - confidence);
  const double guess = normal * std::sqrt(degrees * (1.0 + 1.0 / places) / chi_squared);
  std::uintmax_t evaluations = 60;
  const auto bracket = bm::tools::bracket_and_solve_root(
      [&](double factor) {
        return tolerance_confidence(factor, places, degrees, content) - confidence;
      },
      guess, 1.05, true, bm::tools::eps_tolerance<double>(40), evaluations, Policy());
  return finite((bracket.first + bracket.second) / 2.0, "tolerance factor");
}

}  // namespace cutback::detail

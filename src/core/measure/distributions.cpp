#include "core/measure/distributions.hpp"

#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>

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
using Student = bm::students_t_distribution<double, Policy>;

double finite(double value, const char* what) {
  if (!std::isfinite(value)) throw InternalError(std::string("not a finite value: ") + what);
  return value;
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

}  // namespace cutback::detail

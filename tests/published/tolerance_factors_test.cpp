// Tolerance factors of the normal distribution, n = 2 to 50: two-sided exact (ISO 16269-6:2014
// Annex F, tables for one sample) and approximate (NIST/SEMATECH e-Handbook 7.2.6.3), one-sided
// exact (quantile of the noncentral t distribution). Ten decimals, computed with an independent
// reference.
#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/distributions/non_central_t.hpp>
#include <catch2/catch.hpp>
#include <cmath>

#include "core/measure/distributions.hpp"
#include "published/csv_rows.hpp"

using namespace cutback;

TEST_CASE("tolerance factors: all 441 rows", "[published][measure]") {
  std::size_t rows = 0;
  for (const published::CsvRow& row : published::CsvRows("tolerance_factors.csv")) {
    const double n = row.number("n");
    const double confidence = row.number("confidence");
    const double content = row.number("content");
    INFO("n " << n << ", confidence " << confidence << ", content " << content);
    CHECK(std::abs(detail::tolerance_factor(n, n - 1.0, content, confidence) -
                   row.number("k2_exact")) <= 1e-6);

    const double z = detail::normal_quantile((1.0 + content) / 2.0);
    const double chi = quantile(boost::math::chi_squared(n - 1.0), 1.0 - confidence);
    const double approximate = z * std::sqrt((n - 1.0) * (1.0 + 1.0 / n) / chi);
    const double correction = std::sqrt(1.0 + (n - 3.0 - chi) / (2.0 * (n + 1.0) * (n + 1.0)));
    CHECK(std::abs(approximate - row.number("k2_approx")) <= 1e-9);
    CHECK(std::abs(approximate * correction - row.number("k2_approx_corrected")) <= 1e-9);

    const boost::math::non_central_t one_sided(n - 1.0,
                                               detail::normal_quantile(content) * std::sqrt(n));
    CHECK(std::abs(quantile(one_sided, confidence) / std::sqrt(n) -
                   row.number("k1_exact_one_sided")) <= 1e-6);
    ++rows;
  }
  CHECK(rows == 441);
}

TEST_CASE("tolerance factors: printed in ISO 16269-6:2014 Annex F", "[published][measure]") {
  struct Row {
    double n, samples, content, confidence, printed;
  };
  // Rounded up at the fourth decimal, as the standard does.
  for (const Row& row : {Row{5, 1, 0.95, 0.95, 5.0769}, Row{10, 1, 0.95, 0.95, 3.3935},
                         Row{26, 1, 0.95, 0.95, 2.6188}, Row{5, 3, 0.95, 0.95, 3.2936},
                         Row{2, 1, 0.95, 0.99, 182.7201}}) {
    const double factor =
        detail::tolerance_factor(row.n, row.samples * (row.n - 1.0), row.content, row.confidence);
    CHECK(std::ceil(factor * 1e4) == std::round(row.printed * 1e4));
  }
}

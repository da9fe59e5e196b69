// The distributions against another library: scipy 1.10.1 (scipy_vectors.py wrote the file).
#include <catch2/catch.hpp>
#include <cmath>
#include <map>

#include "core/measure/distributions.hpp"
#include "published/csv_rows.hpp"

using namespace cutback;

namespace {

double ours(const published::CsvRow& row) {
  const std::string& function = row["function"];
  const double a = row.number("a");
  if (function == "normal_quantile") return detail::normal_quantile(a);
  if (function == "normal_cdf") return detail::normal_cdf(a);
  if (function == "student_quantile") return detail::student_quantile(a, row.number("b"));
  if (function == "student_cdf") return detail::student_cdf(a, row.number("b"));
  if (function == "fisher_quantile") {
    return detail::fisher_quantile(a, row.number("b"), row.number("c"));
  }
  REQUIRE(function == "tolerance_factor");
  return detail::tolerance_factor(a, row.number("b"), row.number("c"), row.number("d"));
}

}  // namespace

TEST_CASE("distributions: as scipy has them", "[published][measure]") {
  std::map<std::string, int> counts;
  for (const published::CsvRow& row : published::CsvRows("scipy_vectors.csv")) {
    INFO(row["function"] << " " << row["a"] << " " << row["b"] << " " << row["c"]);
    const double wanted = row.number("value");
    const double given = ours(row);
    INFO("given " << given << ", wanted " << wanted);
    CHECK(std::abs(given - wanted) <= 1e-8 * std::abs(wanted));
    ++counts[row["function"]];
  }
  CHECK(counts == std::map<std::string, int>{{"fisher_quantile", 77},
                                             {"normal_cdf", 12},
                                             {"normal_quantile", 13},
                                             {"student_cdf", 176},
                                             {"student_quantile", 160},
                                             {"tolerance_factor", 29}});
}

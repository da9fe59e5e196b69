#include "cutback/measure/caliper.hpp"

#include <array>
#include <catch2/catch.hpp>

using namespace cutback;
using namespace cutback::measure;

namespace {
constexpr std::array<CaliperLimit, 4> k_rows{
    {{0.02, 100, 0.02}, {0.02, 600, 0.03}, {0.1, 300, 0.05}, {0.1, 400, 0.06}}};
}

TEST_CASE("permissible_error_mm: the first row that covers step and length", "[unit][measure]") {
  CHECK(permissible_error_mm(k_rows, 0.02, 15) == 0.02);
  CHECK(permissible_error_mm(k_rows, 0.0, 15) == 0.02);
  CHECK(permissible_error_mm(k_rows, 0.01, 100) == 0.02);
  CHECK(permissible_error_mm(k_rows, 0.02, 100.01) == 0.03);
  CHECK(permissible_error_mm(k_rows, 0.05, 15) == 0.05);
  CHECK(permissible_error_mm(k_rows, 0.1, 300) == 0.05);
  CHECK(permissible_error_mm(k_rows, 0.1, 301) == 0.06);
}

TEST_CASE("permissible_error_mm: beyond the last row the largest of the step", "[unit][measure]") {
  CHECK(permissible_error_mm(k_rows, 0.1, 5000) == 0.06);
  CHECK(permissible_error_mm(std::span(k_rows).first(2), 0.02, 5000) == 0.03);
}

TEST_CASE("permissible_error_mm: of a step coarser than every row the step itself",
          "[unit][measure]") {
  CHECK(permissible_error_mm(k_rows, 0.254, 15) == 0.254);  // 0.01 in
  CHECK(permissible_error_mm(k_rows, 0.5, 1000) == 0.5);
  const auto note = [](double step_mm, std::optional<double> mpe_mm) {
    Caliper caliper;
    caliper.step_mm = step_mm;
    caliper.mpe_mm = mpe_mm;
    return coarse_step_note(caliper, k_rows);
  };
  CHECK_THAT(note(0.254, {}), Catch::Contains("the step itself is taken, +/- 0.254 mm"));
  CHECK(note(0.254, 0.1).empty());  // its papers say it
  CHECK(note(0.1, {}).empty());
}

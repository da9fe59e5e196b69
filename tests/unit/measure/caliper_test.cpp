#include "cutback/measure/caliper.hpp"

#include <array>
#include <catch2/catch.hpp>

#include "cutback/error.hpp"

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

TEST_CASE("permissible_error_mm: a coarser step has no published error", "[unit][measure]") {
  CHECK_THROWS_AS((void)permissible_error_mm(k_rows, 0.5, 15), InputError);
  CHECK_THROWS_AS((void)permissible_error_mm({}, 0.05, 15), InputError);
}

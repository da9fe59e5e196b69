// Closed forms of circle packings, as published with the list of best-known packings of equal
// circles in a circle; assembly coefficients typed from IEC 60502-1 Annex A.
#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

#include "cutback/area/bundle.hpp"
#include "cutback/io/standards.hpp"

using namespace cutback;
using namespace cutback::area;

namespace {

const tables::Table& factors() {
  static const tables::Standards all = io::builtin_standards();
  return all.table("bundle_factors");
}

}  // namespace

TEST_CASE("circle packing: the closed forms", "[published][bundle]") {
  using std::numbers::pi;
  const double root_2 = std::sqrt(2.0);
  const std::pair<int, double> rows[] = {
      {1, 1.0},
      {2, 2.0},
      {3, 1.0 + 2.0 / std::sqrt(3.0)},
      {4, 1.0 + root_2},
      {5, 1.0 + std::sqrt(2.0 * (1.0 + 1.0 / std::sqrt(5.0)))},
      {6, 3.0},
      {7, 3.0},
      {8, 1.0 + 1.0 / std::sin(pi / 7.0)},
      {9, 1.0 + std::sqrt(2.0 * (2.0 + root_2))},
      {11, 1.0 + 1.0 / std::sin(pi / 9.0)},
      {13, 2.0 + std::sqrt(5.0)},
      {18, 1.0 + root_2 + std::sqrt(6.0)},
      {19, 1.0 + root_2 + std::sqrt(6.0)},
  };
  for (const auto& [cores, ratio] : rows) {
    INFO(cores);
    CHECK(bundle_of(factors(), cores, 1.0)->least_mm == Approx(ratio).margin(5e-8));
  }
}

TEST_CASE("IEC 60502-1 Annex A: assembly coefficients where they exceed the packing",
          "[published][bundle]") {
  const std::pair<int, double> rows[] = {
      {2, 2.00},  {3, 2.16},  {4, 2.42},  {6, 3.00},  {7, 3.35},  {8, 3.66},  {9, 4.00},
      {10, 4.00}, {11, 4.00}, {12, 4.16}, {13, 4.41}, {14, 4.41}, {15, 4.70}, {16, 4.70},
      {17, 5.00}, {18, 5.00}, {19, 5.00}, {20, 5.33}, {21, 5.33}, {22, 5.67}, {23, 5.67},
      {24, 6.00}, {25, 6.00}, {26, 6.00}, {27, 6.15}};
  for (const auto& [cores, k] : rows) {
    INFO(cores);
    CHECK(*bundle_of(factors(), cores, 1.0)->laid_mm == Approx(k).margin(1e-9));
  }
  // Five cores: 2.70 is printed, rounded below the packing of 2.7013.
  CHECK(*bundle_of(factors(), 5, 1.0)->laid_mm == Approx(2.7013016).margin(5e-8));
  CHECK_FALSE(bundle_of(factors(), 28, 1.0)->laid_mm.has_value());
}

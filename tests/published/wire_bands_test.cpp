// Armour wire sizes and their limits as made: CENELEC HD 604 S1/A1, United Kingdom sections.
#include <catch2/catch.hpp>

#include "cutback/cable/armour.hpp"
#include "cutback/io/standards.hpp"

using namespace cutback;

TEST_CASE("armour wire: printed limits give the nominal size and nothing beyond them does",
          "[published][cable]") {
  struct Row {
    double nominal, min, max;
  };
  // Typed from the printed table, not read from data/.
  const Row rows[] = {{0.9, 0.85, 0.95}, {1.25, 1.18, 1.32}, {1.6, 1.51, 1.69},
                      {2.0, 1.90, 2.10}, {2.5, 2.37, 2.63},  {3.15, 2.99, 3.31}};
  const auto bands = io::builtin_standards().wire_bands;
  for (const Row& row : rows) {
    INFO(row.nominal);
    for (const double inside : {row.min, row.nominal, row.max}) {
      const auto band = cable::wire_band(bands, inside);
      REQUIRE(band.has_value());
      CHECK(band->nominal_mm == row.nominal);
    }
    CHECK_FALSE(cable::wire_band(bands, row.min - 0.001).has_value());
    CHECK_FALSE(cable::wire_band(bands, row.max + 0.001).has_value());
  }
}

#include "cutback/earth/resistance.hpp"

#include <catch2/catch.hpp>

#include "support/build_job.hpp"

using namespace cutback;
using namespace cutback::earth;

// By hand: 138 x sqrt(1 + (pi / 8)^2) / (26 x (0.85 / 0.9)^2) = 6.393 ohm/km.
TEST_CASE("largest_resistance: thinnest wires and the shortest lay", "[unit][earth]") {
  const auto largest = largest_resistance({.area_mm2 = 26.0, .wire_mm = 0.9}, test::standards());
  CHECK(largest.ohm_per_km == Approx(6.393).margin(0.0005));
  CHECK(largest.lay_ratio == Approx(1.0743).margin(0.00005));
  CHECK(largest.thin_ratio == Approx(0.85 * 0.85 / 0.81));
}

TEST_CASE("largest_resistance: a wire that is not known is as thin as any may be",
          "[unit][earth]") {
  const auto of = [](std::optional<double> wire_mm) {
    return largest_resistance({.area_mm2 = 26.0, .wire_mm = wire_mm}, test::standards()).ohm_per_km;
  };
  for (const double wire : {0.9, 1.25, 1.6, 2.0, 2.5, 3.15}) CHECK(of({}) >= of(wire));
  CHECK(of(1.4) == of({}));
}

TEST_CASE("largest_resistance: a lay that is given takes the place of the shortest",
          "[unit][earth]") {
  const auto largest = largest_resistance(
      {.area_mm2 = 26.0, .material = Material::aluminium, .wire_mm = 2.0, .lay_ratio = 1.0},
      test::standards());
  CHECK(largest.ohm_per_km == Approx(28.264 / (26.0 * 0.95 * 0.95)));
}

TEST_CASE("loop_impedance_ohm: the armour alone", "[unit][earth]") {
  CHECK(loop_impedance_ohm(0.0, 0.0, 100.0, test::standards()) == Approx(0.03));
  CHECK(loop_impedance_ohm(0.0, 1.0, 100.0, test::standards()) == Approx(std::hypot(1.1, 0.03)));
}

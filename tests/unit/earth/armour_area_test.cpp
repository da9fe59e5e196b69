#include "cutback/earth/armour_area.hpp"

#include <catch2/catch.hpp>

#include "support/build_job.hpp"

using namespace cutback;
using namespace cutback::earth;
using Catch::Contains;

namespace {

std::optional<ArmourArea> area_of(const job::JobInput& in) {
  const job::Job job = test::resolved(in);
  return armour_area(job.cable, job.construction, test::standards());
}

double least(const ArmourArea& area) { return area.area_mm2 * (1.0 - area.error_ratio); }

}  // namespace

TEST_CASE("counted_area: wires times the area of one", "[unit][earth]") {
  job::JobInput in = test::small_cable();
  in.armour_mm = "1.25";
  in.bedding_mm.reset();
  const ArmourArea area = counted_area(34, test::resolved(in).cable);
  CHECK(area.area_mm2 == Approx(41.72).margin(0.005));
  CHECK(area.error_ratio == 0.0);
  CHECK(area.origin == "34 wires of 1.25 mm");
  CHECK_THROWS_AS(counted_area(0, test::resolved(in).cable), InputError);
}

TEST_CASE("counted_area: a wire measured thinner than its size counts as measured",
          "[unit][earth]") {
  job::JobInput in = test::small_cable();
  in.armour_mm = "0.85";
  in.bedding_mm.reset();
  // 34 pi/4 0.85^2 = 19.29 mm2; of 0.9 mm it would be 21.63.
  const ArmourArea area = counted_area(34, test::resolved(in).cable);
  CHECK(least(area) == Approx(19.29).margin(0.005));
  in.armour_mm = "0.95";
  CHECK(least(counted_area(34, test::resolved(in).cable)) == Approx(21.63).margin(0.005));
}

TEST_CASE("counted_area: no more wires than go round the bedding", "[unit][earth]") {
  // pi (10 + 0.9) / 0.9 = 38.05.
  const cable::Cable cable = test::resolved(test::small_cable()).cable;
  CHECK_NOTHROW(counted_area(38, cable));
  CHECK_THROWS_AS(counted_area(45, cable), InputError);
}

// Bedding 10 mm, wire 0.9 mm: 0.9 pi 10.9 cos(atan(pi / 10)) / 0.9 = 32.6: 32 wires, 20.36 mm2.
TEST_CASE("armour_area: from the wire and the bedding that were measured", "[unit][earth]") {
  const auto area = area_of(test::small_cable());
  REQUIRE(area.has_value());
  CHECK(area->area_mm2 == Approx(20.36).margin(0.005));
  CHECK(area->origin == "32 wires of 0.9 mm on a bedding of 10 mm");
  CHECK(least(*area) <= 0.92 * area->area_mm2);
  CHECK(least(*area) > 0.85 * area->area_mm2);
}

TEST_CASE("armour_area: what was measured counts before the construction", "[unit][earth]") {
  job::JobInput in = test::small_cable();
  in.cores = 3;
  in.csa_mm2 = 2.5;
  const double measured = area_of(in)->area_mm2;
  CHECK(measured == Approx(20.36).margin(0.005));
  in.bedding_mm.reset();  // the construction's bedding, less its error
  const auto wire_alone = area_of(in);
  CHECK(least(*wire_alone) < least(*area_of(test::small_cable())));
  in.armour_mm = "1.25";  // another standard size than the construction's
  CHECK(area_of(in)->wire_mm == 1.25);
  in.armour_mm.reset();
  CHECK_THAT(area_of(in)->origin, Contains("from the construction"));
  CHECK(area_of(in)->error_ratio == 0.10);
}

TEST_CASE("armour_area: a wider interval never gives more at the least", "[unit][earth]") {
  job::JobInput in = test::small_cable();
  in.armour_mm = "1.4";  // in no band
  double before = least(*area_of(in));
  for (const double error : {0.1, 0.2, 0.3}) {
    in.mpe_mm = error;
    const double now = least(*area_of(in));
    CHECK(now <= before);
    before = now;
  }
  in = test::small_cable();
  before = least(*area_of(in));
  in.evidence = measure::Evidence::datasheet;
  in.sheath_od_mm = "15";
  in.bedding_mm = "10";
  CHECK(least(*area_of(in)) < before);
}

TEST_CASE("armour_area: not known without wire or bedding, and of armour that is not wire",
          "[unit][earth]") {
  job::JobInput in = test::small_cable();
  in.armour_mm.reset();
  CHECK_FALSE(area_of(in).has_value());
  in = test::small_cable();
  in.armour = cable::ArmourKind::braid;
  in.cores = 3;
  in.csa_mm2 = 2.5;
  CHECK_FALSE(area_of(in).has_value());
}

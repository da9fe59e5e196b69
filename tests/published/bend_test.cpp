// Bending radii typed from: guidance annexes of BS 5467 and BS 6724 as reprinted (6 x the diameter
// for 1.5 to 16 mm2 circular, 8 x for 25 mm2 and over and for shaped conductors); IET On-Site Guide
// for unarmoured cable (from memory); first support: Code of Practice for the Electricity (Wiring)
// Regulations, Hong Kong 2009, 25C(1)(e)(ii), 150 mm.
#include <catch2/catch.hpp>

#include "cutback/strip/bend.hpp"
#include "support/build_job.hpp"

using namespace cutback;
using strip::bend_of;
using strip::BendInput;

TEST_CASE("BS 5467 guidance: bending radius of armoured cable", "[published][strip]") {
  struct Row {
    double csa_mm2;
    bool shaped;
    double factor;
  };
  const Row rows[] = {{1.5, false, 6}, {4, false, 6},  {16, false, 6}, {25, false, 8},
                      {25, true, 8},   {300, true, 8}, {16, true, 8},  {400, false, 8}};
  for (const Row& row : rows) {
    INFO(row.csa_mm2);
    const strip::Bend bend = bend_of(
        {.armoured = true, .sheath_od_mm = 20.0, .csa_mm2 = row.csa_mm2, .shaped = row.shaped},
        test::standards());
    CHECK(bend.factor == row.factor);
    CHECK(bend.radius_mm == row.factor * 20.0);
    CHECK(bend.support_mm == 150.0);
  }
}

TEST_CASE("On-Site Guide: bending radius of unarmoured cable", "[published][strip]") {
  const std::pair<double, double> rows[] = {{8, 3},  {10, 3},   {10.1, 4},
                                            {25, 4}, {25.1, 6}, {60, 6}};
  for (const auto& [od_mm, factor] : rows) {
    INFO(od_mm);
    CHECK(bend_of({.armoured = false, .sheath_od_mm = od_mm, .csa_mm2 = {}, .shaped = false},
                  test::standards())
              .factor == factor);
  }
  CHECK(bend_of({.armoured = false, .sheath_od_mm = 8.0, .csa_mm2 = {}, .shaped = true},
                test::standards())
            .factor == 8.0);
}

TEST_CASE("bend_of: what is not known falls to the larger factor", "[published][strip]") {
  const auto factor = [](std::optional<double> csa_mm2, std::optional<bool> shaped) {
    return bend_of({.armoured = true, .sheath_od_mm = 15.0, .csa_mm2 = csa_mm2, .shaped = shaped},
                   test::standards())
        .factor;
  };
  CHECK(factor({}, {}) == 8.0);
  CHECK(factor({}, false) == 8.0);
  CHECK(factor(4.0, {}) == 8.0);
  CHECK(factor(20.0, false) == 8.0);  // a size that no row names
  CHECK(factor(1.0, false) == 8.0);
}

TEST_CASE("check_bend: a caution with its figure, whatever the cable", "[published][strip]") {
  const job::Job job = test::resolved(test::small_cable());
  const auto check = strip::check_bend(job.cable, job.construction, test::standards());
  REQUIRE(check.has_value());
  CHECK(check->name == fit::CheckName::bend);
  CHECK(check->verdict == Verdict::fits);
  CHECK(*check->value == Approx(120.0));
  CHECK_THAT(check->says, Catch::Contains("120 mm inside radius") && Catch::Contains("150 mm"));
  CHECK_FALSE(strip::check_bend({}, std::nullopt, test::standards()).has_value());
}

#include <rapidcheck.h>
#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

#include "cutback/area/bundle.hpp"
#include "cutback/io/standards.hpp"

using namespace cutback;
using namespace cutback::area;

TEST_CASE("bundle: grows with the cores and holds their area", "[property][bundle]") {
  const tables::Standards standards = io::builtin_standards();
  const tables::Table& factors = standards.table("bundle_factors");
  for (int cores = 1; cores < 61; ++cores) {
    INFO(cores);
    const double ratio = bundle_of(factors, cores, 1.0)->least_mm;
    CHECK(bundle_of(factors, cores + 1, 1.0)->least_mm >= ratio);
    // No packing is denser than the hexagonal one.
    CHECK(cores / (ratio * ratio) <= (cores == 1 ? 1.0 : std::numbers::pi / std::sqrt(12.0)));
  }
}

TEST_CASE("bundle: a wider core or chamber changes the verdict one way", "[property][bundle]") {
  const tables::Standards standards = io::builtin_standards();
  const tables::Table& factors = standards.table("bundle_factors");
  CHECK(rc::check("one way", [&] {
    gland::Gland gland;
    gland.max_bundle_mm = *rc::gen::inRange(50, 600) / 10.0;
    SealingCores in;
    in.cores = *rc::gen::inRange(1, 62);
    in.core_mm = *rc::gen::inRange(10, 200) / 10.0;
    const Verdict before = check_sealing_bundle(gland, in, factors).verdict;
    gland.max_bundle_mm = *gland.max_bundle_mm + *rc::gen::inRange(0, 100) / 10.0;
    RC_ASSERT(check_sealing_bundle(gland, in, factors).verdict >= before);
    in.core_mm = *in.core_mm * 100.0;
    RC_ASSERT(check_sealing_bundle(gland, in, factors).verdict <= before);
  }));
}

TEST_CASE("bundle: compound and cores fill the chamber", "[property][bundle]") {
  const tables::Standards standards = io::builtin_standards();
  const tables::Table& factors = standards.table("bundle_factors");
  CHECK(rc::check("volumes add up", [&] {
    const Chamber chamber{*rc::gen::inRange(100, 800) / 10.0, *rc::gen::inRange(100, 800) / 10.0,
                          *rc::gen::inRange(1, 62), *rc::gen::inRange(10, 200) / 10.0};
    const auto compound = compound_of(factors, chamber);
    const double ratio = bundle_of(factors, chamber.cores, 1.0)->least_mm;
    RC_ASSERT(compound.has_value() == (ratio * chamber.core_mm <= chamber.bore_mm + 1e-6));
    if (!compound) return;
    const double whole_cm3 =
        std::numbers::pi / 4.0 * chamber.bore_mm * chamber.bore_mm * chamber.length_mm / 1000.0;
    RC_ASSERT(std::abs(compound->volume_cm3 + compound->core_ratio * whole_cm3 - whole_cm3) <
              1e-9 * whole_cm3);
    // Cores one gap wider all round still fit a bore one gap narrower.
    RC_ASSERT(ratio * (chamber.core_mm + compound->gap_mm) <=
              chamber.bore_mm - compound->gap_mm + 1e-6);
  }));
}

#include <rapidcheck.h>
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "cutback/cable/plausibility.hpp"
#include "cutback/strip/depths.hpp"

using namespace cutback;
using cable::ArmourKind;

namespace {

double in_hundredths(int low, int high) { return *rc::gen::inRange(low, high) / 100.0; }

struct Made {
  cable::Cable cable;
  strip::Nominals nominals;
  double sheath_mm = 0.0;  ///< mean sheath that the readings are true to
  double wire_mm = 0.0;
};

/// A cable whose readings are off by no more than their combined spread.
Made any_cable() {
  Made made;
  made.sheath_mm = in_hundredths(30, 400);
  made.wire_mm = in_hundredths(20, 320);
  made.cable.armour = *rc::gen::element(ArmourKind::wire, ArmourKind::braid, ArmourKind::tape,
                                        ArmourKind::strip, ArmourKind::none);
  const bool two = made.cable.armour == ArmourKind::braid || made.cable.armour == ArmourKind::tape;
  const double layers = made.cable.armour == ArmourKind::none ? 0.0 : two ? 2.0 : 1.0;
  const double bedding = in_hundredths(500, 6000);
  const double od = bedding + 2.0 * (made.sheath_mm + layers * made.wire_mm);
  const double u_od = in_hundredths(0, 60);
  const double u_bedding = in_hundredths(0, 60);
  // The error of one reading at a time, so that it is within the root of the squares.
  const double share = in_hundredths(-100, 101);
  const bool of_od = *rc::gen::arbitrary<bool>();
  made.cable.sheath_od = measure::from_datasheet(od + (of_od ? share * u_od : 0.0), u_od);
  made.cable.bedding =
      measure::from_datasheet(bedding + (of_od ? 0.0 : share * u_bedding), u_bedding);
  made.cable.wire = measure::from_datasheet(made.wire_mm, 0.0);
  if (*rc::gen::arbitrary<bool>()) made.nominals.sheath_mm = in_hundredths(50, 400);
  if (*rc::gen::arbitrary<bool>()) made.nominals.bedding_mm = in_hundredths(50, 300);
  return made;
}

bool below(const std::optional<double>& depth_mm, double limit_mm) {
  return !depth_mm || *depth_mm < limit_mm;
}

}  // namespace

TEST_CASE("depths_of: no depth reaches what must stay whole", "[property][strip]") {
  CHECK(rc::check("thinnest point", [] {
    const Made made = any_cable();
    const strip::Depths depths = strip::depths_of(made.cable, made.nominals);
    const double least =
        cable::least_at_a_point_mm(std::min(made.sheath_mm, made.nominals.sheath_mm.value_or(1e9)));
    constexpr double k_closed = 1e-6;
    if (made.cable.armour == ArmourKind::wire) {
      const double bedding = least + made.wire_mm + k_closed;
      RC_ASSERT(below(depths.sheath_mm, bedding));
      RC_ASSERT(below(depths.saw_mm, bedding));
      RC_ASSERT(below(depths.saw_limit_mm, bedding));
    } else {
      RC_ASSERT(below(depths.sheath_mm, least));
      RC_ASSERT(!depths.saw_mm && !depths.saw_limit_mm);
    }
    if (made.nominals.bedding_mm) {
      RC_ASSERT(below(depths.bedding_mm, cable::least_at_a_point_mm(*made.nominals.bedding_mm)));
    }
  }));
}

TEST_CASE("depths_of: whole tenths, and none deeper for a wider spread", "[property][strip]") {
  CHECK(rc::check("tenths", [] {
    Made made = any_cable();
    const strip::Depths before = strip::depths_of(made.cable, made.nominals);
    for (const auto& depth : {before.sheath_mm, before.saw_mm, before.saw_limit_mm}) {
      if (!depth) continue;
      RC_ASSERT(*depth > 0.09);
      RC_ASSERT(std::abs(*depth * 10.0 - std::round(*depth * 10.0)) < 1e-6);
    }
    if (before.saw_mm) RC_ASSERT(*before.saw_mm <= *before.saw_limit_mm);
    made.cable.sheath_od->expanded_mm += in_hundredths(1, 50);
    const strip::Depths after = strip::depths_of(made.cable, made.nominals);
    const auto no_deeper = [](const std::optional<double>& a, const std::optional<double>& b) {
      return !b || (a && *b <= *a);
    };
    RC_ASSERT(no_deeper(before.sheath_mm, after.sheath_mm));
    RC_ASSERT(no_deeper(before.saw_mm, after.saw_mm));
    RC_ASSERT(no_deeper(before.saw_limit_mm, after.saw_limit_mm));
  }));
}

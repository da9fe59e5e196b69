#include "cutback/strip/depths.hpp"

#include <catch2/catch.hpp>

#include "support/build_job.hpp"

using namespace cutback;
using strip::Depths;
using strip::depths_of;

namespace {

/// OD and bedding known to +- `u`, the armour exactly.
cable::Cable cable_of(cable::ArmourKind armour, double od_mm, double bedding_mm, double wire_mm,
                      double u) {
  cable::Cable cable;
  cable.armour = armour;
  cable.sheath_od = measure::from_datasheet(od_mm, u);
  cable.bedding = measure::from_datasheet(bedding_mm, u);
  cable.wire = measure::from_datasheet(wire_mm, 0.0);
  return cable;
}

}  // namespace

TEST_CASE("depths_of: the saw stops over the bedding of the thinnest point", "[unit][strip]") {
  // t = (20 - 14)/2 - 1.25 = 1.75; t_min = 0.8 x 1.75 - 0.2 = 1.2; limit 1.2 + 1.25 = 2.45.
  const Depths thick = depths_of(cable_of(cable::ArmourKind::wire, 20, 14, 1.25, 0), {});
  CHECK(*thick.sheath_mm == Approx(1.7));
  CHECK(*thick.saw_mm == Approx(2.3));  // 1.75 + 0.625 = 2.375
  CHECK(*thick.saw_limit_mm == Approx(2.4));
  // t = 1.6, t_min 1.08, wire 0.9: half of the wire lies at 2.05, the bedding from 1.98.
  const Depths thin = depths_of(cable_of(cable::ArmourKind::wire, 15, 10, 0.9, 0), {});
  CHECK(*thin.sheath_mm == Approx(1.6));
  CHECK(*thin.saw_mm == Approx(1.9));
  CHECK(thin.saw_mm == thin.saw_limit_mm);
}

TEST_CASE("depths_of: the spread of the readings and a thinner nominal go off the limit",
          "[unit][strip]") {
  const auto at = [](double u, std::optional<double> nominal) {
    return depths_of(cable_of(cable::ArmourKind::wire, 20, 14, 1.25, u), {.sheath_mm = nominal});
  };
  // The spread of (OD - bedding)/2 is u / sqrt(2).
  CHECK(*at(0.2, {}).saw_limit_mm == Approx(2.3));  // 2.45 - 0.141
  CHECK(*at(0.2, {}).spread_mm == Approx(0.1414).margin(0.0001));
  CHECK(*at(0, 1.5).saw_limit_mm == Approx(2.2));  // 0.8 x 1.5 - 0.2 + 1.25 = 2.25
  CHECK(*at(0, 1.8).saw_limit_mm == Approx(2.4));  // no thicker than it was measured
}

TEST_CASE("depths_of: over braid and tape the score stays under the thinnest point",
          "[unit][strip]") {
  // Braid 0.3: t = (16 - 12)/2 - 2 x 0.3 = 1.4; t_min = 0.92.
  const Depths braid = depths_of(cable_of(cable::ArmourKind::braid, 16, 12, 0.3, 0), {});
  CHECK(*braid.sheath_mm == Approx(0.9));
  CHECK_FALSE(braid.saw_mm.has_value());
  CHECK_FALSE(braid.saw_limit_mm.has_value());
  // Tape counts two thicknesses as well, strip one: t = 1.7, t_min 1.16.
  CHECK(depths_of(cable_of(cable::ArmourKind::tape, 16, 12, 0.3, 0), {}).sheath_mm ==
        braid.sheath_mm);
  CHECK(*depths_of(cable_of(cable::ArmourKind::strip, 16, 12, 0.3, 0), {}).sheath_mm ==
        Approx(1.1));
  // t = 1.5, t_min = 1.0: equal is not less.
  CHECK(*depths_of(cable_of(cable::ArmourKind::braid, 16, 12, 0.25, 0), {}).sheath_mm ==
        Approx(0.9));
}

TEST_CASE("depths_of: bedding and the sheath of an unarmoured cable", "[unit][strip]") {
  const cable::Cable wire = cable_of(cable::ArmourKind::wire, 20, 14, 1.25, 0);
  CHECK(*depths_of(wire, {.bedding_mm = 1.2}).bedding_mm == Approx(0.7));  // 0.76
  CHECK(*depths_of(wire, {.bedding_mm = 1.0}).bedding_mm == Approx(0.5));  // less than 0.6
  CHECK_FALSE(depths_of(wire, {.bedding_mm = 0.3}).bedding_mm.has_value());
  CHECK_FALSE(depths_of(wire, {}).bedding_mm.has_value());
  cable::Cable plain_cable;
  plain_cable.armour = cable::ArmourKind::none;
  plain_cable.sheath_od = measure::from_datasheet(12.0, 0.2);
  CHECK_FALSE(depths_of(plain_cable, {}).sheath_mm.has_value());
  CHECK(*depths_of(plain_cable, {.sheath_mm = 1.8}).sheath_mm == Approx(1.2));  // 1.24
}

TEST_CASE("depths_of: nothing where no sheath is left or a figure is missing", "[unit][strip]") {
  CHECK_FALSE(
      depths_of(cable_of(cable::ArmourKind::wire, 15, 13.2, 0.9, 0), {}).sheath_mm.has_value());
  CHECK(depths_of(cable_of(cable::ArmourKind::wire, 15, 12.4, 0.9, 0), {}).sheath_mm.has_value());
  cable::Cable no_wire = cable_of(cable::ArmourKind::wire, 15, 10, 0.9, 0);
  no_wire.wire.reset();
  CHECK_FALSE(depths_of(no_wire, {}).saw_mm.has_value());
  // More under the armour than over it: no spread either, for there is nothing that it is of.
  const Depths thick = depths_of(cable_of(cable::ArmourKind::wire, 15, 14, 0.9, 0.2), {});
  CHECK_FALSE(thick.sheath_mm.has_value());
  CHECK_FALSE(thick.saw_mm.has_value());
  CHECK_FALSE(thick.saw_limit_mm.has_value());
  CHECK_FALSE(thick.spread_mm.has_value());
}

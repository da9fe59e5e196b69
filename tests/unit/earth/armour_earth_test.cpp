#include "cutback/earth/armour_earth.hpp"

#include <catch2/catch.hpp>

#include "cutback/error.hpp"
#include "cutback/io/standards.hpp"

using namespace cutback;
using namespace cutback::earth;
using Catch::Contains;

namespace {

const tables::Standards& standards() {
  static const tables::Standards all = io::builtin_standards();
  return all;
}

EarthInput known() {
  EarthInput in;
  in.armour = ArmourArea{26.0, "given", 0.0};
  in.insulation = Insulation::xlpe;
  in.line_mm2 = 10.0;
  in.fault = {2.0, 0.2, {}};
  return in;
}

}  // namespace

TEST_CASE("counted_area: wires times the area of one", "[unit][earth]") {
  const ArmourArea area = counted_area(34, 1.25);
  CHECK(area.area_mm2 == Approx(41.72).margin(0.005));
  CHECK(area.origin == "34 wires of 1.25 mm");
  CHECK_THROWS_AS(counted_area(0, 1.25), InputError);
  CHECK_THROWS_AS(counted_area(34, 0.0), InputError);
}

TEST_CASE("check_armour_earth: nothing known says what is missing", "[unit][earth]") {
  const EarthResult result = check_armour_earth({}, standards());
  CHECK_FALSE(result.required_mm2.has_value());
  CHECK_FALSE(result.withstand_ka.has_value());
  CHECK_FALSE(result.resistance_ohm.has_value());
  CHECK(result.armour == Verdict::not_known);
  CHECK_THAT(result.area.says, Contains("count its wires"));
  CHECK_THAT(result.factor.says, Contains("insulation"));
  CHECK_THAT(result.adiabatic.says, Contains("fault current"));
  CHECK_THAT(result.table.says, Contains("line conductor"));
}

TEST_CASE("check_armour_earth: the sums are written out", "[unit][earth]") {
  const EarthResult result = check_armour_earth(known(), standards());
  CHECK(result.adiabatic.says == "sqrt(2000^2 x 0.2) / 46 = 19.45 mm2 needed; 26 mm2 is enough");
  CHECK_THAT(result.table.says, Contains("k1/k2 = 143/46"));
  CHECK_THAT(result.table.source, Contains("table 43.1") && Contains("table 54.4"));
  CHECK(result.withstand_s == 0.2);
  CHECK(*result.longest_s == Approx(0.3576).margin(5e-5));
}

TEST_CASE("check_armour_earth: a short fault needs the let-through energy", "[unit][earth]") {
  EarthInput in = known();
  in.fault = {2.0, 0.02, {}};
  CHECK(check_armour_earth(in, standards()).adiabatic.verdict == Verdict::not_known);
  in.fault.let_through_a2s = 500000.0;
  const EarthResult result = check_armour_earth(in, standards());
  CHECK(result.adiabatic.verdict == Verdict::fits);
  CHECK(*result.required_mm2 == Approx(15.37).margin(0.005));
  CHECK(result.withstand_s == 1.0);
}

TEST_CASE("check_armour_earth: over 5 s a pass is not given", "[unit][earth]") {
  EarthInput in = known();
  in.fault = {0.1, 6.0, {}};
  CHECK(check_armour_earth(in, standards()).adiabatic.verdict == Verdict::not_known);
  in.fault = {2.0, 6.0, {}};
  CHECK(check_armour_earth(in, standards()).adiabatic.verdict == Verdict::no_fit);
}

TEST_CASE("check_armour_earth: the error of an estimated area blurs the limit", "[unit][earth]") {
  EarthInput in = known();
  const double needed = *check_armour_earth(in, standards()).required_mm2;
  const auto with_area = [&](double area) {
    in.armour = ArmourArea{area, "worked out", 0.05};
    return check_armour_earth(in, standards()).adiabatic.verdict;
  };
  CHECK(with_area(needed / 0.94) == Verdict::fits);
  CHECK(with_area(needed * 1.01) == Verdict::marginal_inside);
  CHECK(with_area(needed * 0.99) == Verdict::marginal_outside);
  CHECK(with_area(needed * 0.90) == Verdict::no_fit);
}

TEST_CASE("check_armour_earth: a table that fails alone is no refusal", "[unit][earth]") {
  EarthInput in = known();
  in.fault = {};
  EarthResult result = check_armour_earth(in, standards());
  CHECK(result.table.verdict == Verdict::no_fit);
  CHECK(result.armour == Verdict::not_known);
  in.armour->area_mm2 = 32.0;
  result = check_armour_earth(in, standards());
  CHECK(result.armour == Verdict::fits);
}

TEST_CASE("check_armour_earth: same material as the line needs no factor", "[unit][earth]") {
  EarthInput in = known();
  in.armour_material = Material::aluminium;
  in.line_material = Material::aluminium;
  in.line_mm2 = 50.0;
  CHECK(*check_armour_earth(in, standards()).table_required_mm2 == 25.0);
  in.line_material = Material::copper;
  CHECK(*check_armour_earth(in, standards()).table_required_mm2 == Approx(25.0 * 143.0 / 85.0));
}

TEST_CASE("check_armour_earth: resistance cold and hot and its share of the loop",
          "[unit][earth]") {
  EarthInput in = known();
  in.length_m = 100.0;
  in.loop_ohm = 2.0;
  const EarthResult result = check_armour_earth(in, standards());
  CHECK(*result.resistance_ohm == Approx(0.138 * 1.048 * 100.0 / 26.0));
  CHECK(*result.resistance_hot_ohm == Approx(*result.resistance_ohm * 262.0 / 222.0));
  CHECK(*result.loop_share == Approx(*result.resistance_hot_ohm / 2.0));
  in.loop_ohm = 0.1;
  CHECK_THAT(check_armour_earth(in, standards()).resistance.says, Contains("cannot be"));
}

TEST_CASE("check_armour_earth: temperatures given take the place of the insulation",
          "[unit][earth]") {
  EarthInput in = known();
  in.start_degc = 50.0;
  in.final_degc = 200.0;
  const EarthResult result = check_armour_earth(in, standards());
  CHECK(result.k->k > 51.0);
  CHECK_THAT(result.factor.source, Contains("Annex A"));
  in.final_degc = 40.0;
  CHECK_THROWS_AS(check_armour_earth(in, standards()), InputError);
}

TEST_CASE("check_armour_earth: every unusable figure is named at once", "[unit][earth]") {
  EarthInput in = known();
  in.armour->area_mm2 = 0.0;
  in.fault.time_s = -1.0;
  in.start_degc = 60.0;
  try {
    (void)check_armour_earth(in, standards());
    FAIL("no error");
  } catch (const InputError& error) {
    CHECK(error.faults().size() == 3);
  }
}

TEST_CASE("parse_material and parse_insulation: the words", "[unit][earth]") {
  CHECK(parse_material("lead") == Material::lead);
  CHECK_FALSE(parse_material("brass").has_value());
  CHECK(parse_insulation("epr") == Insulation::xlpe);
  CHECK(parse_insulation("rubber85") == Insulation::rubber85);
  CHECK_FALSE(parse_insulation("paper").has_value());
}

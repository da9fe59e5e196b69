#include "cutback/earth/armour_earth.hpp"

#include <catch2/catch.hpp>
#include <cmath>

#include "cutback/earth/resistance.hpp"
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
  CHECK(result.adiabatic.says ==
        "sqrt(2000^2 x 0.2) / 46 = 19.45 mm2 needed; 26 mm2 (given) is enough");
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
  in.fault = {.current_ka = {}, .time_s = 0.2, .loop_ohm = 2.0, .u0_v = 230.0};
  EarthResult result = check_armour_earth(in, standards());
  const double cold = largest_resistance({.area_mm2 = 26.0}, standards()).ohm_per_km / 10.0;
  CHECK(*result.resistance_ohm == Approx(cold));
  // k 46 is for a rise from 80 degC, and the line's 143 from 90 degC.
  CHECK(*result.resistance_hot_ohm == Approx(cold * 282.0 / 222.0));
  CHECK(*result.loop_share == Approx(std::hypot(1.1 * *result.resistance_hot_ohm, 0.03) / 2.0));
  const double line = 0.183 * (234.5 + 90.0) / 254.5;
  CHECK(*result.path_ohm == Approx(std::hypot(line + 1.1 * *result.resistance_hot_ohm, 0.03)));
  CHECK(*result.required_mm2 == Approx(115.0 * std::sqrt(0.2) / 46.0));
  CHECK_THAT(result.adiabatic.says, Contains("230 V / 2 ohm = 115 A"));
  in.hot_degc = 60.0;
  CHECK(*check_armour_earth(in, standards()).resistance_hot_ohm == Approx(cold * 262.0 / 222.0));
  in.fault.loop_ohm = 0.1;
  result = check_armour_earth(in, standards());
  CHECK(result.resistance.verdict == Verdict::not_known);
  CHECK_THAT(result.resistance.says, Contains("cannot be"));
}

TEST_CASE("check_armour_earth: any fact of a fault asks for all of it", "[unit][earth]") {
  EarthInput in = known();
  in.armour->area_mm2 = 200.0;  // the table alone would be content
  const auto armour = [&](EarthFault fault) {
    in.fault = fault;
    return check_armour_earth(in, standards()).armour;
  };
  CHECK(armour({}) == Verdict::fits);
  CHECK(armour({.current_ka = 1.0, .time_s = 1.0}) == Verdict::fits);
  CHECK(armour({.current_ka = 1.0, .time_s = {}}) == Verdict::not_known);
  CHECK(armour({.current_ka = {}, .time_s = 1.0}) == Verdict::not_known);
  CHECK(armour({.current_ka = {}, .time_s = 1.0, .loop_ohm = 0.5}) == Verdict::not_known);
  CHECK(armour({.current_ka = {}, .time_s = {}, .loop_ohm = 0.5, .u0_v = 230.0}) ==
        Verdict::not_known);
  CHECK(armour({.current_ka = {}, .time_s = 1.0, .loop_ohm = 0.5, .u0_v = 230.0}) == Verdict::fits);
}

TEST_CASE("check_armour_earth: a fault asked and no area known is not known", "[unit][earth]") {
  EarthInput in = known();
  in.armour.reset();
  const EarthResult result = check_armour_earth(in, standards());
  CHECK(result.armour == Verdict::not_known);
  CHECK_THAT(result.adiabatic.says, Contains("19.45 mm2 needed; the area of the armour is not"));
}

TEST_CASE("check_armour_earth: an insulation that is not given is the one with the lowest k",
          "[unit][earth]") {
  EarthInput in = known();
  in.insulation_is_taken = true;
  CHECK_THAT(check_armour_earth(in, standards()).factor.says, Contains("lowest"));
  for (const Insulation other :
       {Insulation::pvc, Insulation::pvc90, Insulation::rubber60, Insulation::rubber85}) {
    for (const Material material : {Material::steel, Material::aluminium, Material::lead}) {
      const auto k = k_value(standards(), Use::armour, material, other, 10.0);
      if (k) CHECK(k->k >= k_value(standards(), Use::armour, material, Insulation::xlpe, 10.0)->k);
    }
  }
}

TEST_CASE("check_armour_earth: temperatures given take the place of the insulation",
          "[unit][earth]") {
  EarthInput in = known();
  in.start_degc = 50.0;
  in.final_degc = 200.0;
  const EarthResult result = check_armour_earth(in, standards());
  CHECK(result.k->k > 51.0);
  CHECK_THAT(result.factor.source, Contains("Annex A"));
  // BS 7671 table 54.4: steel armour of a cable with xlpe insulation up to 200 degC.
  in.final_degc = 500.0;
  const EarthResult hot = check_armour_earth(in, standards());
  CHECK(hot.k->k == result.k->k);
  CHECK_THAT(hot.k->says, Contains("stands no 500 degC"));
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

TEST_CASE("check_armour_earth: an area that is not known proves nothing", "[unit][earth]") {
  EarthInput in = known();
  in.armour.reset();
  const EarthResult result = check_armour_earth(in, standards());
  CHECK(result.adiabatic.verdict == Verdict::not_known);
  CHECK_THAT(result.adiabatic.says,
             Contains("19.45 mm2 needed") && Contains("the area of the armour is not known"));
  CHECK(result.table.verdict == Verdict::not_known);
  CHECK_THAT(result.table.says, Contains("the area of the armour is not known"));
  CHECK_FALSE(result.withstand_ka.has_value());
  CHECK_FALSE(result.longest_s.has_value());
}

TEST_CASE("check_armour_earth: a time that is not known proves nothing", "[unit][earth]") {
  EarthInput in = known();
  in.fault.time_s.reset();
  const EarthResult result = check_armour_earth(in, standards());
  CHECK(result.adiabatic.verdict == Verdict::not_known);
  CHECK(result.adiabatic.says == "the time for which the fault lasts is not given");
  CHECK_FALSE(result.required_mm2.has_value());
  // What the armour stands is then said for one second.
  CHECK(result.withstand_s == 1.0);
}

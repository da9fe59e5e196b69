// What a gland at an end comes to, whole: the checks, the gates, the advice, what is taken and
// lacks.
#include <catch2/catch.hpp>

#include "cutback/cable/plausibility.hpp"
#include "cutback/fit/absurd.hpp"
#include "cutback/fit/gates.hpp"
#include "cutback/fit/needs.hpp"
#include "cutback/fit/questions.hpp"
#include "cutback/fit/taken.hpp"
#include "support/build_job.hpp"
#include "support/whole.hpp"

using namespace cutback;
using fit::CheckName;
using test::whole;

namespace {

/// One check, or all of them where no name is given.
std::string checked_words(const job::JobInput& in, const gland::Gland& gland, CheckName name) {
  const auto fit = test::checked(in, gland);
  const fit::Check* const check = fit.find(name);
  return check == nullptr ? "" : whole(*check);
}

std::string gate(const fit::Gate& one) {
  return (one.low_mm ? plain(*one.low_mm, 3) : "-") + " to " +
         (one.high_mm ? plain(*one.high_mm, 3) : "-");
}

std::string gates_words(const job::JobInput& in, const gland::Gland& gland) {
  const job::Job job = test::resolved(in);
  const fit::Gates gates = fit::gates_of(fit::ask(job, test::standards()), gland);
  std::string text = "sheath " + gate(gates.sheath) + ", bedding " + gate(gates.bedding);
  if (gates.sheath_apart_mm) text += ", sheath apart " + plain(*gates.sheath_apart_mm, 3);
  if (gates.bedding_apart_mm) text += ", bedding apart " + plain(*gates.bedding_apart_mm, 3);
  for (const fit::WireGate& wire : gates.wire) {
    text += " | wire " + (wire.nominal_mm ? plain(*wire.nominal_mm) + ": " : "") + gate(wire.gate);
    if (wire.least_between_mm) text += " least " + plain(*wire.least_between_mm, 3);
    if (wire.most_between_mm) text += " most " + plain(*wire.most_between_mm, 3);
  }
  return text + (gates.possible() ? "" : " | impossible");
}

std::string assumed_words(const job::JobInput& in, const gland::Gland* gland,
                          fit::Purpose purpose) {
  job::Job job = test::resolved(in);
  job.assumed.clear();
  std::string text;
  for (const Assumption& each :
       fit::assumptions(fit::ask(job, test::standards(), {.purpose = purpose}), gland)) {
    text +=
        fmt::format("{}{} = {} ({})", text.empty() ? "" : "; ", each.fact, each.taken, each.why);
  }
  return text;
}

}  // namespace

TEST_CASE("seals and armour, whole", "[unit][fit]") {
  job::JobInput in = test::small_cable();
  gland::Gland gland = test::small_gland();
  // U of two crossed readings of 15 mm by a caliper of 0.05 mm is 0.063 mm.
  CHECK(checked_words(in, gland, CheckName::outer_seal) ==
        "fits: sheath 15.00 +/- 0.07 mm, outer seal 11 to 16 mm: inside by 0.93 mm | value 15 low "
        "11 high 16 margin* 0.937 p 1 | interval D +/- U inside the gland's range (JCGM 106:2012 "
        "clause 8, guard band U); mean of 2 readings at the place where the gland will sit (JCGM "
        "100:2008 4.3.7, F.2.2.1)");
  CHECK(checked_words(in, gland, CheckName::inner_seal) ==
        "fits: bedding 10.00 +/- 0.07 mm, inner seal 8 to 12 mm: inside by 1.93 mm | value 10 low "
        "8 high 12 margin* 1.937 p 1 | interval D +/- U inside the gland's range (JCGM 106:2012 "
        "clause 8, guard band U); mean of 2 readings at the place where the gland will sit (JCGM "
        "100:2008 4.3.7, F.2.2.1)");
  CHECK(checked_words(in, gland, CheckName::bore) ==
        "fits: bedding 10.00 +/- 0.07 mm, bore of the armour cone up to 12.5 mm: inside by 2.43 mm "
        "| value 10 high 12.5 margin* 2.437 p 1 | interval D +/- U inside the gland's range (JCGM "
        "106:2012 clause 8, guard band U); mean of 2 readings at the place where the gland will "
        "sit (JCGM 100:2008 4.3.7, F.2.2.1)");
  CHECK(checked_words(in, gland, CheckName::armour) ==
        "fits: wire 0.90 mm is nominal 0.9 mm, clamp takes 0.9 to 1.25 mm: grips | value 0.9 low "
        "0.9 high 1.25 margin 0 p 1 | nominal size by its band (CENELEC HD 604 S1/A1, armour wire "
        "tolerances) against the gland's range of nominal sizes");
  CHECK(checked_words(in, gland, CheckName::build_up) ==
        "fits: sheath (15 - 10)/2 - 0.9 = 1.60 mm | value 1.6 low 0.92 high 2.8 margin 0.68 | "
        "layers add up: OD = bedding + 2 (armour + sheath)");
  gland.outer = {15.05, 16.0};
  CHECK(checked_words(in, gland, CheckName::outer_seal) ==
        "marginal-outside: sheath 15.00 +/- 0.07 mm, outer seal 15.05 to 16 mm: outside, but only "
        "just | value 15 low 15.05 high 16 margin* -0.113 p 0.061 | lacks: sheath again, it is "
        "near a limit <> | interval D +/- U inside the gland's range (JCGM 106:2012 clause 8, "
        "guard band U); mean of 2 readings at the place where the gland will sit (JCGM 100:2008 "
        "4.3.7, F.2.2.1)");
  gland.outer = {15.1, {}};
  CHECK(checked_words(in, gland, CheckName::outer_seal) ==
        "no-fit: sheath 15.00 +/- 0.07 mm, outer seal from 15.1 mm: outside | value 15 low 15.1 "
        "margin* -0.163 p 0.001 | interval D +/- U inside the gland's range (JCGM 106:2012 clause "
        "8, guard band U); mean of 2 readings at the place where the gland will sit (JCGM 100:2008 "
        "4.3.7, F.2.2.1)");
  gland.outer = {{}, 14.98};
  CHECK(
      checked_words(in, gland, CheckName::outer_seal) ==
      "marginal-outside: sheath 15.00 +/- 0.07 mm, outer seal up to 14.98 mm: outside, but only "
      "just | value 15 high 14.98 margin* -0.083 p 0.268 | lacks: sheath again, it is near a limit "
      "<> | interval D +/- U inside the gland's range (JCGM 106:2012 clause 8, guard band U); mean "
      "of 2 readings at the place where the gland will sit (JCGM 100:2008 4.3.7, F.2.2.1)");
  gland.outer = {};
  CHECK(checked_words(in, gland, CheckName::outer_seal) ==
        "not-known: sheath 15.00 +/- 0.07 mm, outer seal an unstated range: not known; no limit is "
        "stated | value 15 p 0 | interval D +/- U inside the gland's range (JCGM 106:2012 clause "
        "8, guard band U); mean of 2 readings at the place where the gland will sit (JCGM 100:2008 "
        "4.3.7, F.2.2.1)");
  gland = test::small_gland();
  gland.inner.reset();
  CHECK(checked_words(in, gland, CheckName::bore) ==
        "fits: bedding 10.00 +/- 0.07 mm, bore of the armour cone up to 12.5 mm: inside by 2.43 mm "
        "| value 10 high 12.5 margin* 2.437 p 1 | interval D +/- U inside the gland's range (JCGM "
        "106:2012 clause 8, guard band U); mean of 2 readings at the place where the gland will "
        "sit (JCGM 100:2008 4.3.7, F.2.2.1)");
  gland.bore_mm.reset();
  CHECK(checked_words(in, gland, CheckName::bore) ==
        "not-known: the gland has no inner seal, and what its armour cone lets through is not "
        "stated (bore_mm) | | lacks: bore of the gland <bore_mm> | the gland list");
  gland = test::small_gland();
  gland.bore_mm.reset();
  CHECK(checked_words(in, gland, CheckName::bore) == "");
  gland.armour = cable::ArmourKind::braid;
  CHECK(checked_words(in, gland, CheckName::armour) ==
        "no-fit: the gland clamps braid armour, the cable has wire | | kind of armour against the "
        "gland list");
  gland.armour = cable::ArmourKind::none;
  CHECK(checked_words(in, gland, CheckName::armour) ==
        "no-fit: the gland has no armour clamp, the cable has wire armour | | kind of armour "
        "against the gland list");
  gland = test::small_gland();
  gland.armour_clamp = {1.25, 1.6};
  CHECK(checked_words(in, gland, CheckName::armour) ==
        "no-fit: wire 0.90 mm is nominal 0.9 mm, clamp takes 1.25 to 1.6 mm: does not grip | value "
        "0.9 low 1.25 high 1.6 margin* -0.35 p 0 | nominal size by its band (CENELEC HD 604 S1/A1, "
        "armour wire tolerances) against the gland's range of nominal sizes");
  gland = test::small_gland();
  in.armour_mm = "1.05";
  CHECK(
      checked_words(in, gland, CheckName::armour) ==
      "fits: wire 1.05 +/- 0.07 mm, clamp 0.9 to 1.25 mm: inside by 0.08 mm; not a standard wire: "
      "look twice, it may be an imported cable | value 1.05 low 0.9 high 1.25 margin* 0.087 p 1 | "
      "interval D +/- U inside the gland's range (JCGM 106:2012 clause 8, guard band U); mean of 1 "
      "reading at the place where the gland will sit (JCGM 100:2008 4.3.7, F.2.2.1)");
  in.armour_mm.reset();
  CHECK(checked_words(in, gland, CheckName::armour) ==
        "not-known: the armour wire is not given: measure one wire, cleaned of zinc lumps | low "
        "0.9 high 1.25 | lacks: wire <at the end armour_mm> | interval D +/- U inside the gland's "
        "range (JCGM 106:2012 clause 8, guard band U)");
  in.sheath_od_mm.reset();
  in.bedding_mm.reset();
  CHECK(checked_words(in, gland, CheckName::outer_seal) ==
        "not-known: the sheath diameter is not given | low 11 high 16 | lacks: sheath <at the end "
        "sheath_od_mm> | interval D +/- U inside the gland's range (JCGM 106:2012 clause 8, guard "
        "band U)");
  CHECK(checked_words(in, gland, CheckName::inner_seal) ==
        "not-known: the bedding diameter is not given: measure it under the armour | low 8 high 12 "
        "| lacks: bedding <at the end bedding_mm> | interval D +/- U inside the gland's range "
        "(JCGM 106:2012 clause 8, guard band U)");
  CHECK(checked_words(in, gland, CheckName::build_up) ==
        "not-known: whether the layers add up is not known: sheath and bedding and wire not given "
        "| | lacks: sheath <at the end sheath_od_mm>, bedding <at the end bedding_mm>, wire <at "
        "the end armour_mm> | layers add up: OD = bedding + 2 (armour + sheath)");
  in.cores = 3;
  in.csa_mm2 = 2.5;
  CHECK(checked_words(in, gland, CheckName::outer_seal) ==
        "marginal-inside: sheath 14.2 +/- 1.5 mm, outer seal 11 to 16 mm: inside, but not proven; "
        "an estimate alone passes no gland; measure before cutting | value 14.155 low 11 high 16 "
        "margin* 0.345 p 1 | lacks: sheath <at the end sheath_od_mm> | interval D +/- U inside the "
        "gland's range (JCGM 106:2012 clause 8, guard band U); cable diameter model, fitted to HD "
        "604 S1/A1");
  CHECK(checked_words(in, gland, CheckName::armour) ==
        "marginal-inside: wire 0.90 mm is nominal 0.9 mm, clamp takes 0.9 to 1.25 mm: grips; an "
        "estimate alone passes no gland; measure before cutting | value 0.9 low 0.9 high 1.25 "
        "margin 0 p 0 | lacks: wire <at the end armour_mm> | nominal size by its band (CENELEC HD "
        "604 S1/A1, armour wire tolerances) against the gland's range of nominal sizes");
  CHECK(checked_words(in, gland, CheckName::build_up) ==
        "marginal-inside: sheath (14.155 - 9.555)/2 - 0.9 = 1.40 mm, with an estimate among the "
        "three: measure before cutting | value 1.4 low 0.92 high 2.8 margin 0.48 | lacks: sheath "
        "<at the end sheath_od_mm>, bedding <at the end bedding_mm>, wire <at the end armour_mm> | "
        "layers add up: OD = bedding + 2 (armour + sheath)");
  in = test::small_cable();
  in.armour = cable::ArmourKind::braid;
  in.armour_mm = "0.3";
  gland.armour = cable::ArmourKind::braid;
  gland.armour_clamp = {0.2, 0.5};
  CHECK(checked_words(in, gland, CheckName::armour) ==
        "fits: wire 0.30 +/- 0.07 mm, clamp 0.2 to 0.5 mm: inside by 0.03 mm | value 0.3 low 0.2 "
        "high 0.5 margin* 0.037 p 0.999 | interval D +/- U inside the gland's range (JCGM 106:2012 "
        "clause 8, guard band U); mean of 1 reading at the place where the gland will sit (JCGM "
        "100:2008 4.3.7, F.2.2.1)");
  CHECK(checked_words(in, gland, CheckName::build_up) ==
        "fits: sheath (15 - 10)/2 - 2 x 0.3 = 1.90 mm | value 1.9 low 0.92 high 2.8 margin 0.9 | "
        "layers add up: OD = bedding + 2 (armour + sheath)");
  in = test::small_cable();
  in.sheath_od_mm = "15.0";
  CHECK(
      checked_words(in, test::small_gland(), CheckName::outer_seal) ==
      "marginal-inside: sheath 15.00 +/- 0.07 mm, outer seal 11 to 16 mm: inside, but not proven; "
      "one reading does not show how oval the cable is: take a second reading at right angles | "
      "value 15 low 11 high 16 margin* 0.937 p 1 | lacks: sheath once more, at right angles <> | "
      "interval D +/- U inside the gland's range (JCGM 106:2012 clause 8, guard band U); mean of 1 "
      "reading at the place where the gland will sit (JCGM 100:2008 4.3.7, F.2.2.1)");
  in.sheath_od_mm = "12.9+13.1";
  CHECK(
      checked_words(in, test::small_gland(), CheckName::build_up) ==
      "marginal-inside: sheath (13 - 10)/2 - 0.9 = 0.60 mm: the readings leave a sheath of 0.6 +/- "
      "0.1 mm; 1.4 mm nominal is at least 0.92 mm at a point. Repeat: sheath OD, bedding and wire "
      "| value 0.6 low 0.92 high 2.8 margin -0.32 | lacks: sheath OD, bedding and wire again <> | "
      "layers add up: OD = bedding + 2 (armour + sheath); HD 604 S1/A1 (bedding: nominal less 20 % "
      "and 0.2 mm at a point); the same for an oversheath over armour is from memory");
  in.armour = cable::ArmourKind::none;
  in.armour_mm.reset();
  in.bedding_mm.reset();
  CHECK(checked_words(in, test::small_gland(), CheckName::armour) ==
        "no-fit: the gland clamps wire armour, the cable has none | | kind of armour against the "
        "gland list");
  gland = test::small_gland();
  gland.armour = cable::ArmourKind::none;
  CHECK(checked_words(in, gland, CheckName::armour) ==
        "fits: neither the cable nor the gland has armour parts | | kind of armour against the "
        "gland list");
}

TEST_CASE("figures that cannot be, whole", "[unit][fit]") {
  gland::Gland gland = test::small_gland();
  const auto why = [&](fit::Figure figure) {
    return fit::why_absurd(figure, gland, test::standards());
  };
  gland.outer = {10.0, 30.0};
  CHECK(why(fit::Figure::outer_seal).empty());
  gland.outer = {10.0, 30.1};
  CHECK(why(fit::Figure::outer_seal) ==
        "outer seal 10 to 30.1 mm: no ring seals over more than 20 mm");
  CHECK(
      checked_words(test::small_cable(), gland, CheckName::outer_seal) ==
      "not-known: the list has a figure that cannot be: outer seal 10 to 30.1 mm: no ring seals "
      "over more than 20 mm | | lacks: a figure of the gland list that can be <> | the gland list");
  gland = test::small_gland();
  gland.inner = measure::Range{12.5, 20.0};
  CHECK(why(fit::Figure::inner_seal).empty());
  gland.inner = measure::Range{12.6, 20.0};
  CHECK(why(fit::Figure::inner_seal) == "inner seal from 12.6 mm: the bore is 12.5 mm");
  CHECK(checked_words(test::small_cable(), gland, CheckName::inner_seal) ==
        "not-known: the list has a figure that cannot be: inner seal from 12.6 mm: the bore is "
        "12.5 mm | | lacks: a figure of the gland list that can be <> | the gland list");
  gland.inner = measure::Range{1.0, 21.1};
  CHECK(why(fit::Figure::inner_seal) ==
        "inner seal 1 to 21.1 mm: no ring seals over more than 20 mm");
  gland = test::small_gland();
  gland.bore_mm = 18.1;
  CHECK(why(fit::Figure::bore).empty());
  gland.bore_mm = 18.2;
  CHECK(why(fit::Figure::bore) == "bore 18.2 mm: its thread M20 leaves 18.15 mm");
  CHECK(checked_words(test::small_cable(), gland, CheckName::bore) ==
        "not-known: the list has a figure that cannot be: bore 18.2 mm: its thread M20 leaves "
        "18.15 mm | | lacks: a figure of the gland list that can be <> | the gland list");
  gland.armour_clamp = {0.9, 4.2};
  CHECK(why(fit::Figure::clamp).empty());
  gland.armour_clamp = {0.9, 4.3};
  CHECK(why(fit::Figure::clamp) ==
        "armour clamp up to 4.3 mm: no armour wire is thicker than 4 mm");
  CHECK(
      checked_words(test::small_cable(), gland, CheckName::armour) ==
      "not-known: the list has a figure that cannot be: armour clamp up to 4.3 mm: no armour wire "
      "is thicker than 4 mm | | lacks: a figure of the gland list that can be <> | the gland list");
  gland.entry_length_mm = 4.5;
  CHECK(why(fit::Figure::thread_length).empty());
  gland.entry_length_mm = 4.4;
  CHECK(why(fit::Figure::thread_length) ==
        "entry thread 4.4 mm long: three turns of M20 take 4.5 mm");
  gland.washer_mm = 10.0;
  CHECK(why(fit::Figure::washer).empty());
  gland.washer_mm = 10.1;
  CHECK(why(fit::Figure::washer) == "sealing washer 10.1 mm thick: no more than 10 mm");
  gland.exposed_armour_mm = 100.0;
  CHECK(why(fit::Figure::exposed_armour).empty());
  gland.exposed_armour_mm = 100.1;
  CHECK(why(fit::Figure::exposed_armour) == "exposed armour 100.1 mm: no gland clamps over 100 mm");
  gland.bedding_past_mm = 60.0;
  CHECK(why(fit::Figure::bedding_past).empty());
  gland.bedding_past_mm = 60.1;
  CHECK(why(fit::Figure::bedding_past) == "bedding 60.1 mm past the thread: no more than 60 mm");
  const std::vector<gland::Gland> many(5, gland);
  const auto list = fit::absurdities(many, test::standards());
  REQUIRE(list.size() == 21);
  CHECK(list.front() ==
        "gland TEST-20: bore 18.2 mm: its thread M20 leaves 18.15 mm; counted as not known");
  CHECK(list.back() == "and 10 more figures of the list that cannot be");
  const std::vector<gland::Gland> few(3, gland);
  CHECK(fit::absurdities(few, test::standards()).size() == 18);
}

TEST_CASE("gates, whole", "[unit][fit]") {
  job::JobInput in = test::small_cable();
  gland::Gland gland = test::small_gland();
  // 11 + 0.063 and 16 - 0.063, rounded inwards to a tenth; U of one reading of a wire is 0.06 mm.
  CHECK(gates_words(in, gland) ==
        "sheath 11.1 to 15.9, bedding 8.1 to 11.9, sheath apart 1.6, bedding apart 1.2 | wire 0.9: "
        "0.85 to 0.95 least 3.8");
  in.armour_mm.reset();
  CHECK(gates_words(in, gland) ==
        "sheath 11.1 to 15.9, bedding 8.1 to 11.9, sheath apart 1.6, bedding apart 1.2 | wire 0.9: "
        "0.85 to 0.95 least 3.8 | wire 1.25: 1.18 to 1.32 least 4.5");
  in.armour_mm = "1.05";
  CHECK(gates_words(in, gland) ==
        "sheath 11.1 to 15.9, bedding 8.1 to 11.9, sheath apart 1.6, bedding apart 1.2 | wire 1.02 "
        "to 1.11 least 4.3");
  gland.armour_clamp = {1.25, {}};
  in.armour_mm.reset();
  CHECK(gates_words(in, gland) ==
        "sheath 11.1 to 15.9, bedding 8.1 to 11.9, sheath apart 1.6, bedding apart 1.2 | wire "
        "1.25: 1.18 to 1.32 least 4.5 | wire 1.6: 1.51 to 1.69 least 5.2 | wire 2: 1.9 to 2.1 "
        "least 6 | wire 2.5: 2.37 to 2.63 least 7 | wire 3.15: 2.99 to 3.31 least 8.3");
  gland = test::small_gland();
  gland.outer = {11.0, 11.1};
  CHECK(gates_words(in, gland) ==
        "sheath 11.1 to 11, bedding 8.1 to 11.9, bedding apart 1.2 | wire 0.9: 0.85 to 0.95 least "
        "3.5 | wire 1.25: 1.18 to 1.32 least 4.2 | impossible");
  gland.outer = {24.9, 40.0};
  in.sheath_od_mm = "30.0+30.0";
  in.bedding_mm = "24.0+24.0";
  CHECK(gates_words(in, gland) ==
        "sheath 25.2 to 39.7, bedding 8.1 to 11.9, sheath apart 3.7, bedding apart 1.2 | wire 0.9: "
        "0.85 to 0.95 least 4.8 | wire 1.25: 1.18 to 1.32 least 5.5");
  in = test::small_cable();
  in.cores = 3;
  in.csa_mm2 = 2.5;
  in.sheath_od_mm.reset();
  in.bedding_mm.reset();
  in.armour_mm.reset();
  CHECK(gates_words(in, test::small_gland()) ==
        "sheath 12.7 to 15.6, bedding 8.6 to 10.5, sheath apart 1.9, bedding apart 1.2 | wire 0.9: "
        "0.85 to 0.95 least 3.7 most 7.4");
  in = test::small_cable();
  in.armour = cable::ArmourKind::braid;
  in.armour_mm = "0.3";
  gland = test::small_gland();
  gland.armour = cable::ArmourKind::braid;
  gland.armour_clamp = {0.2, 0.5};
  CHECK(gates_words(in, gland) ==
        "sheath 11.1 to 15.9, bedding 8.1 to 11.9, sheath apart 1.6, bedding apart 1.2 | wire 0.27 "
        "to 0.43 least 3.8");
  in.armour = cable::ArmourKind::none;
  in.armour_mm.reset();
  in.bedding_mm.reset();
  gland.armour = cable::ArmourKind::none;
  CHECK(gates_words(in, gland) == "sheath 11.1 to 15.9, bedding - to -, sheath apart 1.6");
}

TEST_CASE("advice, whole", "[unit][fit]") {
  const auto advised = [](const job::JobInput& in, const gland::Gland& gland) {
    const job::Job job = test::resolved(in);
    const fit::Advice advice =
        fit::advise(job, fit::check_gland(fit::ask(job, test::standards()), gland));
    return "order: " + advice.order_says + " | nearest: " + advice.nearest_says +
           " | measure: " + advice.measure_says;
  };
  job::JobInput in = test::small_cable();
  gland::Gland gland = test::small_gland();
  gland.outer = {11.0, 14.6};
  CHECK(
      advised(in, gland) ==
      "order: a gland with thread M20, outer seal over 14.9 to 15.1 mm, inner seal over 9.9 to "
      "10.1 mm, clamp for 0.9 mm wire | nearest: TEST-20: outer seal 0.4 mm too small | measure: ");
  gland.outer = {15.6, 20.0};
  gland.inner = measure::Range{10.4, 12.0};
  CHECK(advised(in, gland) ==
        "order: a gland with thread M20, outer seal over 14.9 to 15.1 mm, inner seal over 9.9 to "
        "10.1 mm, clamp for 0.9 mm wire | nearest: TEST-20: outer seal 0.6 mm too large; inner "
        "seal 0.4 mm too large | measure: ");
  gland = test::small_gland();
  gland.outer = {15.05, 20.0};
  CHECK(advised(in, gland) ==
        "order: a gland with thread M20, outer seal over 14.9 to 15.1 mm, inner seal over 9.9 to "
        "10.1 mm, clamp for 0.9 mm wire | nearest: TEST-20: outer seal 0.1 mm too large | measure: "
        "the sheath again where the gland will sit, twice at right angles, with a finer caliper");
  in.sheath_od_mm = "15.0";
  CHECK(advised(in, gland) ==
        "order: a gland with thread M20, outer seal over 14.9 to 15.1 mm, inner seal over 9.9 to "
        "10.1 mm, clamp for 0.9 mm wire | nearest: TEST-20: outer seal 0.1 mm too large | measure: "
        "the sheath: one reading does not show how oval the cable is: take a second reading at "
        "right angles");
  in.sheath_od_mm.reset();
  CHECK(advised(in, gland) ==
        "order: a gland with thread M20, outer seal over 14.1 to 15.1 mm, inner seal over 9.9 to "
        "10.1 mm, clamp for 0.9 mm wire | nearest: TEST-20: outer seal 0.5 mm too large; not "
        "measured: sheath | measure: the sheath, twice at right angles where the gland will sit: "
        "it is not measured yet");
  in = test::small_cable();
  in.bedding_mm = "12.9+13.1";
  CHECK(advised(in, gland) ==
        "order:  | nearest: TEST-20: outer seal 0.1 mm too large; inner seal 1.0 mm too small; "
        "bore 0.5 mm too small; sheath (15 - 13)/2 - 0.9 = 0.10 mm: the readings leave a sheath of "
        "0.1 +/- 0.1 mm; 1.4 mm nominal is at least 0.92 mm at a point. Repeat: sheath OD, bedding "
        "and wire | measure: again: sheath OD, bedding and wire; the readings leave a sheath of "
        "0.1 +/- 0.1 mm; 1.4 mm nominal is at least 0.92 mm at a point");
  in = test::small_cable();
  in.entry = "M16";
  CHECK(advised(in, test::small_gland()) ==
        "order: a gland with thread M16, outer seal over 14.9 to 15.1 mm, inner seal over 9.9 to "
        "10.1 mm, clamp for 0.9 mm wire | nearest: TEST-20: gland thread M20 does not suit the "
        "entry M16 | measure: ");
  in.entry.reset();
  in.armour_mm = "2.0";
  in.sheath_od_mm = "17.4+17.4";
  CHECK(advised(in, test::small_gland()) ==
        "order: a gland, outer seal over 17.3 to 17.5 mm, inner seal over 9.9 to 10.1 mm, clamp "
        "for 2 mm wire | nearest: TEST-20: outer seal 1.4 mm too small; armour clamp 0.8 mm too "
        "small; not given: entry | measure: ");
  in.armour_mm.reset();
  CHECK(
      advised(in, test::small_gland()) ==
      "order: a gland, outer seal over 17.3 to 17.5 mm, inner seal over 9.9 to 10.1 mm | nearest: "
      "TEST-20: outer seal 1.4 mm too small; not measured: wire; not given: entry | measure: the "
      "wire, twice at right angles where the gland will sit: it is not measured yet");
  in = test::small_cable();
  in.protection = area::Protection::d;
  in.zone = area::Zone::zone_1;
  CHECK(advised(in, test::small_gland()) ==
        "order: a gland with thread M20, outer seal over 14.9 to 15.1 mm, inner seal over 9.9 to "
        "10.1 mm, clamp for 0.9 mm wire; it must also pass: protection, level, group, ingress, "
        "temperature, sealing; but no gland mends the entry: a flameproof entry is tapped: a "
        "clearance hole is not permitted | nearest: TEST-20: a flameproof entry is tapped: a "
        "clearance hole is not permitted; an enclosure of type d is asked for; the gland list does "
        "not state protection; an enclosure of type d has level Gb: it serves level Gb for zone 1; "
        "level Gb for zone 1 is asked for; the gland list does not state level; not given: gas "
        "group; not given: IP; it meets -20 degC; the gland list does not state temp_min_c; it "
        "meets 40 degC; the gland list does not state temp_max_c; it does not seal round the "
        "cores, as is demanded; not known, and could change that: circular, compact, bedding_made, "
        "fillers, ignition_source, length_m | measure: ");
  in = test::small_cable();
  in.current_ka = 20.0;
  in.time_s = 1.0;
  in.cores = 3;
  in.csa_mm2 = 2.5;
  CHECK(
      advised(in, test::small_gland()) ==
      "order: a gland with thread M20, outer seal over 14.9 to 15.1 mm, inner seal over 9.9 to "
      "10.1 mm, clamp for 0.9 mm wire; it must also pass: fault; but no gland mends the armour: it "
      "is too thin for the earth fault | nearest: TEST-20: the armour is too thin for the earth "
      "fault: sqrt(20000^2 x 1) / 46 = 434.79 mm2 needed; 20.35 mm2 (32 wires of 0.9 mm on a "
      "bedding of 10 mm) is too little; a separate protective conductor is to be decided first; "
      "the gland list states no earth-fault rating: check against the gland's papers | measure: ");
  in = test::small_cable();
  in.armour = cable::ArmourKind::none;
  in.armour_mm.reset();
  in.bedding_mm.reset();
  CHECK(advised(in, test::small_gland()) ==
        "order: a gland with thread M20, outer seal over 14.9 to 15.1 mm, for unarmoured cable | "
        "nearest: TEST-20: the gland clamps wire armour, the cable has none | measure: ");
}

TEST_CASE("what is taken where nothing is said, whole", "[unit][fit]") {
  gland::Gland gland = test::small_gland();
  job::JobInput in = test::small_cable();
  CHECK(assumed_words(in, nullptr, fit::Purpose::fit) ==
        "tag_mm = 0 mm (no earth tag where none is stated); serrated_mm = 0 mm (none where none is "
        "stated); undercut_mm = 0 mm (none where none is stated); hole_dia_mm = one made for the "
        "thread (common practice, no source)");
  CHECK(assumed_words(in, &gland, fit::Purpose::sheet) ==
        "tag_mm = 0 mm (no earth tag where none is stated); serrated_mm = 0 mm (none where none is "
        "stated); undercut_mm = 0 mm (none where none is stated); hole_dia_mm = one made for the "
        "thread (common practice, no source); tag_mm = bare metal under the locknut of a metal "
        "wall (a hold point of the sheet); sealing = compression (the list says of glands with "
        "compound that they are)");
  in.washer_mm.reset();
  in.locknut_mm.reset();
  gland.washer_mm = 1.0;
  gland.locknut_mm = 3.0;
  gland.bore_mm.reset();
  CHECK(assumed_words(in, &gland, fit::Purpose::fit) ==
        "washer_mm = the gland's own (the gland list); locknut_mm = the gland's own (the gland "
        "list); tag_mm = 0 mm (no earth tag where none is stated); serrated_mm = 0 mm (none where "
        "none is stated); undercut_mm = 0 mm (none where none is stated); hole_dia_mm = one made "
        "for the thread (common practice, no source); sealing = compression (the list says of "
        "glands with compound that they are); bore_mm = upper limit of the inner seal (the seal "
        "lies in the same bore)");
  in.hole = entry::Hole::threaded;
  CHECK(assumed_words(in, &gland, fit::Purpose::fit) ==
        "washer_mm = the gland's own (the gland list); locknut_mm = the gland's own (the gland "
        "list); tag_mm = 0 mm (no earth tag where none is stated); serrated_mm = 0 mm (none where "
        "none is stated); chamfer_mm = 2 mm (the deepest that IEC 60079-1 allows a flameproof "
        "entry); undercut_mm = 0 mm (none where none is stated); sealing = compression (the list "
        "says of glands with compound that they are); bore_mm = upper limit of the inner seal (the "
        "seal lies in the same bore)");
  gland.entry_thread = *entry::parse_thread("NPT 1/2");
  CHECK(assumed_words(in, &gland, fit::Purpose::fit) ==
        "washer_mm = the gland's own (the gland list); locknut_mm = the gland's own (the gland "
        "list); tag_mm = 0 mm (no earth tag where none is stated); serrated_mm = 0 mm (none where "
        "none is stated); chamfer_mm = 0 mm (a taper thread is gauged from its face); undercut_mm "
        "= 0 mm (none where none is stated); sealing = compression (the list says of glands with "
        "compound that they are); bore_mm = upper limit of the inner seal (the seal lies in the "
        "same bore)");
  in.tag_mm = 1.0;
  in.serrated_mm = 0.5;
  in.chamfer_mm = 0.0;
  in.undercut_mm = 0.0;
  CHECK(assumed_words(in, &gland, fit::Purpose::sheet) ==
        "washer_mm = the gland's own (the gland list); locknut_mm = the gland's own (the gland "
        "list); sealing = compression (the list says of glands with compound that they are); "
        "bore_mm = upper limit of the inner seal (the seal lies in the same bore)");
  in = {};
  CHECK(assumed_words(in, nullptr, fit::Purpose::fit) == "");
  in.zone = area::Zone::zone_1;
  CHECK(assumed_words(in, nullptr, fit::Purpose::fit) ==
        "tag_mm = 0 mm (no earth tag where none is stated); serrated_mm = 0 mm (none where none is "
        "stated); undercut_mm = 0 mm (none where none is stated); hole_dia_mm = one made for the "
        "thread (common practice, no source); level = what zone 1 asks for (IEC 60079-14, Table "
        "1); ambient_min_c = -20 degC (the ambient of equipment that is not marked for another "
        "(IEC 60079-0)); ambient_max_c = 40 degC (the ambient of equipment that is not marked for "
        "another (IEC 60079-0)); entry_temp_c = at most 70 degC (above it the equipment is marked "
        "(IEC 60079-0, 16.6)); branch_temp_c = at most 80 degC (above it the equipment is marked "
        "(IEC 60079-0, 16.6)); cable_max_c = what entry, branching and place come to (up to 70 and "
        "80 degC nothing of a cable is asked (IEC 60079-0, 16.6))");
}

TEST_CASE("which questions are asked, whole", "[unit][fit]") {
  const auto skipped = [](const job::JobInput& in, fit::Purpose purpose = fit::Purpose::fit,
                          bool place = false) {
    const job::Job job = test::resolved(in);
    std::string text;
    for (const fit::Topic topic :
         fit::not_asked(fit::ask(job, test::standards(), {purpose, place}))) {
      text += (text.empty() ? "" : " ") + std::string(to_string(topic));
    }
    return text;
  };
  CHECK(skipped({}) == "entry joint place earth fault");
  CHECK(skipped({}, fit::Purpose::schedule) == "joint place earth fault");
  CHECK(skipped({}, fit::Purpose::sheet) == "place fault");
  CHECK(skipped({}, fit::Purpose::fit, true) == "entry joint earth fault");
  job::JobInput in;
  in.entry = "M20";
  CHECK(skipped(in) == "joint place earth fault");
  in.entry = "to-suit";
  CHECK(skipped(in) == "joint place earth fault");
  in = {};
  in.adaptor = "M25:M20";
  CHECK(skipped(in) == "joint place earth fault");
  for (std::optional<double> job::JobInput::*member :
       {&job::JobInput::wall_mm, &job::JobInput::hole_dia_mm, &job::JobInput::washer_mm,
        &job::JobInput::tag_mm, &job::JobInput::serrated_mm, &job::JobInput::locknut_mm,
        &job::JobInput::chamfer_mm, &job::JobInput::undercut_mm, &job::JobInput::adaptor_mm,
        &job::JobInput::adaptor_thread_mm}) {
    in = {};
    in.*member = 1.0;
    CHECK(skipped(in) == "place earth fault");
  }
  in = {};
  in.hole = entry::Hole::threaded;
  CHECK(skipped(in) == "place earth fault");
  in = {};
  in.material = "steel";
  CHECK(skipped(in) == "entry joint place fault");
  in = {};
  in.cores = 1;
  CHECK(skipped(in) == "entry joint place fault");
  in.supply = cable::Supply::dc;
  CHECK(skipped(in) == "entry joint place earth fault");
  in = {};
  in.time_s = 1.0;
  CHECK(skipped(in) == "entry joint place earth");
  in.armour = cable::ArmourKind::none;
  CHECK(skipped(in) == "entry joint place earth");
  in.cores = 3;
  CHECK(skipped(in) == "entry joint place");
  in = {};
  in.zone = area::Zone::none;
  CHECK(skipped(in) == "entry joint earth fault");
  in.protection = area::Protection::d;
  in.zone = area::Zone::zone_1;
  CHECK(skipped(in) == "earth fault");
}

TEST_CASE("what is lacking in a few words, whole", "[unit][fit]") {
  using Where = fit::Lack::Where;
  std::vector<fit::Lack> lacks;
  CHECK(fit::lacks_text(lacks).empty());
  for (const char* fact : {"a", "b", "c"}) lacks.push_back({fact, "", Where::elsewhere});
  CHECK(fit::lacks_text(lacks) == "a, b, c");
  lacks.push_back({"d", "", Where::elsewhere});
  lacks.push_back({"e", "", Where::elsewhere});
  CHECK(fit::lacks_text(lacks) == "a, b, c and 2 more");
  const auto of = [](const job::JobInput& in, const gland::Gland& gland) {
    return whole(fit::lacks_of(test::checked(in, gland)));
  };
  CHECK(of(test::small_cable(), test::small_gland()) == "");
  job::JobInput in = test::small_cable();
  in.wall_mm.reset();
  in.sheath_od_mm = "15.0";
  in.protection = area::Protection::eb;
  in.zone = area::Zone::zone_1;
  CHECK(of(in, test::small_gland()) ==
        "sheath once more, at right angles <>, wall <at the end wall_mm>, protection of the gland "
        "<>, level of the gland <>, gas group <gas_group>, IP <ip>, ip of the gland <>, temp_min_c "
        "of the gland <>, temp_max_c of the gland <>");
  in = test::small_cable();
  in.sheath_od_mm.reset();
  in.bedding_mm.reset();
  const job::Job job = test::resolved(in);
  CHECK(whole(fit::not_measured(job.cable)) ==
        "sheath <at the end sheath_od_mm>, bedding <at the end bedding_mm>");
  CHECK_FALSE(fit::is_measured(job.cable));
  CHECK(fit::is_measured(test::resolved(test::small_cable()).cable));
  CHECK(fit::state_of(Verdict::no_fit, job.cable) == fit::State::none);
  CHECK(fit::state_of(Verdict::marginal_inside, job.cable) == fit::State::not_yet);
  CHECK(fit::state_of(Verdict::fits, job.cable) == fit::State::order);
  CHECK(fit::state_of(Verdict::fits, test::resolved(test::small_cable()).cable) ==
        fit::State::fits);
}

TEST_CASE("what may fail by what is taken, whole", "[unit][fit]") {
  const auto shown = [](CheckName name, std::optional<double> margin,
                        const Assumption& assumption) {
    fit::GlandFit fit;
    fit.checks.push_back({.name = name, .verdict = Verdict::fits});
    fit.checks.back().margin_mm = margin;
    return test::lines(fit::taken_that_may_fail({assumption, assumption}, fit));
  };
  CHECK(shown(CheckName::outer_seal, 0.99, {"step_mm", "0.05 mm", "usual"}) ==
        "a caliper of 0.05 mm that closes at 0");
  CHECK(shown(CheckName::outer_seal, 1.0, {"step_mm", "0.05 mm", "usual"}) == "");
  CHECK(shown(CheckName::outer_seal, {}, {"step_mm", "0.05 mm", "usual"}) ==
        "a caliper of 0.05 mm that closes at 0");
  CHECK(shown(CheckName::armour, 0.1, {"step_mm", "0.05 mm", "usual"}) == "");
  CHECK(shown(CheckName::inner_seal, 0.99, {"step_mm", "0.05 mm", "usual"}) ==
        "a caliper of 0.05 mm that closes at 0");
  CHECK(shown(CheckName::thread, 2.9, {"tag_mm", "0 mm", "usual"}) == "no earth tag");
  CHECK(shown(CheckName::thread, 3.0, {"tag_mm", "0 mm", "usual"}) == "");
  CHECK(shown(CheckName::thread, 1.9, {"serrated_mm", "0 mm", "usual"}) == "no serrated washer");
  CHECK(shown(CheckName::thread, 2.0, {"serrated_mm", "0 mm", "usual"}) == "");
  CHECK(shown(CheckName::thread, 2.9, {"undercut_mm", "0 mm", "usual"}) == "no undercut");
  CHECK(shown(CheckName::thread, 3.0, {"undercut_mm", "0 mm", "usual"}) == "");
  CHECK(shown(CheckName::joint, 99.0, {"hole_dia_mm", "made", "usual"}) ==
        "a hole made for the thread");
  CHECK(shown(CheckName::bore, 0.9, {"bore_mm", "x", "usual"}) ==
        "a bore as wide as the inner seal's range");
  CHECK(shown(CheckName::bore, 1.0, {"bore_mm", "x", "usual"}) == "");
  CHECK(shown(CheckName::sealing, {}, {"max_cores", "x", "usual"}) ==
        "any number of cores in the chamber");
  CHECK(shown(CheckName::temperature, {}, {"ambient_min_c", "-20 degC", "usual"}) ==
        "ambient down to -20 degC");
  CHECK(shown(CheckName::temperature, {}, {"ambient_max_c", "40 degC", "usual"}) ==
        "ambient up to 40 degC");
  CHECK(shown(CheckName::temperature, {}, {"entry_temp_c", "up to 70 degC", "usual"}) ==
        "entry up to 70 degC");
  const std::string profile(fit::k_of_profile);
  CHECK(shown(CheckName::bore, {}, {"mpe_mm", "0.03", profile}) ==
        "caliper error 0.03 mm (your profile) | caliper error 0.03 mm (your profile)");
  CHECK(shown(CheckName::bore, {}, {"rules", "strict", profile}) ==
        "rules strict (your profile) | rules strict (your profile)");
}

TEST_CASE("what an order needs, whole", "[unit][fit]") {
  const auto needed = [](const job::JobInput& in, const gland::Gland& gland) {
    const job::Job job = test::resolved(in);
    const fit::Question question = fit::ask(job, test::standards());
    std::string text;
    for (const fit::Need& need : fit::needs_of(question, fit::check_gland(question, gland))) {
      text += (text.empty() ? "" : "; ") + need.name + " [" + need.note + "]";
    }
    return text;
  };
  job::JobInput in = test::small_cable();
  in.hole = entry::Hole::threaded;
  CHECK(needed(in, test::small_gland()) == "sealing washer [1.5 mm]; shroud [if one is used]");
  in.washer_mm = 0.0;
  CHECK(needed(in, test::small_gland()) == "");
  in = test::small_cable();
  in.armour = cable::ArmourKind::none;
  in.armour_mm.reset();
  in.bedding_mm.reset();
  CHECK(needed(in, test::small_gland()) == "sealing washer [1.5 mm]; locknut [4 mm]");
  in.locknut_mm.reset();
  CHECK(needed(in, test::small_gland()) == "sealing washer [1.5 mm]; locknut []");
  CHECK(fit::compound_words({}, 20.0).empty());
  CHECK(fit::compound_words(area::Compound{.volume_cm3 = 12.31}, {}) == "12.4 cm3 round the cores");
  CHECK(fit::compound_words(area::Compound{.volume_cm3 = 12.3}, 20.0) ==
        "12.3 cm3 round the cores, 1 pack of 20 cm3");
  CHECK(fit::compound_words(area::Compound{.volume_cm3 = 40.0}, 20.0) ==
        "40 cm3 round the cores, 2 packs of 20 cm3");
}

// What the earth and fault checks say, whole: words, figures, what is lacking and the source.
#include <catch2/catch.hpp>

#include "cutback/earth/armour_earth.hpp"
#include "cutback/earth/device.hpp"
#include "cutback/earth/gland_rating.hpp"
#include "cutback/earth/path.hpp"
#include "support/build_job.hpp"
#include "support/whole.hpp"

using namespace cutback;
using namespace cutback::earth;
using test::whole;

namespace {

std::string of(const Finding& finding) {
  return fmt::format("{}: {} | {}", to_string(finding.verdict), finding.says, finding.source);
}

std::string figures(const EarthResult& result) {
  std::string text(to_string(result.armour));
  const auto put = [&](const char* name, const std::optional<double>& figure) {
    if (figure) text += fmt::format(" {} {}", name, plain(*figure, 4));
  };
  put("area", result.area_mm2);
  put("required", result.required_mm2);
  put("table", result.table_required_mm2);
  put("least", result.least_mm2);
  put("withstand", result.withstand_ka);
  put("for", result.withstand_s);
  put("longest", result.longest_s);
  put("ohm", result.resistance_ohm);
  put("hot", result.resistance_hot_ohm);
  put("path", result.path_ohm);
  put("share", result.loop_share);
  if (result.k) put("k", result.k->k);
  if (result.line_k) put("k1", result.line_k->k);
  return text;
}

EarthInput known() {
  EarthInput in;
  in.armour = ArmourArea{26.0, "given", 0.0};
  in.insulation = earth::Insulation::xlpe;
  in.line_mm2 = 10.0;
  in.fault = {2.0, 0.2, {}};
  return in;
}

EarthResult result_of(const EarthInput& in) { return check_armour_earth(in, test::standards()); }

}  // namespace

TEST_CASE("armour against the fault, whole: all that is known", "[unit][earth]") {
  EarthInput in = known();
  EarthResult result = result_of(in);
  // 2000 A for 0.2 s: sqrt(2000^2 x 0.2) = 894.4; over 46 it is 19.44 mm2.
  CHECK(figures(result) ==
        "fits area 26 required 19.4441 table 31.087 least 26 withstand 2.6743 for 0.2 longest "
        "0.3576 k 46 k1 143");
  CHECK(of(result.area) == "fits: 26 mm2: given | given");
  CHECK(of(result.factor) ==
        "fits: k 46 for steel armour with xlpe insulation | BS 7671 table 54.4");
  CHECK(of(result.adiabatic) ==
        "fits: sqrt(2000^2 x 0.2) / 46 = 19.45 mm2 needed; 26 mm2 (given) is enough | IEC "
        "60364-5-54 543.1.2, BS 7671 regulation 543.1.3");
  CHECK(of(result.table) ==
        "no-fit: 10 mm2 copper line: 31.09 mm2 needed (k1/k2 = 143/46 with k 143 for copper line "
        "conductors with xlpe insulation); 26 mm2 is too little | BS 7671 table 54.7; k1 and k2: "
        "BS 7671 table 43.1, BS 7671 table 54.4");
  CHECK(of(result.gland) ==
        "not-known: the gland list states no earth-fault rating: check against the gland's papers "
        "| gland's declared rating for 1 s; other times by I sqrt(t), IEC 60364-5-54 543.1.2 (its "
        "use for glands from memory)");
  CHECK(of(result.resistance) ==
        "not-known: the length of the cable is not given | resistivity and beta: IEC 60364-5-54 "
        "Annex A; thinnest wires: HD 604 S1/A1; lay of the wires: from memory where not given");
  in.length_m = 100.0;
  in.gland_ka = 4.0;
  in.armour = ArmourArea{26.0, "worked out", 0.06, 1.25};
  result = result_of(in);
  CHECK(figures(result) ==
        "fits area 26 required 19.4441 table 31.087 least 24.44 withstand 2.5139 for 0.2 longest "
        "0.316 ohm 0.6399 hot 0.8128 path 1.1278 k 46 k1 143");
  CHECK(of(result.gland) ==
        "fits: the gland is rated 4 kA for 1 s, which covers 2 kA for 0.2 s | gland's declared "
        "rating for 1 s; other times by I sqrt(t), IEC 60364-5-54 543.1.2 (its use for glands from "
        "memory)");
  CHECK(of(result.resistance) ==
        "fits: at most 0.000138 ohm mm x 1.0743 x 100 m / (26 mm2 x 0.891) = 0.6399 ohm at 20 "
        "degC, 0.8129 ohm at 80 degC; line at 90 degC and armour at 80 degC, |R1 + 1.1 R2 + jX|: "
        "1.1279 ohm at most | resistivity and beta: IEC 60364-5-54 Annex A; thinnest wires: HD 604 "
        "S1/A1; lay of the wires: from memory where not given; 1.1 R2 and 0.3 mohm/m: PD CLC/TR "
        "50480:2011 [secondary]; R1: IEC 60228 Table 2");
  in.fault.loop_ohm = 2.0;
  in.fault.u0_v = 230.0;
  result = result_of(in);
  CHECK(figures(result) ==
        "fits area 26 required 19.4441 table 31.087 least 24.44 withstand 2.5139 for 0.2 longest "
        "0.316 ohm 0.6399 hot 0.8128 path 1.1278 share 0.4473 k 46 k1 143");
  CHECK(
      of(result.resistance) ==
      "fits: at most 0.000138 ohm mm x 1.0743 x 100 m / (26 mm2 x 0.891) = 0.6399 ohm at 20 degC, "
      "0.8129 ohm at 80 degC; line at 90 degC and armour at 80 degC, |R1 + 1.1 R2 + jX|: 1.1279 "
      "ohm at most; of the loop of 2 ohm the armour is at most 45 % | resistivity and beta: IEC "
      "60364-5-54 Annex A; thinnest wires: HD 604 S1/A1; lay of the wires: from memory where not "
      "given; 1.1 R2 and 0.3 mohm/m: PD CLC/TR 50480:2011 [secondary]; R1: IEC 60228 Table 2");
  in.fault.loop_ohm = 0.01;
  CHECK(of(result_of(in).resistance) ==
        "not-known: at most 0.000138 ohm mm x 1.0743 x 100 m / (26 mm2 x 0.891) = 0.6399 ohm at 20 "
        "degC, 0.8129 ohm at 80 degC; line at 90 degC and armour at 80 degC, |R1 + 1.1 R2 + jX|: "
        "1.1279 ohm at most; of the loop of 0.01 ohm the armour is at most 8947 %, which cannot "
        "be: look again at length, area and loop | resistivity and beta: IEC 60364-5-54 Annex A; "
        "thinnest wires: HD 604 S1/A1; lay of the wires: from memory where not given; 1.1 R2 and "
        "0.3 mohm/m: PD CLC/TR 50480:2011 [secondary]; R1: IEC 60228 Table 2");
  in.hot_degc = 60.0;
  in.line_material = Material::aluminium;
  in.lay_ratio = 1.02;
  in.fault.loop_ohm.reset();
  result = result_of(in);
  CHECK(figures(result) ==
        "fits area 26 required 19.4441 table 20.4348 least 24.44 withstand 2.5139 for 0.2 longest "
        "0.316 ohm 0.6075 hot 0.717 k 46 k1 94");
  CHECK(of(result.resistance) ==
        "fits: at most 0.000138 ohm mm x 1.02 x 100 m / (26 mm2 x 0.891) = 0.6076 ohm at 20 degC, "
        "0.7170 ohm at 60 degC | resistivity and beta: IEC 60364-5-54 Annex A; thinnest wires: HD "
        "604 S1/A1; lay of the wires: from memory where not given");
}

TEST_CASE("armour against the fault, whole: what is missing", "[unit][earth]") {
  EarthInput in;
  EarthResult result = result_of(in);
  CHECK(figures(result) == "not-known for 1");
  CHECK(of(result.area) ==
        "not-known: the area of the armour is not known: count its wires or give it | ");
  CHECK(of(result.factor) ==
        "not-known: the cable's insulation is not given: no k | BS 7671 table 54.4");
  CHECK(of(result.adiabatic) ==
        "not-known: the fault current is not given; the time for which the fault lasts is not "
        "given | IEC 60364-5-54 543.1.2, BS 7671 regulation 543.1.3");
  CHECK(of(result.table) ==
        "not-known: the size of the line conductor is not given | BS 7671 table 54.7");
  CHECK(of(result.gland) ==
        "not-known: the fault current is not given | gland's declared rating for 1 s; other times "
        "by I sqrt(t), IEC 60364-5-54 543.1.2 (its use for glands from memory)");
  CHECK(of(result.resistance) ==
        "not-known: the area of the armour is not known | resistivity and beta: IEC 60364-5-54 "
        "Annex A; thinnest wires: HD 604 S1/A1; lay of the wires: from memory where not given");
  in = known();
  in.armour.reset();
  result = result_of(in);
  CHECK(figures(result) == "not-known required 19.4441 table 31.087 for 1 k 46 k1 143");
  CHECK(of(result.adiabatic) ==
        "not-known: sqrt(2000^2 x 0.2) / 46 = 19.45 mm2 needed; the area of the armour is not "
        "known | IEC 60364-5-54 543.1.2, BS 7671 regulation 543.1.3");
  CHECK(of(result.table) ==
        "not-known: 10 mm2 copper line: 31.09 mm2 needed (k1/k2 = 143/46 with k 143 for copper "
        "line conductors with xlpe insulation); the area of the armour is not known | BS 7671 "
        "table 54.7; k1 and k2: BS 7671 table 43.1, BS 7671 table 54.4");
  CHECK(of(result.resistance) ==
        "not-known: the area of the armour is not known | resistivity and beta: IEC 60364-5-54 "
        "Annex A; thinnest wires: HD 604 S1/A1; lay of the wires: from memory where not given");
  in = known();
  in.fault = {2.0, {}, {}};
  CHECK(of(result_of(in).adiabatic) ==
        "not-known: the time for which the fault lasts is not given | IEC 60364-5-54 543.1.2, BS "
        "7671 regulation 543.1.3");
  in.fault.device = Device{'B', 32.0};
  CHECK(of(result_of(in).adiabatic) ==
        "not-known: the time for which the fault lasts is not given; a breaker B32 trips at once, "
        "in less than 0.1 s, from 160 A (IEC 60898-1, from memory): at 2000 A so it should; where "
        "its papers agree, give --time 0.1, or the energy that it lets through | IEC 60364-5-54 "
        "543.1.2, BS 7671 regulation 543.1.3");
  in.fault = {{}, 0.2, {}};
  CHECK(of(result_of(in).adiabatic) ==
        "not-known: the fault current is not given | IEC 60364-5-54 543.1.2, BS 7671 regulation "
        "543.1.3");
  in.fault.loop_ohm = 0.5;
  CHECK(of(result_of(in).adiabatic) ==
        "not-known: the voltage to earth is not given, without which the loop gives no current | "
        "IEC 60364-5-54 543.1.2, BS 7671 regulation 543.1.3");
  in.fault.u0_v = 230.0;
  CHECK(of(result_of(in).adiabatic) ==
        "fits: 230 V / 0.5 ohm = 460 A; sqrt(460^2 x 0.2) / 46 = 4.48 mm2 needed; 26 mm2 (given) "
        "is enough | IEC 60364-5-54 543.1.2, BS 7671 regulation 543.1.3");
  in = known();
  in.insulation.reset();
  in.length_m = 100.0;
  result = result_of(in);
  CHECK(figures(result) == "not-known area 26 for 1 ohm 0.6402");
  CHECK(of(result.adiabatic) ==
        "not-known: the cable's insulation is not given: no k | IEC 60364-5-54 543.1.2, BS 7671 "
        "regulation 543.1.3");
  CHECK(of(result.table) ==
        "not-known: without k1 and k2 the table cannot be used | BS 7671 table 54.7");
  CHECK(of(result.resistance) ==
        "fits: at most 0.000138 ohm mm x 1.0743 x 100 m / (26 mm2 x 0.891) = 0.6403 ohm at 20 "
        "degC; warm it is more: the temperature in service is not known | resistivity and beta: "
        "IEC 60364-5-54 Annex A; thinnest wires: HD 604 S1/A1; lay of the wires: from memory where "
        "not given");
  in = known();
  in.insulation_is_taken = true;
  CHECK(of(result_of(in).factor) ==
        "fits: k 46 for steel armour with xlpe insulation, the lowest: the insulation is not given "
        "| BS 7671 table 54.4");
  in.start_degc = 80.0;
  in.final_degc = 200.0;
  CHECK(of(result_of(in).factor) ==
        "fits: k 46.55 for steel armour, 80 to 200 degC | IEC 60364-5-54 Annex A");
  in = known();
  in.line_k = 115.0;
  CHECK(of(result_of(in).table) ==
        "fits: 10 mm2 copper line: 25.00 mm2 needed (k1/k2 = 115/46 with k1 115 as given); 26 mm2 "
        "is enough | BS 7671 table 54.7; k1 and k2: as given, BS 7671 table 54.4");
  in.line_material = Material::steel;
  CHECK(of(result_of(in).table) ==
        "fits: 10 mm2 steel line: 10.00 mm2 needed (same material, no factor); 26 mm2 is enough | "
        "BS 7671 table 54.7");
  in.armour_material = Material::lead;
  CHECK(of(result_of(in).factor) ==
        "fits: k 23 for lead armour with xlpe insulation | BS 7671 table 54.4");
}

TEST_CASE("armour against the fault, whole: time, energy and device", "[unit][earth]") {
  EarthInput in = known();
  const auto says = [&](double current, double time, std::optional<double> energy,
                        std::optional<Device> device = {}) {
    in.fault = {};
    in.fault.current_ka = current;
    in.fault.time_s = time;
    in.fault.let_through_a2s = energy;
    in.fault.device = device;
    return of(result_of(in).adiabatic);
  };
  CHECK(says(2.0, 0.02, {}) ==
        "not-known: sqrt(2000^2 x 0.02) / 46 = 6.15 mm2 needed; 26 mm2 (given) is enough; but "
        "under 0.1 s the let-through energy of the device counts: give it | IEC 60364-5-54 "
        "543.1.2, BS 7671 regulation 543.1.3");
  CHECK(says(2.0, 0.02, 500000.0) ==
        "fits: sqrt(500000) / 46 = 15.38 mm2 needed; 26 mm2 (given) is enough | IEC 60364-5-54 "
        "543.1.2, BS 7671 regulation 543.1.3");
  CHECK(says(2.0, 0.1, 500000.0) ==
        "fits: sqrt(500000) / 46 = 15.38 mm2 needed; 26 mm2 (given) is enough | IEC 60364-5-54 "
        "543.1.2, BS 7671 regulation 543.1.3");
  CHECK(says(2.0, 0.1, 300000.0) ==
        "fits: sqrt(2000^2 x 0.1) / 46 = 13.75 mm2 needed; 26 mm2 (given) is enough | IEC "
        "60364-5-54 543.1.2, BS 7671 regulation 543.1.3");
  CHECK(says(0.1, 5.0, {}) ==
        "fits: sqrt(100^2 x 5) / 46 = 4.87 mm2 needed; 26 mm2 (given) is enough | IEC 60364-5-54 "
        "543.1.2, BS 7671 regulation 543.1.3");
  CHECK(says(0.1, 5.1, {}) ==
        "not-known: sqrt(100^2 x 5.1) / 46 = 4.91 mm2 needed; 26 mm2 (given) is enough; but the "
        "equation is for at most 5 s | IEC 60364-5-54 543.1.2, BS 7671 regulation 543.1.3");
  CHECK(says(2.0, 5.1, {}) ==
        "no-fit: sqrt(2000^2 x 5.1) / 46 = 98.19 mm2 needed; 26 mm2 (given) is too little | IEC "
        "60364-5-54 543.1.2, BS 7671 regulation 543.1.3");
  CHECK(
      says(0.1, 0.4, {}, Device{'C', 16.0}) ==
      "not-known: sqrt(100^2 x 0.4) / 46 = 1.38 mm2 needed; 26 mm2 (given) is enough; a breaker "
      "C16 trips at once, in less than 0.1 s, from 160 A (IEC 60898-1, from memory); but at 100 "
      "A it need not trip at once, and its heat may take longer than 0.4 s: give the longest time "
      "of its own curve, and leave the device out | IEC 60364-5-54 543.1.2, BS 7671 regulation "
      "543.1.3");
  CHECK(
      says(0.1, 1.0, {}, Device{'C', 16.0}) ==
      "not-known: sqrt(100^2 x 1) / 46 = 2.18 mm2 needed; 26 mm2 (given) is enough; a breaker C16 "
      "trips at once, in less than 0.1 s, from 160 A (IEC 60898-1, from memory); but at 100 A it "
      "need not trip at once, and its heat may take longer than 1 s: give the longest time of its "
      "own curve, and leave the device out | IEC 60364-5-54 543.1.2, BS 7671 regulation 543.1.3");
  CHECK(says(0.16, 0.4, {}, Device{'C', 16.0}) ==
        "fits: sqrt(160^2 x 0.4) / 46 = 2.20 mm2 needed; 26 mm2 (given) is enough; a breaker C16 "
        "trips at once, in less than 0.1 s, from 160 A (IEC 60898-1, from memory) | IEC 60364-5-54 "
        "543.1.2, BS 7671 regulation 543.1.3");
  CHECK(says(0.1, 0.4, 9000.0, Device{'C', 16.0}) ==
        "fits: sqrt(9000) / 46 = 2.07 mm2 needed; 26 mm2 (given) is enough; a breaker C16 trips at "
        "once, in less than 0.1 s, from 160 A (IEC 60898-1, from memory) | IEC 60364-5-54 543.1.2, "
        "BS 7671 regulation 543.1.3");
  in.armour = ArmourArea{19.5, "worked out", 0.05};
  CHECK(says(2.0, 0.2, {}) ==
        "marginal-inside: sqrt(2000^2 x 0.2) / 46 = 19.45 mm2 needed; 19.5 mm2 (worked out) is "
        "enough only if its estimate holds: count the wires | IEC 60364-5-54 543.1.2, BS 7671 "
        "regulation 543.1.3");
  in.armour = ArmourArea{19.0, "worked out", 0.05};
  CHECK(says(2.0, 0.2, {}) ==
        "marginal-outside: sqrt(2000^2 x 0.2) / 46 = 19.45 mm2 needed; 19 mm2 (worked out) is too "
        "little unless it is underestimated: count the wires | IEC 60364-5-54 543.1.2, BS 7671 "
        "regulation 543.1.3");
  in.armour = ArmourArea{10.0, "worked out", 0.05};
  CHECK(says(2.0, 0.2, {}) ==
        "no-fit: sqrt(2000^2 x 0.2) / 46 = 19.45 mm2 needed; 10 mm2 (worked out) is too little | "
        "IEC 60364-5-54 543.1.2, BS 7671 regulation 543.1.3");
  CHECK(figures(result_of(in)) ==
        "no-fit area 10 required 19.4441 table 31.087 least 9.5 withstand 0.9772 for 0.2 k 46 k1 "
        "143");
}

TEST_CASE("gland's rating, whole", "[unit][earth]") {
  const auto says = [](std::optional<double> rating, std::optional<double> current,
                       std::optional<double> time) {
    EarthFault fault;
    fault.current_ka = current;
    fault.time_s = time;
    const GlandRating judged = judge_gland_rating(rating, fault);
    return of(judged.finding) + (judged.limit_ka ? " " + plain(*judged.limit_ka, 3) : "");
  };
  CHECK(says({}, {}, {}) ==
        "not-known: the fault current is not given | gland's declared rating for 1 s; other times "
        "by I sqrt(t), IEC 60364-5-54 543.1.2 (its use for glands from memory)");
  CHECK(says({}, 2.0, {}) ==
        "not-known: the time for which the fault lasts is not given | gland's declared rating for "
        "1 s; other times by I sqrt(t), IEC 60364-5-54 543.1.2 (its use for glands from memory)");
  CHECK(says({}, 2.0, 1.0) ==
        "not-known: the gland list states no earth-fault rating: check against the gland's papers "
        "| gland's declared rating for 1 s; other times by I sqrt(t), IEC 60364-5-54 543.1.2 (its "
        "use for glands from memory)");
  CHECK(says(4.0, 4.0, 0.5) ==
        "fits: the gland is rated 4 kA for 1 s, which covers 4 kA for 0.5 s | gland's declared "
        "rating for 1 s; other times by I sqrt(t), IEC 60364-5-54 543.1.2 (its use for glands from "
        "memory) 4");
  CHECK(says(4.0, 4.1, 0.5) ==
        "not-known: the gland is rated 4 kA for 1 s; 4.1 kA for 0.5 s is covered only if its "
        "rating may be raised for shorter times (4 / sqrt(0.5) = 5.66 kA): check against the "
        "gland's papers | gland's declared rating for 1 s; other times by I sqrt(t), IEC "
        "60364-5-54 543.1.2 (its use for glands from memory) 4");
  CHECK(says(4.0, 6.0, 0.5) ==
        "no-fit: the gland is rated 4 kA for 1 s: 4 / sqrt(0.5) = 5.66 kA does not cover 6 kA for "
        "0.5 s | gland's declared rating for 1 s; other times by I sqrt(t), IEC 60364-5-54 543.1.2 "
        "(its use for glands from memory) 4");
  CHECK(says(4.0, 4.0, 1.0) ==
        "fits: the gland is rated 4 kA for 1 s: 4 / sqrt(1) = 4.00 kA covers 4 kA for 1 s | "
        "gland's declared rating for 1 s; other times by I sqrt(t), IEC 60364-5-54 543.1.2 (its "
        "use for glands from memory) 4");
  CHECK(says(4.0, 4.1, 1.0) ==
        "no-fit: the gland is rated 4 kA for 1 s: 4 / sqrt(1) = 4.00 kA does not cover 4.1 kA for "
        "1 s | gland's declared rating for 1 s; other times by I sqrt(t), IEC 60364-5-54 543.1.2 "
        "(its use for glands from memory) 4");
  CHECK(says(4.0, 2.0, 4.0) ==
        "fits: the gland is rated 4 kA for 1 s: 4 / sqrt(4) = 2.00 kA covers 2 kA for 4 s | "
        "gland's declared rating for 1 s; other times by I sqrt(t), IEC 60364-5-54 543.1.2 (its "
        "use for glands from memory) 2");
  CHECK(says(4.0, 2.0, 5.0) ==
        "no-fit: the gland is rated 4 kA for 1 s: 4 / sqrt(5) = 1.79 kA does not cover 2 kA for 5 "
        "s | gland's declared rating for 1 s; other times by I sqrt(t), IEC 60364-5-54 543.1.2 "
        "(its use for glands from memory) 1.789");
  CHECK(says(4.0, 1.0, 5.0) ==
        "fits: the gland is rated 4 kA for 1 s: 4 / sqrt(5) = 1.79 kA covers 1 kA for 5 s | "
        "gland's declared rating for 1 s; other times by I sqrt(t), IEC 60364-5-54 543.1.2 (its "
        "use for glands from memory) 1.789");
  CHECK(says(4.0, 1.0, 5.1) ==
        "not-known: the gland is rated 4 kA for 1 s, but 1 kA for 5.1 s is longer than the 5 s for "
        "which it can be scaled: ask the gland's maker | gland's declared rating for 1 s; other "
        "times by I sqrt(t), IEC 60364-5-54 543.1.2 (its use for glands from memory) 1.771");
}

TEST_CASE("a breaker, whole", "[unit][earth]") {
  const Device device{'C', 16.0};
  CHECK(device_says(device, {}, test::standards()) ==
        "a breaker C16 trips at once, in less than 0.1 s, from 160 A (IEC 60898-1, from memory)");
  CHECK(device_says(device, 0.16, test::standards()) ==
        "a breaker C16 trips at once, in less than 0.1 s, from 160 A (IEC 60898-1, from memory): "
        "at 160 A so it should; where its papers agree, give --time 0.1, or the energy that it "
        "lets through");
  CHECK(device_says(device, 0.159, test::standards()) ==
        "a breaker C16 trips at once, in less than 0.1 s, from 160 A (IEC 60898-1, from memory): "
        "at 159 A it may or may not; its curve gives the longest time");
  CHECK(device_says(device, 0.08, test::standards()) ==
        "a breaker C16 trips at once, in less than 0.1 s, from 160 A (IEC 60898-1, from memory): "
        "at 80 A it does not, for that is no more than 80 A; its curve gives the time");
  CHECK(device_says(device, 0.081, test::standards()) ==
        "a breaker C16 trips at once, in less than 0.1 s, from 160 A (IEC 60898-1, from memory): "
        "at 81 A it may or may not; its curve gives the longest time");
  CHECK(why_not_so_soon(device, 0.159, 0.99, test::standards()) ==
        "at 159 A it need not trip at once, and its heat may take longer than 0.99 s: give the "
        "longest time of its own curve, and leave the device out");
  CHECK(why_not_so_soon(device, 0.018, 5.0, test::standards()) ==
        "at 18 A it need not trip at all");
  CHECK(why_not_so_soon(device, 0.16, 0.1, test::standards()).empty());
  CHECK(to_text(*parse_device(" b 0.5 a ")) == "B0.5");
  CHECK(to_text(*parse_device("D125A")) == "D125");
  for (const char* wrong : {"", "B", "A16", "E16", "C0.4", "C126", "C16x"}) {
    INFO(wrong);
    CHECK_FALSE(parse_device(wrong).has_value());
  }
}

TEST_CASE("path to earth, whole", "[unit][earth]") {
  cable::Cable cable;
  cable.cores = 3;
  gland::Gland gland;
  entry::Entry entry;
  const auto words = [&](bool adaptor = false) {
    const auto check = check_path(cable, entry, gland, adaptor);
    return check ? whole(*check) : "";
  };
  CHECK(words() ==
        "not-known: the gland list does not state material; what the wall is made of is not given; "
        "the kind of hole (threaded or clearance) is not given | | lacks: gland's material "
        "<material>, wall's material <at the end material>, kind of hole, threaded or clearance "
        "<at the end hole> | path to earth: common practice, no source");
  CHECK(words(true) ==
        "not-known: the gland list does not state material; what the adaptor is made of is not "
        "given; what the wall is made of is not given; the kind of hole (threaded or clearance) is "
        "not given | | lacks: gland's material <material>, adaptor's material <at the end "
        "adaptor_material>, wall's material <at the end material>, kind of hole, threaded or "
        "clearance <at the end hole> | path to earth: common practice, no source");
  gland.material = "brass";
  entry.material = "steel";
  entry.hole = entry::Hole::threaded;
  CHECK(words() ==
        "fits: earthed by the thread in the wall of steel | | path to earth: common practice, no "
        "source");
  entry.hole = entry::Hole::clearance;
  CHECK(words() ==
        "fits: earthed by the locknut on the wall of steel, which must be bare metal there | | "
        "path to earth: common practice, no source");
  entry.serrated_mm = 0.5;
  CHECK(words() ==
        "fits: earthed by the serrated washer on the wall of steel | | path to earth: common "
        "practice, no source");
  entry.tag_mm = 1.5;
  CHECK(words() ==
        "fits: earthed by an earth tag of 1.5 mm, wired to the earth terminal | | path to earth: "
        "common practice, no source");
  entry.hole = entry::Hole::threaded;
  entry.material = "polymer";
  CHECK(words() ==
        "fits: earthed by an earth tag of 1.5 mm, wired to the earth terminal; it sits outside and "
        "is sealed to the wall | | path to earth: common practice, no source");
  entry.tag_mm = 0.0;
  CHECK(words() ==
        "no-fit: a wall of polymer does not conduct: without an earth tag there is no path | | "
        "path to earth: common practice, no source");
  entry.tag_mm.reset();
  CHECK(words() ==
        "not-known: a wall of polymer does not conduct: an earth tag is needed, and its thickness "
        "is not given | | lacks: earth tag <tag_mm> | path to earth: common practice, no source");
  gland.material = "polymer";
  entry.adaptor_material = "polymer";
  entry.material = "steel";
  CHECK(words(true) ==
        "no-fit: the gland is of plastic: the armour has no path to earth; the adaptor is of "
        "plastic: the armour has no path to earth; earthed by the thread in the wall of steel | | "
        "path to earth: common practice, no source");
  gland.material = "brass";
  cable.cores.reset();
  CHECK(words() ==
        "not-known: earthed by the thread in the wall of steel; the number of cores is not given: "
        "a single core on a.c. must have no steel round it | | lacks: number of cores <at the end "
        "cores> | path to earth: common practice, no source; BS 7671, 521.5.1 [secondary]");
  cable.supply = cable::Supply::dc;
  CHECK(words() ==
        "fits: earthed by the thread in the wall of steel | | path to earth: common practice, no "
        "source");
}

TEST_CASE("steel round a single core, whole", "[unit][earth]") {
  cable::Cable cable;
  cable.cores = 1;
  gland::Gland gland;
  gland.material = "steel";
  entry::Entry entry;
  entry.material = "cast-iron";
  entry.hole = entry::Hole::threaded;
  const auto words = [&] {
    const auto check = check_path(cable, entry, gland, false);
    return check ? whole(*check) : "";
  };
  CHECK(words() ==
        "not-known: a single core: the kind of supply (ac or dc) is not given; a single core: what "
        "the armour is made of is not given; a gland of steel round a single core is not for a.c.; "
        "a wall of cast-iron round a single core is not for a.c.: a plate of other metal is "
        "needed; earthed by the thread in the wall of cast-iron | | lacks: supply, ac or dc "
        "<supply>, armour's material <at the end armour_material> | BS 7671, 521.5.1 [secondary]; "
        "path to earth: common practice, no source");
  cable.supply = cable::Supply::ac;
  cable.armour_material = cable::ArmourMaterial::steel;
  CHECK(words() ==
        "no-fit: armour of steel wire round a single core is not for a.c.; a gland of steel round "
        "a single core is not for a.c.; a wall of cast-iron round a single core is not for a.c.: a "
        "plate of other metal is needed; earthed by the thread in the wall of cast-iron | | BS "
        "7671, 521.5.1 [secondary]; path to earth: common practice, no source");
  cable.armour_material = cable::ArmourMaterial::aluminium;
  gland.material = "brass";
  entry.material = "aluminium";
  CHECK(words() ==
        "fits: no steel round the single core; earthed by the thread in the wall of aluminium | | "
        "BS 7671, 521.5.1 [secondary]; path to earth: common practice, no source");
  cable.supply = cable::Supply::dc;
  CHECK(words() ==
        "fits: a single core on d.c. may have steel round it; earthed by the thread in the wall of "
        "aluminium | | BS 7671, 521.5.1 [secondary]; path to earth: common practice, no source");
  cable.armour = cable::ArmourKind::none;
  cable.armour_material.reset();
  CHECK(words() ==
        "fits: a single core on d.c. may have steel round it | | BS 7671, 521.5.1 [secondary]");
  cable.supply = cable::Supply::ac;
  CHECK(words() == "fits: no steel round the single core | | BS 7671, 521.5.1 [secondary]");
  gland.material.reset();
  entry.material.reset();
  CHECK(words() ==
        "not-known: the gland list does not state material; what the wall is made of is not given "
        "| | lacks: gland's material <material>, wall's material <at the end material> | BS 7671, "
        "521.5.1 [secondary]");
  cable.cores.reset();
  CHECK(words() ==
        "not-known: the number of cores is not given: a single core on a.c. must have no steel "
        "round it | | lacks: number of cores <at the end cores> | BS 7671, 521.5.1 [secondary]");
  gland.material = "brass";
  entry.material = "galvanised-steel";
  CHECK(words() ==
        "not-known: the number of cores is not given: a single core on a.c. must have no steel "
        "round it | | lacks: number of cores <at the end cores> | BS 7671, 521.5.1 [secondary]");
  entry.material = "aluminium";
  CHECK(words() == "fits: no steel round the cores | | BS 7671, 521.5.1 [secondary]");
  cable.supply = cable::Supply::dc;
  CHECK(words() == "");
}

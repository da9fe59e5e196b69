// What a job means, whole: its faults, assumptions and warnings.
#include <catch2/catch.hpp>

#include "cutback/job/field_text.hpp"
#include "support/build_job.hpp"
#include "support/whole.hpp"

using namespace cutback;
using job::JobInput;
using test::refusal_of;

namespace {

std::string refused(const JobInput& in, job::Unstated unstated = job::Unstated::measured) {
  return refusal_of([&] { (void)job::resolve(in, test::standards(), unstated); });
}

std::string warned(const JobInput& in) {
  return test::lines(
      job::resolve(in, test::standards(), job::Unstated::by_notation).cable.warnings);
}

std::string assumed(const JobInput& in) {
  std::string text;
  for (const Assumption& each :
       job::resolve(in, test::standards(), job::Unstated::measured).assumed) {
    text +=
        fmt::format("{}{} = {} ({})", text.empty() ? "" : "; ", each.fact, each.taken, each.why);
  }
  return text;
}

std::string set(std::string_view key, std::string_view text) {
  JobInput in;
  for (const job::Field& field : job::fields()) {
    if (field.key != key) continue;
    const std::vector<Fault> faults = job::set_from_text(in, field, text, "row 2");
    return faults.empty() ? "= " + job::text_of(in, field).value_or("nothing")
                          : test::whole(faults);
  }
  return "no such field";
}

}  // namespace

TEST_CASE("a job, whole: diameters that cannot be", "[unit][job]") {
  JobInput in = test::small_cable();
  in.bedding_mm = "14.9+15.1";
  CHECK(refused(in) ==
        "the bedding is not smaller than the sheath [--bedding] given: sheath 15 mm, bedding 15 "
        "mm; allowed: bedding under 15 mm; hint: look whether the two were exchanged, and measure "
        "again;");
  in = test::small_cable();
  in.armour_mm = "2.5";
  CHECK(refused(in) ==
        "the wire does not fit between bedding and sheath [--wire] given: sheath 15 mm, bedding 10 "
        "mm, wire 2.5 mm; allowed: a wire under 2.5 mm, so that some sheath is left over it; hint: "
        "measure the three again;");
  in.bedding_mm.reset();
  in.armour_mm = "6.5";
  CHECK(refused(in) == "no fault");  // 7.5 less a sheath of 0.92 mm leaves 6.58
  in.armour_mm = "6.6";
  CHECK(refused(in) ==
        "the wire leaves nothing inside the sheath [--wire] given: sheath 15 mm, wire 6.6 mm; "
        "allowed: a wire under 6.58 mm; hint: measure the two again: one wire, not a strand of "
        "them;");
  in = test::small_cable();
  in.armour = cable::ArmourKind::none;
  CHECK(refused(in) ==
        "an unarmoured cable has no armour wire [--wire] given: 0.9; hint: leave the wire out, or "
        "say which armour it is;");
  in = test::small_cable();
  in.evidence = measure::Evidence::datasheet;
  CHECK(refused(in) ==
        "several readings are not one datasheet figure [--od] given: 14.9+15.1; allowed: one "
        "figure; hint: set evidence to measured; | several readings are not one datasheet figure "
        "[--bedding] given: 9.9+10.1; allowed: one figure; hint: set evidence to measured;");
  CHECK(refused(in, job::Unstated::by_notation) ==
        "several readings are not one datasheet figure [cable.sheath_od_mm] given: 14.9+15.1; "
        "allowed: one figure; hint: set evidence to measured; | several readings are not one "
        "datasheet figure [cable.bedding_mm] given: 9.9+10.1; allowed: one figure; hint: set "
        "evidence to measured;");
  CHECK(refusal_of([] {
          (void)job::resolve(test::small_cable(), test::standards(), job::Unstated::measured,
                             measure::from_datasheet(15.0, 0.1));
        }) ==
        "the sheath diameter is given twice [--od] given: 14.9+15.1; hint: give readings of the "
        "sheath, or a file of them;");
}

TEST_CASE("a job, whole: entry, place, tails and fault that cannot be", "[unit][job]") {
  JobInput in = test::small_cable();
  in.entry = "X20";
  in.adaptor = "M25";
  in.ip = "9";
  in.device = "E16";
  CHECK(
      refused(in) ==
      "this is not an entry thread [--entry] given: X20; allowed: a thread such as M20, M20x1.5, "
      "NPT 1/2 or PG 13.5; | this is not a thread adaptor [--adaptor] given: M25; allowed: two "
      "different threads such as M25:M20, or M25:M20:db with its protection; hint: either order: "
      "the thread that is not the gland's goes into the wall; | this is not an ingress protection "
      "[--ip] given: 9; allowed: two figures such as 54, 66 or 66/68; | this is not a circuit "
      "breaker whose curve is published [--device] given: E16; allowed: the type and rating of a "
      "circuit breaker (IEC 60898), B, C or D: B6, C32, D63; of any other device give the time;");
  in = test::small_cable();
  in.entry = "M20";
  in.adaptor = "M32:M25";
  CHECK(refused(in) ==
        "neither side of the adaptor suits the entry [--adaptor] given: M32:M25; allowed: one side "
        "M20;");
  in.adaptor = "M20:M20";
  CHECK(refused(in) ==
        "this is not a thread adaptor [--adaptor] given: M20:M20; allowed: two different threads "
        "such as M25:M20, or M25:M20:db with its protection; hint: either order: the thread that "
        "is not the gland's goes into the wall;");
  in.adaptor = "M20:M25:db:x";
  CHECK(refused(in) ==
        "this is not a thread adaptor [--adaptor] given: M20:M25:db:x; allowed: two different "
        "threads such as M25:M20, or M25:M20:db with its protection; hint: either order: the "
        "thread that is not the gland's goes into the wall;");
  in.adaptor = "M20:M25:none";
  CHECK(refused(in) ==
        "this is not a marking of an adaptor's protection [--adaptor] given: none; allowed: d, da, "
        "db, dc, e, eb, ec, i, ia, ib, ic, m, ma, mb, mc, n, nA, nC, nL, nR, o, ob, oc, p, pv, px, "
        "pxb, py, pyb, pz, pzc, q, qb, s, sa, sb, sc, t, ta, tb, tc or tD; hint: leave it out when "
        "it is not known;");
  in.adaptor = "M20:M25; M25:M20";
  in.adaptor_mm = 12.0;
  CHECK(refused(in) ==
        "of several adaptors one has figures, and which is not said [--adaptor] given: M20:M25; "
        "M25:M20; allowed: one adaptor with its figures, or several without; hint: give the one "
        "that is used;");
  in.adaptor = "M20:M25";
  in.adaptor_bore_mm = 20.0;
  CHECK(refused(in) ==
        "the adaptor's bore is not smaller than its thread [--adaptor-bore] given: 20; allowed: "
        "under 20 mm in M20; hint: measure its smallest bore;");
  in.adaptor_bore_mm = 19.9;
  CHECK(refused(in) == "no fault");
  in = test::small_cable();
  in.hole = entry::Hole::threaded;
  in.hole_dia_mm = 20.5;
  CHECK(refused(in) ==
        "a tapped hole has no diameter of a clearance hole [--hole-dia] given: 20.5; allowed: "
        "hole_dia_mm with hole clearance; hint: leave it out, or check which kind of hole it is;");
  in = test::small_cable();
  in.current_ka = 1.0;
  in.loop_ohm = 0.2;
  CHECK(refused(in) ==
        "the fault current is given twice [--fault-ka] allowed: a current, or loop_ohm with u0_v; "
        "hint: leave one of them out;");
  in = test::small_cable();
  in.cores = 3;
  in.core_list = {{.core = "1", .reach_mm = 100.0, .x_mm = 3.0}, {.core = "1", .reach_mm = 100.0}};
  CHECK(
      refused(in) ==
      "a route is a length or coordinates, not both [tails.cores[0]] hint: leave one of the two "
      "out; | two cores have one name [tails.cores[1].core] given: 1; hint: give each core its own "
      "name; | some cores have no route [tails.cores] given: 2 cores listed, the cable has 3; "
      "allowed: a row for each core; hint: list the others, spare ones with \"spare\": \"yes\";");
  in.core_list = {{.reach_mm = 100.0}, {.reach_mm = 100.0}, {.spare = true}, {.y_mm = 10.0}};
  in.reach_mm = 200.0;
  CHECK(refused(in) ==
        "more routes than cores [tails.cores] given: 4 cores listed, the cable has 3; allowed: a "
        "row for each core; hint: check which of the two is right; | a reach for all cores beside "
        "a route for each [--reach] given: 200; allowed: one of the two; hint: leave reach_mm out, "
        "or the routes of the cores;");
  in.core_list.pop_back();
  in.core_list[1].reach_mm.reset();
  CHECK(refused(in) == "no fault");
  in.zone = area::Zone::zone_1;
  in.dust_group = area::DustGroup::IIIC;
  CHECK(refused(in) ==
        "zone 1 is for gas, this is for dust [--dust-group] given: IIIC; allowed: a gas group; "
        "hint: ask for a place of gas and dust twice, once for each;");
}

TEST_CASE("a job, whole: what is taken where nothing is said", "[unit][job]") {
  CHECK(assumed({}) ==
        "armour = wire (round wire where nothing else is said of the armour); step_mm = 0.05 mm "
        "(the step of a common vernier caliper); mpe_mm = what its step has (DIN 862, as "
        "tabulated); evidence = by what was typed (a figure alone in a file is a datasheet's, on "
        "the command line a caliper's); zero_mm = 0 mm (jaws that close show 0); cores = no "
        "construction (there is no construction to compare the readings with); csa_mm2 = no "
        "construction (there is no construction to compare the readings with); od_allow_mm = 2 mm "
        "(common practice, no source); bedding_allow_mm = 1 mm (common practice, no source); "
        "armour_allow_mm = 0.05 mm (common practice, no source)");
  JobInput in = test::small_cable();
  in.armour = cable::ArmourKind::wire;
  in.step_mm = 0.2;
  in.zero_mm = 0.0;
  in.evidence = measure::Evidence::measured;
  in.cores = 3;
  in.csa_mm2 = 2.5;
  CHECK(assumed(in) ==
        "mpe_mm = 0.2 mm (no published permissible error for a caliper step of 0.2 mm: the step "
        "itself is taken, +/- 0.2 mm); insulation = as usual for the voltage (the construction "
        "that readings are compared with); conductor = as usual for the size (the construction "
        "that readings are compared with); voltage = 0.6/1 kV (the construction that readings are "
        "compared with); pattern = british (the construction that readings are compared with); "
        "earth_csa_mm2 = none (the construction that readings are compared with)");
  in.step_mm = 0.01;
  in.mpe_mm = 0.02;
  in.insulation = cable::Insulation::xlpe;
  in.conductor = cable::Conductor::circular;
  in.voltage = cable::Voltage::kv_0_6_1;
  in.pattern = cable::Pattern::british;
  in.earth_csa_mm2 = 2.5;
  CHECK(assumed(in) == "");
  in.evidence = measure::Evidence::datasheet;
  in.sheath_od_mm = "15";
  in.bedding_mm = "10";
  in.od_allow_mm = 0.5;
  in.bedding_allow_mm = 0.0;
  CHECK(assumed(in) ==
        "bedding_allow_mm = 1 mm (common practice, no source); armour_allow_mm = 0.05 mm (common "
        "practice, no source)");
}

TEST_CASE("a job, whole: what is warned of", "[unit][job]") {
  JobInput in;
  in.sheath_od_mm = "15";
  in.bedding_mm = "10";
  in.armour_mm = "0.9";
  CHECK(warned(in) == "");
  in.od_allow_mm = 0.1;
  in.bedding_allow_mm = 0.0;
  in.armour_allow_mm = 0.05;
  CHECK(warned(in) ==
        "sheath: a tolerance of 0.1 mm is less than cables are made to: look whether it is one | "
        "bedding: a tolerance of 0 is taken as not stated, and +/- 1 mm counts");
  in.od_allow_mm = 0.2;
  in.bedding_allow_mm.reset();
  CHECK(warned(in) == "");
  in = test::small_cable();
  in.step_mm = 0.2;
  CHECK(warned(in) ==
        "sheath: 14.9, 15.1: no multiple of the caliper's step of 0.2 mm; a typing error, or the "
        "step is another | bedding: 9.9, 10.1: no multiple of the caliper's step of 0.2 mm; a "
        "typing error, or the step is another | no published permissible error for a caliper step "
        "of 0.2 mm: the step itself is taken, +/- 0.2 mm");
  in = test::small_cable();
  in.sheath_od_mm = "0.59in+0.6in";
  CHECK(warned(in) ==
        "sheath: written as 0.59in+0.6in: taken as read to 0.25 mm; write every decimal, or give "
        "the caliper's step");
  in.step_mm = 0.05;
  CHECK(warned(in) ==
        "sheath: 14.986, 15.24: no multiple of the caliper's step of 0.05 mm; a typing error, or "
        "the step is another");
  in = test::small_cable();
  in.cores = 3;
  in.csa_mm2 = 3.0;
  CHECK(warned(in) == "no construction to compare with: no table row for this cross-section");
  in = test::small_cable();
  in.armour_mm = "1.05";
  CHECK(warned(in) ==
        "1.05 mm is not a standard wire: look twice at an imported cable. Repeat: wire: strip one, "
        "wipe it clean of zinc dust and bitumen (HD 604 S1/A1, armour wire tolerances)");
  in = {};
  in.armour = cable::ArmourKind::none;
  in.sheath_od_mm = "15";
  in.time_s = 0.2;
  CHECK(warned(in) ==
        "a fault is given, but no armour carries it: it is not checked; the protective conductor "
        "lies in the cable or beside it");
}

TEST_CASE("a field, whole: what it takes and what it refuses", "[unit][job]") {
  CHECK(set("wall_mm", "2,5") ==
        "wall_mm is not a plain number [row 2] given: 2,5; allowed: 0.1 to 200 mm; hint: write the "
        "decimal mark as a point;");
  CHECK(set("wall_mm", "3mm") ==
        "wall_mm is not a plain number [row 2] given: 3mm; allowed: 0.1 to 200 mm; hint: give a "
        "figure such as 2.5;");
  CHECK(
      set("wall_mm", "") ==
      "wall_mm is empty [row 2] allowed: 0.1 to 200 mm; hint: leave it out when it is not known;");
  CHECK(set("wall_mm", "-1") ==
        "wall_mm is out of range [row 2] given: -1; allowed: 0.1 to 200 mm;");
  CHECK(set("wall_mm", " 2.50 ") == "= 2.5");
  CHECK(set("cores", "2.5") ==
        "cores is not a whole number [row 2] given: 2.5; allowed: 1 to 61 cores;");
  CHECK(set("cores", "0") == "cores is out of range [row 2] given: 0; allowed: 1 to 61 cores;");
  CHECK(set("hole", "Threaded") == "= threaded");
  CHECK(set("hole", "treaded") ==
        "hole is not one of its words [row 2] given: treaded; allowed: threaded or clearance; "
        "hint: did you mean \"threaded\"?;");
  CHECK(set("ignition_source", "maybe") ==
        "ignition_source is not one of its words [row 2] given: maybe; allowed: yes or no;");
  CHECK(set("protection", "dd") ==
        "protection is not one of its words [row 2] given: dd; allowed: none, d, da, db, dc, e, "
        "eb, ec, i, ia, ib, ic, m, ma, mb, mc, n, nA, nC, nL, nR, o, ob, oc, p, pv, px, pxb, py, "
        "pyb, pz, pzc, q, qb, s, sa, sb, sc, t, ta, tb, tc or tD;");
  CHECK(set("gas_group", "iic") == "= IIC");
  CHECK(set("sheath_od_mm", "15x16") ==
        "a reading is not a number [row 2, place 1, reading 1] given: 15x16; allowed: above 0 mm, "
        "at most 300 mm; inches as 0.59in; hint: write 15+16 for two readings at right angles;");
  CHECK(set("entry", " M20 ") == "= M20");
  JobInput in;
  for (const job::Field& field : job::fields()) {
    if (field.key == "wall_mm") {
      CHECK(test::whole(job::set_from_number(in, field, -1.0, "row 2")) ==
            "wall_mm is out of range [row 2] given: -1; allowed: 0.1 to 200 mm;");
      CHECK(job::set_from_number(in, field, field.max, "row 2").empty());
      CHECK(job::set_from_number(in, field, field.min, "row 2").empty());
    }
    if (field.key == "hole")
      CHECK(test::whole(job::set_from_number(in, field, 3.0, "row 2")) ==
            "hole is not one of its words [row 2] given: 3; allowed: threaded or clearance;");
    if (field.key == "cores") {
      CHECK(job::set_from_number(in, field, 3.0, "row 2").empty());
      CHECK(test::whole(job::set_from_number(in, field, 3.5, "row 2")) ==
            "cores is not a whole number [row 2] given: 3.5; allowed: 1 to 61 cores;");
    }
  }
}

TEST_CASE("a job, whole: what the missing diameters are estimated from", "[unit][job]") {
  const auto of = [](const JobInput& in) {
    const job::Job job = test::resolved(in);
    std::string text;
    for (const auto& each : {job.cable.sheath_od, job.cable.bedding, job.cable.wire}) {
      text += each ? fmt::format("{} +- {} {} | ", plain(each->value_mm, 3),
                                 plain(each->expanded_mm, 3), each->source)
                   : "none | ";
    }
    if (job.cable.wire_nominal) text += "nominal " + plain(job.cable.wire_nominal->nominal_mm);
    if (job.construction) text += " built";
    return text;
  };
  CHECK(of({}) == "none | none | none | ");
  JobInput in;
  in.cores = 3;
  in.csa_mm2 = 2.5;
  CHECK(of(in) ==
        "14.155 +- 1.5 cable diameter model, fitted to HD 604 S1/A1 | 9.555 +- 1.578 sheath OD "
        "14.2 less 2 x (wire 0.9 + sheath 1.4) | 0.9 +- 0 armour wire of the construction | "
        "nominal 0.9 built");
  in.armour = cable::ArmourKind::none;
  CHECK(of(in) == "none | none | none | ");
  in.pattern = cable::Pattern::iec;
  CHECK(of(in) ==
        "12.355 +- 2.25 cable diameter model, fitted to HD 604 S1/A1 | none | none |  built");
  in.armour = cable::ArmourKind::wire;
  in.sheath_od_mm = "14.9+15.1";
  CHECK(of(in) ==
        "15 +- 0.063 mean of 2 readings at the place where the gland will sit (JCGM 100:2008 "
        "4.3.7, F.2.2.1) | 9.8 +- 0.569 sheath OD 15.0 less 2 x (wire 0.8 + sheath 1.8) | 0.8 +- 0 "
        "armour wire of the construction | nominal 0.8 built");
  in = {};
  in.bedding_mm = "9.9+10.1";
  in.armour_mm = "0.9";
  CHECK(of(in) ==
        "14.6 +- 0.494 bedding 10.0 and 2 x (wire 0.9 + sheath 1.4) | 10 +- 0.063 mean of 2 "
        "readings at the place where the gland will sit (JCGM 100:2008 4.3.7, F.2.2.1) | 0.9 +- "
        "0.063 mean of 1 reading at the place where the gland will sit (JCGM 100:2008 4.3.7, "
        "F.2.2.1) | nominal 0.9");
}

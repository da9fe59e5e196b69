#include "cutback/cable/plausibility.hpp"

#include <catch2/catch.hpp>

#include "cutback/io/standards.hpp"

using namespace cutback;
using namespace cutback::cable;
using Catch::Contains;

namespace {

const tables::Standards& standards() {
  static const tables::Standards all = io::builtin_standards();
  return all;
}

measure::Estimate measured(double value_mm, double expanded_mm) {
  measure::Estimate estimate;
  estimate.value_mm = value_mm;
  estimate.expanded_mm = expanded_mm;
  return estimate;
}

/// A cable as its readings give it; 0 for a reading that was not taken.
Cable read_as(double od_mm, double bedding_mm, double wire_mm) {
  Cable cable;
  if (od_mm > 0) cable.sheath_od = measured(od_mm, 0.06);
  if (bedding_mm > 0) cable.bedding = measured(bedding_mm, 0.06);
  if (wire_mm > 0) {
    cable.wire = measured(wire_mm, 0.05);
    cable.wire_nominal = wire_band(standards().wire_bands, wire_mm);
  }
  return cable;
}

std::vector<Remark> remarks_of(const Cable& cable, const Construction* construction = nullptr) {
  return implausible_readings(cable, construction, standards());
}

Construction three_by_four() { return construct({.cores = 3, .csa_mm2 = 4}, standards()); }

}  // namespace

TEST_CASE("implausible_readings: readings that agree earn no remark", "[unit][plausibility]") {
  const Construction built = three_by_four();
  CHECK(remarks_of(read_as(15.3, 10.7, 0.9)).empty());
  CHECK(remarks_of(read_as(15.3, 10.7, 0.9), &built).empty());
  CHECK(remarks_of(Cable{}).empty());
  CHECK(remarks_of(Cable{}, &built).empty());
}

TEST_CASE("implausible_readings: a sheath too thin at a point", "[unit][plausibility]") {
  // 1.4 nominal: at least 1.4 - (0.28 + 0.2) = 0.92 mm. Readings of 15.3, 11.9, 0.9 leave 0.8 mm.
  CHECK(least_at_a_point_mm(1.4) == Approx(0.92));
  const Construction built = three_by_four();
  const auto remarks = remarks_of(read_as(15.3, 11.9, 0.9), &built);
  REQUIRE_FALSE(remarks.empty());
  CHECK_THAT(remarks.front().says, Contains("0.8 +/-") && Contains("0.92"));
  CHECK_THAT(remarks.front().repeat, Contains("sheath OD, bedding"));
  // 1.0 mm is above the least.
  CHECK(remarks_of(read_as(15.3, 11.5, 0.9), &built).empty());
}

TEST_CASE("implausible_readings: a sheath twice too thick", "[unit][plausibility]") {
  const auto remarks = remarks_of(read_as(20.0, 10.7, 0.9));
  REQUIRE(remarks.size() == 1);
  CHECK_THAT(remarks.front().says, Contains("more than twice"));
}

TEST_CASE("implausible_readings: two readings that changed places", "[unit][plausibility]") {
  const auto remarks = remarks_of(read_as(10.7, 15.3, 0.9));
  REQUIRE(remarks.size() == 1);
  CHECK_THAT(remarks.front().repeat, Contains("changed places"));
}

TEST_CASE("implausible_readings: inches among millimetres", "[unit][plausibility]") {
  const auto remarks = remarks_of(read_as(15.0, 0.39, 0.9));
  REQUIRE_FALSE(remarks.empty());
  CHECK_THAT(remarks.front().says, Contains("Write 0.39in"));
  CHECK(remarks.front().contradiction);
}

TEST_CASE("implausible_readings: readings of another cable", "[unit][plausibility]") {
  const Construction built = three_by_four();
  // A 2 x 16 read as 3 x 4: 20.4 over the sheath, 14.9 over the bedding, wire 1.25.
  const auto remarks = remarks_of(read_as(20.4, 14.9, 1.25), &built);
  REQUIRE(remarks.size() == 3);
  CHECK_THAT(remarks[0].says, Contains("sheath OD 20.4"));
  CHECK_THAT(remarks[1].says, Contains("bedding 14.9"));
  CHECK_THAT(remarks[2].says, Contains("wire 1.25 mm; the construction has 0.9 mm"));
}

TEST_CASE("implausible_readings: a worse caliper makes no contradiction good",
          "[unit][plausibility]") {
  const Construction built = three_by_four();
  Cable cable;
  cable.sheath_od = measured(built.sheath_od_mm + built.expanded_mm - 0.01, 0.06);
  CHECK(remarks_of(cable, &built).empty());
  for (const double expanded : {0.06, 5.0}) {
    cable.sheath_od = measured(built.sheath_od_mm + built.expanded_mm + 0.01, expanded);
    CHECK(remarks_of(cable, &built).size() == 1);
  }
  // A book may differ from its cable by 2 mm besides.
  cable.sheath_od = measure::from_datasheet(built.sheath_od_mm + built.expanded_mm + 1.9, 0.1);
  CHECK(remarks_of(cable, &built).empty());
}

TEST_CASE("implausible_readings: a wire in no band is no standard wire", "[unit][plausibility]") {
  const auto remarks = remarks_of(read_as(0, 0, 1.4));
  REQUIRE(remarks.size() == 1);
  CHECK_THAT(remarks.front().says, Contains("not a standard wire") && Contains("imported"));
  Cable braid = read_as(0, 0, 0.3);
  braid.armour = ArmourKind::braid;
  CHECK(remarks_of(braid).empty());
}

TEST_CASE("bedding_from_od: OD less two wires and two sheaths", "[unit][plausibility]") {
  // Sheath of a 15.3 mm cable: (0.028 x 15.3 + 1.1) / 1.056 = 1.447 -> 1.4 mm.
  const auto bedding = bedding_from_od(read_as(15.3, 0, 0.9), Pattern::british, standards());
  REQUIRE(bedding.has_value());
  CHECK(bedding->value_mm == Approx(15.3 - 2 * (0.9 + 1.4)));
  CHECK(bedding->evidence == measure::Evidence::estimated);
  CHECK(bedding->expanded_mm > 0.48);
  CHECK(bedding->expanded_mm < 0.6);
  // IEC 60502-1: not under 1.8 mm over armour.
  const auto iec = bedding_from_od(read_as(15.3, 0, 0.9), Pattern::iec, standards());
  REQUIRE(iec.has_value());
  CHECK(iec->value_mm == Approx(15.3 - 2 * (0.9 + 1.8)));
}

TEST_CASE("bedding_from_od: nothing without the figures or without room", "[unit][plausibility]") {
  CHECK_FALSE(bedding_from_od(read_as(15.3, 0, 0), Pattern::british, standards()).has_value());
  CHECK_FALSE(bedding_from_od(read_as(0, 10.7, 0.9), Pattern::british, standards()).has_value());
  CHECK_FALSE(bedding_from_od(read_as(6.0, 0, 3.15), Pattern::british, standards()).has_value());
  Cable tape = read_as(15.3, 0, 0.9);
  tape.armour = ArmourKind::tape;
  CHECK_FALSE(bedding_from_od(tape, Pattern::british, standards()).has_value());
}

TEST_CASE("od_from_bedding: the reverse gives the OD back", "[unit][plausibility]") {
  for (const double od : {12.1, 20.4, 36.1, 53.5}) {
    const auto bedding = bedding_from_od(read_as(od, 0, 1.6), Pattern::british, standards());
    REQUIRE(bedding.has_value());
    const auto back =
        od_from_bedding(read_as(0, bedding->value_mm, 1.6), Pattern::british, standards());
    REQUIRE(back.has_value());
    CHECK(back->value_mm == Approx(od).margin(0.21));
    CHECK(back->expanded_mm >= 0.4);
  }
}

TEST_CASE("construction estimates: never better than estimated", "[unit][plausibility]") {
  const Construction built = three_by_four();
  CHECK(sheath_od_estimate(built).evidence == measure::Evidence::estimated);
  CHECK(sheath_od_estimate(built).expanded_mm == 1.5);
  CHECK(bedding_estimate(built).value_mm == built.bedding_diameter_mm);
}

TEST_CASE("implausible_readings: cores that do not go into the bedding", "[unit][plausibility]") {
  // 107.2 mm2 is 4/0 AWG, 211,600 circular mils (ASTM B258): three are 322 mm2 of copper, and
  // pi/4 x 10.65^2 = 89 mm2. No table of constructions has that size.
  Cable cable = read_as(15.2, 10.65, 0.9);
  cable.cores = 3;
  cable.csa_mm2 = 107.2;
  const auto remarks = remarks_of(cable);
  REQUIRE(remarks.size() == 1);
  CHECK(remarks.front().contradiction);
  CHECK_THAT(remarks.front().says, Contains("3 cores of 107.2 mm2") && Contains("bedding"));
  cable.csa_mm2 = 4;
  CHECK(remarks_of(cable).empty());
}

TEST_CASE("implausible_readings: every cable of a construction takes its own cores",
          "[unit][plausibility]") {
  // What is refused without a table is never what a table has.
  for (const int cores : {1, 2, 3, 4, 5}) {
    for (const double csa :
         {1.5, 2.5, 4.0, 6.0, 10.0, 16.0, 25.0, 50.0, 95.0, 185.0, 240.0, 400.0}) {
      CAPTURE(cores, csa);
      const Construction built = construct({.cores = cores, .csa_mm2 = csa}, standards());
      Cable cable;
      cable.cores = cores;
      cable.csa_mm2 = csa;
      cable.bedding = measured(built.bedding_diameter_mm - built.bedding_expanded_mm, 0.05);
      CHECK(remarks_of(cable).empty());
    }
  }
}

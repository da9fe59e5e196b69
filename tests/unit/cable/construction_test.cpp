#include "cutback/cable/construction.hpp"

#include <catch2/catch.hpp>

#include "cutback/error.hpp"
#include "cutback/io/standards.hpp"

using namespace cutback;
using namespace cutback::cable;
using Catch::Contains;

namespace {

const tables::Standards& standards() {
  static const tables::Standards all = io::builtin_standards();
  return all;
}

Construction made(const ConstructionInput& in) { return construct(in, standards()); }

std::string joined(const std::vector<std::string>& lines) {
  std::string text;
  for (const std::string& line : lines) text += line + "\n";
  return text;
}

}  // namespace

TEST_CASE("construct: three cores of 4 mm2", "[unit][cable]") {
  const Construction cable = made({.cores = 3, .csa_mm2 = 4});
  CHECK(cable.in.insulation == Insulation::xlpe);
  CHECK(cable.in.conductor == Conductor::circular);
  CHECK(cable.layers.insulation_mm == 0.7);
  CHECK(cable.layers.bedding_mm == 0.8);
  CHECK(cable.layers.armour_mm == 0.9);
  CHECK(cable.layers.oversheath_mm == Approx(1.4));
  CHECK(cable.fictitious_laid_up_mm == Approx(8.0));
  CHECK(cable.sheath_od_mm == Approx(cable.bedding_diameter_mm + 2 * (0.9 + 1.4)));
  CHECK(cable.expanded_mm == 1.5);
  CHECK(cable.bedding_expanded_mm == 1.0);
  CHECK(cable.armour_material == "steel");
  REQUIRE(cable.wires.has_value());
  CHECK(*cable.armour_area_mm2 == Approx(*cable.wires * 0.63617).epsilon(1e-4));
}

TEST_CASE("construct: the steps can be followed with a pencil", "[unit][cable]") {
  const std::string steps = joined(made({.cores = 3, .csa_mm2 = 4}).steps);
  CHECK_THAT(steps, Contains("2.3 + 2 x 0.7 = 3.7 mm"));
  CHECK_THAT(steps, Contains("2.15 x 3.7 = 8.0 mm"));
  CHECK_THAT(steps, Contains("0.028 x (8.0 + 2 x 0.8 + 2 x 0.9) + 1.1 = 1.4 mm"));
  CHECK_THAT(steps, Contains("sheath OD: "));
}

TEST_CASE("construct: the cross-section runs outward", "[unit][cable]") {
  for (const ConstructionInput& in :
       {ConstructionInput{.cores = 3, .csa_mm2 = 95}, ConstructionInput{.cores = 1, .csa_mm2 = 95},
        ConstructionInput{
            .cores = 4, .csa_mm2 = 6, .armour = ArmourKind::tape, .pattern = Pattern::iec},
        ConstructionInput{
            .cores = 1, .csa_mm2 = 6, .armour = ArmourKind::none, .pattern = Pattern::iec}}) {
    const Construction cable = made(in);
    double last = 0.0;
    for (const SectionRow& row : cable.section) {
      INFO(row.name);
      if (!row.diameter_mm) continue;
      CHECK(*row.diameter_mm > last);
      last = *row.diameter_mm;
    }
    CHECK(cable.section.back().name == "oversheath");
    CHECK(last == cable.sheath_od_mm);
  }
}

TEST_CASE("construct: every British-pattern result says that the rule is a reconstruction",
          "[unit][cable]") {
  CHECK_THAT(joined(made({.cores = 2, .csa_mm2 = 10}).cautions), Contains("reconstruction"));
  const Construction iec = made({.cores = 2, .csa_mm2 = 10, .pattern = Pattern::iec});
  CHECK_THAT(joined(iec.cautions), !Contains("reconstruction"));
  CHECK_THAT(joined(iec.cautions), Contains("measure before cutting"));
  CHECK_THAT(joined(iec.sources), Contains("IEC 60502-1"));
}

TEST_CASE("construct: no printed row means a larger stated error", "[unit][cable]") {
  const Construction iec = made({.cores = 2, .csa_mm2 = 10, .pattern = Pattern::iec});
  CHECK(iec.expanded_mm == Approx(1.5 * 1.5));
  CHECK_THAT(joined(iec.cautions), Contains("no printed row"));
  CHECK(od_error_mm(25.0, true) == 1.5);
  CHECK(od_error_mm(25.1, true) == 2.0);
  CHECK(od_error_mm(60.0, true) == Approx(3.0));
  CHECK(bedding_error_mm(40.0, true) == Approx(2.0));
}

TEST_CASE("construct: an earth core of another size", "[unit][cable]") {
  const Construction cable = made({.cores = 3, .csa_mm2 = 16, .earth_csa_mm2 = 6});
  // 16: 4.5 + 1.4 = 5.9; 6: 2.8 + 1.4 = 4.2; 2.42 x (3 x 5.9 + 4.2) / 4 = 13.2495
  CHECK(cable.fictitious_laid_up_mm == Approx(13.2));
  CHECK_THAT(joined(cable.steps), Contains("2.42 x (3 x 5.9 + 4.2) / 4 = 13.2 mm"));
  const double three = made({.cores = 3, .csa_mm2 = 16}).sheath_od_mm;
  const double four = made({.cores = 4, .csa_mm2 = 16}).sheath_od_mm;
  CHECK(cable.sheath_od_mm > three);
  CHECK(cable.sheath_od_mm < four);
  // An earth core of the same size is one core more.
  CHECK(made({.cores = 3, .csa_mm2 = 16, .earth_csa_mm2 = 16}).sheath_od_mm == Approx(four));
}

TEST_CASE("construct: IEC layers", "[unit][cable]") {
  // 4 x 16 PVC: Dc 6.5, Df 15.7, over covering 16.5, wire 1.6, 19.7, sheath 0.035 x 19.7 + 1 = 1.7
  // -> 1.8
  const Construction wire =
      made({.cores = 4, .csa_mm2 = 16, .insulation = Insulation::pvc, .pattern = Pattern::iec});
  CHECK(wire.layers.insulation_mm == 1.0);
  CHECK(wire.layers.bedding_mm == 1.0);
  CHECK(wire.layers.armour_mm == 1.6);
  CHECK(wire.layers.oversheath_mm == Approx(1.8));
  const Construction tape = made({.cores = 4,
                                  .csa_mm2 = 16,
                                  .insulation = Insulation::pvc,
                                  .armour = ArmourKind::tape,
                                  .pattern = Pattern::iec});
  CHECK(tape.layers.armour_mm == 0.2);
  CHECK_FALSE(tape.wires.has_value());
  CHECK(tape.sheath_od_mm ==
        Approx(tape.bedding_diameter_mm + 4 * 0.2 + 2 * tape.layers.oversheath_mm));
  const Construction strip = made({.cores = 4,
                                   .csa_mm2 = 16,
                                   .insulation = Insulation::pvc,
                                   .armour = ArmourKind::strip,
                                   .pattern = Pattern::iec});
  CHECK(strip.layers.armour_mm == 0.8);
  const Construction plain = made({.cores = 1,
                                   .csa_mm2 = 16,
                                   .insulation = Insulation::pvc,
                                   .armour = ArmourKind::none,
                                   .pattern = Pattern::iec});
  CHECK(plain.layers.bedding_mm == 0.0);
  CHECK(plain.layers.oversheath_mm == Approx(1.4));
  CHECK(plain.armour_material.empty());
}

TEST_CASE("construct: a single core carries aluminium wire", "[unit][cable]") {
  const Construction cable = made({.cores = 1, .csa_mm2 = 95});
  CHECK(cable.armour_material == "aluminium");
  CHECK_THAT(joined(cable.cautions), Contains("no steel") && Contains("521.5.1"));
}

TEST_CASE("construct: what is only remembered says so", "[unit][cable]") {
  const Construction xlpe = made(
      {.cores = 3, .csa_mm2 = 95, .insulation = Insulation::xlpe, .voltage = Voltage::kv_1_9_3_3});
  CHECK(xlpe.layers.insulation_mm == 2.0);
  CHECK_THAT(joined(xlpe.cautions), Contains("from memory"));
  CHECK_THAT(joined(made({.cores = 4, .csa_mm2 = 400}).cautions), Contains("from memory"));
  CHECK_THAT(joined(made({.cores = 4, .csa_mm2 = 95}).cautions), !Contains("from memory"));
}

TEST_CASE("construct: 61 cores and the numbers between the printed ones", "[unit][cable]") {
  CHECK(made({.cores = 61, .csa_mm2 = 1.5}).sheath_od_mm >
        made({.cores = 48, .csa_mm2 = 1.5}).sheath_od_mm);
  CHECK(made({.cores = 50, .csa_mm2 = 1.5}).sheath_od_mm ==
        Approx(made({.cores = 52, .csa_mm2 = 1.5}).sheath_od_mm));
}

TEST_CASE("construct: what no rule covers is refused with what is allowed", "[unit][cable]") {
  const auto refuses = [](const ConstructionInput& in, const std::string& allowed) {
    INFO(allowed);
    CHECK_THROWS_WITH(made(in), Contains(allowed));
    CHECK_THROWS_AS(made(in), InputError);
  };
  refuses({.cores = 3, .csa_mm2 = 5}, "1.5, 2.5, 4, 6");
  refuses({.cores = 0, .csa_mm2 = 4}, "1 to 61");
  refuses({.cores = 62, .csa_mm2 = 4}, "1 to 61");
  refuses({.cores = 61, .csa_mm2 = 4, .earth_csa_mm2 = 4}, "1 to 61");
  refuses({.cores = 3, .csa_mm2 = 500}, "300, 400 mm2");
  refuses({.cores = 3, .csa_mm2 = 10, .voltage = Voltage::kv_1_9_3_3}, "16, 25");
  refuses({.cores = 3, .csa_mm2 = 4, .earth_csa_mm2 = 3}, "1.5, 2.5, 4 mm2");
  refuses({.cores = 3, .csa_mm2 = 4, .earth_csa_mm2 = 6}, "no larger");
  refuses({.cores = 1, .csa_mm2 = 4, .earth_csa_mm2 = 4}, "none for a single core");
  refuses({.cores = 1, .csa_mm2 = 95, .conductor = Conductor::shaped}, "circular for 1 core");
  refuses({.cores = 5, .csa_mm2 = 95, .conductor = Conductor::shaped}, "circular for 5 cores");
  refuses({.cores = 3, .csa_mm2 = 16, .conductor = Conductor::shaped}, "circular below 25 mm2");
  refuses({.cores = 3, .csa_mm2 = 25, .conductor = Conductor::solid}, "above 16 mm2");
  refuses({.cores = 1, .csa_mm2 = 25, .conductor = Conductor::solid}, "four sectors: 380");
  refuses({.cores = 1, .csa_mm2 = 380, .conductor = Conductor::circular}, "solid");
  refuses({.cores = 1, .csa_mm2 = 380, .insulation = Insulation::pvc}, "xlpe");
  refuses(
      {.cores = 3, .csa_mm2 = 95, .voltage = Voltage::kv_1_9_3_3, .conductor = Conductor::solid},
      "shaped");
  refuses({.cores = 3, .csa_mm2 = 4, .armour = ArmourKind::braid}, "wire");
  refuses({.cores = 3, .csa_mm2 = 4, .armour = ArmourKind::braid, .pattern = Pattern::iec}, "tape");
  refuses({.cores = 3, .csa_mm2 = 4, .armour = ArmourKind::tape}, "pattern iec");
  refuses({.cores = 2, .csa_mm2 = 1.5, .armour = ArmourKind::strip, .pattern = Pattern::iec},
          "wire");
}

TEST_CASE("construct: independent faults come together", "[unit][cable]") {
  try {
    made({.cores = 70, .csa_mm2 = 5, .armour = ArmourKind::braid});
    FAIL("no error");
  } catch (const InputError& error) {
    CHECK(error.faults().size() == 3);
  }
}

#include "cutback/cable/fictitious.hpp"

#include <catch2/catch.hpp>

#include "cutback/cable/geometry.hpp"
#include "cutback/error.hpp"
#include "cutback/io/standards.hpp"

using namespace cutback;
using namespace cutback::cable;

TEST_CASE("fictitious: each diameter is rounded half up before the next step", "[unit][cable]") {
  const auto standards = io::builtin_standards();
  // 2.42 x 3.7 = 8.954 -> 9.0; an exact half goes up: 2.5 x 4.1 = 10.25 -> 10.3.
  const double cores[] = {3.7, 3.7, 3.7, 3.7};
  CHECK(fictitious_laid_up_mm(cores, 2.42) == Approx(9.0));
  const double half[] = {4.1};
  CHECK(fictitious_laid_up_mm(half, 2.5) == Approx(10.3));
}

TEST_CASE("fictitious: screens and tape bedding", "[unit][cable]") {
  const auto standards = io::builtin_standards();
  CHECK(concentric_increase_mm(standards, 1.5) == 0.5);
  CHECK(concentric_increase_mm(standards, 16) == 1.1);
  CHECK(concentric_increase_mm(standards, 20) == 1.2);
  CHECK_THROWS_AS(concentric_increase_mm(standards, 301), InputError);
  CHECK_THROWS_AS(concentric_increase_mm(standards, 0), InputError);
  CHECK(tape_bedding_increase_mm(standards, 30.0) == 1.0);
  CHECK(tape_bedding_increase_mm(standards, 30.1) == 1.6);
  CHECK(inner_covering_increase_mm(standards, 40.0) == Approx(0.8));
  CHECK(inner_covering_increase_mm(standards, 40.1) == Approx(1.2));
  const std::vector<CoreSize> cores(3, CoreSize{50, 1.0});
  const Fictitious bare = fictitious_diameters({.cores = cores}, standards);
  const Fictitious screened =
      fictitious_diameters({.cores = cores, .concentric_csa_mm2 = 25}, standards);
  CHECK(screened.under_armour_mm == Approx(bare.under_armour_mm + 1.2));
}

TEST_CASE("fictitious: tape armour counts four thicknesses", "[unit][cable]") {
  const auto standards = io::builtin_standards();
  const Fictitious out = fictitious_diameters(
      {.cores = std::vector<CoreSize>(3, CoreSize{50, 1.0}), .armour = ArmourKind::tape},
      standards);
  CHECK(*out.armour_mm == 0.2);
  CHECK(out.under_oversheath_mm == Approx(out.under_armour_mm + 0.8));
}

TEST_CASE("fictitious: flat wire needs more than 15 mm and braid has no rule", "[unit][cable]") {
  const auto standards = io::builtin_standards();
  const std::vector<CoreSize> thin(2, CoreSize{1.5, 0.7});
  CHECK_THROWS_AS(fictitious_diameters({.cores = thin, .armour = ArmourKind::strip}, standards),
                  InputError);
  CHECK_THROWS_AS(fictitious_diameters({.cores = thin, .armour = ArmourKind::braid}, standards),
                  InputError);
}

TEST_CASE("fictitious: an oversheath over armour is never under 1.8 mm", "[unit][cable]") {
  const auto standards = io::builtin_standards();
  CHECK(oversheath_thickness_mm(standards, "iec", 10.0, true, false) == 1.8);
  CHECK(oversheath_thickness_mm(standards, "iec", 10.0, false, true) == Approx(1.4));
  CHECK(oversheath_thickness_mm(standards, "iec", 56.1, true, false) == Approx(3.0));
}

TEST_CASE("assembly_coefficient: outside the table", "[unit][cable]") {
  const auto standards = io::builtin_standards();
  CHECK(assembly_coefficient(standards, 1) == 1.0);
  CHECK_THROWS_AS(assembly_coefficient(standards, 0), InputError);
  CHECK_THROWS_AS(assembly_coefficient(standards, 62), InputError);
  CHECK_THROWS_AS(assembly_coefficient(standards, 11, true), InputError);
}

TEST_CASE("sector_circle: without insulation the sectors fill the circle", "[unit][cable]") {
  // n profiles of area A fill pi R^2: A = 100, n = 3 and R = sqrt(300 / pi).
  CHECK(sector_circle_mm(100.0, 3, 0.0) == Approx(2.0 * 9.772050238));
  CHECK(sector_circle_mm(100.0, 2, 0.0) == Approx(2.0 * 7.978845608));
  CHECK(sector_circle_mm(100.0, 3, 1.0) > sector_circle_mm(100.0, 3, 0.5) + 1.0);
}

TEST_CASE("armour_layer: the wires never overlap", "[unit][cable]") {
  const auto standards = io::builtin_standards();
  for (const double under : {5.0, 7.7, 23.0, 60.0}) {
    for (const double wire : {0.9, 1.25, 2.5}) {
      const ArmourLayer layer = armour_layer(standards, under, wire);
      CHECK(layer.wires * wire <= 0.9 * 3.14159265359 * (under + wire));
      CHECK(layer.area_mm2 == Approx(layer.wires * 0.785398163 * wire * wire));
    }
  }
  CHECK(armour_layer(standards, 13.2, 0.9).wires == 42);
  CHECK(armour_layer(standards, 43.3, 2.5).wires == 49);
}

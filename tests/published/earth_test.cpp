// Earth-fault values typed from: BS 7671 tables 43.1, 54.2 to 54.5 and 54.7 (numbers as used since
// the 17th edition) and 64; IEC 60364-5-54:2011 Annex A and 543.1.2; NEN 1010 clause 543; published
// worked examples of the adiabatic equation.
#include <catch2/catch.hpp>
#include <cmath>

#include "cutback/earth/armour_earth.hpp"
#include "cutback/io/standards.hpp"

using namespace cutback;
using namespace cutback::earth;

namespace {

const tables::Standards& standards() {
  static const tables::Standards all = io::builtin_standards();
  return all;
}

double k_of(Use use, Material material, Insulation insulation, double area_mm2 = 10.0) {
  const auto k = k_value(standards(), use, material, insulation, area_mm2);
  REQUIRE(k.has_value());
  return k->k;
}

// IEC 60364-5-54 Annex A, typed here and not read from data/.
constexpr Metal k_copper{234.5, 3.45e-3, 17.241e-6};
constexpr Metal k_aluminium{228.0, 2.5e-3, 28.264e-6};
constexpr Metal k_lead{230.0, 1.45e-3, 214e-6};
constexpr Metal k_steel{202.0, 3.8e-3, 138e-6};

}  // namespace

TEST_CASE("IEC 60364-5-54 Annex A: the constants of the four metals", "[published][earth]") {
  const std::pair<Material, Metal> rows[] = {{Material::copper, k_copper},
                                             {Material::aluminium, k_aluminium},
                                             {Material::lead, k_lead},
                                             {Material::steel, k_steel}};
  for (const auto& [material, printed] : rows) {
    INFO(to_string(material));
    const Metal built_in = metal(standards(), material);
    CHECK(built_in.beta_degc == printed.beta_degc);
    CHECK(built_in.heat_j_per_k_mm3 == printed.heat_j_per_k_mm3);
    CHECK(built_in.resistivity_ohm_mm == printed.resistivity_ohm_mm);
  }
  const auto prefactor = [](const Metal& m) {
    return std::sqrt(m.heat_j_per_k_mm3 * (m.beta_degc + 20.0) / m.resistivity_ohm_mm);
  };
  CHECK(std::round(prefactor(k_copper)) == 226.0);
  CHECK(std::round(prefactor(k_aluminium)) == 148.0);
  CHECK(std::round(prefactor(k_lead)) == 41.0);
  CHECK(std::round(prefactor(k_steel)) == 78.0);
}

TEST_CASE("BS 7671 tables 43.1 and 54.2 to 54.5: every printed k", "[published][earth]") {
  struct Row {
    Use use;
    Material material;
    double pvc, pvc_big, pvc90, pvc90_big, xlpe;
  };
  const Row rows[] = {{Use::line, Material::copper, 115, 103, 100, 86, 143},
                      {Use::separate, Material::copper, 143, 133, 143, 133, 176},
                      {Use::separate, Material::aluminium, 95, 88, 95, 88, 116},
                      {Use::separate, Material::steel, 52, 52, 52, 52, 64},
                      {Use::core, Material::copper, 115, 103, 100, 86, 143},
                      {Use::armour, Material::aluminium, 93, 93, 85, 85, 85},
                      {Use::armour, Material::steel, 51, 51, 46, 46, 46},
                      {Use::armour, Material::lead, 26, 26, 23, 23, 23},
                      {Use::conduit, Material::steel, 47, 47, 44, 44, 58}};
  for (const Row& row : rows) {
    INFO(to_string(row.use) << ' ' << to_string(row.material));
    CHECK(k_of(row.use, row.material, Insulation::pvc, 300.0) == row.pvc);
    CHECK(k_of(row.use, row.material, Insulation::pvc, 301.0) == row.pvc_big);
    CHECK(k_of(row.use, row.material, Insulation::pvc90, 300.0) == row.pvc90);
    CHECK(k_of(row.use, row.material, Insulation::pvc90, 301.0) == row.pvc90_big);
    CHECK(k_of(row.use, row.material, Insulation::xlpe, 400.0) == row.xlpe);
  }
  CHECK(k_of(Use::line, Material::copper, Insulation::rubber60) == 141.0);
  // NEN 1010 clause 543.
  CHECK(k_of(Use::line, Material::copper, Insulation::rubber85) == 134.0);
  CHECK(k_of(Use::line, Material::aluminium, Insulation::rubber85) == 89.0);
  const auto rubber = k_value(standards(), Use::line, Material::copper, Insulation::rubber85, 10.0);
  CHECK(rubber->source == "NEN 1010 clause 543");
  const auto armour = k_value(standards(), Use::armour, Material::steel, Insulation::rubber85, 10);
  CHECK(armour->source.find("BS 7671") == std::string::npos);
}

TEST_CASE("IEC 60364-5-54 Annex A: the tabulated k come out of the constants",
          "[published][earth]") {
  struct Row {
    Metal metal;
    double start, end, printed;
  };
  const Row rows[] = {
      {k_copper, 30, 160, 143},   {k_copper, 30, 140, 133},    {k_copper, 30, 200, 159},
      {k_copper, 30, 250, 176},   {k_copper, 70, 160, 115},    {k_copper, 70, 140, 103},
      {k_copper, 90, 160, 100},   {k_copper, 90, 250, 143},    {k_copper, 60, 200, 141},
      {k_aluminium, 30, 160, 95}, {k_aluminium, 30, 250, 116}, {k_aluminium, 70, 160, 76},
      {k_aluminium, 60, 200, 93}, {k_aluminium, 80, 200, 85},  {k_steel, 30, 160, 52},
      {k_steel, 30, 250, 64},     {k_steel, 60, 200, 51},      {k_lead, 60, 200, 26},
      {k_steel, 50, 160, 47},     {k_steel, 30, 200, 58},      {k_copper, 85, 220, 134},
      {k_aluminium, 85, 220, 89}, {k_steel, 60, 250, 58}};
  for (const Row& row : rows) {
    INFO(row.printed << " from " << row.start << " to " << row.end);
    CHECK(k_from_constants(row.metal, row.start, row.end) == Approx(row.printed).margin(0.5));
  }
}

TEST_CASE("BS 7671 table 54.4: 46 is printed where the constants give 46.55",
          "[published][earth]") {
  CHECK(k_from_constants(k_steel, 80, 200) == Approx(46.55).margin(0.005));
  CHECK(k_of(Use::armour, Material::steel, Insulation::xlpe) == 46.0);
  CHECK(k_from_constants(k_lead, 80, 200) == Approx(23.54).margin(0.005));
  CHECK(k_of(Use::armour, Material::lead, Insulation::xlpe) == 23.0);
  // Rubber is not tabulated for armour: the constants, rounded down.
  CHECK(k_of(Use::armour, Material::steel, Insulation::rubber60) == 52.0);
  CHECK(k_of(Use::armour, Material::steel, Insulation::rubber85) == 50.0);
  CHECK(k_of(Use::armour, Material::aluminium, Insulation::rubber85) == 92.0);
  // Nor is copper: 140.73 and 128.3.
  CHECK(k_of(Use::armour, Material::copper, Insulation::pvc) == 140.0);
  CHECK(k_of(Use::armour, Material::copper, Insulation::xlpe) == 128.0);
}

TEST_CASE("k of aluminium lines: as the constants give it, never above", "[published][earth]") {
  struct Row {
    Insulation insulation;
    double area, start, end;
  };
  const Row rows[] = {{Insulation::pvc, 300, 70, 160},
                      {Insulation::pvc, 301, 70, 140},
                      {Insulation::pvc90, 300, 90, 160},
                      {Insulation::pvc90, 301, 90, 140},
                      {Insulation::xlpe, 400, 90, 250}};
  for (const Row& row : rows) {
    CHECK(k_of(Use::line, Material::aluminium, row.insulation, row.area) ==
          Approx(k_from_constants(k_aluminium, row.start, row.end)).margin(0.6));
  }
}

TEST_CASE("adiabatic equation: published worked examples", "[published][earth]") {
  struct Row {
    double current_a, time_s, k, printed, half_digit;
  };
  const Row rows[] = {{1966, 0.1, 46, 13.5, 0.05},   // armour of a 4 x 70 mm2 cable, 131 mm2
                      {2555, 0.1, 46, 17.5, 0.07},   // printed as 807/46 and as 17.5
                      {200, 0.4, 115, 1.10, 0.005},  // copper
                      {90, 0.4, 115, 0.49, 0.006}};  // copper, printed cut off, not rounded
  for (const Row& row : rows) {
    const double needed = adiabatic_area_mm2(row.current_a * row.current_a * row.time_s, row.k);
    INFO(row.current_a << " A");
    CHECK(needed == Approx(row.printed).margin(row.half_digit));
  }
}

TEST_CASE("adiabatic equation: the page that prints 6.78 for 1300 A is wrong",
          "[published][earth]") {
  const double needed = adiabatic_area_mm2(1300.0 * 1300.0 * 0.1, 46);
  CHECK(needed == Approx(8.937).margin(0.0005));
  CHECK_FALSE(needed == Approx(6.78).margin(0.5));
}

TEST_CASE("adiabatic equation: current that an area stands", "[published][earth]") {
  CHECK(withstand_ka(26, 46, 1.0) == Approx(1.196).margin(0.0005));
  CHECK(withstand_ka(26, 46, 0.1) == Approx(3.782).margin(0.0005));
  CHECK(withstand_ka(131, 46, 1.0) == Approx(6.026).margin(0.0005));
  CHECK(longest_time_s(26, 46, 1.196) == Approx(1.0).margin(1e-9));
}

TEST_CASE("BS 7671 table 54.7: printed column for 115/51 in tenths rounded up",
          "[published][earth]") {
  const std::pair<double, double> rows[] = {
      {1.5, 3.4}, {2.5, 5.7}, {4, 9.0},   {6, 13.6},   {10, 22.6},   {16, 36.1},  {25, 36.1},
      {35, 36.1}, {50, 56.4}, {70, 79.0}, {95, 107.2}, {120, 135.3}, {150, 169.2}};
  const auto& table = standards().table("minimum_protective");
  for (const auto& [line, printed] : rows) {
    INFO(line << " mm2");
    const double needed = minimum_by_table_mm2(table, line, 115, 51);
    // One cell, 9.0 for 9.02, is printed rounded down.
    CHECK(needed <= printed + 0.02);
    CHECK(needed > printed - 0.1);
  }
  CHECK(minimum_by_table_mm2(table, 10, 143, 46) == Approx(31.1).margin(0.05));
  CHECK(minimum_by_table_mm2(table, 6, 100, 46) == Approx(13.0).margin(0.05));
  CHECK(minimum_by_table_mm2(table, 400, 143, 46) == Approx(621.74).margin(0.005));
}

TEST_CASE("2 x 10 mm2 XLPE with 26 mm2 of armour: the table asks more than the equation",
          "[published][earth]") {
  EarthInput in;
  in.armour = ArmourArea{26.0, "BS 5467 family, 2 x 10 mm2", 0.0};
  in.insulation = Insulation::xlpe;
  in.line_mm2 = 10.0;
  in.fault = {2.555, 0.1, {}};
  const EarthResult result = check_armour_earth(in, standards());
  REQUIRE(result.required_mm2.has_value());
  REQUIRE(result.table_required_mm2.has_value());
  CHECK(*result.required_mm2 == Approx(17.564).margin(0.0005));
  CHECK(*result.table_required_mm2 == Approx(31.087).margin(0.0005));
  CHECK(result.adiabatic.verdict == Verdict::fits);
  CHECK(result.table.verdict == Verdict::no_fit);
  CHECK(result.armour == Verdict::fits);
}

TEST_CASE("BS 7671 table 64: test voltage and least insulation resistance", "[published][earth]") {
  const tables::Table& table = standards().table("insulation_resistance");
  REQUIRE(table.rows.size() == 2);
  CHECK(table.number(0, "nominal_max_v") == 500.0);
  CHECK(table.number(0, "test_v") == 500.0);
  CHECK(table.number(0, "least_mohm") == 1.0);
  CHECK(table.number(1, "test_v") == 1000.0);
  CHECK(table.number(1, "least_mohm") == 1.0);
}

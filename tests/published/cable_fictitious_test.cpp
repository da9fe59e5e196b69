// The fictitious method: IEC 60502-1 Annex A, Tables A.1 and A.2 (A.2 as IS 10462-1:1983 Table 3),
// and a printed build-up of 3 x 300 mm2. Conductors: IEC 60228 Table 2 and Annex C.
#include <catch2/catch.hpp>

#include "cutback/cable/fictitious.hpp"
#include "cutback/cable/geometry.hpp"
#include "cutback/io/standards.hpp"

using namespace cutback;
using namespace cutback::cable;

TEST_CASE("fictitious conductors: Table A.1", "[published][cable]") {
  const auto standards = io::builtin_standards();
  const double rows[][2] = {
      {1.5, 1.4},  {2.5, 1.8},  {4, 2.3},    {6, 2.8},    {10, 3.6},   {16, 4.5},   {25, 5.6},
      {35, 6.7},   {50, 8.0},   {70, 9.4},   {95, 11.0},  {120, 12.4}, {150, 13.8}, {185, 15.3},
      {240, 17.5}, {300, 19.5}, {400, 22.6}, {500, 25.2}, {630, 28.3}, {800, 31.9}, {1000, 35.7}};
  for (const auto& row : rows) {
    INFO(row[0]);
    CHECK(fictitious_conductor_mm(standards, row[0]) == row[1]);
  }
}

TEST_CASE("assembly coefficients: Table A.2", "[published][cable]") {
  const auto standards = io::builtin_standards();
  struct Row {
    int from, to;
    double k;
  };
  const Row rows[] = {
      {2, 2, 2.00},   {3, 3, 2.16},   {4, 4, 2.42},   {5, 5, 2.70},   {6, 7, 3.00},
      {8, 8, 3.45},   {9, 9, 3.80},   {10, 11, 4.00}, {12, 12, 4.16}, {13, 14, 4.41},
      {15, 16, 4.70}, {17, 19, 5.00}, {20, 21, 5.33}, {22, 23, 5.67}, {24, 26, 6.00},
      {27, 27, 6.15}, {28, 30, 6.41}, {31, 33, 6.70}, {34, 37, 7.00}, {38, 40, 7.33},
      {41, 43, 7.67}, {44, 47, 8.00}, {48, 48, 8.15}, {52, 52, 8.41}, {61, 61, 9.00}};
  for (const Row& row : rows) {
    for (int cores = row.from; cores <= row.to; ++cores) {
      INFO(cores);
      CHECK(assembly_coefficient(standards, cores) == row.k);
    }
  }
  const double one_layer[][2] = {{7, 3.35},  {8, 3.66},  {9, 4.00},
                                 {10, 4.40}, {12, 5.00}, {18, 7.00}};
  for (const auto& row : one_layer) {
    CHECK(assembly_coefficient(standards, static_cast<int>(row[0]), true) == row[1]);
  }
}

TEST_CASE("fictitious method: printed build-up of 3 x 300 mm2 XLPE", "[published][cable]") {
  const auto standards = io::builtin_standards();
  const CoreSize core{300, 1.8};
  CHECK(fictitious_core_mm(standards, core) == Approx(23.1));
  const Fictitious out = fictitious_diameters({.cores = {core, core, core}}, standards);
  CHECK(out.laid_up_mm == Approx(49.9));
  CHECK(out.under_armour_mm == Approx(51.1));
  CHECK(*out.armour_mm == 2.5);
  CHECK(out.under_oversheath_mm == Approx(56.1));
  CHECK(out.oversheath_mm == Approx(3.0));
  CHECK(out.sheath_od_mm == Approx(62.1));
}

TEST_CASE("fictitious method: four cores of which one is reduced", "[published][cable]") {
  // A.2.2: Df = 2.42 (3 Dc1 + Dc2) / 4. 3 x 50 + 25 XLPE: (3 x 10.0 + 7.4) x 2.42 / 4 = 22.627.
  const auto standards = io::builtin_standards();
  const double main = fictitious_core_mm(standards, {50, 1.0});
  const double reduced = fictitious_core_mm(standards, {25, 0.9});
  CHECK(main == Approx(10.0));
  CHECK(reduced == Approx(7.4));
  const double cores[] = {main, main, main, reduced};
  CHECK(fictitious_laid_up_mm(cores, 2.42) == Approx(22.6));
}

TEST_CASE("stranded conductors: within the diameters of IEC 60228 Annex C", "[published][cable]") {
  // Largest diameters of class 2 circular conductors (from memory of Annex C), and the least of the
  // compacted ones as lower bound: a stranded conductor is no thinner.
  const auto standards = io::builtin_standards();
  const double rows[][3] = {
      {10, 3.6, 4.2},    {16, 4.6, 5.3},    {25, 5.6, 6.6},    {35, 6.6, 7.9},    {50, 7.7, 9.1},
      {70, 9.3, 11.0},   {95, 11.0, 12.9},  {120, 12.3, 14.5}, {150, 13.7, 16.2}, {185, 15.3, 18.0},
      {240, 17.6, 20.6}, {300, 19.7, 23.1}, {400, 22.3, 26.1}};
  for (const auto& row : rows) {
    INFO(row[0]);
    const double d = stranded_diameter_mm(standards, row[0]);
    CHECK(d > row[1]);
    CHECK(d <= row[2]);
    CHECK(d > row[2] * 0.93);
  }
}

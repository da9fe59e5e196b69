// Constructions, their faults and implausible readings, whole.
#include <catch2/catch.hpp>

#include "cutback/cable/construction.hpp"
#include "cutback/cable/plausibility.hpp"
#include "support/build_job.hpp"
#include "support/whole.hpp"

using namespace cutback;
using namespace cutback::cable;
using test::refusal_of;

namespace {

std::string built(const ConstructionInput& in) {
  const Construction out = construct(in, test::standards());
  std::string text =
      fmt::format("insulation {} bedding {} armour {} sheath {}",
                  plain(out.layers.insulation_mm, 3), plain(out.layers.bedding_mm, 3),
                  out.layers.armour_mm ? plain(*out.layers.armour_mm, 3) : "none",
                  plain(out.layers.oversheath_mm, 3));
  text += fmt::format(" | {} {} {} core {} laid up {} bedding {} +- {} od {} +- {}",
                      to_string(*out.in.conductor), to_string(*out.in.insulation),
                      out.armour_material, out.core_mm ? plain(*out.core_mm, 3) : "none",
                      plain(out.fictitious_laid_up_mm, 3), plain(out.bedding_diameter_mm, 3),
                      plain(out.bedding_expanded_mm, 3), plain(out.sheath_od_mm, 3),
                      plain(out.expanded_mm, 3));
  if (out.wires)
    text += fmt::format(" wires {} {} mm2 off {}", *out.wires, plain(*out.armour_area_mm2, 2),
                        plain(armour_area_error(out), 2));
  for (const SectionRow& row : out.section) {
    text +=
        fmt::format(" | {} {} {}", row.name, row.thickness_mm ? plain(*row.thickness_mm, 3) : "-",
                    row.diameter_mm ? plain(*row.diameter_mm, 3) : "-");
  }
  return text;
}

std::string steps(const ConstructionInput& in) {
  return test::lines(construct(in, test::standards()).steps);
}
std::string remarks(const ConstructionInput& in) {
  const Construction out = construct(in, test::standards());
  return test::lines(out.cautions) + " || " + test::lines(out.sources);
}
std::string refused(const ConstructionInput& in) {
  return refusal_of([&] { (void)construct(in, test::standards()); });
}

ConstructionInput sized(int cores, double csa_mm2) {
  ConstructionInput in;
  in.cores = cores;
  in.csa_mm2 = csa_mm2;
  return in;
}

}  // namespace

TEST_CASE("construct, whole: british pattern", "[unit][cable]") {
  CHECK(built(sized(3, 2.5)) ==
        "insulation 0.7 bedding 0.8 armour 0.9 sheath 1.4 | circular xlpe steel core 3.493 laid up "
        "6.9 bedding 9.555 +- 1 od 14.155 +- 1.5 wires 31 19.72 mm2 off 0.1 | conductor, circular "
        "- 1.971 | insulation, xlpe 0.7 3.493 | laid-up cores - 7.955 | bedding 0.8 9.555 | "
        "armour, wire 0.9 11.355 | oversheath 1.4 14.155");
  CHECK(steps(sized(3, 2.5)) ==
        "insulation of 2.5 mm2, xlpe: 0.7 mm (CENELEC HD 604 S1/A1 (United Kingdom armoured-cable "
        "sections), XLPE and HEPR section, insulation thicknesses) | fictitious core, 2.5 mm2: 1.8 "
        "+ 2 x 0.7 = 3.2 mm (as IEC 60502-1 Table A.1) | fictitious, over the laid-up cores: 2.15 "
        "x 3.2 = 6.9 mm (as IEC 60502-1 A.2.2) | at 6.9 mm: bedding 0.8 mm, armour wire 0.9 mm "
        "(British-pattern layers) | oversheath: 0.028 x (6.9 + 2 x 0.8 + 2 x 0.9) + 1.1 = 1.4 mm | "
        "stranded conductor: 2.37 mm2 of copper for its resistance, 7 wires, 3 across: 1.97 mm | "
        "core as made: 1.97 + 2 x 0.7 x 1.087 = 3.49 mm | as made, over the laid-up cores: 2.16 x "
        "3.49 + 0.41 = 7.95 mm | bedding diameter: 7.95 + 2 x 0.8 = 9.55 mm | over the armour: "
        "9.55 + 2 x 0.9 = 11.35 mm | sheath OD: 11.35 + 2 x 1.4 = 14.15 mm | armour wires: 0.9 of "
        "the circle, lay 10 x pitch diameter: 31 wires of 0.9 mm, 19.7 mm2");
  CHECK(remarks(sized(3, 2.5)) ==
        "the British-pattern layer rule is a reconstruction that matches the printed rows of HD "
        "604 S1/A1, not a clause that was read | no printed row with this number of cores at this "
        "voltage was at hand: the geometry carries over from the printed ones | estimated from the "
        "construction: measure before cutting || CENELEC HD 604 S1/A1 (United Kingdom "
        "armoured-cable sections), XLPE and HEPR section, insulation thicknesses | IEC 60502-1 "
        "(edition not stated in the copies read), Annex A, Table A.1 | IEC 60502-1 (edition not "
        "stated in the copies read), Annex A, Table A.2 (read as IS 10462-1:1983 Table 3) | "
        "CENELEC HD 604 S1/A1 (United Kingdom armoured-cable sections), rebuilt from Table 6A, the "
        "table before it, and Part 3 Section E Tables 11 and 12 | IEC 60502-1; CENELEC HD 604 "
        "S1/A1 (United Kingdom armoured-cable sections of HD 604), oversheath; rebuilt from the "
        "printed rows | IEC 60228 (2004), Table 2, class 2, plain copper, circular | fitted to "
        "CENELEC HD 604 S1/A1 (United Kingdom armoured-cable sections), Table 6A; Part 3 Section E "
        "Tables 11 and 12 | calibrated on CENELEC HD 604 S1/A1 and printed gross armour areas "
        "(United Kingdom armoured-cable sections), Table 6A");
  CHECK(built(sized(4, 25)) ==
        "insulation 0.9 bedding 1 armour 1.6 sheath 1.7 | shaped xlpe steel core none laid up 17.9 "
        "bedding 19.518 +- 1 od 26.118 +- 2 wires 35 70.37 mm2 off 0.06 | conductor, shaped - - | "
        "insulation, xlpe 0.9 - | laid-up cores - 17.518 | bedding 1 19.518 | armour, wire 1.6 "
        "22.718 | oversheath 1.7 26.118");
  CHECK(steps(sized(4, 25)) ==
        "insulation of 25 mm2, xlpe: 0.9 mm (CENELEC HD 604 S1/A1 (United Kingdom armoured-cable "
        "sections), XLPE and HEPR section, insulation thicknesses) | fictitious core, 25 mm2: 5.6 "
        "+ 2 x 0.9 = 7.4 mm (as IEC 60502-1 Table A.1) | fictitious, over the laid-up cores: 2.42 "
        "x 7.4 = 17.9 mm (as IEC 60502-1 A.2.2) | at 17.9 mm: bedding 1 mm, armour wire 1.6 mm "
        "(British-pattern layers) | oversheath: 0.028 x (17.9 + 2 x 1 + 2 x 1.6) + 1.1 = 1.7 mm | "
        "copper in one conductor, from its resistance: 17.586 / R20 = 24.2 mm2 | as made, over the "
        "laid-up cores: circle of 4 sectors, 0.98 mm of insulation on every face, 24.2 / 0.726 = "
        "33.3 mm2 inside each = 17.52 mm | bedding diameter: 17.52 + 2 x 1 = 19.52 mm | over the "
        "armour: 19.52 + 2 x 1.6 = 22.72 mm | sheath OD: 22.72 + 2 x 1.7 = 26.12 mm | armour "
        "wires: 0.9 of the circle, lay 10 x pitch diameter: 35 wires of 1.6 mm, 70.4 mm2");
  CHECK(remarks(sized(4, 25)) ==
        "the British-pattern layer rule is a reconstruction that matches the printed rows of HD "
        "604 S1/A1, not a clause that was read | no printed row with this number of cores at this "
        "voltage was at hand: the geometry carries over from the printed ones | estimated from the "
        "construction: measure before cutting || CENELEC HD 604 S1/A1 (United Kingdom "
        "armoured-cable sections), XLPE and HEPR section, insulation thicknesses | IEC 60502-1 "
        "(edition not stated in the copies read), Annex A, Table A.1 | IEC 60502-1 (edition not "
        "stated in the copies read), Annex A, Table A.2 (read as IS 10462-1:1983 Table 3) | "
        "CENELEC HD 604 S1/A1 (United Kingdom armoured-cable sections), rebuilt from Table 6A, the "
        "table before it, and Part 3 Section E Tables 11 and 12 | IEC 60502-1; CENELEC HD 604 "
        "S1/A1 (United Kingdom armoured-cable sections of HD 604), oversheath; rebuilt from the "
        "printed rows | IEC 60228 (2004), Table 2, class 2, plain copper, circular | fitted to "
        "CENELEC HD 604 S1/A1 (United Kingdom armoured-cable sections), Table 6A; Part 3 Section E "
        "Tables 11 and 12 | calibrated on CENELEC HD 604 S1/A1 and printed gross armour areas "
        "(United Kingdom armoured-cable sections), Table 6A");
  CHECK(built(sized(1, 240)) ==
        "insulation 1.7 bedding 1 armour 1.6 sheath 1.8 | circular xlpe aluminium core 23.937 laid "
        "up 20.9 bedding 25.937 +- 1.297 od 32.737 +- 2 wires 46 92.49 mm2 off 0.06 | conductor, "
        "circular - 19.831 | insulation, xlpe 1.7 23.937 | bedding 1 25.937 | armour, wire 1.6 "
        "29.137 | oversheath 1.8 32.737");
  CHECK(remarks(sized(1, 240)) ==
        "the British-pattern layer rule is a reconstruction that matches the printed rows of HD "
        "604 S1/A1, not a clause that was read | single core on AC: no steel armour. Wires are "
        "aluminium (HD 604 S1/A1), and steel must not surround one core alone (BS 7671 521.5.1) | "
        "estimated from the construction: measure before cutting || CENELEC HD 604 S1/A1 (United "
        "Kingdom armoured-cable sections), XLPE and HEPR section, insulation thicknesses | IEC "
        "60502-1 (edition not stated in the copies read), Annex A, Table A.1 | IEC 60502-1 "
        "(edition not stated in the copies read), Annex A, Table A.2 (read as IS 10462-1:1983 "
        "Table 3) | CENELEC HD 604 S1/A1 (United Kingdom armoured-cable sections), rebuilt from "
        "Table 6A, the table before it, and Part 3 Section E Tables 11 and 12 | IEC 60502-1; "
        "CENELEC HD 604 S1/A1 (United Kingdom armoured-cable sections of HD 604), oversheath; "
        "rebuilt from the printed rows | IEC 60228 (2004), Table 2, class 2, plain copper, "
        "circular | fitted to CENELEC HD 604 S1/A1 (United Kingdom armoured-cable sections), Table "
        "6A; Part 3 Section E Tables 11 and 12 | calibrated on CENELEC HD 604 S1/A1 and printed "
        "gross armour areas (United Kingdom armoured-cable sections), Table 6A");
  CHECK(built(sized(2, 400)) ==
        "insulation 2 bedding 1.6 armour 2.5 sheath 2.8 | shaped xlpe steel core none laid up 53.2 "
        "bedding 48.522 +- 2.426 od 59.122 +- 2.956 wires 55 269.98 mm2 off 0.06 | conductor, "
        "shaped - - | insulation, xlpe 2 - | laid-up cores - 45.322 | bedding 1.6 48.522 | armour, "
        "wire 2.5 53.522 | oversheath 2.8 59.122");
  CHECK(remarks(sized(37, 2.5)) ==
        "the British-pattern layer rule is a reconstruction that matches the printed rows of HD "
        "604 S1/A1, not a clause that was read | no printed row with this number of cores at this "
        "voltage was at hand: the geometry carries over from the printed ones | estimated from the "
        "construction: measure before cutting || CENELEC HD 604 S1/A1 (United Kingdom "
        "armoured-cable sections), XLPE and HEPR section, insulation thicknesses | IEC 60502-1 "
        "(edition not stated in the copies read), Annex A, Table A.1 | IEC 60502-1 (edition not "
        "stated in the copies read), Annex A, Table A.2 (read as IS 10462-1:1983 Table 3) | "
        "CENELEC HD 604 S1/A1 (United Kingdom armoured-cable sections), rebuilt from Table 6A, the "
        "table before it, and Part 3 Section E Tables 11 and 12 | IEC 60502-1; CENELEC HD 604 "
        "S1/A1 (United Kingdom armoured-cable sections of HD 604), oversheath; rebuilt from the "
        "printed rows | IEC 60228 (2004), Table 2, class 2, plain copper, circular | fitted to "
        "CENELEC HD 604 S1/A1 (United Kingdom armoured-cable sections), Table 6A; Part 3 Section E "
        "Tables 11 and 12 | calibrated on CENELEC HD 604 S1/A1 and printed gross armour areas "
        "(United Kingdom armoured-cable sections), Table 6A");
  ConstructionInput in = sized(3, 50);
  in.earth_csa_mm2 = 25;
  CHECK(built(in) ==
        "insulation 1 bedding 1 armour 1.6 sheath 1.9 | circular xlpe steel core 10.899 laid up "
        "22.6 bedding 27.183 +- 2.039 od 34.183 +- 3 wires 48 96.51 mm2 off 0.2 | conductor, "
        "circular - 8.725 | insulation, xlpe 1 10.899 | laid-up cores - 25.183 | bedding 1 27.183 "
        "| armour, wire 1.6 30.383 | oversheath 1.9 34.183");
  CHECK(steps(in) ==
        "insulation of 50 mm2, xlpe: 1 mm (CENELEC HD 604 S1/A1 (United Kingdom armoured-cable "
        "sections), XLPE and HEPR section, insulation thicknesses) | insulation of 25 mm2, xlpe: "
        "0.9 mm (CENELEC HD 604 S1/A1 (United Kingdom armoured-cable sections), XLPE and HEPR "
        "section, insulation thicknesses) | fictitious core, 50 mm2: 8.0 + 2 x 1 = 10.0 mm (as IEC "
        "60502-1 Table A.1) | fictitious core, 25 mm2: 5.6 + 2 x 0.9 = 7.4 mm (as IEC 60502-1 "
        "Table A.1) | fictitious, over the laid-up cores: 2.42 x (3 x 10.0 + 7.4) / 4 = 22.6 mm "
        "(as IEC 60502-1 A.2.2) | at 22.6 mm: bedding 1 mm, armour wire 1.6 mm (British-pattern "
        "layers) | oversheath: 0.028 x (22.6 + 2 x 1 + 2 x 1.6) + 1.1 = 1.9 mm | stranded "
        "conductor: 45.44 mm2 of copper for its resistance, 19 wires, 5 across: 8.73 mm | core as "
        "made: 8.73 + 2 x 1 x 1.087 = 10.90 mm | as made, over the laid-up cores: 2.42 x 10.24 + "
        "0.41 = 25.18 mm | bedding diameter: 25.18 + 2 x 1 = 27.18 mm | over the armour: 27.18 + 2 "
        "x 1.6 = 30.38 mm | sheath OD: 30.38 + 2 x 1.9 = 34.18 mm | armour wires: 0.9 of the "
        "circle, lay 10 x pitch diameter: 48 wires of 1.6 mm, 96.5 mm2");
  CHECK(
      remarks(in) ==
      "the British-pattern layer rule is a reconstruction that matches the printed rows of HD 604 "
      "S1/A1, not a clause that was read | no printed row of this construction was at hand: the "
      "stated error is half as large again | estimated from the construction: measure before "
      "cutting || CENELEC HD 604 S1/A1 (United Kingdom armoured-cable sections), XLPE and HEPR "
      "section, insulation thicknesses | IEC 60502-1 (edition not stated in the copies read), "
      "Annex A, Table A.1 | IEC 60502-1 (edition not stated in the copies read), Annex A, Table "
      "A.2 (read as IS 10462-1:1983 Table 3) | CENELEC HD 604 S1/A1 (United Kingdom armoured-cable "
      "sections), rebuilt from Table 6A, the table before it, and Part 3 Section E Tables 11 and "
      "12 | IEC 60502-1; CENELEC HD 604 S1/A1 (United Kingdom armoured-cable sections of HD 604), "
      "oversheath; rebuilt from the printed rows | IEC 60228 (2004), Table 2, class 2, plain "
      "copper, circular | fitted to CENELEC HD 604 S1/A1 (United Kingdom armoured-cable sections), "
      "Table 6A; Part 3 Section E Tables 11 and 12 | calibrated on CENELEC HD 604 S1/A1 and "
      "printed gross armour areas (United Kingdom armoured-cable sections), Table 6A");
  in = sized(4, 25);
  in.conductor = Conductor::circular;
  CHECK(built(in) ==
        "insulation 0.9 bedding 1 armour 1.6 sheath 1.7 | circular xlpe steel core 8.249 laid up "
        "17.9 bedding 22.374 +- 1.119 od 28.974 +- 2 wires 40 80.42 mm2 off 0.2 | conductor, "
        "circular - 6.293 | insulation, xlpe 0.9 8.249 | laid-up cores - 20.374 | bedding 1 22.374 "
        "| armour, wire 1.6 25.574 | oversheath 1.7 28.974");
  in = sized(3, 35);
  in.voltage = Voltage::kv_1_9_3_3;
  CHECK(built(in) ==
        "insulation 2.2 bedding 1 armour 1.6 sheath 1.9 | circular pvc steel core 12.195 laid up "
        "23.9 bedding 28.751 +- 1.438 od 35.751 +- 2 wires 51 102.54 mm2 off 0.2 | conductor, "
        "circular - 7.412 | insulation, pvc 2.2 12.195 | laid-up cores - 26.751 | bedding 1 28.751 "
        "| armour, wire 1.6 31.951 | oversheath 1.9 35.751");
  CHECK(remarks(in) ==
        "the British-pattern layer rule is a reconstruction that matches the printed rows of HD "
        "604 S1/A1, not a clause that was read | 1.9/3.3 kV: the printed tables are inferred to be "
        "PVC-insulated | estimated from the construction: measure before cutting || CENELEC HD 604 "
        "S1/A1 (United Kingdom armoured-cable sections), Part 3 Section E, Tables 11 and 12 | IEC "
        "60502-1 (edition not stated in the copies read), Annex A, Table A.1 | IEC 60502-1 "
        "(edition not stated in the copies read), Annex A, Table A.2 (read as IS 10462-1:1983 "
        "Table 3) | CENELEC HD 604 S1/A1 (United Kingdom armoured-cable sections), rebuilt from "
        "Table 6A, the table before it, and Part 3 Section E Tables 11 and 12 | IEC 60502-1; "
        "CENELEC HD 604 S1/A1 (United Kingdom armoured-cable sections of HD 604), oversheath; "
        "rebuilt from the printed rows | IEC 60228 (2004), Table 2, class 2, plain copper, "
        "circular | fitted to CENELEC HD 604 S1/A1 (United Kingdom armoured-cable sections), Table "
        "6A; Part 3 Section E Tables 11 and 12 | calibrated on CENELEC HD 604 S1/A1 and printed "
        "gross armour areas (United Kingdom armoured-cable sections), Table 6A");
  in = sized(3, 70);
  in.voltage = Voltage::kv_1_9_3_3;
  CHECK(built(in) ==
        "insulation 2.2 bedding 1.2 armour 2 sheath 2.1 | shaped pvc steel core none laid up 29.7 "
        "bedding 30.511 +- 1.526 od 38.711 +- 2 wires 43 135.09 mm2 off 0.06 | conductor, shaped - "
        "- | insulation, pvc 2.2 - | laid-up cores - 28.111 | bedding 1.2 30.511 | armour, wire 2 "
        "34.511 | oversheath 2.1 38.711");
  in = sized(2, 6);
  in.insulation = Insulation::pvc;
  CHECK(built(in) ==
        "insulation 1 bedding 0.8 armour 0.9 sheath 1.5 | circular pvc steel core 5.231 laid up "
        "9.6 bedding 12.473 +- 1 od 17.273 +- 1.5 wires 40 25.45 mm2 off 0.1 | conductor, circular "
        "- 3.057 | insulation, pvc 1 5.231 | laid-up cores - 10.873 | bedding 0.8 12.473 | armour, "
        "wire 0.9 14.273 | oversheath 1.5 17.273");
  CHECK(remarks(in) ==
        "the British-pattern layer rule is a reconstruction that matches the printed rows of HD "
        "604 S1/A1, not a clause that was read | estimated from the construction: measure before "
        "cutting || IEC 60502-1 (edition not stated in the copies read), Table 5 | IEC 60502-1 "
        "(edition not stated in the copies read), Annex A, Table A.1 | IEC 60502-1 (edition not "
        "stated in the copies read), Annex A, Table A.2 (read as IS 10462-1:1983 Table 3) | "
        "CENELEC HD 604 S1/A1 (United Kingdom armoured-cable sections), rebuilt from Table 6A, the "
        "table before it, and Part 3 Section E Tables 11 and 12 | IEC 60502-1; CENELEC HD 604 "
        "S1/A1 (United Kingdom armoured-cable sections of HD 604), oversheath; rebuilt from the "
        "printed rows | IEC 60228 (2004), Table 2, class 2, plain copper, circular | fitted to "
        "CENELEC HD 604 S1/A1 (United Kingdom armoured-cable sections), Table 6A; Part 3 Section E "
        "Tables 11 and 12 | calibrated on CENELEC HD 604 S1/A1 and printed gross armour areas "
        "(United Kingdom armoured-cable sections), Table 6A");
  in = sized(1, 380);
  CHECK(built(in) ==
        "insulation 2 bedding 1.2 armour 2 sheath 2 | solid xlpe aluminium core 26.754 laid up 26 "
        "bedding 29.154 +- 1.458 od 37.154 +- 2 wires 42 131.95 mm2 off 0.06 | conductor, solid - "
        "21.996 | insulation, xlpe 2 26.754 | bedding 1.2 29.154 | armour, wire 2 33.154 | "
        "oversheath 2 37.154");
  CHECK(
      steps(in) ==
      "insulation of 380 mm2, xlpe: 2 mm (CENELEC HD 604 S1/A1 (United Kingdom armoured-cable "
      "sections), table before Table 6A) | fictitious core, 380 mm2: 22.0 + 2 x 2 = 26.0 mm (as "
      "IEC 60502-1 Table A.1) | at 26.0 mm: bedding 1.2 mm, armour wire 2 mm (British-pattern "
      "layers) | oversheath: 0.028 x (26.0 + 2 x 1.2 + 2 x 2) + 1.1 = 2.0 mm | solid conductor: "
      "sqrt(4 x 380 / pi) = 22.00 mm | core as made: 22.00 + 2 x 2 x 1.087 = 26.34 mm | as made, "
      "over the laid-up cores: 1.00 x 26.34 + 0.41 = 26.75 mm | bedding diameter: 26.75 + 2 x 1.2 "
      "= 29.15 mm | over the armour: 29.15 + 2 x 2 = 33.15 mm | sheath OD: 33.15 + 2 x 2.0 = 37.15 "
      "mm | armour wires: 0.9 of the circle, lay 10 x pitch diameter: 42 wires of 2 mm, 131.9 mm2");
  in = sized(1, 120);
  in.conductor = Conductor::solid;
  CHECK(built(in) ==
        "insulation 1.2 bedding 0.8 armour 1.25 sheath 1.6 | solid xlpe aluminium core 14.761 laid "
        "up 14.8 bedding 16.361 +- 1 od 22.061 +- 1.5 wires 38 46.63 mm2 off 0.06 | conductor, "
        "solid - 12.361 | insulation, xlpe 1.2 14.761 | bedding 0.8 16.361 | armour, wire 1.25 "
        "18.861 | oversheath 1.6 22.061");
  CHECK(
      remarks(in) ==
      "the British-pattern layer rule is a reconstruction that matches the printed rows of HD 604 "
      "S1/A1, not a clause that was read | single core on AC: no steel armour. Wires are aluminium "
      "(HD 604 S1/A1), and steel must not surround one core alone (BS 7671 521.5.1) | estimated "
      "from the construction: measure before cutting || CENELEC HD 604 S1/A1 (United Kingdom "
      "armoured-cable sections), XLPE and HEPR section, insulation thicknesses | IEC 60502-1 "
      "(edition not stated in the copies read), Annex A, Table A.1 | IEC 60502-1 (edition not "
      "stated in the copies read), Annex A, Table A.2 (read as IS 10462-1:1983 Table 3) | CENELEC "
      "HD 604 S1/A1 (United Kingdom armoured-cable sections), rebuilt from Table 6A, the table "
      "before it, and Part 3 Section E Tables 11 and 12 | IEC 60502-1; CENELEC HD 604 S1/A1 "
      "(United Kingdom armoured-cable sections of HD 604), oversheath; rebuilt from the printed "
      "rows | fitted to CENELEC HD 604 S1/A1 (United Kingdom armoured-cable sections), Table 6A; "
      "Part 3 Section E Tables 11 and 12 | calibrated on CENELEC HD 604 S1/A1 and printed gross "
      "armour areas (United Kingdom armoured-cable sections), Table 6A");
}

TEST_CASE("construct, whole: IEC pattern", "[unit][cable]") {
  ConstructionInput in = sized(4, 16);
  in.pattern = Pattern::iec;
  CHECK(built(in) ==
        "insulation 0.7 bedding 1 armour 1.6 sheath 1.8 | circular xlpe steel core 6.525 laid up "
        "14.3 bedding 18.201 +- 1.5 od 25.001 +- 3 wires 33 66.35 mm2 off 0.06 | conductor, "
        "circular - 5.003 | insulation, xlpe 0.7 6.525 | laid-up cores - 16.201 | bedding 1 18.201 "
        "| armour, wire 1.6 21.401 | oversheath 1.8 25.001");
  CHECK(steps(in) ==
        "insulation of 16 mm2, xlpe: 0.7 mm (IEC 60502-1 (edition not stated in the copies read), "
        "Table 6) | fictitious core, 16 mm2: 4.5 + 2 x 0.7 = 5.9 mm (as IEC 60502-1 Table A.1) | "
        "fictitious, over the laid-up cores: 2.42 x 5.9 = 14.3 mm | fictitious, over the inner "
        "covering: 14.3 + 0.8 = 15.1 mm | fictitious, over the armour (wire): 15.1 + 2 x 1.6 = "
        "18.3 mm | inner covering: 1 mm; oversheath: 0.035 x 18.3 + 1.0, not under the least for "
        "its place = 1.8 mm | stranded conductor: 15.29 mm2 of copper for its resistance, 7 wires, "
        "3 across: 5.00 mm | core as made: 5.00 + 2 x 0.7 x 1.087 = 6.53 mm | as made, over the "
        "laid-up cores: 2.42 x 6.53 + 0.41 = 16.20 mm | bedding diameter: 16.20 + 2 x 1 = 18.20 mm "
        "| over the armour: 18.20 + 2 x 1.6 = 21.40 mm | sheath OD: 21.40 + 2 x 1.8 = 25.00 mm | "
        "armour wires: 0.9 of the circle, lay 10 x pitch diameter: 33 wires of 1.6 mm, 66.4 mm2");
  CHECK(remarks(in) ==
        "no printed row of this construction was at hand: the stated error is half as large again "
        "| estimated from the construction: measure before cutting || IEC 60502-1 (edition not "
        "stated in the copies read), Table 6 | IEC 60502-1 (edition not stated in the copies "
        "read), Annex A, Table A.1 | IEC 60502-1 (edition not stated in the copies read), Annex A, "
        "Table A.2 (read as IS 10462-1:1983 Table 3) | IEC 60502-1 (edition not stated in the "
        "copies read), 7.2.3 (extruded); Annex A (fictitious) | IEC 60502-1; CENELEC HD 604 S1/A1 "
        "(United Kingdom armoured-cable sections of HD 604), oversheath; rebuilt from the printed "
        "rows | IEC 60502-1 (edition not stated in the copies read), table of round armour wires | "
        "IEC 60228 (2004), Table 2, class 2, plain copper, circular | fitted to CENELEC HD 604 "
        "S1/A1 (United Kingdom armoured-cable sections), Table 6A; Part 3 Section E Tables 11 and "
        "12 | calibrated on CENELEC HD 604 S1/A1 and printed gross armour areas (United Kingdom "
        "armoured-cable sections), Table 6A");
  in.armour = ArmourKind::tape;
  CHECK(built(in) ==
        "insulation 0.7 bedding 1 armour 0.2 sheath 1.8 | circular xlpe steel core 6.525 laid up "
        "14.3 bedding 18.201 +- 1.5 od 22.601 +- 2.25 | conductor, circular - 5.003 | insulation, "
        "xlpe 0.7 6.525 | laid-up cores - 16.201 | bedding 1 18.201 | armour, tape 0.2 19.001 | "
        "oversheath 1.8 22.601");
  CHECK(steps(in) ==
        "insulation of 16 mm2, xlpe: 0.7 mm (IEC 60502-1 (edition not stated in the copies read), "
        "Table 6) | fictitious core, 16 mm2: 4.5 + 2 x 0.7 = 5.9 mm (as IEC 60502-1 Table A.1) | "
        "fictitious, over the laid-up cores: 2.42 x 5.9 = 14.3 mm | fictitious, over the inner "
        "covering: 14.3 + 0.8 = 15.1 mm | fictitious, over the additional bedding (from memory): "
        "15.1 + 1.0 = 16.1 mm | fictitious, over the armour (two tapes): 16.1 + 4 x 0.2 = 16.9 mm "
        "| inner covering: 1 mm; oversheath: 0.035 x 16.9 + 1.0, not under the least for its place "
        "= 1.8 mm | stranded conductor: 15.29 mm2 of copper for its resistance, 7 wires, 3 across: "
        "5.00 mm | core as made: 5.00 + 2 x 0.7 x 1.087 = 6.53 mm | as made, over the laid-up "
        "cores: 2.42 x 6.53 + 0.41 = 16.20 mm | bedding diameter: 16.20 + 2 x 1 = 18.20 mm | over "
        "the armour: 18.20 + 4 x 0.2 = 19.00 mm | sheath OD: 19.00 + 2 x 1.8 = 22.60 mm");
  CHECK(remarks(in) ==
        "the additional bedding under tape armour is from memory | no printed row of this "
        "construction was at hand: the stated error is half as large again | estimated from the "
        "construction: measure before cutting || IEC 60502-1 (edition not stated in the copies "
        "read), Table 6 | IEC 60502-1 (edition not stated in the copies read), Annex A, Table A.1 "
        "| IEC 60502-1 (edition not stated in the copies read), Annex A, Table A.2 (read as IS "
        "10462-1:1983 Table 3) | IEC 60502-1 (edition not stated in the copies read), 7.2.3 "
        "(extruded); Annex A (fictitious) | IEC 60502-1; CENELEC HD 604 S1/A1 (United Kingdom "
        "armoured-cable sections of HD 604), oversheath; rebuilt from the printed rows | IEC "
        "60502-1 (edition not stated in the copies read), table of armour tapes | IEC 60502-1 "
        "(edition not stated in the copies read), A.2 (clause from memory) | IEC 60228 (2004), "
        "Table 2, class 2, plain copper, circular | fitted to CENELEC HD 604 S1/A1 (United Kingdom "
        "armoured-cable sections), Table 6A; Part 3 Section E Tables 11 and 12");
  in.armour = ArmourKind::strip;
  in.csa_mm2 = 95;
  CHECK(built(in) ==
        "insulation 1.1 bedding 1.2 armour 0.8 sheath 2.2 | shaped xlpe steel core none laid up "
        "31.9 bedding 33.154 +- 2.487 od 39.154 +- 3 | conductor, shaped - - | insulation, xlpe "
        "1.1 - | laid-up cores - 30.754 | bedding 1.2 33.154 | armour, strip 0.8 34.754 | "
        "oversheath 2.2 39.154");
  CHECK(steps(in) ==
        "insulation of 95 mm2, xlpe: 1.1 mm (IEC 60502-1 (edition not stated in the copies read), "
        "Table 6) | fictitious core, 95 mm2: 11.0 + 2 x 1.1 = 13.2 mm (as IEC 60502-1 Table A.1) | "
        "fictitious, over the laid-up cores: 2.42 x 13.2 = 31.9 mm | fictitious, over the inner "
        "covering: 31.9 + 0.8 = 32.7 mm | fictitious, over the armour (flat wire): 32.7 + 2 x 0.8 "
        "= 34.3 mm | inner covering: 1.2 mm; oversheath: 0.035 x 34.3 + 1.0, not under the least "
        "for its place = 2.2 mm | copper in one conductor, from its resistance: 17.586 / R20 = "
        "91.1 mm2 | as made, over the laid-up cores: circle of 4 sectors, 1.20 mm of insulation on "
        "every face, 91.1 / 0.726 = 125.5 mm2 inside each = 30.75 mm | bedding diameter: 30.75 + 2 "
        "x 1.2 = 33.15 mm | over the armour: 33.15 + 2 x 0.8 = 34.75 mm | sheath OD: 34.75 + 2 x "
        "2.2 = 39.15 mm");
  CHECK(remarks(in) ==
        "no printed row of this construction was at hand: the stated error is half as large again "
        "| estimated from the construction: measure before cutting || IEC 60502-1 (edition not "
        "stated in the copies read), Table 6 | IEC 60502-1 (edition not stated in the copies "
        "read), Annex A, Table A.1 | IEC 60502-1 (edition not stated in the copies read), Annex A, "
        "Table A.2 (read as IS 10462-1:1983 Table 3) | IEC 60502-1 (edition not stated in the "
        "copies read), 7.2.3 (extruded); Annex A (fictitious) | IEC 60502-1; CENELEC HD 604 S1/A1 "
        "(United Kingdom armoured-cable sections of HD 604), oversheath; rebuilt from the printed "
        "rows | IEC 60502-1 (2021), 7.4 | IEC 60228 (2004), Table 2, class 2, plain copper, "
        "circular | fitted to CENELEC HD 604 S1/A1 (United Kingdom armoured-cable sections), Table "
        "6A; Part 3 Section E Tables 11 and 12");
  in.armour = ArmourKind::none;
  CHECK(built(in) ==
        "insulation 1.1 bedding 0.4 armour none sheath 2.1 | shaped xlpe  core none laid up 31.9 "
        "bedding 31.554 +- 2.367 od 35.754 +- 3 | conductor, shaped - - | insulation, xlpe 1.1 - | "
        "laid-up cores - 30.754 | bedding 0.4 31.554 | oversheath 2.1 35.754");
  CHECK(
      steps(in) ==
      "insulation of 95 mm2, xlpe: 1.1 mm (IEC 60502-1 (edition not stated in the copies read), "
      "Table 6) | fictitious core, 95 mm2: 11.0 + 2 x 1.1 = 13.2 mm (as IEC 60502-1 Table A.1) | "
      "fictitious, over the laid-up cores: 2.42 x 13.2 = 31.9 mm | fictitious, over the inner "
      "covering: 31.9 + 0.8 = 32.7 mm | inner covering: 0.4 mm; oversheath: 0.035 x 32.7 + 1.0, "
      "not under the least for its place = 2.1 mm | copper in one conductor, from its resistance: "
      "17.586 / R20 = 91.1 mm2 | as made, over the laid-up cores: circle of 4 sectors, 1.20 mm of "
      "insulation on every face, 91.1 / 0.726 = 125.5 mm2 inside each = 30.75 mm | bedding "
      "diameter: 30.75 + 2 x 0.4 = 31.55 mm | sheath OD: 31.55 + 2 x 2.1 = 35.75 mm");
  CHECK(remarks(in) ==
        "inner covering of an unarmoured cable: lapped, approximate thickness from memory; it may "
        "be left out where the laid-up cores are round enough | no printed row of this "
        "construction was at hand: the stated error is half as large again | estimated from the "
        "construction: measure before cutting || IEC 60502-1 (edition not stated in the copies "
        "read), Table 6 | IEC 60502-1 (edition not stated in the copies read), Annex A, Table A.1 "
        "| IEC 60502-1 (edition not stated in the copies read), Annex A, Table A.2 (read as IS "
        "10462-1:1983 Table 3) | IEC 60502-1 (edition not stated in the copies read), 7.2.3 "
        "(extruded); Annex A (fictitious) | IEC 60502-1; CENELEC HD 604 S1/A1 (United Kingdom "
        "armoured-cable sections of HD 604), oversheath; rebuilt from the printed rows | IEC 60228 "
        "(2004), Table 2, class 2, plain copper, circular | fitted to CENELEC HD 604 S1/A1 (United "
        "Kingdom armoured-cable sections), Table 6A; Part 3 Section E Tables 11 and 12");
  in = sized(1, 95);
  in.pattern = Pattern::iec;
  in.armour = ArmourKind::none;
  CHECK(built(in) ==
        "insulation 1.1 bedding 0 armour none sheath 1.5 | circular xlpe  core 15.157 laid up 13.2 "
        "bedding 15.157 +- 1.5 od 18.157 +- 2.25 | conductor, circular - 12.355 | insulation, xlpe "
        "1.1 15.157 | oversheath 1.5 18.157");
}

TEST_CASE("construct, whole: what cannot be built", "[unit][cable]") {
  CHECK(refused(sized(0, 2.5)) ==
        "number of cores is out of range [cores] given: 0; allowed: 1 to 61, an earth core "
        "included;");
  CHECK(refused(sized(61, 2.5)) == "no fault");
  CHECK(refused(sized(62, 2.5)) ==
        "number of cores is out of range [cores] given: 62; allowed: 1 to 61, an earth core "
        "included;");
  CHECK(refused(sized(3, 3)) ==
        "no table row for this cross-section [csa_mm2] given: 3; allowed: 1.5, 2.5, 4, 6, 10, 16, "
        "25, 35, 50, 70, 95, 120, 150, 185, 240, 300, 400 mm2;");
  CHECK(refused(sized(3, 500)) ==
        "no table row for this cross-section [csa_mm2] given: 500; allowed: 1.5, 2.5, 4, 6, 10, "
        "16, 25, 35, 50, 70, 95, 120, 150, 185, 240, 300, 400 mm2;");
  CHECK(refused(sized(3, 400)) == "no fault");
  ConstructionInput in = sized(1, 50);
  in.earth_csa_mm2 = 25;
  CHECK(refused(in) ==
        "an earth core is laid up with two or more cores [earth_csa_mm2] given: 25; allowed: none "
        "for a single core;");
  in = sized(3, 50);
  in.earth_csa_mm2 = 70;
  CHECK(refused(in) ==
        "no table row for an earth core of this size [earth_csa_mm2] given: 70; allowed: 1.5, 2.5, "
        "4, 6, 10, 16, 25, 35, 50 mm2, no larger than the other cores;");
  in.earth_csa_mm2 = 26;
  CHECK(refused(in) ==
        "no table row for an earth core of this size [earth_csa_mm2] given: 26; allowed: 1.5, 2.5, "
        "4, 6, 10, 16, 25, 35, 50 mm2, no larger than the other cores;");
  in.earth_csa_mm2 = 50;
  CHECK(refused(in) == "no fault");
  in = sized(61, 2.5);
  in.earth_csa_mm2 = 2.5;
  CHECK(refused(in) ==
        "number of cores is out of range [cores] given: 61; allowed: 1 to 61, an earth core "
        "included;");
  in = sized(5, 25);
  in.conductor = Conductor::shaped;
  CHECK(refused(in) ==
        "shaped conductors are made for two to four cores [conductor] given: shaped; allowed: "
        "circular for 5 cores;");
  in.cores = 1;
  CHECK(refused(in) ==
        "shaped conductors are made for two to four cores [conductor] given: shaped; allowed: "
        "circular for 1 core;");
  in = sized(4, 16);
  in.conductor = Conductor::shaped;
  CHECK(refused(in) ==
        "no table row for a shaped conductor of this size [conductor] given: shaped; allowed: "
        "circular below 25 mm2;");
  in = sized(1, 380);
  in.conductor = Conductor::circular;
  CHECK(refused(in) ==
        "this cross-section is made of four solid sectors only [conductor] given: circular; "
        "allowed: solid;");
  in.conductor.reset();
  in.insulation = Insulation::pvc;
  CHECK(refused(in) ==
        "no table row for PVC on four solid sectors [insulation] given: pvc; allowed: xlpe;");
  in = sized(3, 50);
  in.conductor = Conductor::solid;
  CHECK(refused(in) ==
        "no table row for laid-up solid conductors of this size [conductor] given: solid; allowed: "
        "circular or shaped above 16 mm2;");
  in.csa_mm2 = 16;
  CHECK(refused(in) == "no fault");
  in.voltage = Voltage::kv_1_9_3_3;
  CHECK(refused(in) ==
        "no table row for solid conductors at 1.9/3.3 kV [conductor] given: solid; allowed: "
        "circular or shaped;");
  in = sized(1, 35);
  in.conductor = Conductor::solid;
  CHECK(refused(in) ==
        "no table row for a solid conductor of this size [csa_mm2] given: 35; allowed: 50, 70, 95, "
        "120, 150, 185, 240, 300, or four sectors: 380, 480, 600, 740, 960, 1200 mm2;");
  in.csa_mm2 = 400;
  CHECK(refused(in) ==
        "no table row for a solid conductor of this size [csa_mm2] given: 400; allowed: 50, 70, "
        "95, 120, 150, 185, 240, 300, or four sectors: 380, 480, 600, 740, 960, 1200 mm2;");
  in = sized(3, 10);
  in.voltage = Voltage::kv_1_9_3_3;
  CHECK(refused(in) ==
        "no table row for this cross-section [csa_mm2] given: 10; allowed: 16, 25, 35, 50, 70, 95, "
        "120, 150, 185, 240, 300, 400 mm2;");
  in.csa_mm2 = 16;
  in.insulation = Insulation::xlpe;
  CHECK(refused(in) == "no fault");
  in = sized(3, 10);
  in.armour = ArmourKind::braid;
  CHECK(refused(in) ==
        "no published rule gives the layers of a braided cable [armour] given: braid; allowed: "
        "wire;");
  in.armour = ArmourKind::tape;
  CHECK(refused(in) ==
        "the British-pattern tables have wire armour only [armour] given: tape; allowed: wire, or "
        "pattern iec for tape, strip and none;");
  in.armour = ArmourKind::none;
  CHECK(refused(in) ==
        "the British-pattern tables have wire armour only [armour] given: none; allowed: wire, or "
        "pattern iec for tape, strip and none;");
  in = sized(1, 95);
  in.armour = ArmourKind::tape;
  in.pattern = Pattern::iec;
  CHECK(refused(in) == "no fault");
  in.armour = ArmourKind::braid;
  CHECK(refused(in) ==
        "no published rule gives the layers of a braided cable [armour] given: braid; allowed: "
        "wire, tape, strip or none;");
}

TEST_CASE("implausible_readings, whole", "[unit][cable]") {
  const auto cable_of = [](const char* od, const char* bedding, const char* wire) {
    job::JobInput in;
    if (*od != '\0') in.sheath_od_mm = od;
    if (*bedding != '\0') in.bedding_mm = bedding;
    if (*wire != '\0') in.armour_mm = wire;
    job::Job job;
    const job::Frame frame = job::make_frame(in, test::standards(), job::Unstated::measured, job);
    if (in.sheath_od_mm)
      job.cable.sheath_od =
          job::estimate(frame, job::Layer::sheath, *in.sheath_od_mm, test::standards());
    if (in.bedding_mm)
      job.cable.bedding =
          job::estimate(frame, job::Layer::bedding, *in.bedding_mm, test::standards());
    if (in.armour_mm)
      job.cable.wire = job::estimate(frame, job::Layer::wire, *in.armour_mm, test::standards());
    if (job.cable.wire)
      job.cable.wire_nominal = standard_size(test::standards().wire_bands, *job.cable.wire);
    return job.cable;
  };
  const auto says = [&](const char* od, const char* bedding, const char* wire,
                        const Construction* construction = nullptr) {
    std::string text;
    for (const Remark& remark :
         implausible_readings(cable_of(od, bedding, wire), construction, test::standards())) {
      text += fmt::format("{}{}. Repeat {} ({}){}", text.empty() ? "" : " | ", remark.says,
                          remark.repeat, remark.source, remark.contradiction ? " !" : "");
    }
    return text;
  };
  CHECK(says("14.9+15.1", "9.9+10.1", "0.9") == "");
  CHECK(says("14.9+15.1", "14.9+15.1", "0.9") ==
        "the sheath OD 15.0 mm is not larger than the bedding 15.0 mm. Repeat sheath OD and "
        "bedding: they may have changed places (arithmetic) !");
  CHECK(says("14.9+15.1", "12.0+12.0", "0.9") ==
        "the readings leave a sheath of 0.6 +/- 0.1 mm; 1.4 mm nominal is at least 0.92 mm at a "
        "point. Repeat sheath OD, bedding and wire (HD 604 S1/A1 (bedding: nominal less 20 % and "
        "0.2 mm at a point); the same for an oversheath over armour is from memory) !");
  CHECK(says("20.0+20.0", "9.9+10.1", "0.9") ==
        "the readings leave a sheath of 4.1 +/- 0.1 mm, more than twice the nominal 1.6 mm. Repeat "
        "bedding, sheath OD and wire (common practice, no source)");
  CHECK(says("14.9+15.1", "0.4+0.4", "0.9") ==
        "a bedding of 0.4 mm under a sheath of 15 mm: inches, perhaps? Write 0.4in. Repeat bedding "
        "(arithmetic) !");
  CHECK(says("14.9+15.1", "9.9+10.1", "1.05") ==
        "1.05 mm is not a standard wire: look twice at an imported cable. Repeat wire: strip one, "
        "wipe it clean of zinc dust and bitumen (HD 604 S1/A1, armour wire tolerances)");
  const Construction construction = construct(sized(3, 2.5), test::standards());
  CHECK(says("12.9+13.0", "8.0+8.0", "0.9", &construction) ==
        "bedding 8.0 +/- 0.1 mm does not agree with the construction's 9.6 +/- 1.0 mm. Repeat "
        "bedding, and check cores, size and pattern (cable diameter model, fitted to HD 604 S1/A1) "
        "!");
  CHECK(says("18.9+19.0", "13.0+13.0", "1.25", &construction) ==
        "sheath OD 19.0 +/- 0.1 mm does not agree with the construction's 14.2 +/- 1.5 mm. Repeat "
        "sheath OD, and check cores, size and pattern (cable diameter model, fitted to HD 604 "
        "S1/A1) ! | bedding 13.0 +/- 0.1 mm does not agree with the construction's 9.6 +/- 1.0 mm. "
        "Repeat bedding, and check cores, size and pattern (cable diameter model, fitted to HD 604 "
        "S1/A1) ! | wire 1.25 mm; the construction has 0.9 mm. Repeat wire, and check cores, size "
        "and pattern: the same cores can carry another armour (cable diameter model, fitted to HD "
        "604 S1/A1)");
  CHECK(says("", "", "1.05", &construction) ==
        "1.05 mm is not a standard wire: look twice at an imported cable. Repeat wire: strip one, "
        "wipe it clean of zinc dust and bitumen (HD 604 S1/A1, armour wire tolerances) | wire 1.05 "
        "mm; the construction has 0.9 mm. Repeat wire, and check cores, size and pattern: the same "
        "cores can carry another armour (cable diameter model, fitted to HD 604 S1/A1)");
  CHECK(says("14.9+15.1", "", "", &construction) == "");
  CHECK(least_at_a_point_mm(1.5) == Approx(1.0));
  CHECK(most_likely_mm(1.5) == Approx(3.0));
  const auto of = [](const std::optional<measure::Estimate>& estimate) {
    return estimate ? fmt::format("{} +- {} | {}", plain(estimate->value_mm, 4),
                                  plain(estimate->expanded_mm, 4), estimate->source)
                    : "none";
  };
  CHECK(
      of(bedding_from_od(cable_of("14.9+15.1", "", "0.9"), Pattern::british, test::standards())) ==
      "10.4 +- 0.4944 | sheath OD 15.0 less 2 x (wire 0.9 + sheath 1.4)");
  CHECK(of(bedding_from_od(cable_of("14.9+15.1", "", "0.9"), Pattern::iec, test::standards())) ==
        "9.6 +- 0.5724 | sheath OD 15.0 less 2 x (wire 0.9 + sheath 1.8)");
  CHECK(of(bedding_from_od(cable_of("4.0+4.0", "", "0.9"), Pattern::british, test::standards())) ==
        "none");
  CHECK(of(bedding_from_od(cable_of("14.9+15.1", "", ""), Pattern::british, test::standards())) ==
        "none");
  CHECK(
      of(od_from_bedding(cable_of("", "9.9+10.1", "1.05"), Pattern::british, test::standards())) ==
      "14.9 +- 0.5004 | bedding 10.0 and 2 x (wire 1.05 + sheath 1.4)");
  CHECK(of(od_from_bedding(cable_of("", "9.9+10.1", "0.9"), Pattern::iec, test::standards())) ==
        "15.4 +- 0.5724 | bedding 10.0 and 2 x (wire 0.9 + sheath 1.8)");
}

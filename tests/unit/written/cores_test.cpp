#include "cutback/written/cores.hpp"

#include <catch2/catch.hpp>

#include "cutback/number.hpp"

using namespace cutback;

namespace {

/// "4 x 16", "3 x 25 + 16", "4 of 25, earth unknown", "4 in pairs x 1.5"; or "! why not".
std::string read(std::string_view text, char decimal = '.') {
  const auto reading = written::read_cores(text, decimal);
  if (!reading.cores) return "! " + reading.why_not;
  const written::Cores& cores = *reading.cores;
  std::string out = cores.cores > 0 ? std::to_string(cores.cores) : "?";
  if (cores.groups) out += " in groups";
  if (cores.csa_mm2) out += " x " + plain(*cores.csa_mm2);
  if (cores.earth_csa_mm2) out += " + " + plain(*cores.earth_csa_mm2);
  if (cores.earth_unknown) out += " with earth";
  for (const std::string* word :
       {&cores.insulation, &cores.armour, &cores.armour_material, &cores.voltage}) {
    if (!word->empty()) out += " " + *word;
  }
  return out;
}

struct Form {
  const char* written;
  const char* means;
};

}  // namespace

TEST_CASE("read_cores: forms that mean one thing", "[unit][written]") {
  for (const Form& form : {
           Form{"4C x 16mm2", "4 x 16"},
           Form{"4C x 16", "4 x 16"},
           Form{"4Cx16", "4 x 16"},
           Form{"4c16", "4 x 16"},
           Form{"4C 16", "4 x 16"},
           Form{"4 C 16 mm2", "4 x 16"},
           Form{"4core x 16sqmm", "4 x 16"},
           Form{"4-core 16mm\xC2\xB2", "4 x 16"},
           Form{"4 Core, 16 sq.mm", "4 x 16"},
           Form{"4C x 16 sq.mm.", "4 x 16"},
           Form{"4C x 16mm", "4 x 16"},
           Form{"4C x 6 AWG", "4 x 13.302"},
           Form{"#10 AWG 4C", "4 x 5.261"},
           Form{"3C 250 MCM", "3 x 126.677"},
           Form{"4/C 16", "4 x 16"},
           Form{"4C 16 600/1000V", "4 x 16 600/1000v"},
           Form{"0.6/1kV 4C x 16mm2 XLPE/SWA/PVC", "4 x 16 xlpe wire steel 0.6/1kv"},
           Form{"4C 16 0.6/1 (1.2) kV", "4 x 16 0.6/1 (1.2) kv"},
           Form{"3C x 95 11kV", "3 x 95 11kv"},
           Form{"4 cores of 16 mm2", "4 x 16"},
           Form{"4x16", "4 x 16"},
           Form{"4 x 16", "4 x 16"},
           Form{"4X16MM2", "4 x 16"},
           Form{"4\xC3\x97"
                "16",
                "4 x 16"},
           Form{"4 \xC3\x97 16 mm^2", "4 x 16"},
           Form{"4*16", "4 x 16"},
           Form{"4C\xC2\xA0x\xC2\xA0"
                "16",
                "4 x 16"},
           Form{"16mm2 4c", "4 x 16"},
           Form{"16 mm2 x 4 core", "4 x 16"},
           Form{"(4C x 16mm2)", "4 x 16"},
           Form{"3x2.5", "3 x 2.5"},
           Form{"3G2.5", "3 x 2.5"},
           Form{"5 G 16", "5 x 16"},
           Form{"12G1.5 mm2", "12 x 1.5"},
           Form{"37C x 1.5", "37 x 1.5"},
           Form{"2c x 0.75", "2 x 0.75"},
           Form{"1C 300 AL", "1 x 300"},
           Form{"1C x 300mm2 Cu", "1 x 300"},
           Form{"1x300 aluminium", "1 x 300"},
           Form{"1 core 630", "1 x 630"},
           Form{"3x25+16", "3 x 25 + 16"},
           Form{"3 x 25 + 16 mm2", "3 x 25 + 16"},
           Form{"3x25mm2+16mm2", "3 x 25 + 16"},
           Form{"3x25+1x16", "3 x 25 + 16"},
           Form{"3C 25 + 1C 16", "3 x 25 + 16"},
           Form{"3C x 25 + E16", "3 x 25 + 16"},
           Form{"3C25+1G16", "3 x 25 + 16"},
           Form{"3x95 + 50 E", "3 x 95 + 50"},
           Form{"4x95+50", "4 x 95 + 50"},
           Form{"3x16+1x16", "4 x 16"},
           Form{"3x16+16", "4 x 16"},
           Form{"3c+e 25", "4 x 25 with earth"},
           Form{"3C+E x 25mm2", "4 x 25 with earth"},
           Form{"3 core + earth 25", "4 x 25 with earth"},
           Form{"3C & E 25", "4 x 25 with earth"},
           Form{"3c and cpc 10", "4 x 10 with earth"},
           Form{"3+E 25", "4 x 25 with earth"},
           Form{"3x25+E", "4 x 25 with earth"},
           Form{"4C", "4"},
           Form{"4 core", "4"},
           Form{"3c+e", "4 with earth"},
           Form{"16mm2", "? x 16"},
           Form{"2x2x1.5", "4 in groups x 1.5"},
           Form{"2 x 2 x 1.5 mm2", "4 in groups x 1.5"},
           Form{"4x3x0.75", "12 in groups x 0.75"},
           Form{"2P 1.5", "4 in groups x 1.5"},
           Form{"12 pair x 0.75", "24 in groups x 0.75"},
           Form{"1pr 1.5mm2", "2 in groups x 1.5"},
           Form{"1T x 1.5", "3 in groups x 1.5"},
           Form{"5 triads 1.0", "15 in groups x 1"},
           Form{"2 quad 0.5", "8 in groups x 0.5"},
           Form{"4C 16 SWA", "4 x 16 wire steel"},
           Form{"4C x 16mm2 XLPE/SWA/PVC", "4 x 16 xlpe wire steel"},
           Form{"4Cx16 Cu/XLPE/SWA/PVC", "4 x 16 xlpe wire steel"},
           Form{"CU/XLPE/SWA/PVC 4C x 16", "4 x 16 xlpe wire steel"},
           Form{"4x16 PVC/SWA/PVC", "4 x 16 pvc wire steel"},
           Form{"1C 300 XLPE/AWA/PVC", "1 x 300 xlpe wire aluminium"},
           Form{"2C 1.5 XLPE/LSZH/SWA/LSZH", "2 x 1.5 xlpe wire steel"},
           Form{"4C 2.5 XLPE SWB", "4 x 2.5 xlpe braid steel"},
           Form{"4C 2.5 XLPE/PVC", "4 x 2.5 xlpe"},
           Form{"4C 2.5 PVC/PVC unarmoured", "4 x 2.5 pvc none"},
           Form{"4C 25 DSTA", "4 x 25 tape steel"},
       }) {
    INFO(form.written);
    CHECK(read(form.written) == form.means);
  }
}

TEST_CASE("read_layers: the layers of a cable alone", "[unit][written]") {
  const auto layers = [](std::string_view text) {
    const auto read = written::read_layers(text);
    return read ? read->insulation + " " + read->armour + " " + read->armour_material : "nothing";
  };
  CHECK(layers("XLPE/SWA/PVC") == "xlpe wire steel");
  CHECK(layers("Cu/XLPE/AWA/PVC") == "xlpe wire aluminium");
  CHECK(layers("PVC/PVC unarmoured") == "pvc none ");
  CHECK(layers("XLPE/PVC") == "xlpe  ");
  for (const char* other : {"MICC", "T1", "XLPE/SWA/AWA", "PVC", "4C XLPE/SWA/PVC"}) {
    INFO(other);
    CHECK(layers(other) == "nothing");
  }
}

TEST_CASE("read_cores: forms that may mean several things", "[unit][written]") {
  for (const Form& form : {
           Form{"16", "! a number alone may be"},
           Form{"4 16", "! nothing tells the number of cores from the size"},
           Form{"4/16", "! "},
           Form{"3x25/16", "! what stands behind the stroke may be a concentric conductor"},
           Form{"4C 7/1.04", "! what stands behind the stroke"},
           Form{"2 x 4C x 16", "! several cables"},
           Form{"4C 16 600/1000V 11kV", "! two voltages"},
           Form{"3x1x300", "! several cables"},
           Form{"3 x 1C 300", "! several cables"},
           Form{"2x4x16", "! several cables, or pairs"},
           Form{"3.5C x 25", "! half a core"},
           Form{"3.5x25", "! half a core"},
           Form{"3x25+2x16", "! several cores of another size"},
           Form{"3x25+16+16", "! several cores of another size"},
           Form{"3c+e 25+16", "! two earth cores"},
           Form{"3G25+16", "! two earth cores"},
           Form{"3x16+25", "! the earth core is larger"},
           Form{"2P+E 1.5", "! pairs with an earth core"},
           Form{"4C 16 PVC", "! pvc alone may be the insulation or the sheath"},
           Form{"4C 16 SWA AWA", "! two kinds of armour"},
           Form{"NYY-J 4x16", "! not known here: nyy"},
           Form{"4C x 16mm2 x 2", "! not clear"},
           Form{"0C x 16", "! no such number of cores"},
           Form{"4C x 5000", "! no such size"},
           Form{"4x2,5", "! "},
           Form{"4C x", "! the size is not where it should be"},
           Form{"x16", "! the number of cores is not where it should be"},
           Form{"4C x 16/25", "! what stands behind the stroke"},
           Form{"hello", "! not known here: hello"},
       }) {
    INFO(form.written);
    CHECK_THAT(read(form.written), Catch::StartsWith(form.means));
  }
}

TEST_CASE("read_cores: decimal commas", "[unit][written]") {
  CHECK(read("4x2,5", ',') == "4 x 2.5");
  CHECK(read("3x1,5+1,0", ',') == "3 x 1.5 + 1");
  CHECK_THAT(read("4x2.5", ','), Catch::StartsWith("! "));
}

TEST_CASE("read_cores: what leaves something open is no estimate", "[unit][written]") {
  CHECK(written::read_cores("4x16", '.').cores->can_be_estimated());
  CHECK(written::read_cores("3x25+16", '.').cores->can_be_estimated());
  CHECK_FALSE(written::read_cores("3c+e 25", '.').cores->can_be_estimated());
  CHECK_FALSE(written::read_cores("2x2x1.5", '.').cores->can_be_estimated());
  CHECK_FALSE(written::read_cores("4c", '.').cores->can_be_estimated());
}

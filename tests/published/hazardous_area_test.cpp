// Hazardous areas: every row of the decisions that the program takes, typed from the documents.
//   IEC 60079-14:2007 (edition 4) 10.4.2: flameproof entry by group, source, zone and volume
//   IEC 60079-14:2013 (edition 5) 10.6.2: flameproof entry by cable and length
//   IEC 60079-14:2013 Table 1: level by zone; Table 10: gland by enclosure
//   IEC 60079-0:2017: groups, and 16.6 temperature at the entry
//   IEC 60079-31 Table 1: dust tightness by level and group
//   IEC 60529:1989+A1+A2 6: numerals of the IP code
#include <algorithm>
#include <catch2/catch.hpp>
#include <map>

#include "cutback/area/check.hpp"
#include "cutback/area/demand.hpp"
#include "cutback/io/standards.hpp"

using namespace cutback;
using area::Area;
using area::RuleSet;
using area::SealingDemand;

namespace {

const tables::Standards& standards() {
  static const tables::Standards all = io::builtin_standards();
  return all;
}

cable::Cable solid_cable(double length_m) {
  cable::Cable cable;
  cable.cores = 4;
  cable.circular = true;
  cable.compact = true;
  cable.bedding_made = cable::BeddingMade::extruded;
  cable.fillers = cable::Fillers::none;
  cable.length_m = length_m;
  return cable;
}

/// The verdict of one check, or fits where the place does not ask for it.
Verdict verdict_of(const Area& place, const cable::Cable& cable, const gland::Gland& gland,
                   fit::CheckName name) {
  const area::Demand demand = area::make_demand(place, cable, standards());
  for (const fit::Check& check : area::check_area(demand, cable, gland)) {
    if (check.name == name) return check.verdict;
  }
  return Verdict::fits;
}

}  // namespace

TEST_CASE("flameproof entry 2007: each row of the chart", "[published][area]") {
  struct Row {
    int row;
    std::optional<bool> ignition;
    const char* group;
    const char* zone;
    double volume_cm3;
    SealingDemand result;
  };
  constexpr auto compression = SealingDemand::compression;
  constexpr auto barrier = SealingDemand::barrier;
  const Row rows[] = {
      {1, false, "IIC", "1", 9000, compression}, {1, false, "IIA", "2", 500, compression},
      {2, true, "IIC", "1", 500, barrier},       {2, true, "IIC", "2", 9000, barrier},
      {3, true, "IIA", "2", 9000, compression},  {3, true, "IIB", "2", 9000, compression},
      {4, true, "IIA", "1", 2000, compression},  {4, true, "IIB", "1", 1999, compression},
      {5, true, "IIA", "1", 2000.1, barrier},    {5, true, "IIB", "1", 2001, barrier},
      {6, {}, "IIB", "1", 2001, barrier},        {6, {}, "IIC", "2", 100, barrier},
  };
  for (const Row& row : rows) {
    INFO("row " << row.row << " " << row.group << " zone " << row.zone << " " << row.volume_cm3);
    Area place;
    place.rules = RuleSet::iec_60079_14_2007;
    place.protection = "d";
    place.zone = row.zone;
    place.gas_group = row.group;
    place.ignition_source = row.ignition;
    place.volume_cm3 = row.volume_cm3;
    const area::Demand demand = area::make_demand(place, solid_cable(1), standards());
    CHECK(demand.sealing == row.result);
    CHECK_FALSE(demand.refused);
    // What the chart allows rests on memory of its order, so it never decides a pass.
    CHECK(demand.allowed_from_memory == (row.result == compression));
    gland::Gland gland;
    gland.sealing = gland::Sealing::compression;
    CHECK(verdict_of(place, solid_cable(1), gland, fit::CheckName::sealing) ==
          (row.result == compression ? Verdict::not_known : Verdict::no_fit));
  }
}

TEST_CASE("flameproof entry 2007: zone 0 refuses an ordinary flameproof entry",
          "[published][area]") {
  for (const RuleSet rules :
       {RuleSet::iec_60079_14_2007, RuleSet::iec_60079_14_2013, RuleSet::strict}) {
    Area place;
    place.rules = rules;
    place.protection = "d";
    place.zone = "0";
    place.gas_group = "IIA";
    place.ignition_source = false;
    gland::Gland gland;
    gland.sealing = gland::Sealing::barrier;
    gland.max_cores = 7;
    CHECK(area::make_demand(place, solid_cable(10), standards()).refused);
    CHECK(verdict_of(place, solid_cable(10), gland, fit::CheckName::sealing) == Verdict::no_fit);
  }
}

TEST_CASE("flameproof entry 2007: any other cable goes straight to a barrier",
          "[published][area]") {
  Area place;
  place.rules = RuleSet::iec_60079_14_2007;
  place.protection = "d";
  place.zone = "2";
  place.gas_group = "IIA";
  place.ignition_source = false;
  place.volume_cm3 = 100;
  cable::Cable lapped = solid_cable(10);
  lapped.bedding_made = cable::BeddingMade::lapped;
  cable::Cable loose = solid_cable(10);
  loose.compact = false;
  cable::Cable oval = solid_cable(10);
  oval.circular = false;
  cable::Cable thirsty = solid_cable(10);
  thirsty.fillers = cable::Fillers::hygroscopic;
  for (const cable::Cable& cable : {lapped, loose, oval, thirsty}) {
    CHECK(area::make_demand(place, cable, standards()).sealing == SealingDemand::barrier);
  }
  cable::Cable dry = solid_cable(10);
  dry.fillers = cable::Fillers::non_hygroscopic;
  CHECK(area::make_demand(place, dry, standards()).sealing == SealingDemand::compression);
}

TEST_CASE("flameproof entry 2013: each row", "[published][area]") {
  Area place;
  place.rules = RuleSet::iec_60079_14_2013;
  place.protection = "d";
  place.zone = "1";
  place.gas_group = "IIC";
  const auto result = [&](const cable::Cable& cable) {
    return area::make_demand(place, cable, standards()).sealing;
  };
  CHECK(result(solid_cable(3.0)) == SealingDemand::compression);  // row 1, at least 3 m
  CHECK(result(solid_cable(50)) == SealingDemand::compression);
  cable::Cable loose = solid_cable(50);
  loose.compact = false;
  CHECK(result(loose) == SealingDemand::barrier);               // row 2
  CHECK(result(solid_cable(2.999)) == SealingDemand::barrier);  // row 3
  cable::Cable unknown = solid_cable(50);
  unknown.compact.reset();
  CHECK(result(unknown) == SealingDemand::barrier);  // row 5
  unknown = solid_cable(50);
  unknown.length_m.reset();
  CHECK(result(unknown) == SealingDemand::barrier);  // row 6
}

TEST_CASE("flameproof entry 2013: a sealing ring is allowed on a gland certified to 60079-1 only",
          "[published][area]") {
  Area place;
  place.rules = RuleSet::iec_60079_14_2013;
  place.protection = "d";
  place.zone = "1";
  place.gas_group = "IIC";
  gland::Gland gland;
  gland.sealing = gland::Sealing::compression;
  gland.protection = {"db"};
  CHECK(verdict_of(place, solid_cable(3), gland, fit::CheckName::sealing) == Verdict::fits);
  CHECK(verdict_of(place, solid_cable(3), gland, fit::CheckName::protection) == Verdict::fits);
  gland.protection = {"eb"};  // row 4
  CHECK(verdict_of(place, solid_cable(3), gland, fit::CheckName::protection) == Verdict::no_fit);
}

TEST_CASE("flameproof entry 2013: group zone and volume play no part", "[published][area]") {
  for (const char* group : {"IIA", "IIB", "IIC"}) {
    for (const char* zone : {"1", "2"}) {
      for (const double volume : {10.0, 90000.0}) {
        Area place;
        place.rules = RuleSet::iec_60079_14_2013;
        place.protection = "d";
        place.zone = zone;
        place.gas_group = group;
        place.volume_cm3 = volume;
        place.ignition_source = true;
        CHECK(area::make_demand(place, solid_cable(3), standards()).sealing ==
              SealingDemand::compression);
      }
    }
  }
}

TEST_CASE("gland by enclosure 2013 Table 10: each cell", "[published][area]") {
  // Y fits, n does not, ? is from memory or in the documents and has to be looked up.
  struct Row {
    const char* enclosure;
    const char* zone;
    const char* d_e_n_t;
  };
  const Row rows[] = {
      {"d", "2", "Ynnn"},  {"e", "2", "YYnn"},  {"i", "2", "???n"},  {"nL", "2", "???n"},
      {"nA", "2", "??Yn"}, {"nC", "2", "??Yn"}, {"n", "2", "??Yn"},  {"nR", "2", "???n"},
      {"px", "2", "??nn"}, {"py", "2", "??nn"}, {"pz", "2", "???n"}, {"t", "22", "nnnY"},
      {"i", "22", "nnn?"}, {"p", "22", "nnn?"}, {"m", "2", "????"},  {"o", "2", "????"},
      {"q", "2", "????"},  {"s", "2", "????"},
  };
  for (const Row& row : rows) {
    const char* const marks[] = {"dc", "ec", "nC", "tc"};
    for (int i = 0; i < 4; ++i) {
      INFO(row.enclosure << " with a gland " << marks[i]);
      Area place;
      place.protection = row.enclosure;
      place.zone = row.zone;
      gland::Gland gland;
      gland.protection = {marks[i]};
      const char cell = row.d_e_n_t[i];
      CHECK(verdict_of(place, solid_cable(10), gland, fit::CheckName::protection) ==
            (cell == 'Y'   ? Verdict::fits
             : cell == 'n' ? Verdict::no_fit
                           : Verdict::not_known));
    }
  }
}

TEST_CASE("zone and level 2013 Table 1: each pair", "[published][area]") {
  const std::map<std::string, std::vector<std::string>> accepted = {
      {"0", {"Ga"}},  {"1", {"Ga", "Gb"}},  {"2", {"Ga", "Gb", "Gc"}},
      {"20", {"Da"}}, {"21", {"Da", "Db"}}, {"22", {"Da", "Db", "Dc"}}};
  for (const auto& [zone, levels] : accepted) {
    for (const char* level : {"Ga", "Gb", "Gc", "Da", "Db", "Dc"}) {
      INFO("zone " << zone << " level " << level);
      Area place;
      place.zone = zone;
      gland::Gland gland;
      gland.level = {level};
      const bool fits = std::find(levels.begin(), levels.end(), level) != levels.end();
      CHECK(verdict_of(place, solid_cable(10), gland, fit::CheckName::level) ==
            (fits ? Verdict::fits : Verdict::no_fit));
    }
  }
}

TEST_CASE("gas groups: each pair of place and marking", "[published][area]") {
  // Y serves, n does not, ? is from memory.
  const std::map<std::string, std::string> rows = {
      {"IIA", "YYY??"}, {"IIB", "nYY??"}, {"IIC", "nnY?n"}};
  for (const auto& [place_group, cells] : rows) {
    const char* const marks[] = {"IIA", "IIB", "IIC", "II", "IIB+H2"};
    for (std::size_t i = 0; i < 5; ++i) {
      INFO(place_group << " and a gland " << marks[i]);
      Area place;
      place.zone = "1";
      place.gas_group = place_group;
      gland::Gland gland;
      gland.gas_group = marks[i];
      CHECK(verdict_of(place, solid_cable(10), gland, fit::CheckName::group) ==
            (cells[i] == 'Y'   ? Verdict::fits
             : cells[i] == 'n' ? Verdict::no_fit
                               : Verdict::not_known));
    }
  }
}

TEST_CASE("dust groups: each pair of place and marking", "[published][area]") {
  const std::map<std::string, std::string> rows = {
      {"IIIA", "YYY"}, {"IIIB", "nYY"}, {"IIIC", "nnY"}};
  for (const auto& [place_group, cells] : rows) {
    const char* const marks[] = {"IIIA", "IIIB", "IIIC"};
    for (std::size_t i = 0; i < 3; ++i) {
      INFO(place_group << " and a gland " << marks[i]);
      Area place;
      place.zone = "21";
      place.dust_group = place_group;
      gland::Gland gland;
      gland.dust_group = marks[i];
      CHECK(verdict_of(place, solid_cable(10), gland, fit::CheckName::group) ==
            (cells[i] == 'Y' ? Verdict::fits : Verdict::no_fit));
    }
  }
}

TEST_CASE("IP code: what each marking provides", "[published][area]") {
  // Y serves, n does not, C has to be checked.
  const std::vector<std::pair<std::vector<std::string>, std::string>> rows = {
      {{"54"}, "Ynnnnn"}, {{"65"}, "YYYnnn"}, {{"66"}, "YYYYnn"},
      {{"67"}, "CnnnYn"}, {{"68"}, "CnnnYC"}, {{"66", "68"}, "YYYYYC"}};
  const auto rules = area::water_rules(standards());
  for (const auto& [marked, cells] : rows) {
    const char* const required[] = {"54", "55", "65", "66", "67", "68"};
    for (std::size_t i = 0; i < 6; ++i) {
      INFO("IP" << marked.back() << " for IP" << required[i]);
      const Verdict verdict = area::serves(required[i], marked, rules).verdict;
      CHECK(verdict == (cells[i] == 'Y'   ? Verdict::fits
                        : cells[i] == 'n' ? Verdict::no_fit
                                          : Verdict::not_known));
    }
  }
}

TEST_CASE("IP code: each second numeral up to 6 implies those below", "[published][area]") {
  const auto rules = area::water_rules(standards());
  for (int provided = 0; provided <= 6; ++provided) {
    const std::vector<std::string> marked = {"6" + std::to_string(provided)};
    for (int required = 0; required <= 9; ++required) {
      INFO(provided << " for " << required);
      CHECK(area::serves("6" + std::to_string(required), marked, rules).verdict ==
            (required <= provided ? Verdict::fits : Verdict::no_fit));
    }
  }
  const std::vector<std::string> jets = {"69"};
  CHECK(area::serves("69", jets, rules).verdict == Verdict::fits);
  for (const char* required : {"65", "66", "67", "68"}) {
    CHECK(area::serves(required, jets, rules).verdict == Verdict::no_fit);
  }
}

TEST_CASE("dust tightness 60079-31 Table 1: each cell", "[published][area]") {
  struct Row {
    const char* zone;
    const char* group;
    int numeral;
  };
  const Row rows[] = {{"20", "IIIC", 6}, {"20", "IIIB", 6}, {"20", "IIIA", 6},
                      {"21", "IIIC", 6}, {"21", "IIIB", 6}, {"21", "IIIA", 5},
                      {"22", "IIIC", 6}, {"22", "IIIB", 5}, {"22", "IIIA", 5}};
  for (const Row& row : rows) {
    INFO("zone " << row.zone << " " << row.group);
    Area place;
    place.protection = "t";
    place.zone = row.zone;
    place.dust_group = row.group;
    const auto with = [&](const char* code) {
      gland::Gland gland;
      gland.ip = {code};
      return verdict_of(place, solid_cable(10), gland, fit::CheckName::ingress);
    };
    CHECK(with("66") == Verdict::fits);
    CHECK(with("6X") == Verdict::fits);
    // IP5X would be allowed from memory only.
    CHECK(with("54") == (row.numeral == 5 ? Verdict::not_known : Verdict::no_fit));
    CHECK(with("44") == Verdict::no_fit);
  }
}

TEST_CASE("increased safety: least IP with bare and with insulated live parts",
          "[published][area]") {
  Area place;
  place.protection = "e";
  place.zone = "1";
  const auto with = [&](std::optional<bool> bare, const char* code) {
    place.bare_live_parts = bare;
    gland::Gland gland;
    gland.ip = {code};
    return verdict_of(place, solid_cable(10), gland, fit::CheckName::ingress);
  };
  CHECK(with(true, "54") == Verdict::fits);
  CHECK(with(true, "53") == Verdict::no_fit);
  CHECK(with({}, "44") == Verdict::no_fit);
  CHECK(with(false, "44") == Verdict::not_known);
  CHECK(with(false, "43") == Verdict::no_fit);
  CHECK(with(false, "54") == Verdict::fits);
}

TEST_CASE("temperature 60079-0 16.6: the thresholds at entry and branching point",
          "[published][area]") {
  struct Row {
    double entry, branch;
    bool above;
  };
  for (const Row& row : {Row{70, 80, false}, Row{70.1, 80, true}, Row{70, 80.1, true}}) {
    Area place;
    place.entry_temp_degc = row.entry;
    place.branch_temp_degc = row.branch;
    const auto demand = area::make_demand(place, solid_cable(10), standards());
    REQUIRE(demand.temperature.has_value());
    CHECK(demand.temperature->cable == Verdict::not_known);
    CHECK((demand.temperature->cable_says.find("is above") != std::string::npos) == row.above);
  }
}

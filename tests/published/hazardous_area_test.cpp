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
#include <set>
#include <tuple>

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

Verdict serves(const std::string& required, const std::string& marked,
               const std::vector<area::WaterRule>& rules) {
  return area::serves(*area::parse_ip_code(required), *area::parse_ip_codes(marked), rules).verdict;
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
    place.protection = area::Protection::d;
    place.zone = value_of<area::Zone>(row.zone);
    place.gas_group = value_of<area::GasGroup>(row.group);
    place.ignition_source = row.ignition;
    place.volume_cm3 = row.volume_cm3;
    const area::Demand demand = area::make_demand(place, solid_cable(1), standards());
    CHECK(demand.sealing == row.result);
    CHECK_FALSE(demand.refused);
    // What the chart allows rests on memory of its order, so it never decides a pass.
    CHECK(demand.allowed_from_memory == (row.result == compression));
    gland::Gland gland;
    gland.inner = measure::Range{8.0, 12.0};
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
    place.protection = area::Protection::d;
    place.zone = area::Zone::zone_0;
    place.gas_group = area::GasGroup::IIA;
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
  place.protection = area::Protection::d;
  place.zone = area::Zone::zone_2;
  place.gas_group = area::GasGroup::IIA;
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
  place.protection = area::Protection::d;
  place.zone = area::Zone::zone_1;
  place.gas_group = area::GasGroup::IIC;
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
  place.protection = area::Protection::d;
  place.zone = area::Zone::zone_1;
  place.gas_group = area::GasGroup::IIC;
  gland::Gland gland;
  gland.inner = measure::Range{8.0, 12.0};
  gland.protection = {area::Protection::db};
  CHECK(verdict_of(place, solid_cable(3), gland, fit::CheckName::sealing) == Verdict::fits);
  CHECK(verdict_of(place, solid_cable(3), gland, fit::CheckName::protection) == Verdict::fits);
  gland.protection = {area::Protection::eb};  // row 4
  CHECK(verdict_of(place, solid_cable(3), gland, fit::CheckName::protection) == Verdict::no_fit);
}

TEST_CASE("flameproof entry: hydrogen beside group IIB takes the way of IIC", "[published][area]") {
  // The chart of 2007 asks about IIC; hydrogen by itself is of that group (IEC 60079-20-1).
  for (const char* zone : {"1", "2"}) {
    for (const double volume : {10.0, 90000.0}) {
      Area place;
      place.rules = RuleSet::iec_60079_14_2007;
      place.protection = area::Protection::d;
      place.zone = value_of<area::Zone>(zone);
      place.volume_cm3 = volume;
      place.ignition_source = true;
      const auto demand_of = [&](area::GasGroup group) {
        place.gas_group = group;
        return area::make_demand(place, solid_cable(3), standards());
      };
      const area::Demand acetylene = demand_of(area::GasGroup::IIC);
      const area::Demand hydrogen = demand_of(area::GasGroup::IIB_H2);
      CHECK(hydrogen.sealing == acetylene.sealing);
      CHECK(hydrogen.sealing == SealingDemand::barrier);
    }
  }
}

TEST_CASE("flameproof entry 2013: group zone and volume play no part", "[published][area]") {
  for (const char* group : {"IIA", "IIB", "IIC"}) {
    for (const char* zone : {"1", "2"}) {
      for (const double volume : {10.0, 90000.0}) {
        Area place;
        place.rules = RuleSet::iec_60079_14_2013;
        place.protection = area::Protection::d;
        place.zone = value_of<area::Zone>(zone);
        place.gas_group = value_of<area::GasGroup>(group);
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
  // The enclosure has the level of its zone; where its marking says none the whole is not known.
  const Row rows[] = {
      {"d", "1", "Ynnn"},    {"dc", "2", "Ynnn"},  {"e", "1", "YYnn"},   {"ec", "2", "YYnn"},
      {"ib", "1", "??nn"},   {"ic", "2", "???n"},  {"nA", "2", "??Yn"},  {"nC", "2", "??Yn"},
      {"nR", "2", "???n"},   {"nL", "2", "???n"},  {"pxb", "1", "??nn"}, {"pyb", "2", "??nn"},
      {"pzc", "2", "???n"},  {"tc", "22", "nnnY"}, {"tb", "21", "nnnY"}, {"ic", "22", "nnn?"},
      {"pzc", "22", "nnn?"}, {"mc", "2", "????"},  {"o", "2", "????"},   {"q", "2", "????"},
      {"sc", "2", "????"},
  };
  for (const Row& row : rows) {
    // In zone 1 and 21 the gland's marking carries the letter b, and type n has none of it.
    const bool high = row.zone[std::string_view(row.zone).size() - 1] == '1';
    const std::vector<const char*> marks =
        high ? std::vector{"db", "eb", "nC", "tb"} : std::vector{"dc", "ec", "nC", "tc"};
    for (std::size_t i = 0; i < 4; ++i) {
      INFO(row.enclosure << " in zone " << row.zone << " with a gland " << marks[i]);
      Area place;
      place.protection = value_of<area::Protection>(row.enclosure);
      place.zone = value_of<area::Zone>(row.zone);
      gland::Gland gland;
      gland.protection = {*value_of<area::Protection>(marks[i])};
      const char cell = row.d_e_n_t[i];
      CHECK(verdict_of(place, solid_cable(10), gland, fit::CheckName::protection) ==
            (cell == 'Y'   ? Verdict::fits
             : cell == 'n' ? Verdict::no_fit
                           : Verdict::not_known));
    }
  }
}

TEST_CASE("type of protection and zone 60079-0: the level of each marking", "[published][area]") {
  // IEC 60079-0:2017, levels of protection; zones by IEC 60079-14:2013 Table 1. One letter for each
  // zone from the hardest on: Y the type serves, n it does not, ? it would, from memory only.
  const std::pair<const char*, const char*> gas[] = {
      {"da", "YYY"}, {"ma", "YYY"}, {"ia", "YYY"},  {"d", "nYY"},   {"db", "nYY"},  {"e", "nYY"},
      {"eb", "nYY"}, {"ib", "nYY"}, {"mb", "nYY"},  {"pxb", "nYY"}, {"pyb", "nYY"}, {"q", "nYY"},
      {"o", "nYY"},  {"dc", "nnY"}, {"ec", "nnY"},  {"nA", "nnY"},  {"nC", "nnY"},  {"nR", "nnY"},
      {"ic", "nnY"}, {"mc", "nnY"}, {"pzc", "nnY"}, {"n", "nn?"},   {"nL", "nn?"},  {"px", "n??"},
      {"py", "n??"}, {"pz", "nn?"}, {"ob", "n??"},  {"oc", "nn?"},  {"qb", "n??"},  {"i", "???"},
      {"m", "???"},  {"p", "???"},  {"pv", "???"},  {"s", "???"},   {"sa", "???"},  {"sb", "n??"},
      {"sc", "nn?"},
  };
  const std::pair<const char*, const char*> dust[] = {
      {"ta", "YYY"}, {"tb", "nYY"},  {"tc", "nnY"},  {"t", "???"},   {"tD", "???"},
      {"ia", "???"}, {"ib", "n??"},  {"ic", "nn?"},  {"ma", "???"},  {"mb", "n??"},
      {"mc", "nn?"}, {"pxb", "n??"}, {"pyb", "n??"}, {"pzc", "nn?"}, {"i", "???"},
      {"m", "???"},  {"p", "???"},   {"px", "n??"},  {"py", "n??"},  {"pz", "nn?"},
      {"pv", "???"}, {"s", "???"},   {"sa", "???"},  {"sb", "n??"},  {"sc", "nn?"},
  };
  const auto judge = [](const char* mark, area::Zone zone, char cell) {
    INFO(mark << " in zone " << to_string(zone));
    Area place;
    place.protection = value_of<area::Protection>(mark);
    place.zone = zone;
    const auto demand = area::make_demand(place, solid_cable(10), standards());
    REQUIRE(demand.enclosure.has_value());
    CHECK(demand.enclosure->verdict == (cell == 'Y'   ? Verdict::fits
                                        : cell == 'n' ? Verdict::no_fit
                                                      : Verdict::not_known));
    CHECK_FALSE(demand.enclosure->says.empty());
    CHECK(demand.enclosure->source.find("IEC 60079-0") != std::string::npos);
  };
  using area::Zone;
  std::set<std::string_view> seen;
  for (const auto& [mark, cells] : gas) {
    seen.insert(mark);
    for (const Zone zone : {Zone::zone_0, Zone::zone_1, Zone::zone_2}) {
      judge(mark, zone, cells[static_cast<int>(zone) - static_cast<int>(Zone::zone_0)]);
    }
  }
  for (const auto& [mark, cells] : dust) {
    seen.insert(mark);
    for (const Zone zone : {Zone::zone_20, Zone::zone_21, Zone::zone_22}) {
      judge(mark, zone, cells[static_cast<int>(zone) - static_cast<int>(Zone::zone_20)]);
    }
  }
  // Every marking that can be given is typed here.
  for (const auto mark : area::k_part_protections) CHECK(seen.count(to_string(mark)) == 1);
}

TEST_CASE("zone and level 2013 Table 1: each pair", "[published][area]") {
  const std::map<std::string, std::vector<std::string>> accepted = {
      {"0", {"Ga"}},  {"1", {"Ga", "Gb"}},  {"2", {"Ga", "Gb", "Gc"}},
      {"20", {"Da"}}, {"21", {"Da", "Db"}}, {"22", {"Da", "Db", "Dc"}}};
  for (const auto& [zone, levels] : accepted) {
    for (const char* level : {"Ga", "Gb", "Gc", "Da", "Db", "Dc"}) {
      INFO("zone " << zone << " level " << level);
      Area place;
      place.zone = value_of<area::Zone>(zone);
      gland::Gland gland;
      gland.level = {*value_of<area::Level>(level)};
      const bool fits = std::find(levels.begin(), levels.end(), level) != levels.end();
      CHECK(verdict_of(place, solid_cable(10), gland, fit::CheckName::level) ==
            (fits ? Verdict::fits : Verdict::no_fit));
    }
  }
}

TEST_CASE("gas groups: each pair of place and marking", "[published][area]") {
  // Y serves, n does not, ? is from memory.
  const std::map<std::string, std::string> rows = {
      {"IIA", "YYY?Y"}, {"IIB", "nYY?Y"}, {"IIB+H2", "nnY?Y"}, {"IIC", "nnY?n"}};
  for (const auto& [place_group, cells] : rows) {
    const char* const marks[] = {"IIA", "IIB", "IIC", "II", "IIB+H2"};
    for (std::size_t i = 0; i < 5; ++i) {
      INFO(place_group << " and a gland " << marks[i]);
      Area place;
      place.zone = area::Zone::zone_1;
      place.gas_group = value_of<area::GasGroup>(place_group);
      gland::Gland gland;
      gland.gas_group = value_of<area::GasMark>(marks[i]);
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
      place.zone = area::Zone::zone_21;
      place.dust_group = value_of<area::DustGroup>(place_group);
      gland::Gland gland;
      gland.dust_group = value_of<area::DustGroup>(marks[i]);
      CHECK(verdict_of(place, solid_cable(10), gland, fit::CheckName::group) ==
            (cells[i] == 'Y' ? Verdict::fits : Verdict::no_fit));
    }
  }
}

TEST_CASE("IP code: what each marking provides", "[published][area]") {
  // Y serves, n does not, C has to be checked.
  const std::pair<const char*, const char*> rows[] = {
      {"54", "Ynnnnn"}, {"65", "YYYnnn"}, {"66", "YYYYnn"},    {"67", "CnnnYn"},
      {"68", "CnnnYC"}, {"69", "Cnnnnn"}, {"66/68", "YYYYYC"}, {"66/69", "YYYYnn"}};
  const auto rules = area::water_rules(standards());
  for (const auto& [marked, cells] : rows) {
    const char* const required[] = {"54", "55", "65", "66", "67", "68"};
    for (std::size_t i = 0; i < 6; ++i) {
      INFO("IP" << marked << " for IP" << required[i]);
      const Verdict verdict = serves(required[i], marked, rules);
      CHECK(verdict == (cells[i] == 'Y'   ? Verdict::fits
                        : cells[i] == 'n' ? Verdict::no_fit
                                          : Verdict::not_known));
    }
  }
}

TEST_CASE("IP code: each second numeral up to 6 implies those below", "[published][area]") {
  const auto rules = area::water_rules(standards());
  for (int provided = 0; provided <= 6; ++provided) {
    for (int required = 0; required <= 9; ++required) {
      INFO(provided << " for " << required);
      CHECK(serves("6" + std::to_string(required), "6" + std::to_string(provided), rules) ==
            (required <= provided ? Verdict::fits : Verdict::no_fit));
    }
  }
}

TEST_CASE("IP code: what immersion and jets of high pressure say of the lower numerals",
          "[published][area]") {
  const auto rules = area::water_rules(standards());
  for (const char* marked : {"67", "68", "69"}) {
    INFO(marked);
    CHECK(serves("60", marked, rules) == Verdict::fits);
    for (const char* required : {"61", "62", "63", "64"}) {
      CHECK(serves(required, marked, rules) == Verdict::not_known);
    }
    for (const char* required : {"65", "66"}) {
      CHECK(serves(required, marked, rules) == Verdict::no_fit);
    }
  }
  CHECK(serves("69", "69", rules) == Verdict::fits);
  CHECK(serves("67", "69", rules) == Verdict::no_fit);
  CHECK(serves("68", "69", rules) == Verdict::no_fit);
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
    place.protection = area::Protection::ta;
    place.zone = value_of<area::Zone>(row.zone);
    place.dust_group = value_of<area::DustGroup>(row.group);
    place.ip = *area::parse_ip_codes("2X");
    const auto with = [&](const char* code) {
      gland::Gland gland;
      gland.ip = *area::parse_ip_codes(code);
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
  place.protection = area::Protection::e;
  place.zone = area::Zone::zone_1;
  place.ip = *area::parse_ip_codes("20");
  const auto with = [&](std::optional<bool> bare, const char* code) {
    place.bare_live_parts = bare;
    gland::Gland gland;
    gland.ip = *area::parse_ip_codes(code);
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
    // Up to them nothing more is asked: that is what is taken where no temperature is given.
    CHECK(demand.temperature->cable == (row.above ? Verdict::not_known : Verdict::fits));
    CHECK((demand.temperature->cable_says.find("is above") != std::string::npos) == row.above);
  }
  // What is taken where they are not given.
  CHECK(area::k_entry_degc == 70.0);
  CHECK(area::k_branching_degc == 80.0);
}

TEST_CASE("ambient 60079-0: what is taken where it is not given", "[published][area]") {
  // IEC 60079-0, ambient of equipment that is not marked for another: -20 to +40 degC.
  Area place;
  place.zone = area::Zone::zone_1;
  const auto demand = area::make_demand(place, solid_cable(10), standards());
  CHECK(demand.temperature->min_degc == -20.0);
  CHECK(demand.temperature->max_degc == 40.0);
}

TEST_CASE("metals: the largest difference of each couple by the anodic index",
          "[published][area]") {
  // Anodic index as tabulated in public pages [V]: brass 0.40 to 0.45, nickel 0.30, stainless 0.50,
  // aluminium 0.75 to 0.95, iron and steel 0.85, zinc 1.20 to 1.25.
  const std::tuple<const char*, const char*, const char*> couples[] = {
      {"brass", "aluminium", "0.55"},           {"nickel-plated-brass", "aluminium", "0.65"},
      {"stainless-steel", "aluminium", "0.45"}, {"brass", "steel", "0.45"},
      {"brass", "cast-iron", "0.45"},           {"brass", "galvanised-steel", "0.85"},
      {"steel", "galvanised-steel", "0.4"},     {"nickel-plated-brass", "galvanised-steel", "0.95"},
  };
  for (const auto& [part, wall, volts] : couples) {
    INFO(part << " in " << wall);
    gland::Gland gland;
    gland.material = part;
    const auto check =
        area::check_metals({.enclosure = wall, .adaptor = {}, .armour = {}}, gland, standards());
    REQUIRE(check.has_value());
    CHECK(check->says.find(std::string("up to ") + volts + " V apart") != std::string::npos);
    CHECK(check->verdict == Verdict::fits);
  }
}

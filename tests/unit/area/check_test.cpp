#include "cutback/area/check.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

#include "cutback/area/inspection.hpp"
#include "cutback/io/standards.hpp"
#include "support/build_place.hpp"

using namespace cutback;
using area::Area;
using fit::Check;
using fit::CheckName;
using gland::Gland;
using gland::Sealing;
using test::marked_gland;
using test::solid_cable;

namespace {

const tables::Standards& standards() {
  static const tables::Standards all = io::builtin_standards();
  return all;
}

Area full_area() {
  Area place;
  place.protection = area::Protection::d;
  place.zone = area::Zone::zone_1;
  place.gas_group = area::GasGroup::IIB;
  place.ip = *area::parse_ip_codes("66");
  place.ambient_min_degc = -20;
  place.ambient_max_degc = 40;
  return place;
}

Area full_dust() {
  Area place = full_area();
  place.protection = area::Protection::tb;
  place.zone = area::Zone::zone_21;
  place.gas_group.reset();
  place.dust_group = area::DustGroup::IIIC;
  return place;
}

std::vector<Check> checks_of(const Area& place, const cable::Cable& cable, const Gland& gland,
                             const std::optional<area::SealingBundle>& bundle = {}) {
  return area::check_area(area::make_demand(place, cable, standards()), cable, gland, bundle);
}

Check one(const std::vector<Check>& checks, CheckName name) {
  const auto it = std::find_if(checks.begin(), checks.end(),
                               [&](const Check& check) { return check.name == name; });
  REQUIRE(it != checks.end());
  return *it;
}

bool says(const Check& check, const std::string& words) {
  INFO(check.says);
  return check.says.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("check_area: an ordinary place has no checks", "[unit][area]") {
  CHECK(checks_of({}, solid_cable(), {}).empty());
  Area wet;
  wet.ip = *area::parse_ip_codes("66");
  Gland ring = marked_gland();
  ring.sealing = gland::Sealing::compression;
  const auto checks = checks_of(wet, solid_cable(), ring);
  REQUIRE(checks.size() == 1);
  CHECK(checks[0].name == CheckName::ingress);
  CHECK(checks[0].verdict == Verdict::fits);
  Area hot;
  hot.ambient_max_degc = 101;
  const auto alone = checks_of(hot, solid_cable(), ring);
  REQUIRE(alone.size() == 1);
  CHECK(alone[0].name == CheckName::temperature);
  CHECK(alone[0].verdict == Verdict::no_fit);
}

TEST_CASE("check_area: no point of an enclosure is cooler than its place", "[unit][area]") {
  // IEC 60079-0:2017 16.6: above 70 degC at the entry, and 80 where the cores branch.
  Area place = full_area();
  place.entry_temp_degc.reset();
  place.branch_temp_degc.reset();
  place.cable_max_degc.reset();
  const auto verdict = [&](double ambient_degc) {
    place.ambient_max_degc = ambient_degc;
    for (const auto& check : checks_of(place, solid_cable(), marked_gland())) {
      if (check.name == CheckName::temperature) return check.verdict;
    }
    return Verdict::fits;
  };
  CHECK(verdict(70) == Verdict::fits);
  CHECK(verdict(75) == Verdict::not_known);
  place.entry_temp_degc = 60;
  place.branch_temp_degc = 60;
  CHECK(verdict(75) == Verdict::not_known);
  place.cable_max_degc = 90;
  CHECK(verdict(75) == Verdict::fits);
  CHECK(verdict(95) == Verdict::no_fit);
}

TEST_CASE("check_area: a gland that serves fits in every check with a sentence and a source",
          "[unit][area]") {
  const auto checks = checks_of(full_area(), solid_cable(), marked_gland());
  CHECK(checks.size() == 6);
  for (const Check& check : checks) {
    INFO(to_string(check.name) << ": " << check.says);
    CHECK(check.verdict == Verdict::fits);
    CHECK_FALSE(check.says.empty());
    CHECK_FALSE(check.source.empty());
  }
}

TEST_CASE("check_area: a figure that is not stated is not known and names its column",
          "[unit][area]") {
  Gland gland;
  gland.sealing = Sealing::barrier;
  const auto checks = checks_of(full_area(), solid_cable(), gland);
  const std::pair<CheckName, const char*> columns[] = {
      {CheckName::protection, "protection"},  {CheckName::level, "level"},
      {CheckName::group, "gas_group"},        {CheckName::ingress, "ip"},
      {CheckName::temperature, "temp_max_c"}, {CheckName::sealing, "max_cores"}};
  for (const auto& [name, column] : columns) {
    CHECK(one(checks, name).verdict == Verdict::not_known);
    CHECK(says(one(checks, name), std::string("does not state ") + column));
  }
}

TEST_CASE("check_area: a place that is asked about names every fact that it lacks",
          "[unit][area]") {
  struct Row {
    CheckName check;
    const char* field;
    void (*hide)(Area&);
  };
  const Row rows[] = {
      {CheckName::protection, "(protection)", [](Area& a) { a.protection.reset(); }},
      {CheckName::level, "(zone)", [](Area& a) { a.zone.reset(); }},
      {CheckName::group, "(gas_group)", [](Area& a) { a.gas_group.reset(); }},
      {CheckName::ingress, "(ip)", [](Area& a) { a.ip.clear(); }},
  };
  for (const Row& row : rows) {
    INFO(row.field);
    Area place = full_area();
    CHECK(one(checks_of(place, solid_cable(), marked_gland()), row.check).verdict == Verdict::fits);
    row.hide(place);
    const Check check = one(checks_of(place, solid_cable(), marked_gland()), row.check);
    CHECK(check.verdict == Verdict::not_known);
    CHECK(says(check, row.field));
  }
  Area dust = full_dust();
  CHECK(one(checks_of(dust, solid_cable(), marked_gland()), CheckName::group).verdict ==
        Verdict::fits);
  dust.dust_group.reset();
  CHECK(
      says(one(checks_of(dust, solid_cable(), marked_gland()), CheckName::group), "(dust_group)"));
}

TEST_CASE("check_area: one fact of the place asks for all of them", "[unit][area]") {
  Area place;
  place.volume_cm3 = 100;
  for (const CheckName name :
       {CheckName::protection, CheckName::level, CheckName::group, CheckName::ingress}) {
    CHECK(one(checks_of(place, solid_cable(), marked_gland()), name).verdict == Verdict::not_known);
  }
}

TEST_CASE("check_area: a place that only others speak of asks for its zone first", "[unit][area]") {
  const auto checks = area::check_area(area::make_demand({}, solid_cable(), standards(), true),
                                       solid_cable(), marked_gland());
  CHECK(one(checks, CheckName::level).verdict == Verdict::not_known);
  CHECK(one(checks, CheckName::level).lacks.at(0).key == "zone");
  CHECK(one(checks, CheckName::ingress).lacks.at(0).key == "ip");
  CHECK(one(checks, CheckName::temperature).verdict == Verdict::fits);
  CHECK(one(checks, CheckName::sealing).verdict == Verdict::fits);  // its chamber takes the cores
  CHECK(checks.size() == 4);
  Area room;
  room.zone = area::Zone::none;
  room.ip = *area::parse_ip_codes("20");
  for (const Check& check :
       area::check_area(area::make_demand(room, solid_cable(), standards(), true), solid_cable(),
                        marked_gland())) {
    CHECK(check.verdict == Verdict::fits);
  }
}

TEST_CASE("check_area: a plain room is asked for ingress and temperature alone", "[unit][area]") {
  Area room;
  room.zone = area::Zone::none;
  const auto checks = checks_of(room, solid_cable(), marked_gland());
  REQUIRE(checks.size() == 3);
  CHECK(one(checks, CheckName::sealing).verdict == Verdict::fits);  // its chamber takes the cores
  CHECK(one(checks, CheckName::ingress).verdict == Verdict::not_known);
  CHECK(one(checks, CheckName::temperature).verdict == Verdict::fits);
  room.ip = *area::parse_ip_codes("20");
  room.protection = area::Protection::none;
  for (const Check& check : checks_of(room, solid_cable(), marked_gland())) {
    CHECK(check.verdict == Verdict::fits);
  }
}

TEST_CASE("check_area: the enclosure itself serves the zone", "[unit][area]") {
  struct Row {
    const char *protection, *zone, *mark;
    Verdict verdict;
  };
  const Row rows[] = {
      {"ec", "1", "eb", Verdict::no_fit},     {"eb", "1", "eb", Verdict::fits},
      {"ec", "2", "ec", Verdict::fits},       {"dc", "1", "db", Verdict::no_fit},
      {"d", "1", "db", Verdict::fits},        {"nR", "1", "nR", Verdict::no_fit},
      {"tc", "21", "tb", Verdict::no_fit},    {"tb", "21", "tb", Verdict::fits},
      {"tc", "22", "tc", Verdict::fits},      {"tb", "20", "ta", Verdict::no_fit},
      {"ta", "20", "ta", Verdict::fits},      {"t", "21", "tb", Verdict::not_known},
      {"ic", "1", "eb", Verdict::no_fit},     {"ib", "0", "eb", Verdict::no_fit},
      {"n", "2", "nC", Verdict::not_known},   {"n", "1", "nC", Verdict::no_fit},
      {"mc", "22", "tc", Verdict::not_known}, {"mc", "21", "tb", Verdict::no_fit},
  };
  for (const Row& row : rows) {
    INFO(row.protection << " in zone " << row.zone);
    Area place = row.zone[1] == '\0' ? full_area() : full_dust();
    place.protection = value_of<area::Protection>(row.protection);
    place.zone = value_of<area::Zone>(row.zone);
    Gland gland = marked_gland();
    gland.protection = {*value_of<area::Protection>(row.mark)};
    CHECK(one(checks_of(place, solid_cable(), gland), CheckName::protection).verdict ==
          row.verdict);
  }
}

TEST_CASE("check_area: a level below that of the zone counts for the enclosure too",
          "[unit][area]") {
  Area place = full_area();
  place.protection = area::Protection::ec;
  place.level = area::Level::Gc;
  Gland gland = marked_gland();
  gland.protection = {area::Protection::ec};
  const Check check = one(checks_of(place, solid_cable(), gland), CheckName::protection);
  CHECK(check.verdict == Verdict::not_known);
  CHECK(says(check, "check against the standard"));
  place.zone.reset();
  CHECK(one(checks_of(place, solid_cable(), gland), CheckName::protection).verdict ==
        Verdict::fits);
}

TEST_CASE("check_area: an enclosure without protection is not for a zone", "[unit][area]") {
  Area place = full_area();
  place.protection = area::Protection::none;
  CHECK(one(checks_of(place, solid_cable(), {}), CheckName::protection).verdict == Verdict::no_fit);
}

TEST_CASE("check_area: the letter of a marking counts for the level", "[unit][area]") {
  Area place = full_area();
  place.protection = area::Protection::eb;
  Gland gland = marked_gland();
  gland.protection = {area::Protection::ec};
  CHECK(one(checks_of(place, solid_cable(), gland), CheckName::protection).verdict ==
        Verdict::no_fit);
  place.zone = area::Zone::zone_2;
  // It would serve the zone, but takes from the level of the enclosure.
  CHECK(one(checks_of(place, solid_cable(), gland), CheckName::protection).verdict ==
        Verdict::not_known);
  place.protection = area::Protection::ec;
  CHECK(one(checks_of(place, solid_cable(), gland), CheckName::protection).verdict ==
        Verdict::fits);
  place.protection = area::Protection::eb;
  place.level = area::Level::Gb;
  CHECK(one(checks_of(place, solid_cable(), gland), CheckName::protection).verdict ==
        Verdict::no_fit);
}

TEST_CASE("check_area: a stated level below that of the zone is checked against the standard",
          "[unit][area]") {
  Area place = full_area();
  place.level = area::Level::Gc;
  Gland gland = marked_gland();
  gland.level = {area::Level::Gc};
  const Check level = one(checks_of(place, solid_cable(), gland), CheckName::level);
  CHECK(level.verdict == Verdict::not_known);
  CHECK(says(level, "check against the standard"));
  gland.level = {area::Level::Gc, area::Level::Gb};
  CHECK(one(checks_of(place, solid_cable(), gland), CheckName::level).verdict == Verdict::fits);
  gland.level = {area::Level::Da};
  CHECK(one(checks_of(place, solid_cable(), gland), CheckName::level).verdict == Verdict::no_fit);
}

TEST_CASE("check_area: every given IP code must be served", "[unit][area]") {
  Area place = full_area();
  place.ip = *area::parse_ip_codes("66/67");
  Gland gland = marked_gland();
  CHECK(one(checks_of(place, solid_cable(), gland), CheckName::ingress).verdict == Verdict::fits);
  gland.ip = *area::parse_ip_codes("68");
  CHECK(one(checks_of(place, solid_cable(), gland), CheckName::ingress).verdict == Verdict::no_fit);
  place.ip = *area::parse_ip_codes("68");
  const Check depth = one(checks_of(place, solid_cable(), gland), CheckName::ingress);
  CHECK(depth.verdict == Verdict::not_known);
  CHECK(says(depth, "compare the depth and the time"));
  gland.ip = *area::parse_ip_codes("X6");
  place.ip = *area::parse_ip_codes("66");
  CHECK(one(checks_of(place, solid_cable(), gland), CheckName::ingress).verdict ==
        Verdict::not_known);
  place.ip = *area::parse_ip_codes("X6");
  CHECK(one(checks_of(place, solid_cable(), gland), CheckName::ingress).verdict == Verdict::fits);
}

TEST_CASE("check_area: the gland spans the ambient and the entry temperature", "[unit][area]") {
  Area place = full_area();
  Gland gland = marked_gland();
  gland.temp_min_degc = -20;
  gland.temp_max_degc = 40;
  // The entry of which nothing is said may come to 70 degC.
  const Check warm = one(checks_of(place, solid_cable(), gland), CheckName::temperature);
  CHECK(warm.verdict == Verdict::not_known);
  CHECK(says(warm, "(entry_temp_c)"));
  gland.temp_max_degc = 70;
  CHECK(one(checks_of(place, solid_cable(), gland), CheckName::temperature).verdict ==
        Verdict::fits);
  gland.temp_max_degc = 39.9;
  CHECK(one(checks_of(place, solid_cable(), gland), CheckName::temperature).verdict ==
        Verdict::no_fit);
  gland.temp_max_degc = 40;
  gland.temp_min_degc = -19.9;
  CHECK(one(checks_of(place, solid_cable(), gland), CheckName::temperature).verdict ==
        Verdict::no_fit);
  gland.temp_min_degc = -20;
  place.entry_temp_degc = 75;
  place.cable_max_degc = 90;
  CHECK(one(checks_of(place, solid_cable(), gland), CheckName::temperature).verdict ==
        Verdict::no_fit);
  gland.temp_max_degc = 75;
  CHECK(one(checks_of(place, solid_cable(), gland), CheckName::temperature).verdict ==
        Verdict::fits);
  place.cable_max_degc = 70;
  CHECK(one(checks_of(place, solid_cable(), gland), CheckName::temperature).verdict ==
        Verdict::no_fit);
  place.cable_max_degc.reset();
  const Check open = one(checks_of(place, solid_cable(), gland), CheckName::temperature);
  CHECK(open.verdict == Verdict::not_known);
  CHECK(says(open, "cable_max_c"));
  // No entry is cooler than its place.
  gland.temp_max_degc = 100;
  place.entry_temp_degc.reset();
  place.ambient_max_degc = 75;
  const Check hot = one(checks_of(place, solid_cable(), gland), CheckName::temperature);
  CHECK(hot.verdict == Verdict::not_known);
  CHECK(says(hot, "entry point at 75 degC is above 70 degC"));
  CHECK_FALSE(says(hot, "branching point"));
  place.ambient_max_degc = 70;
  CHECK(one(checks_of(place, solid_cable(), gland), CheckName::temperature).verdict ==
        Verdict::fits);
}

TEST_CASE("check_area: a demanded barrier needs a gland that has one and takes the cores",
          "[unit][area]") {
  Area place = full_area();
  place.gas_group = area::GasGroup::IIC;
  place.ignition_source = true;
  Gland gland = marked_gland();
  const auto sealing = [&](const std::optional<area::SealingBundle>& bundle = {}) {
    return one(checks_of(place, solid_cable(), gland, bundle), CheckName::sealing);
  };
  CHECK(sealing().verdict == Verdict::fits);
  gland.sealing = Sealing::either;
  CHECK(sealing().verdict == Verdict::fits);
  gland.max_cores = 4;
  CHECK(sealing().verdict == Verdict::fits);
  gland.max_cores = 3;
  CHECK(sealing().verdict == Verdict::no_fit);
  gland.max_cores = 4;
  area::SealingBundle bundle;
  bundle.verdict = Verdict::no_fit;
  bundle.says = "the bundle is too thick";
  CHECK(sealing(bundle).verdict == Verdict::no_fit);
  CHECK(says(sealing(bundle), "the bundle is too thick"));
  gland.sealing = Sealing::compression;
  CHECK(sealing().verdict == Verdict::no_fit);
}

TEST_CASE("check_area: where compression is enough a barrier also fits", "[unit][area]") {
  Area place = full_area();
  place.ignition_source = false;
  Gland gland = marked_gland();
  const auto verdict = [&] {
    return one(checks_of(place, solid_cable(), gland), CheckName::sealing).verdict;
  };
  for (const Sealing sealing : {Sealing::compression, Sealing::barrier, Sealing::either}) {
    gland.sealing = sealing;
    // The chart of 2007 allows compression from memory only, and strict is never laxer than it.
    CHECK(verdict() == (sealing == Sealing::compression ? Verdict::not_known : Verdict::fits));
  }
  place.rules = area::RuleSet::iec_60079_14_2013;
  gland.sealing = Sealing::compression;
  CHECK(verdict() == Verdict::fits);
  place.rules = area::RuleSet::iec_60079_14_2007;
  gland.sealing = Sealing::compression;
  CHECK(verdict() == Verdict::not_known);
  gland.sealing = Sealing::either;
  CHECK(verdict() == Verdict::fits);
  gland.max_cores = 2;
  CHECK(verdict() == Verdict::no_fit);
}

TEST_CASE("check_area: a refusal names the facts that could change it", "[unit][area]") {
  Gland gland = marked_gland();
  gland.sealing = Sealing::compression;
  Area place = full_area();
  cable::Cable cable = solid_cable();
  cable.length_m.reset();
  place.ignition_source = false;
  const Check check = one(checks_of(place, cable, gland), CheckName::sealing);
  CHECK(check.verdict == Verdict::no_fit);
  CHECK(says(check, "not known, and could change that: length_m"));
}

TEST_CASE("check_area: a ring in a flameproof entry seals on the bedding", "[unit][area]") {
  Area place = full_area();
  place.rules = area::RuleSet::iec_60079_14_2013;
  Gland gland = marked_gland();
  gland.sealing = Sealing::compression;
  gland.inner.reset();
  const auto verdict = [&](const cable::Cable& cable) {
    return one(checks_of(place, cable, gland), CheckName::sealing).verdict;
  };
  CHECK(verdict(solid_cable()) == Verdict::no_fit);
  CHECK(says(one(checks_of(place, solid_cable(), gland), CheckName::sealing), "no inner seal"));
  // Without armour the outer seal is the only one there is to be.
  cable::Cable bare = solid_cable();
  bare.armour = cable::ArmourKind::none;
  CHECK(verdict(bare) == Verdict::fits);
  gland.inner = measure::Range{8.0, 12.0};
  CHECK(verdict(solid_cable()) == Verdict::fits);
  gland.inner.reset();
  gland.sealing = Sealing::barrier;
  CHECK(verdict(solid_cable()) == Verdict::fits);
  // Nothing of the kind is asked of an enclosure that is not flameproof.
  gland.sealing = Sealing::compression;
  place.protection = area::Protection::e;
  CHECK(checks_of(place, solid_cable(), gland).size() == 5);
}

TEST_CASE("check_adaptor: in a hazardous place it has a protection of its own", "[unit][area]") {
  using area::Protection;
  const auto verdict = [](const Area& place, const std::vector<Protection>& marks) {
    return area::check_adaptor(area::make_demand(place, solid_cable(), standards()), marks)
        ->verdict;
  };
  CHECK(verdict(full_area(), {}) == Verdict::not_known);
  CHECK(verdict(full_area(), {Protection::db}) == Verdict::fits);
  CHECK(verdict(full_area(), {Protection::eb}) == Verdict::no_fit);
  CHECK(verdict(full_area(), {Protection::dc}) == Verdict::no_fit);
  const auto room = area::make_demand({}, solid_cable(), standards());
  CHECK_FALSE(area::check_adaptor(room, {}).has_value());
}

TEST_CASE("check_metals: metals far apart are a caution and no more", "[unit][area]") {
  const Gland gland = marked_gland();
  const auto metals = [&](std::optional<std::string> wall,
                          std::optional<std::string> adaptor = {}) {
    return area::check_metals({.enclosure = wall, .adaptor = adaptor, .armour = {}}, gland,
                              standards());
  };
  const auto check = metals("aluminium");
  REQUIRE(check.has_value());
  CHECK(check->verdict == Verdict::fits);
  // Of both ranges the potentials that are farthest apart: 0.40 and 0.95 V.
  CHECK(says(*check, "brass in aluminium is up to 0.55 V apart"));
  CHECK(says(*check,
             "outdoors, damp or salt (0.15 V); indoors, ordinary (0.25 V); indoors, "
             "temperature and moisture controlled (0.5 V)"));
  CHECK_FALSE(says(*check, "dry."));
  CHECK(says(*check, "Outdoors no joint stays dry"));
  CHECK(says(*metals("galvanised-steel"), "brass in galvanised-steel is up to 0.85 V apart"));
  CHECK(metals("galvanised-steel")->verdict == Verdict::fits);
  CHECK_FALSE(metals("brass").has_value());
  CHECK_FALSE(metals("polymer").has_value());
  CHECK_FALSE(metals({}).has_value());
  // Behind an adaptor the gland does not touch the wall.
  CHECK_FALSE(metals("brass", "brass").has_value());
  CHECK(says(*metals("aluminium", "stainless-steel"), "stainless-steel in aluminium"));
  CHECK_FALSE(says(*metals("aluminium", "stainless-steel"), "brass in aluminium"));
  CHECK(says(*metals("aluminium", "aluminium"), "brass in aluminium"));
}

TEST_CASE("check_metals: aluminium wires in a gland of brass", "[unit][area]") {
  const Gland gland = marked_gland();
  const auto armour = [&](std::optional<cable::ArmourMaterial> metal) {
    return area::check_metals({.enclosure = {}, .adaptor = {}, .armour = metal}, gland,
                              standards());
  };
  const auto check = armour(cable::ArmourMaterial::aluminium);
  REQUIRE(check.has_value());
  CHECK(check->verdict == Verdict::fits);
  CHECK(says(*check, "armour: caution: aluminium in brass is up to 0.55 V apart"));
  CHECK_FALSE(armour(cable::ArmourMaterial::steel).has_value());
  CHECK_FALSE(armour({}).has_value());
}

TEST_CASE("initial_inspection: the detailed items of the place", "[unit][area]") {
  CHECK(area::initial_inspection({}, standards()).empty());
  const auto keys = [](const Area& place) {
    std::string text;
    for (const auto& item : area::initial_inspection(place, standards())) {
      CHECK(item.detailed);
      CHECK_FALSE(item.source.empty());
      text += item.key + " ";
    }
    return text;
  };
  Area room;
  room.zone = area::Zone::none;
  CHECK(keys(room).empty());
  const std::string gas = keys(full_area());
  CHECK(gas.find("temperature-class") != std::string::npos);
  CHECK(gas.find("flange-obstruction") != std::string::npos);
  CHECK(gas.find("surface-temperature") == std::string::npos);
  Area dust;
  dust.zone = area::Zone::zone_22;
  CHECK(keys(dust).find("surface-temperature") != std::string::npos);
  CHECK(keys(dust).find("flange-obstruction") == std::string::npos);
}

TEST_CASE("cautions: only those that the work calls for", "[unit][area]") {
  Gland gland = marked_gland();
  gland.armour = cable::ArmourKind::wire;
  const auto count = [&](const Area& place, bool barrier) {
    return area::cautions(place, gland, barrier, standards()).size();
  };
  const std::size_t ordinary = count({}, false);
  CHECK(count({}, true) == ordinary + 1);
  CHECK(count(full_area(), false) > ordinary);
  gland.armour = cable::ArmourKind::none;
  CHECK(count({}, false) == ordinary - 2);
}

TEST_CASE("cautions: a test in a hazardous place waits until it is free of gas", "[unit][area]") {
  const auto asks = [](const Area& place) {
    const auto list = area::cautions(place, marked_gland(), false, standards());
    return std::any_of(list.begin(), list.end(), [](const area::Caution& one) {
      return one.key == "gas-free" && one.text.find("Test only where") == 0 && !one.source.empty();
    });
  };
  CHECK(asks(full_area()));
  CHECK(asks(full_dust()));
  CHECK_FALSE(asks({}));
  Area room = full_area();
  room.zone = area::Zone::none;
  CHECK_FALSE(asks(room));
}

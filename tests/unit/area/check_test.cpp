#include "cutback/area/check.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

#include "cutback/area/inspection.hpp"
#include "cutback/io/standards.hpp"

using namespace cutback;
using area::Area;
using fit::Check;
using fit::CheckName;
using gland::Gland;
using gland::Sealing;

namespace {

const tables::Standards& standards() {
  static const tables::Standards all = io::builtin_standards();
  return all;
}

Gland full_gland() {
  Gland gland;
  gland.part = "TEST-20";
  gland.protection = {"db", "eb", "tb"};
  gland.level = {"Gb", "Db"};
  gland.gas_group = "IIC";
  gland.dust_group = "IIIC";
  gland.ip = {"66", "68"};
  gland.temp_min_degc = -40;
  gland.temp_max_degc = 100;
  gland.material = "brass";
  gland.sealing = Sealing::barrier;
  gland.max_cores = 7;
  return gland;
}

cable::Cable solid() {
  cable::Cable cable;
  cable.cores = 4;
  cable.length_m = 50;
  cable.circular = true;
  cable.compact = true;
  cable.bedding_made = cable::BeddingMade::extruded;
  cable.fillers = cable::Fillers::none;
  return cable;
}

Area full_area() {
  Area place;
  place.protection = "d";
  place.zone = "1";
  place.gas_group = "IIB";
  place.ip = "66";
  place.ambient_min_degc = -20;
  place.ambient_max_degc = 40;
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
  CHECK(checks_of({}, solid(), {}).empty());
  Area wet;
  wet.ip = "66";
  const auto checks = checks_of(wet, solid(), full_gland());
  REQUIRE(checks.size() == 1);
  CHECK(checks[0].name == CheckName::ingress);
  CHECK(checks[0].verdict == Verdict::fits);
}

TEST_CASE("check_area: a gland that serves fits in every check with a sentence and a source",
          "[unit][area]") {
  const auto checks = checks_of(full_area(), solid(), full_gland());
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
  const auto checks = checks_of(full_area(), solid(), gland);
  const std::pair<CheckName, const char*> columns[] = {
      {CheckName::protection, "protection"},  {CheckName::level, "level"},
      {CheckName::group, "gas_group"},        {CheckName::ingress, "ip"},
      {CheckName::temperature, "temp_max_c"}, {CheckName::sealing, "max_cores"}};
  for (const auto& [name, column] : columns) {
    CHECK(one(checks, name).verdict == Verdict::not_known);
    CHECK(says(one(checks, name), std::string("does not state ") + column));
  }
}

TEST_CASE("check_area: a place that does not say its group or level leaves it open",
          "[unit][area]") {
  Area place;
  place.protection = "d";
  Gland gland = full_gland();
  CHECK(one(checks_of(place, solid(), gland), CheckName::level).verdict == Verdict::not_known);
  // IIC serves whatever the gas is.
  CHECK(one(checks_of(place, solid(), gland), CheckName::group).verdict == Verdict::fits);
  gland.gas_group = "IIB";
  const Check group = one(checks_of(place, solid(), gland), CheckName::group);
  CHECK(group.verdict == Verdict::not_known);
  CHECK(says(group, "gas group of the place is not given"));
  place.zone = "2";
  place.protection.reset();
  const Check protection = one(checks_of(place, solid(), gland), CheckName::protection);
  CHECK(protection.verdict == Verdict::not_known);
  CHECK(says(protection, "give the protection of the enclosure"));
}

TEST_CASE("check_area: an enclosure without protection is not for a zone", "[unit][area]") {
  Area place = full_area();
  place.protection = "none";
  CHECK(one(checks_of(place, solid(), {}), CheckName::protection).verdict == Verdict::no_fit);
}

TEST_CASE("check_area: the letter of a marking counts for the level", "[unit][area]") {
  Area place = full_area();
  place.protection = "e";
  Gland gland = full_gland();
  gland.protection = {"ec"};
  CHECK(one(checks_of(place, solid(), gland), CheckName::protection).verdict == Verdict::no_fit);
  place.zone = "2";
  CHECK(one(checks_of(place, solid(), gland), CheckName::protection).verdict == Verdict::fits);
  place.level = "Gb";
  CHECK(one(checks_of(place, solid(), gland), CheckName::protection).verdict == Verdict::no_fit);
}

TEST_CASE("check_area: a stated level below that of the zone is checked against the standard",
          "[unit][area]") {
  Area place = full_area();
  place.level = "Gc";
  Gland gland = full_gland();
  gland.level = {"Gc"};
  const Check level = one(checks_of(place, solid(), gland), CheckName::level);
  CHECK(level.verdict == Verdict::not_known);
  CHECK(says(level, "check against the standard"));
  gland.level = {"Gc", "Gb"};
  CHECK(one(checks_of(place, solid(), gland), CheckName::level).verdict == Verdict::fits);
  gland.level = {"Da"};
  CHECK(one(checks_of(place, solid(), gland), CheckName::level).verdict == Verdict::no_fit);
}

TEST_CASE("check_area: every given IP code must be served", "[unit][area]") {
  Area place = full_area();
  place.ip = "66/67";
  Gland gland = full_gland();
  CHECK(one(checks_of(place, solid(), gland), CheckName::ingress).verdict == Verdict::fits);
  gland.ip = {"68"};
  CHECK(one(checks_of(place, solid(), gland), CheckName::ingress).verdict == Verdict::no_fit);
  place.ip = "68";
  const Check depth = one(checks_of(place, solid(), gland), CheckName::ingress);
  CHECK(depth.verdict == Verdict::not_known);
  CHECK(says(depth, "compare the depth and the time"));
  gland.ip = {"X6"};
  place.ip = "66";
  CHECK(one(checks_of(place, solid(), gland), CheckName::ingress).verdict == Verdict::not_known);
  place.ip = "X6";
  CHECK(one(checks_of(place, solid(), gland), CheckName::ingress).verdict == Verdict::fits);
}

TEST_CASE("check_area: the gland spans the ambient and the entry temperature", "[unit][area]") {
  Area place = full_area();
  Gland gland = full_gland();
  gland.temp_min_degc = -20;
  gland.temp_max_degc = 40;
  CHECK(one(checks_of(place, solid(), gland), CheckName::temperature).verdict == Verdict::fits);
  gland.temp_min_degc = -19.9;
  CHECK(one(checks_of(place, solid(), gland), CheckName::temperature).verdict == Verdict::no_fit);
  gland.temp_min_degc = -20;
  place.entry_temp_degc = 75;
  place.cable_max_degc = 90;
  CHECK(one(checks_of(place, solid(), gland), CheckName::temperature).verdict == Verdict::no_fit);
  gland.temp_max_degc = 75;
  CHECK(one(checks_of(place, solid(), gland), CheckName::temperature).verdict == Verdict::fits);
  place.cable_max_degc = 70;
  CHECK(one(checks_of(place, solid(), gland), CheckName::temperature).verdict == Verdict::no_fit);
  place.cable_max_degc.reset();
  const Check open = one(checks_of(place, solid(), gland), CheckName::temperature);
  CHECK(open.verdict == Verdict::not_known);
  CHECK(says(open, "cable_max_c"));
}

TEST_CASE("check_area: a demanded barrier needs a gland that has one and takes the cores",
          "[unit][area]") {
  Area place = full_area();
  place.gas_group = "IIC";
  place.ignition_source = true;
  Gland gland = full_gland();
  const auto sealing = [&](const std::optional<area::SealingBundle>& bundle = {}) {
    return one(checks_of(place, solid(), gland, bundle), CheckName::sealing);
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
  Gland gland = full_gland();
  const auto verdict = [&] {
    return one(checks_of(place, solid(), gland), CheckName::sealing).verdict;
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
  Gland gland = full_gland();
  gland.sealing = Sealing::compression;
  Area place = full_area();
  cable::Cable cable = solid();
  cable.length_m.reset();
  place.ignition_source = false;
  const Check check = one(checks_of(place, cable, gland), CheckName::sealing);
  CHECK(check.verdict == Verdict::no_fit);
  CHECK(says(check, "not known, and could change that: length_m"));
}

TEST_CASE("check_material: metals far apart are a caution and no more", "[unit][area]") {
  const Gland gland = full_gland();
  const auto check = area::check_material("aluminium", gland, standards());
  REQUIRE(check.has_value());
  CHECK(check->verdict == Verdict::fits);
  CHECK(says(*check, "brass in aluminium is up to 0.55 V apart"));
  CHECK_FALSE(area::check_material("brass", gland, standards()).has_value());
  CHECK_FALSE(area::check_material("polymer", gland, standards()).has_value());
  CHECK_FALSE(area::check_material({}, gland, standards()).has_value());
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
  const std::string gas = keys(full_area());
  CHECK(gas.find("temperature-class") != std::string::npos);
  CHECK(gas.find("flange-obstruction") != std::string::npos);
  CHECK(gas.find("surface-temperature") == std::string::npos);
  Area dust;
  dust.zone = "22";
  CHECK(keys(dust).find("surface-temperature") != std::string::npos);
  CHECK(keys(dust).find("flange-obstruction") == std::string::npos);
}

TEST_CASE("cautions: only those that the work calls for", "[unit][area]") {
  Gland gland = full_gland();
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

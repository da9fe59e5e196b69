#include "cutback/area/demand.hpp"

#include <catch2/catch.hpp>

#include "cutback/io/standards.hpp"

using namespace cutback;
using area::Area;
using area::Demand;
using area::RuleSet;
using area::SealingDemand;

namespace {

Area flameproof(const char* zone = "1", const char* group = "IIB") {
  Area place;
  place.protection = area::Protection::d;
  place.zone = value_of<area::Zone>(zone);
  place.gas_group = value_of<area::GasGroup>(group);
  return place;
}

cable::Cable solid(double length_m) {
  cable::Cable cable;
  cable.circular = true;
  cable.compact = true;
  cable.bedding_made = cable::BeddingMade::extruded;
  cable.fillers = cable::Fillers::none;
  cable.length_m = length_m;
  return cable;
}

Demand demand_of(const Area& place, const cable::Cable& cable) {
  static const tables::Standards standards = io::builtin_standards();
  return area::make_demand(place, cable, standards);
}

using Words = std::vector<std::string>;

}  // namespace

TEST_CASE("make_demand: an ordinary place asks for nothing", "[unit][area]") {
  const Demand demand = demand_of({}, {});
  CHECK(demand.sealing == SealingDemand::none);
  CHECK(demand.path.empty());
  CHECK((!demand.protection && !demand.level && demand.ingress.empty()));
  CHECK_FALSE(demand.temperature.has_value());
  Area no_zone = flameproof("none");
  CHECK(demand_of(no_zone, {}).sealing == SealingDemand::none);
  CHECK_FALSE(demand_of(no_zone, {}).protection.has_value());
}

TEST_CASE("make_demand: no flameproof entry asks for no sealing", "[unit][area]") {
  for (const char* protection : {"e", "i", "nA", "p", "none"}) {
    Area place = flameproof();
    place.protection = value_of<area::Protection>(protection);
    INFO(protection);
    CHECK(demand_of(place, {}).sealing == SealingDemand::none);
  }
  Area dust;
  dust.zone = area::Zone::zone_21;
  CHECK(demand_of(dust, {}).sealing == SealingDemand::none);
  // Nothing said of the enclosure: it may be flameproof.
  Area silent = flameproof();
  silent.protection.reset();
  CHECK(demand_of(silent, {}).sealing == SealingDemand::barrier);
  CHECK(demand_of(silent, {}).would_change.back() == "protection");
}

TEST_CASE("make_demand: strict demands a barrier where either edition does", "[unit][area]") {
  Area place = flameproof("1", "IIC");
  place.ignition_source = true;
  const Demand by_2007 = demand_of(place, solid(50));
  CHECK(by_2007.sealing == SealingDemand::barrier);
  CHECK(by_2007.source.find("2007") != std::string::npos);
  CHECK(by_2007.source.find("2013") == std::string::npos);
  CHECK(by_2007.would_change.empty());
  place.ignition_source = false;
  const Demand by_2013 = demand_of(place, solid(2));
  CHECK(by_2013.sealing == SealingDemand::barrier);
  CHECK(by_2013.source.find("2013") != std::string::npos);
  const Demand by_none = demand_of(place, solid(3));
  CHECK(by_none.sealing == SealingDemand::compression);
  CHECK(by_none.allowed_from_memory);  // by the chart of 2007
  place.rules = RuleSet::iec_60079_14_2013;
  CHECK_FALSE(demand_of(place, solid(3)).allowed_from_memory);
}

TEST_CASE("make_demand: the path says where each answer comes from", "[unit][area]") {
  Area place = flameproof();
  place.rules = RuleSet::iec_60079_14_2007;
  place.ignition_source = true;
  const Demand demand = demand_of(place, solid(50));
  CHECK(demand.sealing == SealingDemand::barrier);
  REQUIRE(demand.path.size() == 9);  // five of the cable and four of the chart
  CHECK(demand.path[5].question ==
        "does the enclosure hold a source of ignition in normal operation?");
  CHECK((demand.path[5].yes && demand.path[5].from == "given"));
  CHECK_FALSE(demand.path[6].yes);
  CHECK((demand.path[8].yes && demand.path[8].from == "not known: the stricter side"));
  CHECK(demand.would_change == Words{"volume_cm3"});
  CHECK(demand.says.find("zone 1, perhaps more than 2 litres") != std::string::npos);
  CHECK(demand.path[8].source.find("[secondary]") != std::string::npos);
}

TEST_CASE("make_demand: facts that would change nothing are not asked for", "[unit][area]") {
  Area place = flameproof("1", "IIC");
  place.ignition_source = true;
  CHECK(demand_of(place, {}).would_change.empty());  // IIC with a source: barrier in any case
  place.ignition_source.reset();
  CHECK(demand_of(place, {}).would_change ==
        Words{"circular", "compact", "bedding_made", "fillers", "ignition_source", "length_m"});
}

TEST_CASE("make_demand: a covering that is not stated is not extruded", "[unit][area]") {
  using cable::BeddingMade;
  Area place = flameproof();
  place.rules = RuleSet::iec_60079_14_2013;
  const auto sealing = [&](cable::ArmourKind armour, std::optional<BeddingMade> made) {
    cable::Cable cable = solid(10);
    cable.armour = armour;
    cable.bedding_made = made;
    return demand_of(place, cable).sealing;
  };
  for (const auto armour : {cable::ArmourKind::wire, cable::ArmourKind::none}) {
    CHECK(sealing(armour, {}) == SealingDemand::barrier);
    CHECK(sealing(armour, BeddingMade::lapped) == SealingDemand::barrier);
    CHECK(sealing(armour, BeddingMade::extruded) == SealingDemand::compression);
  }
  // A cable without armour may have no covering over its cores, an armoured one has.
  CHECK(sealing(cable::ArmourKind::none, BeddingMade::none) == SealingDemand::compression);
  CHECK(sealing(cable::ArmourKind::wire, BeddingMade::none) == SealingDemand::barrier);
}

TEST_CASE("make_demand: the length of 2013 is disputed where it decides", "[unit][area]") {
  Area place = flameproof();
  place.rules = RuleSet::iec_60079_14_2013;
  const auto disputed = [&](double length_m) {
    const std::string says = demand_of(place, solid(length_m)).says;
    INFO(says);
    CHECK((says.find("disputed") != std::string::npos) ==
          (says.find("the edition of 2024 is not modelled") != std::string::npos));
    return says.find("disputed") != std::string::npos;
  };
  CHECK(disputed(3));
  CHECK_FALSE(disputed(2.9));  // a barrier is demanded
  place.rules = RuleSet::iec_60079_14_2007;
  place.ignition_source = false;
  CHECK_FALSE(disputed(3));
  place.rules = RuleSet::strict;  // the chart of 2007 has to allow it as well
  CHECK_FALSE(disputed(3));
}

TEST_CASE("make_demand: a level stricter than the zone moves the place to its zone",
          "[unit][area]") {
  Area place = flameproof("2");
  place.rules = RuleSet::iec_60079_14_2007;
  place.ignition_source = true;
  CHECK(demand_of(place, solid(10)).sealing == SealingDemand::compression);
  place.level = area::Level::Gb;
  CHECK(demand_of(place, solid(10)).sealing == SealingDemand::barrier);
  place.level = area::Level::Ga;
  CHECK(demand_of(place, solid(10)).refused);
}

TEST_CASE("make_demand: contradictions are refused", "[unit][area]") {
  Area place = flameproof("21");
  CHECK_THROWS_AS(demand_of(place, {}), InputError);
}

TEST_CASE("make_demand: a type without its letter has no level", "[unit][area]") {
  const auto enclosure = [](const char* protection, const char* zone) {
    Area place;
    place.protection = value_of<area::Protection>(protection);
    place.zone = value_of<area::Zone>(zone);
    place.gas_group = value_of<area::GasGroup>("IIB");
    return demand_of(place, {}).enclosure.value();
  };
  for (const char* type : {"i", "m"}) {
    INFO(type);
    CHECK(enclosure(type, "1").verdict == Verdict::not_known);
    CHECK_THAT(enclosure(type, "1").says, Catch::Contains("has three levels: say"));
  }
  CHECK(enclosure("ib", "1").verdict == Verdict::fits);
  CHECK(enclosure("ia", "0").verdict == Verdict::fits);
  CHECK(enclosure("ic", "1").verdict == Verdict::no_fit);
}

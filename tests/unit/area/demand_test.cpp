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
  place.protection = "d";
  place.zone = zone;
  place.gas_group = group;
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
  CHECK((demand.protection.empty() && demand.level.empty() && demand.ingress.empty()));
  CHECK_FALSE(demand.temperature.has_value());
  Area no_zone = flameproof("none");
  CHECK(demand_of(no_zone, {}).sealing == SealingDemand::none);
  CHECK(demand_of(no_zone, {}).protection.empty());
}

TEST_CASE("make_demand: no flameproof entry asks for no sealing", "[unit][area]") {
  for (const char* protection : {"e", "i", "nA", "p", "none"}) {
    Area place = flameproof();
    place.protection = protection;
    INFO(protection);
    CHECK(demand_of(place, {}).sealing == SealingDemand::none);
  }
  Area dust;
  dust.zone = "21";
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

TEST_CASE("make_demand: an unarmoured cable has no bedding to ask for", "[unit][area]") {
  cable::Cable cable = solid(10);
  cable.bedding_made.reset();
  Area place = flameproof();
  place.rules = RuleSet::iec_60079_14_2013;
  CHECK(demand_of(place, cable).sealing == SealingDemand::barrier);
  cable.armour = cable::ArmourKind::none;
  CHECK(demand_of(place, cable).sealing == SealingDemand::compression);
}

TEST_CASE("make_demand: a level stricter than the zone moves the place to its zone",
          "[unit][area]") {
  Area place = flameproof("2");
  place.rules = RuleSet::iec_60079_14_2007;
  place.ignition_source = true;
  CHECK(demand_of(place, solid(10)).sealing == SealingDemand::compression);
  place.level = "Gb";
  CHECK(demand_of(place, solid(10)).sealing == SealingDemand::barrier);
  place.level = "Ga";
  CHECK(demand_of(place, solid(10)).refused);
}

TEST_CASE("make_demand: contradictions are refused", "[unit][area]") {
  Area place = flameproof("21");
  CHECK_THROWS_AS(demand_of(place, {}), InputError);
}

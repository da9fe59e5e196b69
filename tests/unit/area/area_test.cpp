#include "cutback/area/area.hpp"

#include <catch2/catch.hpp>

using namespace cutback;
using area::Area;
using area::RuleSet;

namespace {

/// The fields that contradictions() names, each once.
std::string fields(const Area& place) {
  std::string text;
  for (const Fault& fault : area::contradictions(place)) {
    CHECK(fault.code == ErrorCode::contradiction);
    text += (text.empty() ? "" : " ") + fault.where;
  }
  return text;
}

Area with(std::optional<std::string> zone, std::optional<std::string> level = {},
          std::optional<std::string> protection = {}, std::optional<std::string> gas = {},
          std::optional<std::string> dust = {}) {
  Area place;
  place.zone = std::move(zone);
  place.level = std::move(level);
  place.protection = std::move(protection);
  place.gas_group = std::move(gas);
  place.dust_group = std::move(dust);
  return place;
}

}  // namespace

TEST_CASE("contradictions: what cannot be true is named by its field", "[unit][area]") {
  CHECK(fields(with("1", {}, {}, {}, "IIIC")) == "dust_group");
  CHECK(fields(with("21", {}, {}, "IIB")) == "gas_group");
  CHECK(fields(with("1", "Db")) == "level");
  CHECK(fields(with("22", "Gc")) == "level");
  CHECK(fields(with({}, "Dc", {}, "IIC")) == "gas_group");
  CHECK(fields(with({}, "Gb", {}, {}, "IIIA")) == "dust_group");
  CHECK(fields(with("21", {}, "d")) == "protection");
  CHECK(fields(with("2", {}, "tc")) == "protection");
  CHECK(fields(with({}, {}, "eb", {}, "IIIB")) == "protection");
  CHECK(fields(with("none", "Gb")) == "level");
  Area cold;
  cold.ambient_min_degc = 41;
  cold.ambient_max_degc = 40;
  CHECK(fields(cold) == "ambient_min_c");
}

TEST_CASE("contradictions: all of them are reported at once", "[unit][area]") {
  Area place = with("1", "Dc", "t", {}, "IIIC");
  place.ambient_min_degc = 10;
  place.ambient_max_degc = 0;
  CHECK(fields(place) == "level protection dust_group ambient_min_c");
}

TEST_CASE("contradictions: odd but possible places pass", "[unit][area]") {
  CHECK(fields({}).empty());
  CHECK(fields(with("none", {}, "d", "IIB")).empty());
  CHECK(fields(with("1", {}, "none")).empty());
  CHECK(fields(with("1", "Gc", "d", "IIB", "IIIC")).empty());
  CHECK(fields(with("21", "Da", "i", {}, "IIIC")).empty());
  CHECK(fields(with({}, {}, "d", "IIB", "IIIC")).empty());
}

TEST_CASE("hazard_of: gas dust both or an ordinary place", "[unit][area]") {
  CHECK_FALSE(area::hazard_of({}).any());
  CHECK_FALSE(area::hazard_of(with("none", {}, "d", "IIB")).any());
  CHECK_FALSE(area::hazard_of(with({}, {}, "none", "IIB")).any());
  CHECK(area::hazard_of(with({}, {}, "d")).gas);
  CHECK_FALSE(area::hazard_of(with({}, {}, "d")).dust);
  CHECK(area::hazard_of(with({}, {}, "tb")).dust);
  CHECK_FALSE(area::hazard_of(with({}, {}, "tb")).gas);
  CHECK(area::hazard_of(with("1", {}, {}, "IIB", "IIIC")).dust);
  CHECK(area::hazard_of(with("1", {}, "none")).gas);
}

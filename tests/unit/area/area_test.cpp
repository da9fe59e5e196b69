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

/// A place by its words; "" is not given.
Area with(const char* zone, const char* level = "", const char* protection = "",
          const char* gas = "", const char* dust = "") {
  Area place;
  place.zone = value_of<area::Zone>(zone);
  place.level = value_of<area::Level>(level);
  place.protection = value_of<area::Protection>(protection);
  place.gas_group = value_of<area::GasGroup>(gas);
  place.dust_group = value_of<area::DustGroup>(dust);
  return place;
}

}  // namespace

TEST_CASE("contradictions: what cannot be true is named by its field", "[unit][area]") {
  CHECK(fields(with("1", "", "", "", "IIIC")) == "dust_group");
  CHECK(fields(with("21", "", "", "IIB")) == "gas_group");
  CHECK(fields(with("1", "Db")) == "level");
  CHECK(fields(with("22", "Gc")) == "level");
  CHECK(fields(with("", "Dc", "", "IIC")) == "gas_group");
  CHECK(fields(with("", "Gb", "", "", "IIIA")) == "dust_group");
  CHECK(fields(with("21", "", "d")) == "protection");
  CHECK(fields(with("2", "", "tc")) == "protection");
  CHECK(fields(with("", "", "eb", "", "IIIB")) == "protection");
  CHECK(fields(with("none", "Gb")) == "level");
  Area cold;
  cold.ambient_min_degc = 41;
  cold.ambient_max_degc = 40;
  CHECK(fields(cold) == "ambient_min_c");
}

TEST_CASE("contradictions: all of them are reported at once", "[unit][area]") {
  Area place = with("1", "Dc", "t", "", "IIIC");
  place.ambient_min_degc = 10;
  place.ambient_max_degc = 0;
  CHECK(fields(place) == "level protection dust_group ambient_min_c");
}

TEST_CASE("contradictions: odd but possible places pass", "[unit][area]") {
  CHECK(fields({}).empty());
  CHECK(fields(with("none", "", "d", "IIB")).empty());
  CHECK(fields(with("1", "", "none")).empty());
  CHECK(fields(with("1", "Gc", "d", "IIB")).empty());
  CHECK(fields(with("21", "Da", "i", "", "IIIC")).empty());
}

TEST_CASE("contradictions: a place of gas and dust is two questions", "[unit][area]") {
  CHECK(fields(with("1", "", "d", "IIB", "IIIC")) == "dust_group");
  CHECK(fields(with("21", "", "tb", "IIB", "IIIC")) == "gas_group");
  CHECK(fields(with("", "", "i", "IIB", "IIIC")) == "dust_group");
  CHECK(area::contradictions(with("1", "", "d", "IIB", "IIIC"))[0].hint.find("twice") !=
        std::string::npos);
  // A schedule gives one group for both ends, and one of them may be in a plain room.
  CHECK(fields(with("none", "", "", "IIB", "IIIC")).empty());
}

TEST_CASE("hazard_of: gas dust or an ordinary place", "[unit][area]") {
  using area::Hazard;
  CHECK(area::hazard_of(Area{}) == Hazard::none);
  CHECK(area::hazard_of(with("none", "", "d", "IIB")) == Hazard::none);
  CHECK(area::hazard_of(with("", "", "d")) == Hazard::gas);
  CHECK(area::hazard_of(with("", "", "tb")) == Hazard::dust);
  CHECK(area::hazard_of(with("21", "", "i")) == Hazard::dust);
  CHECK(area::hazard_of(with("", "", "i", "", "IIIC")) == Hazard::dust);
  CHECK(area::hazard_of(with("1", "", "none")) == Hazard::gas);
  // An enclosure of which only this is said may stand anywhere.
  CHECK(area::hazard_of(with("", "", "none")) == Hazard::gas);
}

TEST_CASE("is_asked: by what is said of place or enclosure and not by IP or temperature",
          "[unit][area]") {
  CHECK_FALSE(area::is_asked({}));
  Area wet;
  wet.ip = *area::parse_ip_codes("66");
  wet.ambient_max_degc = 50;
  wet.entry_temp_degc = 60;
  wet.cable_max_degc = 90;
  wet.bare_live_parts = true;
  CHECK_FALSE(area::is_asked(wet));
  Area place;
  place.volume_cm3 = 100;
  CHECK(area::is_asked(place));
  place = {};
  place.ignition_source = false;
  CHECK(area::is_asked(place));
  for (const Area& one : {with("1"), with("none"), with("", "Gb"), with("", "", "none"),
                          with("", "", "", "IIA"), with("", "", "", "", "IIIA")}) {
    CHECK(area::is_asked(one));
  }
}

TEST_CASE("assumptions_of a place: what is taken for the facts that are not given",
          "[unit][area]") {
  const auto taken = [](const Area& place) {
    std::string text;
    for (const Assumption& one : area::assumptions_of(place)) {
      CHECK_FALSE(one.why.empty());
      text += (text.empty() ? "" : "; ") + one.fact + " " + one.taken;
    }
    return text;
  };
  const std::string cable = "; cable_max_c what entry, branching and place come to";
  CHECK(taken({}).empty());
  CHECK(taken(with("none")) ==
        "ambient_min_c -20 degC; ambient_max_c 40 degC; entry_temp_c at most 70 degC; "
        "branch_temp_c at most 80 degC" +
            cable);
  Area place = with("1");
  place.entry_temp_degc = 60;
  place.branch_temp_degc = 60;
  place.ambient_max_degc = 55;
  CHECK(taken(place) == "level what zone 1 asks for; ambient_min_c -20 degC" + cable);
  place = with("", "Gb");
  place.entry_temp_degc = place.branch_temp_degc = 60;
  place.ambient_min_degc = 45;
  CHECK(taken(place) == "zone the one that asks for level Gb; ambient_max_c 45 degC" + cable);
  place.ambient_min_degc.reset();
  place.ambient_max_degc = -30;
  CHECK(taken(place) == "zone the one that asks for level Gb; ambient_min_c -30 degC" + cable);
}

TEST_CASE("said_beside_plain: what a place without a zone cannot need", "[unit][area]") {
  Area place = with("none", "", "d", "IIC");
  CHECK(area::said_beside_plain(place) == "enclosure d, group IIC");
  place = with("1", "", "d", "IIC");
  CHECK(area::said_beside_plain(place).empty());
  CHECK(area::said_beside_plain(with("none")).empty());
}

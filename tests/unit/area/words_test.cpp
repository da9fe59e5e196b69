// What the checks of a place say, whole: words, figures, what is lacking and the source.
#include <catch2/catch.hpp>

#include <algorithm>

#include "cutback/area/check.hpp"
#include "support/build_job.hpp"
#include "support/build_place.hpp"
#include "support/whole.hpp"

using namespace cutback;
using area::Area;
using area::Protection;
using fit::CheckName;
using gland::Gland;
using gland::Sealing;
using test::marked_gland;
using test::solid_cable;
using test::whole;

namespace {

Area gas(const char* protection, const char* zone) {
  Area place;
  place.protection = value_of<Protection>(protection);
  place.zone = value_of<area::Zone>(zone);
  place.gas_group = area::GasGroup::IIB;
  place.ip = *area::parse_ip_codes("66");
  place.ambient_min_degc = -20;
  place.ambient_max_degc = 40;
  return place;
}

Area dust(const char* protection, const char* zone) {
  Area place = gas(protection, zone);
  place.gas_group.reset();
  place.dust_group = area::DustGroup::IIIC;
  return place;
}

/// One check of this place; empty where it is not made.
std::string words(CheckName name, const Area& place, const Gland& gland,
                  const cable::Cable& cable = solid_cable(),
                  const std::optional<area::SealingBundle>& bundle = {}) {
  const auto checks =
      area::check_area(area::make_demand(place, cable, test::standards()), cable, gland, bundle);
  const auto it = std::find_if(checks.begin(), checks.end(),
                               [&](const fit::Check& check) { return check.name == name; });
  return it == checks.end() ? "" : whole(*it);
}

}  // namespace

TEST_CASE("protection, whole: like on like, and what else serves", "[unit][area]") {
  const auto of = [](const char* type, const char* zone, std::vector<Protection> marks) {
    Gland gland = marked_gland();
    gland.protection = std::move(marks);
    return words(CheckName::protection, zone[1] == '\0' ? gas(type, zone) : dust(type, zone),
                 gland);
  };
  CHECK(of("d", "1", {Protection::db}) ==
        "fits: db serves an enclosure of type d: like on like; an enclosure of type d has level "
        "Gb: it serves level Gb for zone 1 | | IEC 60079-14 (2013), Table 10 [from-memory]");
  CHECK(of("db", "2", {Protection::dc}) ==
        "not-known: dc may serve an enclosure of type d: its level is below that of the enclosure, "
        "and takes from it; check against the standard; an enclosure of type db has level Gb: it "
        "serves level Gc for zone 2 | | IEC 60079-14 (2013), Table 10 [from-memory]");
  CHECK(of("d", "1", {Protection::eb}) ==
        "no-fit: a gland marked eb does not serve an enclosure of type d: an increased-safety "
        "gland is never for a flameproof enclosure; an enclosure of type d has "
        "level Gb: it serves level Gb for zone 1 | | IEC 60079-14 (2013), Table 10 [from-memory]");
  CHECK(of("eb", "1", {Protection::db}) ==
        "fits: db serves an enclosure of type e; an enclosure of type eb has level Gb: it serves "
        "level Gb for zone 1 | | IEC 60079-14 (2013), Table 10 [secondary]");
  CHECK(of("eb", "1", {Protection::db, Protection::eb}) ==
        "fits: db serves an enclosure of type e; an enclosure of type eb has level Gb: it serves "
        "level Gb for zone 1 | | IEC 60079-14 (2013), Table 10 [secondary]");
  CHECK(of("ec", "1", {Protection::eb}) ==
        "no-fit: eb serves an enclosure of type e: like on like; an enclosure of type ec has level "
        "Gc: it does not serve level Gb for zone 1, unless a risk assessment of the place says so "
        "| | IEC 60079-0 (2017), clause on marking, levels of protection [secondary]");
  CHECK(of("ec", "2", {}) ==
        "not-known: an enclosure of type e is asked for; the gland list does not state protection; "
        "an enclosure of type ec has level Gc: it serves level Gc for zone 2 | | lacks: protection "
        "of the gland <> | IEC 60079-14 (2013), Table 10 [from-memory]");
  CHECK(of("nR", "2", {Protection::eb}) ==
        "not-known: eb may serve an enclosure of type nR: the gland's documents must say that it "
        "keeps restricted breathing; check against the standard; an enclosure of type nR has level "
        "Gc: it serves level Gc for zone 2 | | IEC 60079-14 (2013), Table 10 [from-memory]");
  CHECK(of("n", "2", {Protection::eb}) ==
        "not-known: eb may serve an enclosure of type n: check against the standard; an enclosure "
        "of type n has level Gc: it may serve level Gc for zone 2: check against the standard | | "
        "IEC 60079-14 (2013), Table 10 [from-memory]");
  CHECK(of("p", "1", {Protection::db}) ==
        "not-known: db may serve an enclosure of type p: check against the standard; an enclosure "
        "of type p for level Gb for zone 1: type p has several levels: say pxb, pyb or pzc | | IEC "
        "60079-14 (2013), Table 10 [from-memory]");
  CHECK(of("ia", "0", {Protection::db}) ==
        "no-fit: a gland marked db does not serve an enclosure of type i: it has no marking of "
        "that type with level Ga for zone 0; an enclosure of type ia "
        "has level Ga: it serves level Ga for zone 0 | | IEC 60079-14 (2013), Table 10 "
        "[from-memory]");
  CHECK(of("tb", "21", {Protection::tb}) ==
        "fits: tb serves an enclosure of type t: like on like; an enclosure of type tb has level "
        "Db: it serves level Db for zone 21 | | IEC 60079-14 (2013), Table 10 [from-memory]");
  CHECK(of("tc", "22", {Protection::db}) ==
        "no-fit: a gland marked db does not serve an enclosure of type t; an enclosure of type tc "
        "has level Dc: it serves level Dc for zone 22 | | IEC 60079-14 (2013), Table 10 "
        "[from-memory]");
  CHECK(of("none", "1", {Protection::db}) ==
        "no-fit: an enclosure without a type of protection: such an enclosure is not for a "
        "hazardous place | | IEC 60079-14 (2013), Table 10 [from-memory]");
  Area place = gas("d", "1");
  place.protection.reset();
  CHECK(words(CheckName::protection, place, marked_gland()) ==
        "not-known: an enclosure in a hazardous place: the type of protection of the enclosure is "
        "not given (protection) | | lacks: protection of the enclosure <protection> | IEC 60079-14 "
        "(2013), Table 10 [from-memory]");
  place = gas("ec", "1");
  place.level = area::Level::Gc;
  CHECK(words(CheckName::protection, place, marked_gland()) ==
        "not-known: db serves an enclosure of type e; an enclosure of type ec has level Gc: it may "
        "serve level Gc: a stated level below that of zone 1; check against the standard | | IEC "
        "60079-0 (2017), clause on marking, levels of protection [secondary]");
  place.zone.reset();
  CHECK(words(CheckName::protection, place, marked_gland()) ==
        "fits: db serves an enclosure of type e; an enclosure of type ec has level Gc: it serves "
        "level Gc | | IEC 60079-14 (2013), Table 10 [secondary]");
}

TEST_CASE("level and group, whole", "[unit][area]") {
  Gland gland = marked_gland();
  CHECK(words(CheckName::level, gas("d", "1"), gland) ==
        "fits: Gb serves level Gb for zone 1 | | IEC 60079-14 (2013), Table 1 [secondary]");
  CHECK(words(CheckName::level, gas("d", "0"), gland) ==
        "no-fit: a gland marked Gb Db does not serve level Ga for zone 0 | | IEC 60079-14 (2013), "
        "Table 1 [secondary]");
  gland.level = {area::Level::Gc};
  Area place = gas("d", "1");
  CHECK(words(CheckName::level, place, gland) ==
        "no-fit: a gland marked Gc does not serve level Gb for zone 1 | | IEC 60079-14 (2013), "
        "Table 1 [secondary]");
  place.level = area::Level::Gc;
  CHECK(words(CheckName::level, place, gland) ==
        "not-known: Gc may serve level Gc: a stated level below that of zone 1; check against the "
        "standard | | IEC 60079-14 (2013), Table 1 [secondary]");
  place.zone.reset();
  CHECK(words(CheckName::level, place, gland) ==
        "fits: Gc serves level Gc | | IEC 60079-14 (2013), Table 1 [secondary]");
  place.level.reset();
  CHECK(words(CheckName::level, place, gland) ==
        "not-known: a level for gas: neither the zone nor the level of the place is given (zone) | "
        "| lacks: zone <zone> | IEC 60079-14 (2013), Table 1 [secondary]");
  gland = marked_gland();
  CHECK(words(CheckName::group, gas("d", "1"), gland) ==
        "fits: IIC serves gas group IIB | | IEC 60079-0 (2017), clause 4, groups");
  gland.gas_group = area::GasMark::IIA;
  CHECK(words(CheckName::group, gas("d", "1"), gland) ==
        "no-fit: a gland marked IIA does not serve gas group IIB | | IEC 60079-0 (2017), clause 4, "
        "groups");
  gland.gas_group.reset();
  CHECK(words(CheckName::group, gas("d", "1"), gland) ==
        "not-known: gas group IIB is asked for; the gland list does not state gas_group | | lacks: "
        "gas_group of the gland <> | IEC 60079-0 (2017), clause 4, groups");
  place = gas("d", "1");
  place.gas_group.reset();
  CHECK(words(CheckName::group, place, marked_gland()) ==
        "not-known: a gas group: the gas group of the place is not given (gas_group) | | lacks: "
        "gas group <gas_group> | IEC 60079-0 (2017), clause 4, groups");
  CHECK(words(CheckName::group, dust("tb", "21"), marked_gland()) ==
        "fits: IIIC serves dust group IIIC | | IEC 60079-0 (2017), clause 4, groups");
  gland.dust_group = area::DustGroup::IIIA;
  CHECK(words(CheckName::group, dust("tb", "21"), gland) ==
        "no-fit: a gland marked IIIA does not serve dust group IIIC | | IEC 60079-0 (2017), clause "
        "4, groups");
  place = dust("tb", "21");
  place.dust_group.reset();
  CHECK(words(CheckName::group, place, marked_gland()) ==
        "not-known: a dust group: the dust group of the place is not given (dust_group) | | lacks: "
        "dust group <dust_group> | IEC 60079-0 (2017), clause 4, groups");
}

TEST_CASE("ingress, whole", "[unit][area]") {
  Gland gland = marked_gland();
  const auto asked = [&](const char* ip, const char* type = "d") {
    Area place = gas(type, "1");
    place.ip = *area::parse_ip_codes(ip);
    return words(CheckName::ingress, place, gland);
  };
  CHECK(asked("66") ==
        "fits: IP66/68 serves IP66 for the place | | IEC 60529 (1989 with amendments to 2013), 6");
  CHECK(asked("66/68") ==
        "not-known: IP66/68 serves IP66 for the place; IP66/68 may serve IP68 for the place: "
        "compare the depth and the time that the gland's papers state with those of the place | | "
        "IEC 60529 (1989 with amendments to 2013), 6");
  CHECK(asked("66", "eb") ==
        "fits: IP66/68 serves IP66 for the place; IP66/68 serves IP54 for type e with bare live "
        "parts (not known) | | IEC 60529 (1989 with amendments to 2013), 6");
  gland.ip = *area::parse_ip_codes("54");
  CHECK(asked("66") ==
        "no-fit: IP54 does not serve IP66 for the place | | IEC 60529 (1989 with amendments to "
        "2013), 6");
  CHECK(asked("54", "eb") ==
        "fits: IP54 serves IP54 for the place; IP54 serves IP54 for type e with bare live parts "
        "(not known) | | IEC 60529 (1989 with amendments to 2013), 6");
  gland.ip = *area::parse_ip_codes("44");
  CHECK(asked("44", "eb") ==
        "no-fit: IP44 serves IP44 for the place; IP44 does not serve IP54 for type e with bare "
        "live parts (not known) | | IEC 60079-14; IEC 60079-7, -11 and -15 (as quoted or "
        "remembered), ingress protection by type of protection [secondary]");
  gland.ip = *area::parse_ip_codes("X6");
  CHECK(asked("66") ==
        "not-known: IPX6 may serve IP66 for the place: an X in the marking says nothing about "
        "solids | | IEC 60529 (1989 with amendments to 2013), 6");
  gland.ip = *area::parse_ip_codes("68");
  CHECK(asked("67") ==
        "fits: IP68 serves IP67 for the place | | IEC 60529 (1989 with amendments to 2013), 6");
  CHECK(asked("68") ==
        "not-known: IP68 may serve IP68 for the place: compare the depth and the time that the "
        "gland's papers state with those of the place | | IEC 60529 (1989 with amendments to "
        "2013), 6");
  gland.ip.clear();
  CHECK(asked("66") ==
        "not-known: IP66 for the place is asked for; the gland list does not state ip | | lacks: "
        "ip of the gland <> | IEC 60529 (1989 with amendments to 2013), 6");
  Area place = gas("eb", "1");
  place.ip.clear();
  place.bare_live_parts = false;
  gland.ip = *area::parse_ip_codes("44");
  CHECK(words(CheckName::ingress, place, gland) ==
        "not-known: an IP for the place: what the place asks for is not given (ip); IP44 may serve "
        "IP44 for type e with insulated live parts: check against the standard | | lacks: IP <ip> "
        "| IEC 60529 (1989 with amendments to 2013), 6");
  place.bare_live_parts = true;
  CHECK(
      words(CheckName::ingress, place, gland) ==
      "no-fit: an IP for the place: what the place asks for is not given (ip); IP44 does not serve "
      "IP54 for type e with bare live parts | | lacks: IP <ip> | IEC 60079-14; IEC 60079-7, -11 "
      "and -15 (as quoted or remembered), ingress protection by type of protection [secondary]");
  gland.ip = *area::parse_ip_codes("54");
  CHECK(words(CheckName::ingress, dust("tc", "22"), gland) ==
        "no-fit: IP54 does not serve IP66 for the place; IP54 does not serve IP6X for level Dc and "
        "group IIIC | | IEC 60529 (1989 with amendments to 2013), 6");
  CHECK(words(CheckName::ingress, dust("tb", "21"), gland) ==
        "no-fit: IP54 does not serve IP66 for the place; IP54 does not serve IP6X for level Db and "
        "group IIIC | | IEC 60529 (1989 with amendments to 2013), 6");
  place = dust("tb", "21");
  place.dust_group.reset();
  CHECK(words(CheckName::ingress, place, gland) ==
        "no-fit: IP54 does not serve IP66 for the place; IP54 does not serve IP6X for level Db and "
        "group IIIC (not both known) | | IEC 60529 (1989 with amendments to 2013), 6");
  place = dust("tb", "21");
  place.level = area::Level::Dc;
  CHECK(words(CheckName::ingress, place, gland) ==
        "no-fit: IP54 does not serve IP66 for the place; IP54 does not serve IP6X for level Db and "
        "group IIIC | | IEC 60529 (1989 with amendments to 2013), 6");
  place.level = area::Level::Da;
  CHECK(words(CheckName::ingress, place, gland) ==
        "no-fit: IP54 does not serve IP66 for the place; IP54 does not serve IP6X for level Da and "
        "group IIIC | | IEC 60529 (1989 with amendments to 2013), 6");
}

TEST_CASE("temperature, whole", "[unit][area]") {
  Gland gland = marked_gland();
  Area place = gas("d", "1");
  CHECK(words(CheckName::temperature, place, gland) ==
        "fits: it meets -20 degC, the gland is for down to -40 degC; it meets 40 degC, the gland "
        "is for up to 100 degC | | IEC 60079-0 (2017), 16.6 [from-memory]");
  gland.temp_min_degc = -20;
  gland.temp_max_degc = 40;
  CHECK(words(CheckName::temperature, place, gland) ==
        "not-known: it meets -20 degC, the gland is for down to -20 degC; it meets 40 degC, the "
        "gland is for up to 40 degC; the entry may come to 70 degC, because its temperature is not "
        "given (entry_temp_c) | | lacks: temperature at the entry <entry_temp_c> | IEC 60079-0 "
        "(2017), 16.6 [from-memory]");
  gland.temp_min_degc.reset();
  gland.temp_max_degc.reset();
  CHECK(words(CheckName::temperature, place, gland) ==
        "not-known: it meets -20 degC; the gland list does not state temp_min_c; it meets 40 degC; "
        "the gland list does not state temp_max_c | | lacks: temp_min_c of the gland <>, "
        "temp_max_c of the gland <> | IEC 60079-0 (2017), 16.6 [from-memory]");
  gland = marked_gland();
  place.entry_temp_degc = 75;
  CHECK(words(CheckName::temperature, place, gland) ==
        "not-known: it meets -20 degC, the gland is for down to -40 degC; it meets 75 degC, the "
        "gland is for up to 100 degC; entry point at 75 degC is above 70 degC: give what the cable "
        "stands (cable_max_c) | | lacks: what the cable stands <cable_max_c> | IEC 60079-0 (2017), "
        "16.6 [from-memory]");
  place.branch_temp_degc = 85;
  place.cable_max_degc = 80;
  CHECK(words(CheckName::temperature, place, gland) ==
        "no-fit: it meets -20 degC, the gland is for down to -40 degC; it meets 75 degC, the gland "
        "is for up to 100 degC; branching point at 85 degC, the cable stands 80 degC | | IEC "
        "60079-0 (2017), 16.6 [from-memory]");
  place.branch_temp_degc.reset();
  place.entry_temp_degc.reset();
  place.cable_max_degc = 60;
  CHECK(words(CheckName::temperature, place, gland) ==
        "not-known: it meets -20 degC, the gland is for down to -40 degC; it meets 40 degC, the "
        "gland is for up to 100 degC; the entry point may come to 70 degC, the cable stands 60 "
        "degC: give its temperature (entry_temp_c); the branching point may come to 80 degC, the "
        "cable stands 60 degC: give its temperature (branch_temp_c) | | lacks: temperature at the "
        "entry point <entry_temp_c>, temperature at the branching point <branch_temp_c> | IEC "
        "60079-0 (2017), 16.6 [from-memory]");
  place.cable_max_degc = 30;
  CHECK(
      words(CheckName::temperature, place, gland) ==
      "no-fit: it meets -20 degC, the gland is for down to -40 degC; it meets 40 degC, the gland "
      "is for up to 100 degC; the entry point may come to 70 degC, the cable stands 30 degC: give "
      "its temperature (entry_temp_c); the branching point may come to 80 degC, the cable stands "
      "30 degC: give its temperature (branch_temp_c); the place comes to 40 degC, the cable stands "
      "30 degC | | lacks: temperature at the entry point <entry_temp_c>, temperature at the "
      "branching point <branch_temp_c> | IEC 60079-0 (2017), 16.6 [from-memory]");
  // An ordinary place of which only one end is given, wholly beyond the gland.
  Area hot;
  hot.ambient_min_degc = 101;
  CHECK(words(CheckName::temperature, hot, gland) ==
        "no-fit: it meets 101 degC, the gland is for down to -40 degC; the gland is for 100 degC "
        "and colder | | IEC 60079-0 (2017), 16.6 [from-memory]");
  hot.ambient_min_degc = 100;
  CHECK(words(CheckName::temperature, hot, gland) ==
        "fits: it meets 100 degC, the gland is for down to -40 degC | | IEC 60079-0 (2017), 16.6 "
        "[from-memory]");
  Area cold;
  cold.ambient_max_degc = -41;
  CHECK(words(CheckName::temperature, cold, gland) ==
        "no-fit: it meets -41 degC, the gland is for up to 100 degC; the gland is for -40 degC and "
        "warmer | | IEC 60079-0 (2017), 16.6 [from-memory]");
  cold.ambient_max_degc = -40;
  CHECK(words(CheckName::temperature, cold, gland) ==
        "fits: it meets -40 degC, the gland is for up to 100 degC | | IEC 60079-0 (2017), 16.6 "
        "[from-memory]");
  Area warm;
  warm.entry_temp_degc = 70;
  CHECK(words(CheckName::temperature, warm, gland) ==
        "fits: it meets 70 degC, the gland is for up to 100 degC | | IEC 60079-0 (2017), 16.6 "
        "[from-memory]");
  warm.entry_temp_degc = 71;
  CHECK(words(CheckName::temperature, warm, gland) ==
        "not-known: it meets 71 degC, the gland is for up to 100 degC; entry point at 71 degC is "
        "above 70 degC: give what the cable stands (cable_max_c) | | lacks: what the cable stands "
        "<cable_max_c> | IEC 60079-0 (2017), 16.6 [from-memory]");
  warm.branch_temp_degc = 80;
  warm.entry_temp_degc.reset();
  CHECK(words(CheckName::temperature, warm, gland) == "");
  warm.branch_temp_degc = 81;
  CHECK(words(CheckName::temperature, warm, gland) ==
        "not-known: branching point at 81 degC is above 80 degC: give what the cable stands "
        "(cable_max_c) | | lacks: what the cable stands <cable_max_c> | IEC 60079-0 (2017), 16.6 "
        "[from-memory]");
}

TEST_CASE("sealing, whole", "[unit][area]") {
  Gland gland = marked_gland();
  Area place = gas("d", "1");
  const auto sealing = [&](const cable::Cable& cable = solid_cable(),
                           const std::optional<area::SealingBundle>& bundle = {}) {
    return words(CheckName::sealing, place, gland, cable, bundle);
  };
  CHECK(sealing() ==
        "fits: it seals round the cores, as is demanded; the chamber takes 7 cores, the cable has "
        "4 | | lacks: size of the cores <csa_mm2> | IEC 60079-14 (2007), 10.4.2 [secondary]");
  place.ignition_source = true;
  place.gas_group = area::GasGroup::IIC;
  CHECK(sealing() ==
        "fits: it seals round the cores, as is demanded; the chamber takes 7 cores, the cable has "
        "4 | | lacks: size of the cores <csa_mm2> | IEC 60079-14 (2007), 10.4.2 [secondary]");
  gland.max_cores = 3;
  CHECK(sealing() ==
        "no-fit: it seals round the cores, as is demanded; the chamber takes 3 cores, the cable "
        "has 4 | | lacks: size of the cores <csa_mm2> | gland list");
  gland.max_cores.reset();
  CHECK(sealing() ==
        "not-known: it seals round the cores, as is demanded; the gland list does not state "
        "max_cores | | lacks: max_cores of the gland <> | gland list");
  gland.max_bundle_mm = 12.0;
  CHECK(sealing() ==
        "not-known: it seals round the cores, as is demanded; the gland list does not state "
        "max_cores | | lacks: size of the cores <csa_mm2> | gland list");
  cable::Cable uncounted = solid_cable();
  uncounted.cores.reset();
  CHECK(sealing(uncounted) ==
        "not-known: it seals round the cores, as is demanded; the gland list does not state "
        "max_cores | | lacks: number of cores <at the end cores> | gland list");
  gland.max_cores = 7;
  CHECK(sealing(uncounted) ==
        "not-known: it seals round the cores, as is demanded; the number of cores is not given | | "
        "lacks: number of cores <at the end cores> | gland list");
  area::SealingBundle bundle;
  bundle.verdict = Verdict::not_known;
  bundle.says = "the bundle is not known";
  bundle.source = "a test";
  CHECK(sealing(solid_cable(), bundle) ==
        "not-known: it seals round the cores, as is demanded; the bundle is not known | | lacks: "
        "size of the cores <csa_mm2> | a test");
  bundle.verdict = Verdict::no_fit;
  CHECK(sealing(solid_cable(), bundle) ==
        "no-fit: it seals round the cores, as is demanded; the bundle is not known | | a test");
  gland.sealing = Sealing::compression;
  CHECK(sealing() ==
        "no-fit: it does not seal round the cores, as is demanded | | IEC 60079-14 (2007), 10.4.2 "
        "[secondary]");
  place = gas("d", "1");
  place.ignition_source = false;
  CHECK(sealing() ==
        "not-known: a gland that seals on the sheath or bedding is allowed: solid cable, no source "
        "of ignition inside; at least 3 m long; check against the standard | | IEC 60079-14 "
        "(2007), 10.4.2 [from-memory]; IEC 60079-14 (2013), 10.6.2 [secondary]");
  place.rules = area::RuleSet::iec_60079_14_2013;
  CHECK(sealing() ==
        "fits: a gland that seals on the sheath or bedding is allowed: solid cable, at least 3 m "
        "long; this edition alone lets the length decide, which is disputed: an association of "
        "equipment users found no evidence for it, and the British edition of 2014 keeps the chart "
        "of 2007 (NA.5); the edition of 2024 is not modelled; the gland must be certified as "
        "equipment, not as a component only | | IEC 60079-14 (2013), 10.6.2 [secondary]");
  place.rules = area::RuleSet::iec_60079_14_2007;
  CHECK(sealing() ==
        "not-known: a gland that seals on the sheath or bedding is allowed: solid cable, no source "
        "of ignition inside; check against the standard | | IEC 60079-14 (2007), 10.4.2 "
        "[from-memory]");
  gland.inner.reset();
  CHECK(sealing() ==
        "no-fit: it has no inner seal, and no compound round the cores: gas reaches the space of "
        "the armour | | IEC 60079-14, a flameproof gland of an armoured cable seals on the bedding "
        "[secondary]");
  gland = marked_gland();
  CHECK(sealing() ==
        "fits: a gland that seals round the cores is always allowed; the chamber takes 7 cores, "
        "the cable has 4 | | lacks: size of the cores <csa_mm2> | IEC 60079-14 (2007), 10.4.2 "
        "[from-memory]");
  gland.sealing = Sealing::compression;
  place = gas("d", "1");
  cable::Cable loose = solid_cable();
  loose.length_m.reset();
  loose.compact.reset();
  CHECK(sealing(loose) ==
        "no-fit: it does not seal round the cores, as is demanded; not known, and could change "
        "that: compact, ignition_source, length_m | | IEC 60079-14 (2007), 10.4.2 [secondary]; IEC "
        "60079-14 (2013), 10.6.2 [secondary]");
  place.protection.reset();
  CHECK(sealing(loose) ==
        "not-known: it does not seal round the cores, as is demanded; not known, and could change "
        "that: compact, ignition_source, length_m, protection; the type of protection is not "
        "given, and may ask for less | | lacks: protection of the enclosure <protection> | IEC "
        "60079-14 (2007), 10.4.2 [secondary]; IEC 60079-14 (2013), 10.6.2 [secondary]");
  place = gas("d", "0");
  CHECK(sealing() ==
        "no-fit: zone 0 asks for level Ga, which an ordinary flameproof entry does not have | | "
        "IEC 60079-14 (2013), Table 1 [secondary]");
  place.protection.reset();
  CHECK(sealing() ==
        "not-known: it does not seal round the cores, as is demanded; the type of protection is "
        "not given, and may ask for less | | lacks: protection of the enclosure <protection> | IEC "
        "60079-14 (2013), Table 1 [secondary]");
  gland.sealing = Sealing::barrier;
  CHECK(words(CheckName::sealing, {}, gland) ==
        "fits: the chamber takes 7 cores, the cable has 4 | | lacks: size of the cores <csa_mm2> | "
        "gland list");
  gland.sealing = Sealing::compression;
  CHECK(words(CheckName::sealing, {}, gland) == "");
}

TEST_CASE("metals and adaptor, whole", "[unit][area]") {
  Gland gland = marked_gland();
  const auto metals = [&](const area::Touching& touching) {
    const auto check = area::check_metals(touching, gland, test::standards());
    return check ? whole(*check) : "";
  };
  CHECK(metals({.enclosure = "aluminium", .adaptor = {}, .armour = {}}) ==
        "fits: caution: brass in aluminium is up to 0.55 V apart, too far outdoors, damp or salt "
        "(0.15 V); indoors, ordinary (0.25 V); indoors, temperature and moisture controlled (0.5 "
        "V). Outdoors no joint stays dry: seal it, look again, or use a nearer metal | | Anodic "
        "index (as tabulated in public pages), no single standard seen [from-memory]");
  CHECK(metals({.enclosure = "aluminium",
                .adaptor = "stainless-steel",
                .armour = cable::ArmourMaterial::aluminium}) ==
        "fits: armour: caution: aluminium in brass is up to 0.55 V apart, too far outdoors, damp "
        "or salt (0.15 V); indoors, ordinary (0.25 V); indoors, temperature and moisture "
        "controlled (0.5 V). Outdoors no joint stays dry: seal it, look again, or use a nearer "
        "metal; caution: stainless-steel in aluminium is up to 0.45 V apart, too far outdoors, "
        "damp or salt (0.15 V); indoors, ordinary (0.25 V). Outdoors no joint stays dry: seal it, "
        "look again, or use a nearer metal | | Anodic index (as tabulated in public pages), no "
        "single standard seen [from-memory]");
  gland.material = "tin";
  CHECK(metals({.enclosure = "aluminium", .adaptor = {}, .armour = {}}) == "");
  const auto adaptor = [](const std::vector<Protection>& marks) {
    return whole(*area::check_adaptor(
        area::make_demand(gas("d", "1"), solid_cable(), test::standards()), marks));
  };
  CHECK(adaptor({}) ==
        "not-known: the adaptor's own protection is not given: an enclosure of type d is asked "
        "for, add it as --adaptor M25:M20:db | | lacks: protection of the adaptor, as M25:M20:db "
        "<adaptor> | IEC 60079-14 (2013), Table 10 [from-memory]");
  CHECK(adaptor({Protection::db}) ==
        "fits: db serves an enclosure of type d: like on like | | IEC 60079-14 (2013), Table 10 "
        "[from-memory]");
  CHECK(adaptor({Protection::eb, Protection::tb}) ==
        "no-fit: a gland marked eb tb does not serve an enclosure of type d: an increased-safety "
        "gland is never for a flameproof enclosure | | IEC 60079-14 "
        "(2013), Table 10 [from-memory]");
}

// Laws of the hazardous-area checks: what makes the place stricter never helps.
#include <rapidcheck.h>
#include <algorithm>
#include <catch2/catch.hpp>

#include "cutback/area/check.hpp"
#include "cutback/io/standards.hpp"

using namespace cutback;
using area::Area;
using area::DustGroup;
using area::GasGroup;
using area::GasMark;
using area::Level;
using area::Protection;
using area::RuleSet;
using area::Zone;

namespace {

const tables::Standards& standards() {
  static const tables::Standards all = io::builtin_standards();
  return all;
}

template <class T>
std::optional<T> maybe(const std::vector<T>& values) {
  const auto at = *rc::gen::inRange<std::size_t>(0, values.size() + 1);
  if (at == values.size()) return std::nullopt;
  return values[at];
}

template <class T>
std::vector<T> some(const std::vector<T>& values) {
  std::vector<T> list;
  for (const T& value : values) {
    if (*rc::gen::inRange(0, 3) == 0) list.push_back(value);
  }
  return list;
}

std::optional<bool> maybe_bool() {
  const int at = *rc::gen::inRange(0, 3);
  if (at == 2) return std::nullopt;
  return at == 1;
}

std::vector<area::IpCode> any_codes() {
  return *area::parse_ip_codes(
      *rc::gen::element<std::string>("20", "44", "54", "5X", "66", "66/68"));
}

/// A gas or dust place, its enclosure protected or not given.
Area any_area() {
  const bool gas = *rc::gen::inRange(0, 3) > 0;
  Area place;
  place.protection =
      gas ? maybe<Protection>({Protection::d, Protection::db, Protection::dc, Protection::e,
                               Protection::ec, Protection::i, Protection::nA, Protection::nR,
                               Protection::p, Protection::pz, Protection::m})
          : maybe<Protection>({Protection::t, Protection::tb, Protection::tb, Protection::tc,
                               Protection::i, Protection::p, Protection::m});
  place.zone = gas ? maybe<Zone>({Zone::zone_0, Zone::zone_1, Zone::zone_2})
                   : maybe<Zone>({Zone::zone_20, Zone::zone_21, Zone::zone_22});
  if (*rc::gen::inRange(0, 3) == 0) {
    place.level = gas ? maybe<Level>({Level::Ga, Level::Gb, Level::Gc})
                      : maybe<Level>({Level::Da, Level::Db, Level::Dc});
  }
  if (gas)
    place.gas_group =
        maybe<GasGroup>({GasGroup::IIA, GasGroup::IIB, GasGroup::IIB_H2, GasGroup::IIC});
  if (!gas)
    place.dust_group = maybe<DustGroup>({DustGroup::IIIA, DustGroup::IIIB, DustGroup::IIIC});
  if (*rc::gen::inRange(0, 4) > 0) place.ip = any_codes();
  if (*rc::gen::inRange(0, 2) == 0) {
    // Half of the places are known in full, so that some glands fit them.
    place.protection = gas ? *rc::gen::element(Protection::db, Protection::eb) : Protection::tb;
    place.zone = gas ? *rc::gen::element(Zone::zone_1, Zone::zone_2)
                     : *rc::gen::element(Zone::zone_21, Zone::zone_22);
    place.level.reset();
    if (gas) place.gas_group = *rc::gen::element(GasGroup::IIA, GasGroup::IIB);
    if (!gas) place.dust_group = *rc::gen::element(DustGroup::IIIA, DustGroup::IIIB);
    place.ip = *area::parse_ip_codes("54");
    return place;
  }
  place.volume_cm3 = maybe<double>({100.0, 2000.0, 2001.0});
  place.ignition_source = maybe_bool();
  place.bare_live_parts = maybe_bool();
  place.entry_temp_degc = maybe<double>({40.0, 70.0, 75.0, 120.0});
  place.branch_temp_degc = maybe<double>({40.0, 80.0, 85.0});
  place.cable_max_degc = maybe<double>({60.0, 90.0});
  place.rules =
      *rc::gen::element(RuleSet::iec_60079_14_2007, RuleSet::iec_60079_14_2013, RuleSet::strict);
  return place;
}

cable::Cable any_cable() {
  cable::Cable cable;
  // Mostly solid, so that compression is allowed now and then.
  const auto likely = [] {
    const auto at = *rc::gen::inRange(0, 6);
    return at == 0 ? std::optional<bool>() : std::optional<bool>(at > 1);
  };
  cable.circular = likely();
  cable.compact = likely();
  if (const auto extruded = likely()) {
    cable.bedding_made = *extruded ? cable::BeddingMade::extruded : cable::BeddingMade::lapped;
  }
  if (const auto dry = likely()) {
    cable.fillers = *dry ? cable::Fillers::non_hygroscopic : cable::Fillers::hygroscopic;
  }
  cable.length_m = maybe<double>({2.9, 3.0, 50.0});
  cable.cores = maybe<int>({1, 4, 12});
  return cable;
}

gland::Gland any_gland() {
  gland::Gland gland;
  gland.sealing = *rc::gen::element(gland::Sealing::compression, gland::Sealing::barrier,
                                    gland::Sealing::either);
  gland.protection = some<Protection>(
      {Protection::d, Protection::db, Protection::dc, Protection::eb, Protection::ec,
       Protection::nR, Protection::nC, Protection::ta, Protection::tb, Protection::tc});
  gland.level = some<Level>({Level::Ga, Level::Gb, Level::Gc, Level::Da, Level::Db, Level::Dc});
  gland.gas_group = maybe<GasMark>(
      {GasMark::II, GasMark::IIA, GasMark::IIB, GasMark::IIB_H2, GasMark::IIC, GasMark::IIC});
  gland.dust_group = maybe<DustGroup>({DustGroup::IIIA, DustGroup::IIIB, DustGroup::IIIC});
  gland.inner = maybe<measure::Range>({measure::Range{8.0, 12.0}});
  if (*rc::gen::inRange(0, 4) > 0) gland.ip = any_codes();
  gland.temp_min_degc = maybe<double>({-40.0, -20.0});
  gland.temp_max_degc = maybe<double>({40.0, 80.0, 120.0});
  gland.max_cores = maybe<int>({4, 20});
  if (*rc::gen::inRange(0, 2) == 0) return gland;
  // Half of the glands serve nearly everywhere, so that some of them fit.
  for (const Protection mark : {Protection::db, Protection::eb, Protection::tb}) {
    gland.protection.push_back(mark);
  }
  for (const Level level : {Level::Ga, Level::Gb, Level::Da, Level::Db}) {
    gland.level.push_back(level);
  }
  gland.gas_group = area::GasMark::IIC;
  gland.dust_group = area::DustGroup::IIIC;
  gland.ip = *area::parse_ip_codes("66");
  gland.temp_min_degc = -40;
  gland.temp_max_degc = 120;
  gland.max_cores = 20;
  return gland;
}

/// The worst check: what the area makes of this gland.
Verdict judged(const Area& place, const cable::Cable& cable, const gland::Gland& gland) {
  Verdict verdict = Verdict::fits;
  const area::Demand demand = area::make_demand(place, cable, standards());
  for (const fit::Check& check : area::check_area(demand, cable, gland)) {
    verdict = worst(verdict, check.verdict);
  }
  return verdict;
}

/// The value one place further on in a list from lax to strict; the last stays.
template <class T>
bool step_up(std::optional<T>& value, const std::vector<T>& order) {
  const auto it = value ? std::find(order.begin(), order.end(), *value) : order.end();
  if (it == order.end() || it + 1 == order.end()) return false;
  value = *(it + 1);
  return true;
}

/// The place with one of its words a step stricter, where one of them can be.
Area stricter(Area place) {
  using Step = bool (*)(Area&);
  static constexpr Step k_steps[] = {
      [](Area& a) {
        return step_up(a.zone, {Zone::zone_2, Zone::zone_1, Zone::zone_0});
      },
      [](Area& a) {
        return step_up(a.zone, {Zone::zone_22, Zone::zone_21, Zone::zone_20});
      },
      [](Area& a) {
        return step_up(a.gas_group, {GasGroup::IIA, GasGroup::IIB, GasGroup::IIC});
      },
      [](Area& a) {
        return step_up(a.dust_group, {DustGroup::IIIA, DustGroup::IIIB, DustGroup::IIIC});
      },
      [](Area& a) {
        return step_up(a.level, {Level::Gc, Level::Gb, Level::Ga});
      },
      [](Area& a) {
        return step_up(a.level, {Level::Dc, Level::Db, Level::Da});
      },
  };
  const auto first = *rc::gen::inRange<std::size_t>(0, std::size(k_steps));
  for (std::size_t i = 0; i < std::size(k_steps); ++i) {
    if (k_steps[(first + i) % std::size(k_steps)](place)) return place;
  }
  return place;
}

}  // namespace

TEST_CASE("area: a stricter zone or group or level never helps", "[property][area]") {
  CHECK(rc::check("stricter zone, group or level", [] {
    const Area lax = any_area();
    const cable::Cable cable = any_cable();
    const gland::Gland gland = any_gland();
    const Verdict verdict = judged(lax, cable, gland);
    RC_TAG(std::string(to_string(verdict)));
    RC_ASSERT(verdict >= judged(stricter(lax), cable, gland));
  }));
}

TEST_CASE("area: strict is never laxer than either edition", "[property][area]") {
  CHECK(rc::check("strict demand and verdict", [] {
    Area place = any_area();
    const cable::Cable cable = any_cable();
    const gland::Gland gland = any_gland();
    place.rules = RuleSet::strict;
    const auto strict = area::make_demand(place, cable, standards());
    const Verdict strict_verdict = judged(place, cable, gland);
    for (const RuleSet rules : {RuleSet::iec_60079_14_2007, RuleSet::iec_60079_14_2013}) {
      place.rules = rules;
      const auto edition = area::make_demand(place, cable, standards());
      RC_ASSERT(strict.sealing >= edition.sealing);
      RC_ASSERT(strict_verdict <= judged(place, cable, gland));
    }
  }));
}

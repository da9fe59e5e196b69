// Laws of the hazardous-area checks: what makes the place stricter or hides a fact never helps.
#include <rapidcheck.h>
#include <algorithm>
#include <array>
#include <catch2/catch.hpp>

#include "cutback/area/check.hpp"
#include "cutback/io/standards.hpp"

using namespace cutback;
using area::Area;
using area::RuleSet;

namespace {

using Words = std::vector<std::string>;

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

Words some(const Words& values) {
  Words words;
  for (const std::string& value : values) {
    if (*rc::gen::inRange(0, 3) == 0) words.push_back(value);
  }
  return words;
}

std::optional<bool> maybe_bool() {
  const int at = *rc::gen::inRange(0, 3);
  if (at == 2) return std::nullopt;
  return at == 1;
}

/// A gas or dust place, its enclosure protected or not given.
Area any_area() {
  const bool gas = *rc::gen::inRange(0, 3) > 0;
  Area place;
  place.protection = gas ? maybe<std::string>({"d", "d", "d", "e", "i", "nA", "nR", "p", "pz", "m"})
                         : maybe<std::string>({"t", "i", "p", "m"});
  place.zone = gas ? maybe<std::string>({"0", "1", "2"}) : maybe<std::string>({"20", "21", "22"});
  if (*rc::gen::inRange(0, 3) == 0) {
    place.level =
        gas ? maybe<std::string>({"Ga", "Gb", "Gc"}) : maybe<std::string>({"Da", "Db", "Dc"});
  }
  if (gas) place.gas_group = maybe<std::string>({"IIA", "IIB", "IIC"});
  if (!gas) place.dust_group = maybe<std::string>({"IIIA", "IIIB", "IIIC"});
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
  gland.protection = some({"d", "db", "dc", "eb", "ec", "nR", "nC", "ta", "tb", "tc"});
  gland.level = some({"Ga", "Gb", "Gc", "Da", "Db", "Dc"});
  gland.gas_group = maybe<std::string>({"II", "IIA", "IIB", "IIB+H2", "IIC", "IIC"});
  gland.dust_group = maybe<std::string>({"IIIA", "IIIB", "IIIC"});
  gland.ip = some({"20", "44", "54", "5X", "66", "68"});
  gland.temp_min_degc = maybe<double>({-40.0, -20.0});
  gland.temp_max_degc = maybe<double>({40.0, 80.0, 120.0});
  gland.max_cores = maybe<int>({4, 20});
  if (*rc::gen::inRange(0, 2) == 0) return gland;
  // Half of the glands serve nearly everywhere, so that some of them fit.
  for (const char* mark : {"db", "eb", "tb"}) gland.protection.emplace_back(mark);
  for (const char* level : {"Ga", "Gb", "Da", "Db"}) gland.level.emplace_back(level);
  gland.gas_group = "IIC";
  gland.dust_group = "IIIC";
  gland.ip.emplace_back("66");
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

/// The word one place further on in a list from lax to strict; the last stays.
bool step_up(std::optional<std::string>& word, const Words& order) {
  const auto it = word ? std::find(order.begin(), order.end(), *word) : order.end();
  if (it == order.end() || it + 1 == order.end()) return false;
  word = *(it + 1);
  return true;
}

/// The place with one of its words a step stricter, where one of them can be.
Area stricter(Area place) {
  const std::array<std::pair<std::optional<std::string> Area::*, Words>, 6> steps{
      {{&Area::zone, {"2", "1", "0"}},
       {&Area::zone, {"22", "21", "20"}},
       {&Area::gas_group, {"IIA", "IIB", "IIC"}},
       {&Area::dust_group, {"IIIA", "IIIB", "IIIC"}},
       {&Area::level, {"Gc", "Gb", "Ga"}},
       {&Area::level, {"Dc", "Db", "Da"}}}};
  const auto first = *rc::gen::inRange<std::size_t>(0, steps.size());
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const auto& [member, order] = steps[(first + i) % steps.size()];
    if (step_up(place.*member, order)) return place;
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

TEST_CASE("area: hiding a fact never turns another verdict into fits", "[property][area]") {
  using Hide = void (*)(Area&, cable::Cable&);
  static constexpr Hide k_hide[] = {
      [](Area& a, cable::Cable&) { a.protection.reset(); },
      // Zone and level state one thing: with one of them left, that one counts.
      [](Area& a, cable::Cable&) { a.zone = a.level = std::nullopt; },
      [](Area& a, cable::Cable&) { a.gas_group.reset(); },
      [](Area& a, cable::Cable&) { a.dust_group.reset(); },
      [](Area& a, cable::Cable&) { a.volume_cm3.reset(); },
      [](Area& a, cable::Cable&) { a.ignition_source.reset(); },
      [](Area& a, cable::Cable&) { a.bare_live_parts.reset(); },
      [](Area& a, cable::Cable&) { a.cable_max_degc.reset(); },
      [](Area&, cable::Cable& c) { c.circular.reset(); },
      [](Area&, cable::Cable& c) { c.compact.reset(); },
      [](Area&, cable::Cable& c) { c.bedding_made.reset(); },
      [](Area&, cable::Cable& c) { c.fillers.reset(); },
      [](Area&, cable::Cable& c) { c.length_m.reset(); },
      [](Area&, cable::Cable& c) { c.cores.reset(); },
  };
  CHECK(rc::check("a fact less", [] {
    Area place = any_area();
    cable::Cable cable = any_cable();
    const gland::Gland gland = any_gland();
    const Verdict before = judged(place, cable, gland);
    const bool hazardous = area::hazard_of(place).any();
    k_hide[*rc::gen::inRange<std::size_t>(0, std::size(k_hide))](place, cable);
    // A place of which nothing at all is said is an ordinary one.
    if (area::hazard_of(place).any() != hazardous) return;
    if (judged(place, cable, gland) == Verdict::fits) RC_ASSERT(before == Verdict::fits);
  }));
}

TEST_CASE("area: taking a statement off a gland never turns another verdict into fits",
          "[property][area]") {
  using Hide = void (*)(gland::Gland&);
  static constexpr Hide k_hide[] = {
      [](gland::Gland& g) { g.protection.clear(); },
      [](gland::Gland& g) { g.level.clear(); },
      [](gland::Gland& g) { g.gas_group.reset(); },
      [](gland::Gland& g) { g.dust_group.reset(); },
      [](gland::Gland& g) { g.ip.clear(); },
      [](gland::Gland& g) { g.temp_max_degc.reset(); },
      [](gland::Gland& g) { g.max_cores.reset(); },
  };
  CHECK(rc::check("a statement less", [] {
    const Area place = any_area();
    const cable::Cable cable = any_cable();
    gland::Gland gland = any_gland();
    const Verdict before = judged(place, cable, gland);
    k_hide[*rc::gen::inRange<std::size_t>(0, std::size(k_hide))](gland);
    if (judged(place, cable, gland) == Verdict::fits) RC_ASSERT(before == Verdict::fits);
  }));
}

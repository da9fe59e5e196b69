#include "cutback/area/area.hpp"

#include <algorithm>
#include <array>

#include "cutback/compare.hpp"
#include "cutback/number.hpp"

namespace cutback::area {
namespace {

// Types of protection that are for one kind of hazard only (IEC 60079-0:2017, clause on marking).
constexpr std::array<std::string_view, 16> k_gas_only{"d",  "da", "db", "dc", "e", "eb", "ec", "n",
                                                      "nA", "nC", "nL", "nR", "o", "ob", "oc", "q"};
constexpr std::array<std::string_view, 5> k_dust_only{"t", "ta", "tb", "tc", "tD"};

bool one_of(const auto& list, const std::optional<std::string>& word) {
  return word && std::find(list.begin(), list.end(), *word) != list.end();
}

bool gas_zone(const Area& area) { return area.zone && area.zone->size() == 1; }
bool dust_zone(const Area& area) { return area.zone && area.zone->size() == 2; }
bool gas_level(const Area& area) { return area.level && area.level->front() == 'G'; }
bool dust_level(const Area& area) { return area.level && area.level->front() == 'D'; }

Fault clash(std::string what, std::string where, const std::optional<std::string>& given,
            std::string allowed) {
  return {.code = ErrorCode::contradiction,
          .what = std::move(what),
          .where = std::move(where),
          .given = given.value_or(""),
          .allowed = std::move(allowed),
          .hint = {}};
}

/// Faults of the words that are for the other kind of hazard than the place is.
void check_kind(const Area& area, bool gas, const std::string& place, std::vector<Fault>& faults) {
  const std::string kind = gas ? "gas" : "dust";
  const std::string what = place + " is for " + kind + ", this is for " + (gas ? "dust" : "gas");
  const bool protection =
      gas ? one_of(k_dust_only, area.protection) : one_of(k_gas_only, area.protection);
  if (protection) {
    faults.push_back(
        clash(what, "protection", area.protection, "a type of protection for " + kind));
  }
  const auto& own = gas ? area.gas_group : area.dust_group;
  const auto& other = gas ? area.dust_group : area.gas_group;
  if (other && !own) {
    faults.push_back(clash(what, gas ? "dust_group" : "gas_group", other, "a " + kind + " group"));
  }
}

}  // namespace

Hazard hazard_of(const Area& area) {
  if (area.zone == "none") return {};
  if (!area.zone && !area.level && area.protection == "none") return {};
  Hazard hazard{gas_zone(area) || gas_level(area) || area.gas_group.has_value(),
                dust_zone(area) || dust_level(area) || area.dust_group.has_value()};
  if (!hazard.any() && area.protection) {
    hazard.dust = one_of(k_dust_only, area.protection);
    hazard.gas = !hazard.dust;
  }
  return hazard;
}

std::vector<Fault> contradictions(const Area& area) {
  std::vector<Fault> faults;
  if (area.zone == "none" && area.level) {
    faults.push_back(clash("a place without a zone asks for no level", "level", area.level,
                           "a level only where there is a zone"));
  }
  if ((gas_zone(area) && dust_level(area)) || (dust_zone(area) && gas_level(area))) {
    faults.push_back(clash("zone " + *area.zone + " asks for a level of the other letter", "level",
                           area.level, gas_zone(area) ? "Ga, Gb or Gc" : "Da, Db or Dc"));
  }
  if (gas_zone(area) || dust_zone(area)) {
    check_kind(area, gas_zone(area), "zone " + *area.zone, faults);
  } else if (area.level && area.zone != "none") {
    check_kind(area, gas_level(area), "level " + *area.level, faults);
  } else if (area.zone != "none" && area.gas_group.has_value() != area.dust_group.has_value()) {
    const bool gas = area.gas_group.has_value();
    check_kind(area, gas, "group " + (gas ? *area.gas_group : *area.dust_group), faults);
  }
  if (area.ambient_min_degc && area.ambient_max_degc &&
      !at_most(*area.ambient_min_degc, *area.ambient_max_degc)) {
    faults.push_back(clash("the lowest ambient temperature is above the highest", "ambient_min_c",
                           plain(*area.ambient_min_degc),
                           "at most " + plain(*area.ambient_max_degc) + " degC"));
  }
  return faults;
}

}  // namespace cutback::area

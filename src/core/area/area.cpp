#include "cutback/area/area.hpp"

#include "core/area/assumed.hpp"
#include "cutback/compare.hpp"
#include "cutback/number.hpp"

namespace cutback::area {
namespace {

std::string word(const auto& value) { return std::string(to_string(value)); }

/// The hazard that zone, level or group say; none where none of them is given.
Hazard said_hazard(const Area& area) {
  if (area.zone && *area.zone != Zone::none) return hazard_of(*area.zone);
  if (area.level) return hazard_of(*area.level);
  if (area.gas_group) return Hazard::gas;
  return area.dust_group ? Hazard::dust : Hazard::none;
}

/// What said it, in words.
std::string hazard_words(const Area& area) {
  if (area.zone && *area.zone != Zone::none) return "zone " + word(*area.zone);
  if (area.level) return "level " + word(*area.level);
  return "group " + (area.gas_group ? word(*area.gas_group) : word(*area.dust_group));
}

Fault clash(std::string what, std::string where, std::string given, std::string allowed,
            std::string hint = {}) {
  return {.code = ErrorCode::contradiction,
          .what = std::move(what),
          .where = std::move(where),
          .given = std::move(given),
          .allowed = std::move(allowed),
          .hint = std::move(hint)};
}

/// Words that belong to the other kind of hazard, not to that of the place.
void check_kind(const Area& area, Hazard hazard, std::vector<Fault>& faults) {
  const bool gas = hazard == Hazard::gas;
  const std::string kind = word(hazard);
  const std::string what =
      hazard_words(area) + " is for " + kind + ", this is for " + (gas ? "dust" : "gas");
  if (area.level && hazard_of(*area.level) != hazard) {
    faults.push_back(clash("zone " + word(*area.zone) + " asks for a level of the other letter",
                           "level", word(*area.level), gas ? "Ga, Gb or Gc" : "Da, Db or Dc"));
  }
  if (area.protection && only_for(type_of(*area.protection)).value_or(hazard) != hazard) {
    faults.push_back(
        clash(what, "protection", word(*area.protection), "a type of protection for " + kind));
  }
  // A place with both is two questions: each has a zone of its own, and one zone can be given.
  if (gas && area.dust_group) {
    faults.push_back(clash(what, "dust_group", word(*area.dust_group), "a gas group",
                           "ask for a place of gas and dust twice, once for each"));
  }
  if (!gas && area.gas_group) {
    faults.push_back(clash(what, "gas_group", word(*area.gas_group), "a dust group",
                           "ask for a place of gas and dust twice, once for each"));
  }
}

}  // namespace

bool is_asked(const Area& area) {
  return area.protection || area.zone || area.level || area.gas_group || area.dust_group ||
         area.volume_cm3 || area.ignition_source;
}

Hazard hazard_of(const Area& area) {
  if (!is_asked(area) || area.zone == Zone::none) return Hazard::none;
  if (const Hazard said = said_hazard(area); said != Hazard::none) return said;
  const auto only = area.protection ? only_for(type_of(*area.protection)) : std::nullopt;
  return only.value_or(Hazard::gas);
}

std::vector<Fault> contradictions(const Area& area) {
  std::vector<Fault> faults;
  if (area.zone == Zone::none) {
    if (area.level) {
      faults.push_back(clash("a place without a zone asks for no level", "level", word(*area.level),
                             "a level only where there is a zone"));
    }
  } else if (const Hazard hazard = said_hazard(area); hazard != Hazard::none) {
    check_kind(area, hazard, faults);
  }
  if (area.ambient_min_degc && area.ambient_max_degc &&
      !at_most(*area.ambient_min_degc, *area.ambient_max_degc)) {
    faults.push_back(clash("the lowest ambient temperature is above the highest", "ambient_min_c",
                           plain(*area.ambient_min_degc),
                           "at most " + plain(*area.ambient_max_degc) + " degC"));
  }
  return faults;
}

std::string said_beside_plain(const Area& area) {
  if (area.zone != Zone::none) return {};
  std::string text;
  const auto add = [&](const std::string& words) { text += (text.empty() ? "" : ", ") + words; };
  if (area.protection && *area.protection != Protection::none) {
    add("enclosure " + word(*area.protection));
  }
  if (area.gas_group) add("group " + word(*area.gas_group));
  if (area.dust_group) add("group " + word(*area.dust_group));
  return text;
}

std::vector<Assumption> assumptions_of(const Area& area) {
  std::vector<Assumption> list;
  if (!is_asked(area)) return list;
  const auto take = [&](const std::optional<double>& given, const char* fact,
                        const std::string& words, double degc, const char* why) {
    if (!given) list.push_back({fact, words + plain(degc) + " degC", why});
  };
  constexpr const char* k_ambient =
      "the ambient of equipment that is not marked for another (IEC 60079-0)";
  constexpr const char* k_heat = "above it the equipment is marked (IEC 60079-0, 16.6)";
  // Zone and level state one thing: the one that is given stands for the other.
  if (area.zone && *area.zone != Zone::none && !area.level) {
    list.push_back(
        {"level", "what zone " + word(*area.zone) + " asks for", "IEC 60079-14, Table 1"});
  }
  if (area.level && !area.zone) {
    list.push_back(
        {"zone", "the one that asks for level " + word(*area.level), "IEC 60079-14, Table 1"});
  }
  take(area.ambient_min_degc, "ambient_min_c", "", detail::ambient_min_degc(area), k_ambient);
  take(area.ambient_max_degc, "ambient_max_c", "", detail::ambient_max_degc(area), k_ambient);
  const auto take_heat = [&](const std::optional<double>& given, const char* fact, double degc) {
    // A hotter place says by itself what its points come to.
    if (at_most(area.ambient_max_degc.value_or(degc), degc)) {
      take(given, fact, "at most ", degc, k_heat);
    }
  };
  take_heat(area.entry_temp_degc, "entry_temp_c", k_entry_degc);
  take_heat(area.branch_temp_degc, "branch_temp_c", k_branching_degc);
  if (!area.cable_max_degc) {
    list.push_back({"cable_max_c", "what entry, branching and place come to",
                    "up to 70 and 80 degC nothing of a cable is asked (IEC 60079-0, 16.6)"});
  }
  return list;
}

}  // namespace cutback::area

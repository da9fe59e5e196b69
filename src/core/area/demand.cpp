#include "cutback/area/demand.hpp"

#include <algorithm>

#include "core/area/chart.hpp"
#include "core/area/source.hpp"
#include "cutback/compare.hpp"
#include "cutback/number.hpp"

namespace cutback::area {
namespace {

using detail::from_memory;
using detail::source_of;
using detail::Walk;
using tables::Standards;
using tables::Table;

constexpr const char* k_check = "check against the standard";

std::string check_note(const std::string& note) {
  return note.empty() ? k_check : note + "; " + k_check;
}

/// Everything that the demands are worked out from.
struct Place {
  const Area& area;
  const cable::Cable& cable;
  const Standards& standards;
  Hazard hazard;
  std::string type;  ///< of protection of the enclosure, without the letter of its level
};

/// The type of a marking: `db` is of type d. A word that is not in the table is its own type.
std::string type_of(const Standards& standards, const std::string& mark) {
  const Table& marks = standards.table("protection_marks");
  const auto row = marks.find("mark", mark);
  return row ? marks.text(*row, "type") : mark;
}

// ---- level ----------------------------------------------------------------------------------

std::optional<int> rank_of(const Standards& standards, std::string_view level) {
  const Table& zones = standards.table("zone_level");
  const auto row = zones.find("level", level);
  if (!row) return std::nullopt;
  return static_cast<int>(zones.number(*row, "rank"));
}

/// The level that the place's zone or its stated level asks for, by the letter of the hazard.
struct NeededLevel {
  std::optional<std::string> by_zone;
  std::optional<std::string> stated;
  [[nodiscard]] bool known() const { return by_zone || stated; }
};

NeededLevel needed_level(const Place& place, char letter) {
  NeededLevel needed;
  const Table& zones = place.standards.table("zone_level");
  if (place.area.zone) {
    const auto row = zones.find("zone", *place.area.zone);
    if (row && zones.text(*row, "level").front() == letter)
      needed.by_zone = zones.text(*row, "level");
  }
  if (place.area.level && place.area.level->front() == letter) needed.stated = place.area.level;
  return needed;
}

/// The lowest rank that may serve; 0 where nothing is known.
int least_rank(const Place& place, char letter) {
  const NeededLevel needed = needed_level(place, letter);
  if (needed.stated) return rank_of(place.standards, *needed.stated).value_or(0);
  if (needed.by_zone) return rank_of(place.standards, *needed.by_zone).value_or(0);
  return 0;
}

MarkDemand level_demand(const Place& place, char letter) {
  const Table& zones = place.standards.table("zone_level");
  const NeededLevel needed = needed_level(place, letter);
  MarkDemand demand;
  demand.source = source_of(zones, std::size_t{0});
  if (needed.stated) {
    demand.needed = "level " + *needed.stated;
  } else if (needed.by_zone) {
    demand.needed = "level " + *needed.by_zone + " for zone " + *place.area.zone;
  } else {
    demand.needed = std::string("a level for ") + (letter == 'G' ? "gas" : "dust");
  }
  const int least = least_rank(place, letter);
  const int sure = needed.by_zone ? rank_of(place.standards, *needed.by_zone).value_or(0) : least;
  for (std::size_t i = 0; i < zones.rows.size(); ++i) {
    const std::string level = zones.text(i, "level");
    const int rank = static_cast<int>(zones.number(i, "rank"));
    if (level.front() != letter || rank < least) continue;
    Serves serves{level, Verdict::fits, {}, demand.source};
    if (!needed.known()) {
      serves.verdict = Verdict::not_known;
      serves.note = std::string("neither zone nor level is given for the ") +
                    (letter == 'G' ? "gas" : "dust");
    } else if (rank < sure) {
      serves.verdict = Verdict::not_known;
      serves.note = check_note("a stated level below that of zone " + *place.area.zone);
    }
    demand.serves.push_back(serves);
  }
  return demand;
}

// ---- group ----------------------------------------------------------------------------------

/// Markings that serve `group`; where it is not known, what serves the highest group serves, and
/// of the others nothing is known.
MarkDemand group_demand(const Table& table, const std::optional<std::string>& group,
                        const std::string& highest, const std::string& kind) {
  MarkDemand demand;
  demand.needed = group ? kind + " group " + *group : "a " + kind + " group";
  demand.source = table.source();
  const std::string place = group.value_or(highest);
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    if (table.text(i, "place") != place) continue;
    Serves serves{table.text(i, "marking"), Verdict::fits, {}, source_of(table, i)};
    if (from_memory(table, i)) {
      serves.verdict = Verdict::not_known;
      serves.note = check_note(table.text(i, "note"));
    }
    demand.serves.push_back(serves);
  }
  if (group) return demand;
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    demand.serves.push_back({table.text(i, "marking"), Verdict::not_known,
                             "the " + kind + " group of the place is not given", demand.source});
  }
  return demand;
}

// ---- protection -----------------------------------------------------------------------------

/// Whether the level letter of a marking is too low for the place.
bool letter_too_low(const Place& place, const Table& marks, std::size_t row) {
  const std::string level = marks.text(row, "level");
  if (level.empty()) return false;
  return rank_of(place.standards, level).value_or(0) < least_rank(place, level.front());
}

Serves protection_mark(const Place& place, const Table& matrix, std::size_t row,
                       const std::string& mark) {
  const std::string result = matrix.text(row, "result");
  const std::string note = matrix.text(row, "note");
  Serves serves{mark, Verdict::fits, note, source_of(matrix, row)};
  const bool like_on_like = matrix.text(row, "gland") == place.type;
  if (result == "documents" || (from_memory(matrix, row) && !like_on_like)) {
    serves.verdict = Verdict::not_known;
    serves.note = check_note(note);
  } else if (like_on_like && note.empty()) {
    serves.note = "like on like";
  }
  return serves;
}

MarkDemand protection_demand(const Place& place) {
  const Table& matrix = place.standards.table("gland_protection");
  const Table& marks = place.standards.table("protection_marks");
  const std::string hazard = place.hazard.gas ? "gas" : "dust";
  MarkDemand demand;
  demand.source = source_of(matrix, to_string(tables::Status::from_memory));
  demand.needed = place.area.protection ? "an enclosure of type " + place.type
                                        : "an enclosure whose type of protection is not given";
  if (place.area.protection == "none") {
    demand.needed = "an enclosure without a type of protection";
    demand.otherwise = "such an enclosure is not for a hazardous place";
    return demand;
  }
  for (std::size_t m = 0; m < marks.rows.size(); ++m) {
    const std::string mark = marks.text(m, "mark");
    if (!place.area.protection) {
      demand.serves.push_back(
          {mark, Verdict::not_known, "give the protection of the enclosure", demand.source});
      continue;
    }
    if (letter_too_low(place, marks, m)) continue;
    for (std::size_t i = 0; i < matrix.rows.size(); ++i) {
      if (matrix.text(i, "enclosure") != place.type) continue;
      const std::string gland = matrix.text(i, "gland");
      const std::string where = matrix.text(i, "place");
      if (matrix.text(i, "result") == "certificate") {
        demand.serves.push_back(
            {mark, Verdict::not_known, matrix.text(i, "note"), source_of(matrix, i)});
      } else if (where == hazard && gland == marks.text(m, "type")) {
        if (matrix.text(i, "result") == "no") {
          demand.otherwise = matrix.text(i, "note");
        } else {
          demand.serves.push_back(protection_mark(place, matrix, i, mark));
        }
      }
    }
  }
  return demand;
}

// ---- ingress --------------------------------------------------------------------------------

std::vector<IngressDemand> given_ingress(const Place& place) {
  std::vector<IngressDemand> demands;
  if (!place.area.ip) return demands;
  for (const std::string& code : ip_codes(*place.area.ip)) {
    demands.push_back({.needed = "IP" + code + " for the place",
                       .source = place.standards.table("ip_water").source(),
                       .rungs = {{code, Verdict::fits, {}}}});
  }
  return demands;
}

/// The least that a type of protection asks for in gas. The figure for any opening is the one
/// that passes without doubt; a lower one is from memory.
std::optional<IngressDemand> gas_ingress(const Place& place) {
  const Table& table = place.standards.table("ingress_minimum");
  const std::string sure = table.text(table.row("protection", "any"), "ip");
  if (!place.area.protection) {
    return IngressDemand{
        .needed = "the least IP of the enclosure's protection, which is not given",
        .source = source_of(table, std::size_t{0}),
        .rungs = {{sure, Verdict::fits, {}},
                  {"XX", Verdict::not_known, "give the protection of the enclosure"}}};
  }
  const std::string parts = place.area.bare_live_parts == false ? "insulated" : "bare";
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    const std::string row_parts = table.text(i, "live_parts");
    if (table.text(i, "protection") != place.type) continue;
    if (row_parts != "any" && row_parts != parts) continue;
    const std::string code = table.text(i, "ip");
    IngressDemand demand{.needed = "IP" + code + " for type " + place.type,
                         .source = source_of(table, i),
                         .rungs = {{sure, Verdict::fits, {}}}};
    if (row_parts != "any") demand.needed += " with " + row_parts + " live parts";
    if (row_parts != "any" && !place.area.bare_live_parts) demand.needed += " (not known)";
    if (code != sure) demand.rungs.push_back({code, Verdict::not_known, k_check});
    return demand;
  }
  return std::nullopt;
}

/// The least against dust. IP6X passes without doubt, a lower figure is from memory.
IngressDemand dust_ingress(const Place& place) {
  const Table& table = place.standards.table("dust_ingress");
  const NeededLevel needed = needed_level(place, 'D');
  // The stricter of the two where a stated level differs from that of the zone.
  std::string level = needed.stated.value_or(needed.by_zone.value_or("Da"));
  if (needed.by_zone &&
      rank_of(place.standards, *needed.by_zone) > rank_of(place.standards, level)) {
    level = *needed.by_zone;
  }
  const std::string group = place.area.dust_group.value_or("IIIC");
  const std::string sure = "6X";
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    if (table.text(i, "level") != level || table.text(i, "group") != group) continue;
    const std::string code = table.text(i, "ip");
    IngressDemand demand{.needed = "IP" + code + " for level " + level + " and group " + group,
                         .source = source_of(table, i),
                         .rungs = {{sure, Verdict::fits, {}}}};
    if (!needed.known() || !place.area.dust_group) demand.needed += " (not both known)";
    if (code != sure) demand.rungs.push_back({code, Verdict::not_known, k_check});
    return demand;
  }
  return {.needed = "IP" + sure + " against dust",
          .source = table.source(),
          .rungs = {{sure, Verdict::fits, {}}}};
}

std::vector<IngressDemand> ingress_demands(const Place& place) {
  std::vector<IngressDemand> demands = given_ingress(place);
  if (place.hazard.gas) {
    if (auto demand = gas_ingress(place)) demands.push_back(std::move(*demand));
  }
  if (place.hazard.dust) demands.push_back(dust_ingress(place));
  return demands;
}

// ---- temperature ----------------------------------------------------------------------------

/// Whether the cable stands the heat at the entry and where the cores branch.
void judge_cable(const Area& area, const Table& table, TemperatureDemand& demand) {
  struct Point {
    const char* name;
    const std::optional<double>& degc;
  };
  for (const Point& point :
       {Point{"entry", area.entry_temp_degc}, Point{"branching", area.branch_temp_degc}}) {
    if (!point.degc) continue;
    const std::string at = std::string(point.name) + " point at " + plain(*point.degc) + " degC";
    const double limit = table.number(table.row("point", point.name), "above_degc");
    if (!area.cable_max_degc) {
      // The limit is from memory: a figure below it does not settle the question either.
      demand.cable = worst(demand.cable, Verdict::not_known);
      demand.cable_says += "; " + at +
                           (at_most(*point.degc, limit) ? " is not above " : " is above ") +
                           plain(limit) + " degC: give what the cable stands (cable_max_c)";
    } else if (!at_most(*point.degc, *area.cable_max_degc)) {
      demand.cable = Verdict::no_fit;
      demand.cable_says +=
          "; " + at + ", the cable stands " + plain(*area.cable_max_degc) + " degC";
    }
  }
}

std::optional<TemperatureDemand> temperature_demand(const Place& place) {
  const Area& area = place.area;
  if (!area.ambient_min_degc && !area.ambient_max_degc && !area.entry_temp_degc &&
      !area.branch_temp_degc) {
    return std::nullopt;
  }
  const Table& table = place.standards.table("temperature_thresholds");
  TemperatureDemand demand;
  demand.min_degc = area.ambient_min_degc;
  demand.max_degc = area.ambient_max_degc;
  if (area.entry_temp_degc) {
    demand.max_degc =
        std::max(*area.entry_temp_degc, demand.max_degc.value_or(*area.entry_temp_degc));
  }
  demand.source = table.source();
  judge_cable(area, table, demand);
  return demand;
}

// ---- sealing --------------------------------------------------------------------------------

/// The gas zone by its number: the stricter of the zone and the one of the level.
std::optional<int> gas_zone_of(const Place& place) {
  const NeededLevel needed = needed_level(place, 'G');
  if (!needed.known()) return std::nullopt;
  int rank = 0;
  for (const auto& level : {needed.by_zone, needed.stated}) {
    if (level) rank = std::max(rank, rank_of(place.standards, *level).value_or(0));
  }
  return 3 - rank;
}

struct Chart {
  RuleSet rules;
  std::string_view table;
};
constexpr Chart k_charts[] = {{RuleSet::iec_60079_14_2007, "flameproof_entry_2007"},
                              {RuleSet::iec_60079_14_2013, "flameproof_entry_2013"}};

/// One walk for each edition that counts.
std::vector<Walk> walks(const Place& place, bool hopeful) {
  const detail::EntryFacts facts{place.area, place.cable, gas_zone_of(place)};
  std::vector<Walk> list;
  for (const Chart& chart : k_charts) {
    if (place.area.rules != RuleSet::strict && place.area.rules != chart.rules) continue;
    list.push_back(detail::walk_chart(place.standards, chart.table, facts, hopeful));
  }
  return list;
}

bool demands_barrier(const std::vector<Walk>& list) {
  return std::any_of(list.begin(), list.end(), [](const Walk& walk) { return walk.barrier; });
}

/// The facts that are not known and stand on the way to a laxer result.
std::vector<std::string> facts_that_matter(const Place& place) {
  std::vector<std::string> fields;
  const std::vector<Walk> hopeful = walks(place, true);
  if (!demands_barrier(hopeful)) {
    for (const Walk& walk : hopeful) {
      for (const std::string& field : walk.unknown) {
        if (std::find(fields.begin(), fields.end(), field) == fields.end()) fields.push_back(field);
      }
    }
  }
  // An enclosure that is not flameproof asks for no sealing at all.
  if (!place.area.protection) fields.emplace_back("protection");
  return fields;
}

void put_reasons(const std::vector<Walk>& list, Demand& demand) {
  const bool barrier = demand.sealing == SealingDemand::barrier;
  std::vector<std::string> reasons;
  for (const Walk& walk : list) {
    for (const Answer& answer : walk.path) {
      // Both editions ask the same of the cable.
      const bool asked = std::any_of(demand.path.begin(), demand.path.end(), [&](const Answer& a) {
        return a.question == answer.question && a.source == answer.source;
      });
      if (!asked) demand.path.push_back(answer);
    }
    if (walk.barrier != barrier) continue;
    if (std::find(reasons.begin(), reasons.end(), walk.reason) == reasons.end()) {
      reasons.push_back(walk.reason);
    }
    demand.source += (demand.source.empty() ? "" : "; ") + walk.source;
  }
  demand.says = barrier ? "the gland must seal round the cores: "
                        : "a gland that seals on the sheath or bedding is allowed: solid cable, ";
  for (std::size_t i = 0; i < reasons.size(); ++i) demand.says += (i > 0 ? "; " : "") + reasons[i];
}

void put_sealing(const Place& place, Demand& demand) {
  const bool flameproof = place.type == "d" || !place.area.protection;
  if (!place.hazard.gas || !flameproof) return;
  const Table& zones = place.standards.table("zone_level");
  if (gas_zone_of(place) == 0) {
    demand.sealing = SealingDemand::barrier;
    demand.refused = place.type == "d";
    demand.says = "zone 0 asks for level Ga, which an ordinary flameproof entry does not have";
    demand.source = source_of(zones, std::size_t{0});
    demand.path.push_back({"is the place zone 0?", true, "given", demand.source});
    return;
  }
  const std::vector<Walk> list = walks(place, false);
  demand.sealing = demands_barrier(list) ? SealingDemand::barrier : SealingDemand::compression;
  // One edition that allows from memory is enough: strict is never laxer than either.
  demand.allowed_from_memory =
      demand.sealing == SealingDemand::compression &&
      std::any_of(list.begin(), list.end(), [](const Walk& walk) { return walk.from_memory; });
  put_reasons(list, demand);
  if (demand.sealing == SealingDemand::barrier) demand.would_change = facts_that_matter(place);
}

}  // namespace

Demand make_demand(const Area& area, const cable::Cable& cable, const Standards& standards) {
  std::vector<Fault> faults = contradictions(area);
  if (!faults.empty()) throw InputError(std::move(faults));
  const Place place{area, cable, standards, hazard_of(area),
                    type_of(standards, area.protection.value_or(""))};
  Demand demand;
  demand.water_rules = water_rules(standards);
  demand.ingress = ingress_demands(place);
  demand.temperature = temperature_demand(place);
  if (!place.hazard.any()) return demand;
  demand.protection.push_back(protection_demand(place));
  if (place.hazard.gas) {
    demand.level.push_back(level_demand(place, 'G'));
    demand.gas_group.push_back(
        group_demand(standards.table("gas_groups"), area.gas_group, "IIC", "gas"));
  }
  if (place.hazard.dust) {
    demand.level.push_back(level_demand(place, 'D'));
    demand.dust_group.push_back(
        group_demand(standards.table("dust_groups"), area.dust_group, "IIIC", "dust"));
  }
  put_sealing(place, demand);
  return demand;
}

}  // namespace cutback::area

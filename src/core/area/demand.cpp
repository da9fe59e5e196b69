#include "cutback/area/demand.hpp"

#include <algorithm>

#include "core/area/assumed.hpp"
#include "core/area/chart.hpp"
#include "core/area/source.hpp"
#include "cutback/compare.hpp"
#include "cutback/number.hpp"

namespace cutback::area {
namespace {

using detail::from_memory;
using detail::maybe_in;
using detail::source_of;
using detail::value_in;
using detail::Walk;
using tables::Standards;
using tables::Table;

constexpr const char* k_check = "check against the standard";

std::string check_note(const std::string& note) {
  return note.empty() ? k_check : note + "; " + k_check;
}

std::string word(const auto& value) { return std::string(to_string(value)); }

/// Everything that the demands are worked out from.
struct PlaceFacts {
  const Area& area;
  const cable::Cable& cable;
  const Standards& standards;
  Hazard hazard;
  bool asked;
  [[nodiscard]] bool is(Type type) const {
    return area.protection && type_of(*area.protection) == type;
  }
};

// ---- level ----------------------------------------------------------------------------------

int rank_of(const Standards& standards, Level level) {
  const Table& zones = standards.table("zone_level");
  for (std::size_t i = 0; i < zones.rows.size(); ++i) {
    if (value_in<Level>(zones, i, "level") == level)
      return static_cast<int>(zones.number(i, "rank"));
  }
  return 0;
}

/// The level that the place's zone or its stated level asks for.
struct NeededLevel {
  std::optional<Level> by_zone;
  std::optional<Level> stated;
  int least = 0;  ///< the lowest rank that may serve; 0 where nothing is known
  int sure = 0;   ///< and the one that serves without doubt: a stated level may be below its zone's
  [[nodiscard]] bool known() const { return by_zone || stated; }
};

NeededLevel needed_level(const PlaceFacts& place) {
  NeededLevel needed;
  const Table& zones = place.standards.table("zone_level");
  for (std::size_t i = 0; i < zones.rows.size(); ++i) {
    if (value_in<Zone>(zones, i, "zone") != place.area.zone) continue;
    needed.by_zone = value_in<Level>(zones, i, "level");
    needed.sure = static_cast<int>(zones.number(i, "rank"));
  }
  needed.stated = place.area.level;
  needed.least = needed.stated ? rank_of(place.standards, *needed.stated) : needed.sure;
  if (!needed.by_zone) needed.sure = needed.least;
  return needed;
}

std::string level_words(const PlaceFacts& place, const NeededLevel& needed) {
  if (needed.stated) return "level " + word(*needed.stated);
  return "level " + word(*needed.by_zone) + " for zone " + word(*place.area.zone);
}

std::string below_zone(const PlaceFacts& place) {
  return check_note("a stated level below that of zone " + word(*place.area.zone));
}

MarkDemand<Level> level_demand(const PlaceFacts& place) {
  const Table& zones = place.standards.table("zone_level");
  const NeededLevel needed = needed_level(place);
  MarkDemand<Level> demand;
  demand.source = source_of(zones, std::size_t{0});
  if (!needed.known()) {
    demand.needed = place.hazard == Hazard::none ? "a level" : "a level for " + word(place.hazard);
    demand.not_given = {"neither the zone nor the level of the place is given (zone)", "zone",
                        "zone"};
    return demand;
  }
  demand.needed = level_words(place, needed);
  for (std::size_t i = 0; i < zones.rows.size(); ++i) {
    const auto level = value_in<Level>(zones, i, "level");
    const int rank = static_cast<int>(zones.number(i, "rank"));
    if (hazard_of(level) != place.hazard || rank < needed.least) continue;
    Serves<Level> serves{level, Verdict::fits, {}, demand.source};
    if (rank < needed.sure) {
      serves.verdict = Verdict::not_known;
      serves.note = below_zone(place);
    }
    demand.serves.push_back(serves);
  }
  return demand;
}

// ---- group ----------------------------------------------------------------------------------

/// Markings that serve the group of the place.
template <class Mark, class Group>
MarkDemand<Mark> group_demand(const Table& table, const std::optional<Group>& group,
                              const std::string& kind) {
  MarkDemand<Mark> demand;
  demand.source = table.source();
  if (!group) {
    demand.needed = "a " + kind + " group";
    const std::string_view key = std::is_same_v<Group, GasGroup> ? "gas_group" : "dust_group";
    demand.not_given = {
        "the " + kind + " group of the place is not given (" + std::string(key) + ")",
        kind + " group", key};
    return demand;
  }
  demand.needed = kind + " group " + word(*group);
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    if (value_in<Group>(table, i, "place") != *group) continue;
    Serves<Mark> serves{
        value_in<Mark>(table, i, "marking"), Verdict::fits, {}, source_of(table, i)};
    if (from_memory(table, i)) {
      serves.verdict = Verdict::not_known;
      serves.note = check_note(table.text(i, "note"));
    }
    demand.serves.push_back(std::move(serves));
  }
  return demand;
}

// ---- protection -----------------------------------------------------------------------------

/// The row of a marking's level for the hazard of the place; nothing for a type that is not for it.
std::optional<std::size_t> level_row(const PlaceFacts& place, const Table& levels,
                                     Protection mark) {
  for (std::size_t i = 0; i < levels.rows.size(); ++i) {
    if (value_in<Protection>(levels, i, "mark") == mark &&
        value_in<Hazard>(levels, i, "hazard") == place.hazard) {
      return i;
    }
  }
  return std::nullopt;
}

/// Whether the level that a gland's marking stands for is too low for the place.
bool letter_too_low(const PlaceFacts& place, const NeededLevel& needed, Protection mark) {
  const Table& levels = place.standards.table("protection_levels");
  const auto row = level_row(place, levels, mark);
  if (!row) return false;
  const auto level = maybe_in<Level>(levels, *row, "level");
  return level && rank_of(place.standards, *level) < needed.least;
}

/// Whether a gland with this marking would take from the level that its enclosure has.
bool below_enclosure(const PlaceFacts& place, Protection mark) {
  const Table& levels = place.standards.table("protection_levels");
  const auto of = [&](Protection one) -> std::optional<int> {
    const auto row = level_row(place, levels, one);
    const auto level = row ? maybe_in<Level>(levels, *row, "level") : std::nullopt;
    return level ? std::optional(rank_of(place.standards, *level)) : std::nullopt;
  };
  const auto own = of(mark);
  const auto enclosure = of(*place.area.protection);
  return own && enclosure && *own < *enclosure;
}

/// Whether the enclosure's own type serves the place. Nothing where it has none, or where it or the
/// level of the place is not given: other demands ask for that.
std::optional<EnclosureFinding> enclosure_finding(const PlaceFacts& place) {
  const NeededLevel needed = needed_level(place);
  if (!place.area.protection || place.is(Type::none) || !needed.known()) return std::nullopt;
  const Table& levels = place.standards.table("protection_levels");
  const auto row = level_row(place, levels, *place.area.protection);
  if (!row) {
    throw InternalError("table protection_levels has no row for " + word(*place.area.protection));
  }
  const std::string type = "an enclosure of type " + word(*place.area.protection);
  const std::string asked = level_words(place, needed);
  const auto level = maybe_in<Level>(levels, *row, "level");
  EnclosureFinding finding{Verdict::fits, {}, source_of(levels, *row)};
  if (!level) {
    finding.verdict = Verdict::not_known;
    finding.says = type + " for " + asked + ": " + levels.text(*row, "note");
    return finding;
  }
  finding.says = type + " has level " + word(*level) + ": it ";
  const int rank = rank_of(place.standards, *level);
  if (rank < needed.least) {
    finding.verdict = Verdict::no_fit;
    finding.says += "does not serve " + asked + ", unless a risk assessment of the place says so";
  } else if (rank < needed.sure) {
    finding.verdict = Verdict::not_known;
    finding.says += "may serve " + asked + ": " + below_zone(place);
  } else if (from_memory(levels, *row)) {
    finding.verdict = Verdict::not_known;
    finding.says += "may serve " + asked + ": " + check_note(levels.text(*row, "note"));
  } else {
    finding.says += "serves " + asked;
  }
  return finding;
}

/// What the table of pairs says of a gland on an enclosure.
enum class Pair { yes, no, documents, certificate };
constexpr auto all_values(Pair) {
  using enum Pair;
  return std::array{yes, no, documents, certificate};
}
constexpr std::string_view to_string(Pair pair) {
  constexpr std::array<std::string_view, 4> k_words_of_pairs{"yes", "no", "documents",
                                                             "certificate"};
  return k_words_of_pairs[static_cast<std::size_t>(pair)];
}

/// One row of that table.
struct PairRow {
  std::size_t row;
  Pair pair;
  std::optional<Type> gland;  ///< any where the cell is empty
};

/// The rows for this enclosure and hazard.
std::vector<PairRow> pairs_of(const PlaceFacts& place, const Table& matrix) {
  std::vector<PairRow> rows;
  for (std::size_t i = 0; i < matrix.rows.size(); ++i) {
    if (!place.is(value_in<Type>(matrix, i, "enclosure"))) continue;
    if (maybe_in<Hazard>(matrix, i, "place").value_or(place.hazard) != place.hazard) continue;
    rows.push_back({i, value_in<Pair>(matrix, i, "result"), maybe_in<Type>(matrix, i, "gland")});
  }
  return rows;
}

Serves<Protection> protection_mark(const PlaceFacts& place, const Table& matrix,
                                   const PairRow& pair, Protection mark) {
  const std::string note = matrix.text(pair.row, "note");
  Serves<Protection> serves{mark, Verdict::fits, note, source_of(matrix, pair.row)};
  const bool like_on_like = pair.gland && place.is(*pair.gland);
  if (pair.pair == Pair::certificate) {
    serves.verdict = Verdict::not_known;
  } else if (pair.pair == Pair::documents || (from_memory(matrix, pair.row) && !like_on_like)) {
    serves.verdict = Verdict::not_known;
    serves.note = check_note(note);
  } else if (below_enclosure(place, mark)) {
    serves.verdict = Verdict::not_known;
    serves.note = check_note("its level is below that of the enclosure, and takes from it");
  } else if (like_on_like && note.empty()) {
    serves.note = "like on like";
  }
  return serves;
}

MarkDemand<Protection> protection_demand(const PlaceFacts& place) {
  const Table& matrix = place.standards.table("gland_protection");
  MarkDemand<Protection> demand;
  demand.source = source_of(matrix, matrix.status);
  if (!place.area.protection) {
    demand.needed = "an enclosure in a hazardous place";
    demand.not_given = {"the type of protection of the enclosure is not given (protection)",
                        "protection of the enclosure", "protection"};
    return demand;
  }
  const NeededLevel needed = needed_level(place);
  if (place.is(Type::none)) {
    demand.needed = "an enclosure without a type of protection";
    if (!needed.known() && !place.area.gas_group && !place.area.dust_group) {
      demand.not_given = {"whether the place is hazardous is not given (zone; none: a plain room)",
                          "zone", "zone"};
      return demand;
    }
    demand.otherwise = "such an enclosure is not for a hazardous place";
    return demand;
  }
  demand.needed = "an enclosure of type " + word(type_of(*place.area.protection));
  const std::vector<PairRow> pairs = pairs_of(place, matrix);
  for (const PairRow& pair : pairs) {
    if (pair.pair == Pair::no) demand.otherwise = matrix.text(pair.row, "note");
  }
  bool too_low = false;
  for (const Protection mark : k_part_protections) {
    for (const PairRow& pair : pairs) {
      if (pair.pair == Pair::no || pair.gland.value_or(type_of(mark)) != type_of(mark)) continue;
      if (letter_too_low(place, needed, mark)) {
        too_low = true;
        continue;
      }
      demand.serves.push_back(protection_mark(place, matrix, pair, mark));
    }
  }
  if (too_low && (demand.serves.empty() || demand.otherwise.empty())) {
    demand.otherwise =
        (demand.serves.empty() ? "no such type has " : "it has no marking of that type with ") +
        level_words(place, needed);
  }
  return demand;
}

// ---- ingress --------------------------------------------------------------------------------

constexpr IpCode k_ip6x{.solids = 6, .water = std::nullopt};

IpCode code_in(const Table& table, std::size_t row) {
  if (const auto code = parse_ip_code(table.text(row, "ip"))) return *code;
  throw InternalError("table " + table.id + " has no IP code in row " + std::to_string(row + 1));
}

std::vector<IngressDemand> given_ingress(const PlaceFacts& place) {
  std::vector<IngressDemand> demands;
  const std::string source = place.standards.table("ip_water").source();
  if (place.area.ip.empty() && place.asked) {
    demands.push_back({.needed = "an IP for the place",
                       .source = source,
                       .not_given = {"what the place asks for is not given (ip)", "IP", "ip"},
                       .rungs = {}});
  }
  for (const IpCode& code : place.area.ip) {
    demands.push_back({.needed = "IP" + to_text(code) + " for the place",
                       .source = source,
                       .not_given = {},
                       .rungs = {{code, Verdict::fits, {}}}});
  }
  return demands;
}

/// What the least protection of a type depends on.
enum class LiveParts { any, bare, insulated };
constexpr auto all_values(LiveParts) {
  using enum LiveParts;
  return std::array{any, bare, insulated};
}
constexpr std::string_view to_string(LiveParts parts) {
  constexpr std::array<std::string_view, 3> k_words_of_parts{"any", "bare", "insulated"};
  return k_words_of_parts[static_cast<std::size_t>(parts)];
}

/// The least that a type of protection asks for in gas. The figure for any opening is the one
/// that passes without doubt; a lower one is from memory.
std::optional<IngressDemand> gas_ingress(const PlaceFacts& place) {
  const Table& table = place.standards.table("ingress_minimum");
  const LiveParts parts =
      place.area.bare_live_parts == false ? LiveParts::insulated : LiveParts::bare;
  std::optional<IpCode> sure;
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    const auto type = maybe_in<Type>(table, i, "protection");
    const IpCode code = code_in(table, i);
    if (!type) sure = code;
    const auto row_parts = value_in<LiveParts>(table, i, "live_parts");
    if (!type || !place.is(*type) || !sure) continue;
    if (row_parts != LiveParts::any && row_parts != parts) continue;
    IngressDemand demand{.needed = "IP" + to_text(code) + " for type " + word(*type),
                         .source = source_of(table, i),
                         .not_given = {},
                         .rungs = {{*sure, Verdict::fits, {}}}};
    if (row_parts != LiveParts::any) {
      demand.needed += " with " + word(row_parts) + " live parts";
      if (!place.area.bare_live_parts) demand.needed += " (not known)";
    }
    if (code != *sure) demand.rungs.push_back({code, Verdict::not_known, k_check});
    return demand;
  }
  return std::nullopt;
}

/// The least against dust. IP6X passes without doubt, a lower figure is from memory.
IngressDemand dust_ingress(const PlaceFacts& place) {
  const Table& table = place.standards.table("dust_ingress");
  const NeededLevel needed = needed_level(place);
  // The stricter of the two where a stated level differs from that of the zone.
  Level level = needed.stated.value_or(needed.by_zone.value_or(Level::Da));
  if (needed.by_zone &&
      rank_of(place.standards, *needed.by_zone) > rank_of(place.standards, level)) {
    level = *needed.by_zone;
  }
  const DustGroup group = place.area.dust_group.value_or(DustGroup::IIIC);
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    if (value_in<Level>(table, i, "level") != level ||
        value_in<DustGroup>(table, i, "group") != group) {
      continue;
    }
    const IpCode code = code_in(table, i);
    IngressDemand demand{
        .needed = "IP" + to_text(code) + " for level " + word(level) + " and group " + word(group),
        .source = source_of(table, i),
        .not_given = {},
        .rungs = {{k_ip6x, Verdict::fits, {}}}};
    if (!needed.known() || !place.area.dust_group) demand.needed += " (not both known)";
    if (code != k_ip6x) demand.rungs.push_back({code, Verdict::not_known, k_check});
    return demand;
  }
  throw InternalError("table dust_ingress has no row for " + word(level));
}

std::vector<IngressDemand> ingress_demands(const PlaceFacts& place) {
  std::vector<IngressDemand> demands = given_ingress(place);
  if (place.hazard == Hazard::gas) {
    if (auto demand = gas_ingress(place)) demands.push_back(std::move(*demand));
  }
  if (place.hazard == Hazard::dust) demands.push_back(dust_ingress(place));
  return demands;
}

// ---- temperature ----------------------------------------------------------------------------

/// Whether the cable stands the heat at the entry, where the cores branch, and in the place.
void judge_cable(const Area& area, const Table& table, bool asked, TemperatureDemand& demand) {
  struct Point {
    const char* name;
    const std::optional<double>& degc;
    std::string_view key;
  };
  const auto say = [&](Verdict verdict, const std::string& text) {
    demand.cable = worst(demand.cable, verdict);
    demand.cable_says += "; " + text;
  };
  const std::string stands =
      area.cable_max_degc ? ", the cable stands " + plain(*area.cable_max_degc) + " degC" : "";
  for (const Point& point : {Point{"entry", area.entry_temp_degc, "entry_temp_c"},
                             Point{"branching", area.branch_temp_degc, "branch_temp_c"}}) {
    const double limit = table.number(table.row("point", point.name), "above_degc");
    const std::string name = std::string(point.name) + " point";
    std::optional<double> degc = point.degc;
    // No point of an enclosure is cooler than the place it stands in.
    if (area.ambient_max_degc && !at_most(*area.ambient_max_degc, degc.value_or(limit))) {
      degc = area.ambient_max_degc;
    }
    if (degc && area.cable_max_degc) {
      if (!at_most(*degc, *area.cable_max_degc)) {
        say(Verdict::no_fit, name + " at " + plain(*degc) + " degC" + stands);
      }
    } else if (degc) {
      // Up to the limit nothing needs to be marked, and nothing more is asked.
      if (at_most(*degc, limit)) continue;
      say(Verdict::not_known, name + " at " + plain(*degc) + " degC is above " + plain(limit) +
                                  " degC: give what the cable stands (cable_max_c)");
      demand.lacks.push_back({"what the cable stands", "cable_max_c", fit::Lack::Where::elsewhere});
    } else if (asked && area.cable_max_degc && !at_least(*area.cable_max_degc, limit)) {
      say(Verdict::not_known, "the " + name + " may come to " + plain(limit) + " degC" + stands +
                                  ": give its temperature (" + std::string(point.key) + ")");
      demand.lacks.push_back(
          {"temperature at the " + name, point.key, fit::Lack::Where::elsewhere});
    }
  }
  if (demand.max_degc && area.cable_max_degc && !at_most(*demand.max_degc, *area.cable_max_degc)) {
    say(Verdict::no_fit, "the place comes to " + plain(*demand.max_degc) + " degC" + stands);
  }
}

/// What the gland meets: as given, and in a place that is asked about what is taken for the rest.
std::optional<TemperatureDemand> temperature_demand(const PlaceFacts& place) {
  const Area& area = place.area;
  const bool asked = place.asked;
  if (!asked && !area.ambient_min_degc && !area.ambient_max_degc && !area.entry_temp_degc &&
      !area.branch_temp_degc) {
    return std::nullopt;
  }
  const Table& table = place.standards.table("temperature_thresholds");
  TemperatureDemand demand;
  demand.min_degc = asked ? detail::ambient_min_degc(area) : area.ambient_min_degc;
  demand.max_degc = asked ? detail::ambient_max_degc(area) : area.ambient_max_degc;
  if (area.entry_temp_degc) {
    demand.max_degc =
        std::max(*area.entry_temp_degc, demand.max_degc.value_or(*area.entry_temp_degc));
  } else if (asked) {
    demand.entry_up_to_degc = std::max(k_entry_degc, area.ambient_max_degc.value_or(k_entry_degc));
  }
  demand.source = source_of(table, table.status);
  judge_cable(area, table, asked, demand);
  return demand;
}

// ---- sealing --------------------------------------------------------------------------------

/// The gas zone by its number: the stricter of the zone and the one of the level.
std::optional<int> gas_zone_of(const PlaceFacts& place) {
  const NeededLevel needed = needed_level(place);
  if (!needed.known()) return std::nullopt;
  return 3 - std::max(needed.least, needed.sure);
}

struct Chart {
  RuleSet rules;
  std::string_view table;
};
constexpr Chart k_charts[] = {{RuleSet::iec_60079_14_2007, "flameproof_entry_2007"},
                              {RuleSet::iec_60079_14_2013, "flameproof_entry_2013"}};

/// One walk for each edition that counts.
std::vector<Walk> walks(const PlaceFacts& place, bool hopeful) {
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
std::vector<std::string> facts_that_matter(const PlaceFacts& place) {
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
  // An edition that decides by itself is answerable for what is held against it.
  if (list.size() == 1 && !list.front().caution.empty()) {
    demand.says += "; " + list.front().caution;
  }
}

void put_sealing(const PlaceFacts& place, Demand& demand) {
  const bool flameproof = place.is(Type::d) || !place.area.protection;
  demand.type_not_given = !place.area.protection;
  if (place.hazard != Hazard::gas || !flameproof) return;
  const Table& zones = place.standards.table("zone_level");
  if (gas_zone_of(place) == 0) {
    demand.sealing = SealingDemand::barrier;
    demand.refused = place.is(Type::d);
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

Demand make_demand(const Area& area, const cable::Cable& cable, const Standards& standards,
                   bool asked) {
  std::vector<Fault> faults = contradictions(area);
  if (!faults.empty()) throw InputError(std::move(faults));
  const PlaceFacts place{area, cable, standards, hazard_of(area), asked || is_asked(area)};
  Demand demand;
  demand.hazard = place.hazard;
  demand.water_rules = water_rules(standards);
  demand.ingress = ingress_demands(place);
  demand.temperature = temperature_demand(place);
  // Where nothing is said of the place, the zone comes first: it may be a plain room.
  if (place.asked && !is_asked(area)) demand.level = level_demand(place);
  if (place.hazard == Hazard::none) return demand;
  demand.protection = protection_demand(place);
  demand.enclosure = enclosure_finding(place);
  demand.level = level_demand(place);
  if (place.hazard == Hazard::gas) {
    demand.gas_group = group_demand<GasMark>(standards.table("gas_groups"), area.gas_group, "gas");
  } else {
    demand.dust_group =
        group_demand<DustGroup>(standards.table("dust_groups"), area.dust_group, "dust");
  }
  put_sealing(place, demand);
  return demand;
}

}  // namespace cutback::area

#include "core/area/chart.hpp"

#include <array>

#include "core/area/source.hpp"
#include "cutback/compare.hpp"
#include "cutback/error.hpp"

namespace cutback::area::detail {
namespace {

using tables::Table;

constexpr const char* k_not_known = "not known: the stricter side";

/// What a chart asks about. The cable is a table of its own.
enum class Fact { cable, ignition_source, group_iic, zone_1, volume_over_dm3, length_at_least_m };
constexpr auto all_values(Fact) {
  using enum Fact;
  return std::array{cable, ignition_source, group_iic, zone_1, volume_over_dm3, length_at_least_m};
}
constexpr std::string_view to_string(Fact fact) {
  constexpr std::array<std::string_view, 6> k_facts{
      "cable", "ignition_source", "group_iic", "zone_1", "volume_over_dm3", "length_at_least_m"};
  return k_facts[static_cast<std::size_t>(fact)];
}

/// What the table of the cable asks about.
enum class CableFact { sheath, circular, compact, bedding_made, fillers };
constexpr auto all_values(CableFact) {
  using enum CableFact;
  return std::array{sheath, circular, compact, bedding_made, fillers};
}
constexpr std::string_view to_string(CableFact fact) {
  constexpr std::array<std::string_view, 5> k_facts{"sheath", "circular", "compact", "bedding_made",
                                                    "fillers"};
  return k_facts[static_cast<std::size_t>(fact)];
}

/// Where a chart ends.
enum class Result { compression, barrier };
constexpr auto all_values(Result) { return std::array{Result::compression, Result::barrier}; }
constexpr std::string_view to_string(Result result) {
  return result == Result::barrier ? "barrier" : "compression";
}

/// A fact as it is known, and the field that would give it.
struct Known {
  std::optional<bool> yes;
  std::string field;
  std::string from = "given";
};

/// The covering under the armour, or of a cable without armour the one over its cores. Only what is
/// stated to be extruded is.
Known bedding_fact(const cable::Cable& cable) {
  using cable::BeddingMade;
  Known known{{}, "bedding_made"};
  if (!cable.bedding_made) return known;
  // Armour never lies on the cores themselves.
  known.yes = *cable.bedding_made == BeddingMade::extruded ||
              (*cable.bedding_made == BeddingMade::none && cable.armour == cable::ArmourKind::none);
  return known;
}

Known cable_fact(CableFact fact, const cable::Cable& cable) {
  switch (fact) {
    case CableFact::sheath:
      return {true, {}, "no other sheath is worked with"};
    case CableFact::circular:
      return {cable.circular, "circular"};
    case CableFact::compact:
      return {cable.compact, "compact"};
    case CableFact::bedding_made:
      return bedding_fact(cable);
    case CableFact::fillers:
      break;
  }
  Known known{{}, "fillers"};
  if (cable.fillers) known.yes = *cable.fillers != cable::Fillers::hygroscopic;
  return known;
}

Known chart_fact(Fact fact, const Table& table, std::size_t row, const EntryFacts& facts) {
  Known known{{}, {}};
  switch (fact) {
    case Fact::ignition_source:
      return {facts.area.ignition_source, "ignition_source"};
    case Fact::group_iic:
      known.field = "gas_group";
      if (facts.area.gas_group) known.yes = *facts.area.gas_group >= GasGroup::IIB_H2;
      // Hydrogen by itself is of group IIC: the chart has no question for it, this is its stricter
      // side.
      if (facts.area.gas_group == GasGroup::IIB_H2) known.from = "given: hydrogen is as IIC here";
      return known;
    case Fact::zone_1:
      known.field = "zone";
      // Zone 0 never gets past the refusal; here it is on the stricter side.
      if (facts.gas_zone) known.yes = *facts.gas_zone <= 1;
      return known;
    case Fact::volume_over_dm3: {
      constexpr double k_cm3_per_dm3 = 1000.0;
      known.field = "volume_cm3";
      if (facts.area.volume_cm3) {
        known.yes = !at_most(*facts.area.volume_cm3 / k_cm3_per_dm3, table.number(row, "limit"));
      }
      return known;
    }
    case Fact::length_at_least_m:
      known.field = "length_m";
      if (facts.cable.length_m) {
        known.yes = at_least(*facts.cable.length_m, table.number(row, "limit"));
      }
      return known;
    case Fact::cable:
      break;
  }
  throw InternalError("table " + table.id + " asks of the cable elsewhere");
}

/// Answers one question and records it. @return the answer that counts
bool ask(const std::string& question, const Known& known, bool if_not_known, bool hopeful,
         const std::string& source, Walk& walk) {
  const bool yes = known.yes.value_or(hopeful ? !if_not_known : if_not_known);
  if (!known.yes) walk.unknown.push_back(known.field);
  walk.path.push_back({question, yes, known.yes ? known.from : k_not_known, source});
  return yes;
}

void add_reason(const std::string& reason, bool known, Walk& walk) {
  walk.reason += (walk.reason.empty() ? "" : ", ") + (known ? reason : "perhaps " + reason);
}

/// The solid cable: every row of its table must hold, and each is asked.
bool ask_cable(const tables::Standards& standards, const EntryFacts& facts, bool hopeful,
               Walk& walk) {
  const Table& table = standards.table("cable_construction");
  bool all = true;
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    const Known known = cable_fact(value_in<CableFact>(table, i, "fact"), facts.cable);
    if (ask(table.text(i, "question"), known, false, hopeful, source_of(table, i), walk)) continue;
    add_reason(table.text(i, "no_says"), known.yes.has_value(), walk);
    all = false;
  }
  return all;
}

/// Any other question of the chart.
bool ask_chart(Fact fact, const Table& table, std::size_t row, const EntryFacts& facts,
               bool hopeful, Walk& walk) {
  const Known known = chart_fact(fact, table, row, facts);
  const bool if_not_known = value_in<bool>(table, row, "if_not_known");
  const bool yes = ask(table.text(row, "question"), known, if_not_known, hopeful, {}, walk);
  walk.path.back().source =
      source_of(table, status_in(table, row, yes ? "yes_status" : "no_status"));
  add_reason(table.text(row, yes ? "yes_says" : "no_says"), known.yes.has_value(), walk);
  return yes;
}

}  // namespace

Walk walk_chart(const tables::Standards& standards, std::string_view table_id,
                const EntryFacts& facts, bool hopeful) {
  const Table& table = standards.table(table_id);
  Walk walk;
  std::size_t row = 0;
  // No path is longer than the table: a table that leads back on itself ends in an error.
  for (std::size_t step = 0; step < table.rows.size(); ++step) {
    const auto fact = value_in<Fact>(table, row, "fact");
    const bool yes = fact == Fact::cable ? ask_cable(standards, facts, hopeful, walk)
                                         : ask_chart(fact, table, row, facts, hopeful, walk);
    const std::string next = table.text(row, yes ? "if_yes" : "if_no");
    if (const auto result = value_of<Result>(next)) {
      const tables::Status status = status_in(table, row, yes ? "yes_status" : "no_status");
      walk.barrier = *result == Result::barrier;
      walk.from_memory = status == tables::Status::from_memory;
      walk.source = source_of(table, status);
      if (yes) walk.caution = table.text(row, "yes_caution");
      return walk;
    }
    row = table.row("fact", next);
  }
  throw InternalError("table " + table.id + " leads to no result");
}

}  // namespace cutback::area::detail

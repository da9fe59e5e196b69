#include "core/area/chart.hpp"

#include "core/area/source.hpp"
#include "cutback/compare.hpp"
#include "cutback/error.hpp"

namespace cutback::area::detail {
namespace {

using tables::Table;

constexpr const char* k_not_known = "not known: the stricter side";

/// A fact as it is known, and the field that would give it.
struct Known {
  std::optional<bool> yes;
  std::string field;
  std::string from = "given";
};

Known cable_fact(std::string_view fact, const cable::Cable& cable) {
  if (fact == "sheath") return {true, {}, "no other sheath is worked with"};
  if (fact == "circular") return {cable.circular, "circular"};
  if (fact == "compact") return {cable.compact, "compact"};
  if (fact == "bedding_made") {
    if (cable.armour == cable::ArmourKind::none) return {true, {}, "no armour, so no bedding"};
    Known known{{}, "bedding_made"};
    if (cable.bedding_made) known.yes = *cable.bedding_made == cable::BeddingMade::extruded;
    return known;
  }
  if (fact == "fillers") {
    Known known{{}, "fillers"};
    if (cable.fillers) known.yes = *cable.fillers != cable::Fillers::hygroscopic;
    return known;
  }
  throw InternalError("no fact of a cable is called " + std::string(fact));
}

Known chart_fact(const Table& table, std::size_t row, const EntryFacts& facts) {
  const std::string fact = table.text(row, "fact");
  if (fact == "ignition_source") return {facts.area.ignition_source, "ignition_source"};
  if (fact == "group_iic") {
    Known known{{}, "gas_group"};
    if (facts.area.gas_group) known.yes = *facts.area.gas_group == "IIC";
    return known;
  }
  if (fact == "zone_1") {
    Known known{{}, "zone"};
    // Zone 0 never gets past the refusal; here it is on the stricter side.
    if (facts.gas_zone) known.yes = *facts.gas_zone <= 1;
    return known;
  }
  if (fact == "volume_over_dm3") {
    Known known{{}, "volume_cm3"};
    constexpr double k_cm3_per_dm3 = 1000.0;
    if (facts.area.volume_cm3) {
      known.yes = !at_most(*facts.area.volume_cm3 / k_cm3_per_dm3, table.number(row, "limit"));
    }
    return known;
  }
  if (fact == "length_at_least_m") {
    Known known{{}, "length_m"};
    if (facts.cable.length_m)
      known.yes = at_least(*facts.cable.length_m, table.number(row, "limit"));
    return known;
  }
  throw InternalError("table " + table.id + " asks for " + fact);
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
    const Known known = cable_fact(table.text(i, "fact"), facts.cable);
    if (ask(table.text(i, "question"), known, false, hopeful, source_of(table, i), walk)) continue;
    add_reason(table.text(i, "no_says"), known.yes.has_value(), walk);
    all = false;
  }
  return all;
}

/// Any other question of the chart.
bool ask_chart(const Table& table, std::size_t row, const EntryFacts& facts, bool hopeful,
               Walk& walk) {
  const Known known = chart_fact(table, row, facts);
  const bool if_not_known = table.text(row, "if_not_known") == "yes";
  const bool yes = ask(table.text(row, "question"), known, if_not_known, hopeful, {}, walk);
  walk.path.back().source = source_of(table, table.text(row, yes ? "yes_status" : "no_status"));
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
    const bool yes = table.text(row, "fact") == "cable"
                         ? ask_cable(standards, facts, hopeful, walk)
                         : ask_chart(table, row, facts, hopeful, walk);
    const std::string next = table.text(row, yes ? "if_yes" : "if_no");
    const std::string status = table.text(row, yes ? "yes_status" : "no_status");
    if (next == "barrier" || next == "compression") {
      walk.barrier = next == "barrier";
      walk.from_memory = status == to_string(tables::Status::from_memory);
      walk.source = source_of(table, status);
      return walk;
    }
    row = table.row("fact", next);
  }
  throw InternalError("table " + table.id + " leads to no result");
}

}  // namespace cutback::area::detail

#include "cutback/area/check.hpp"

#include <algorithm>
#include <cmath>

#include "core/area/source.hpp"
#include "cutback/compare.hpp"
#include "cutback/number.hpp"
#include "cutback/text.hpp"

namespace cutback::area {
namespace {

using fit::Check;
using fit::CheckName;
using gland::Gland;
using gland::Sealing;
using tables::Standards;
using tables::Table;

/// Takes the worse verdict, its source with it, and puts the sentence behind those before it.
void add(Check& check, Verdict verdict, const std::string& says, const std::string& source) {
  check.says += (check.says.empty() ? "" : "; ") + says;
  if (check.source.empty() || verdict < check.verdict) check.source = source;
  check.verdict = worst(check.verdict, verdict);
}

Check start(CheckName name) {
  Check check;
  check.name = name;
  check.verdict = Verdict::fits;
  return check;
}

/// One property against what serves: the surest of the gland's markings counts.
void judge_marks(const MarkDemand& demand, const std::vector<std::string>& marks,
                 const std::string& column, Check& check) {
  if (demand.serves.empty()) {
    add(check, Verdict::no_fit, demand.needed + ": " + demand.otherwise, demand.source);
    return;
  }
  if (marks.empty()) {
    add(check, Verdict::not_known,
        demand.needed + " is asked for; the gland list does not state " + column, demand.source);
    return;
  }
  const Serves* best = nullptr;
  for (const Serves& serves : demand.serves) {
    if (std::find(marks.begin(), marks.end(), serves.mark) == marks.end()) continue;
    if (best == nullptr || best->verdict < serves.verdict) best = &serves;
  }
  if (best == nullptr) {
    std::string says = "a gland marked " + joined(marks, " ") + " does not serve " + demand.needed;
    if (!demand.otherwise.empty()) says += ": " + demand.otherwise;
    add(check, Verdict::no_fit, says, demand.source);
    return;
  }
  std::string says =
      best->mark + (best->verdict == Verdict::fits ? " serves " : " may serve ") + demand.needed;
  if (!best->note.empty()) says += ": " + best->note;
  add(check, best->verdict, says, best->source);
}

std::optional<Check> check_marks(CheckName name, const std::vector<MarkDemand>& demands,
                                 const std::vector<std::string>& marks, const std::string& column) {
  if (demands.empty()) return std::nullopt;
  Check check = start(name);
  for (const MarkDemand& demand : demands) judge_marks(demand, marks, column, check);
  return check;
}
/// Whether a gland that is filled with compound takes the cores.
void judge_chamber(const cable::Cable& cable, const Gland& gland,
                   const std::optional<SealingBundle>& bundle, Check& check) {
  if (bundle) {
    add(check, bundle->verdict, bundle->says, bundle->source);
    return;
  }
  const std::string source = "gland list";
  if (!gland.max_cores) {
    add(check, Verdict::not_known, "the gland list does not state max_cores", source);
  } else if (!cable.cores) {
    add(check, Verdict::not_known, "the number of cores is not given", source);
  } else {
    const bool takes = *cable.cores <= *gland.max_cores;
    add(check, takes ? Verdict::fits : Verdict::no_fit,
        "the chamber takes " + std::to_string(*gland.max_cores) + " cores, the cable has " +
            std::to_string(*cable.cores),
        source);
  }
}

void judge_barrier(const Demand& demand, const cable::Cable& cable, const Gland& gland,
                   const std::optional<SealingBundle>& bundle, Check& check) {
  if (gland.sealing != Sealing::compression) {
    add(check, Verdict::fits, "it seals round the cores, as is demanded", demand.source);
    judge_chamber(cable, gland, bundle, check);
    return;
  }
  std::string says = "it does not seal round the cores, as is demanded";
  if (!demand.would_change.empty()) {
    says += "; not known, and could change that: " + joined(demand.would_change, ", ");
  }
  add(check, Verdict::no_fit, says, demand.source);
}

// ---- metals ---------------------------------------------------------------------------------

struct Potential {
  double low_v;
  double high_v;
};

std::optional<Potential> potential_of(const Table& table, const std::string& metal) {
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    if (table.text(i, "metal") == metal) {
      return Potential{table.number(i, "low_v"), table.number(i, "high_v")};
    }
  }
  return std::nullopt;
}

/// A caution for two metals that are far apart; it changes no verdict.
void caution_couple(const std::string& enclosure, const std::string& gland,
                    const Standards& standards, Check& check) {
  const Table& index = standards.table("anodic_index");
  const Table& limits = standards.table("anodic_difference");
  const auto a = potential_of(index, enclosure);
  const auto b = potential_of(index, gland);
  if (!a || !b || enclosure == gland) return;
  const double far = std::max(std::abs(a->high_v - b->low_v), std::abs(b->high_v - a->low_v));
  std::string places;
  for (std::size_t i = 0; i < limits.rows.size(); ++i) {
    if (at_most(far, limits.number(i, "difference_v"))) continue;
    places += (places.empty() ? "(" : "), (") + limits.text(i, "place");
  }
  if (places.empty()) return;
  add(check, Verdict::fits,
      "caution: " + gland + " in " + enclosure + " is up to " + plain(far) +
          " V apart, more than is allowed in these places: " + places +
          "). Keep the joint dry, use the sealing washer, look at it again",
      detail::source_of(index, to_string(index.status)));
}

}  // namespace

std::optional<Check> check_protection(const Demand& demand, const Gland& gland) {
  return check_marks(CheckName::protection, demand.protection, gland.protection, "protection");
}

std::optional<Check> check_level(const Demand& demand, const Gland& gland) {
  return check_marks(CheckName::level, demand.level, gland.level, "level");
}

std::optional<Check> check_group(const Demand& demand, const Gland& gland) {
  if (demand.gas_group.empty() && demand.dust_group.empty()) return std::nullopt;
  const auto marks = [](const std::optional<std::string>& group) {
    return group ? std::vector<std::string>{*group} : std::vector<std::string>{};
  };
  Check check = start(CheckName::group);
  for (const MarkDemand& d : demand.gas_group)
    judge_marks(d, marks(gland.gas_group), "gas_group", check);
  for (const MarkDemand& d : demand.dust_group) {
    judge_marks(d, marks(gland.dust_group), "dust_group", check);
  }
  return check;
}

std::optional<Check> check_ingress(const Demand& demand, const Gland& gland) {
  if (demand.ingress.empty()) return std::nullopt;
  Check check = start(CheckName::ingress);
  for (const IngressDemand& one : demand.ingress) {
    if (gland.ip.empty()) {
      add(check, Verdict::not_known, one.needed + " is asked for; the gland list does not state ip",
          one.source);
      continue;
    }
    Verdict verdict = Verdict::no_fit;
    std::string note;
    for (const IngressDemand::Rung& rung : one.rungs) {
      const IpAnswer answer = serves(rung.code, gland.ip, demand.water_rules);
      const Verdict reached = worst(answer.verdict, rung.verdict);
      if (reached <= verdict) continue;
      verdict = reached;
      note = answer.note.empty() ? rung.note : answer.note;
    }
    std::string says = "IP" + joined(gland.ip, "/");
    says += verdict == Verdict::fits     ? " serves "
            : verdict == Verdict::no_fit ? " does not serve "
                                         : " may serve ";
    says += one.needed;
    if (!note.empty()) says += ": " + note;
    add(check, verdict, says, one.source);
  }
  return check;
}

std::optional<Check> check_temperature(const Demand& demand, const Gland& gland) {
  if (!demand.temperature) return std::nullopt;
  const TemperatureDemand& needed = *demand.temperature;
  Check check = start(CheckName::temperature);
  const auto judge = [&](const std::optional<double>& asked, const std::optional<double>& stated,
                         bool lowest, const char* column) {
    if (!asked) return;
    const std::string what = "it meets " + plain(*asked) + " degC";
    if (!stated) {
      add(check, Verdict::not_known, what + "; the gland list does not state " + column,
          needed.source);
      return;
    }
    const bool stands = lowest ? at_most(*stated, *asked) : at_least(*stated, *asked);
    add(check, stands ? Verdict::fits : Verdict::no_fit,
        what + ", the gland is for " + (lowest ? "down to " : "up to ") + plain(*stated) + " degC",
        needed.source);
  };
  judge(needed.min_degc, gland.temp_min_degc, true, "temp_min_c");
  judge(needed.max_degc, gland.temp_max_degc, false, "temp_max_c");
  if (!needed.cable_says.empty()) {
    add(check, needed.cable, needed.cable_says.substr(2), needed.source);
  }
  if (check.says.empty()) return std::nullopt;
  return check;
}

std::optional<Check> check_sealing(const Demand& demand, const cable::Cable& cable,
                                   const Gland& gland, const std::optional<SealingBundle>& bundle) {
  if (demand.sealing == SealingDemand::none) return std::nullopt;
  Check check = start(CheckName::sealing);
  if (demand.refused) {
    add(check, Verdict::no_fit, demand.says, demand.source);
  } else if (demand.sealing == SealingDemand::barrier) {
    judge_barrier(demand, cable, gland, bundle, check);
  } else if (gland.sealing == Sealing::barrier ||
             (gland.sealing == Sealing::either && demand.allowed_from_memory)) {
    add(check, Verdict::fits, "a gland that seals round the cores is always allowed",
        demand.source);
    judge_chamber(cable, gland, bundle, check);
  } else if (demand.allowed_from_memory) {
    add(check, Verdict::not_known, demand.says + "; check against the standard", demand.source);
  } else {
    add(check, Verdict::fits,
        demand.says + "; the gland must be certified as equipment, not as a component only",
        demand.source);
  }
  return check;
}

std::vector<Check> check_area(const Demand& demand, const cable::Cable& cable, const Gland& gland,
                              const std::optional<SealingBundle>& bundle) {
  std::vector<Check> checks;
  for (auto& check :
       {check_protection(demand, gland), check_level(demand, gland), check_group(demand, gland),
        check_ingress(demand, gland), check_temperature(demand, gland),
        check_sealing(demand, cable, gland, bundle)}) {
    if (check) checks.push_back(*check);
  }
  return checks;
}

std::optional<Check> check_material(const std::optional<std::string>& enclosure_material,
                                    const Gland& gland, const Standards& standards) {
  Check check = start(CheckName::material);
  if (enclosure_material && gland.material) {
    caution_couple(*enclosure_material, *gland.material, standards, check);
  }
  if (check.says.empty()) return std::nullopt;
  return check;
}

std::optional<Check> check_adaptor(const Demand& demand, const std::vector<std::string>& marks) {
  if (demand.protection.empty()) return std::nullopt;
  Check check = start(CheckName::entry);
  for (const MarkDemand& mark : demand.protection) {
    if (marks.empty()) {
      add(check, Verdict::not_known,
          "the adaptor's own protection is not given: " + mark.needed +
              " is asked for, add it as --adaptor M25:M20:db",
          mark.source);
    } else {
      judge_marks(mark, marks, "protection", check);
    }
  }
  return check;
}

}  // namespace cutback::area

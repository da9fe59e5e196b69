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

constexpr fit::Lack::Where k_elsewhere = fit::Lack::Where::elsewhere;

/// A fact of the place that the check needs.
void not_given(const std::string& needed, const NotGiven& fact, const std::string& source,
               Check& check) {
  add(check, Verdict::not_known, needed + ": " + fact.says, source);
  check.lacks.push_back({fact.fact, fact.key, k_elsewhere});
}

/// A column that the gland list leaves blank.
void lacks_column(const char* column, Check& check) {
  // No key: a field of the end may have the same name.
  check.lacks.push_back({std::string(column) + " of the gland", "", k_elsewhere});
}

template <class Mark>
std::string words_of(std::span<const Mark> marks) {
  std::string text;
  for (const Mark mark : marks) text += (text.empty() ? "" : " ") + std::string(to_string(mark));
  return text;
}

/// One property against what serves: the surest of the gland's markings counts.
template <class Mark>
void judge_marks(const MarkDemand<Mark>& demand, std::span<const Mark> marks, const char* column,
                 Check& check) {
  if (demand.not_given.any()) {
    not_given(demand.needed, demand.not_given, demand.source, check);
    return;
  }
  if (demand.serves.empty()) {
    add(check, Verdict::no_fit, demand.needed + ": " + demand.otherwise, demand.source);
    return;
  }
  if (marks.empty()) {
    add(check, Verdict::not_known,
        demand.needed + " is asked for; the gland list does not state " + column, demand.source);
    lacks_column(column, check);
    return;
  }
  const Serves<Mark>* best = nullptr;
  for (const Serves<Mark>& serves : demand.serves) {
    if (std::find(marks.begin(), marks.end(), serves.mark) == marks.end()) continue;
    if (best == nullptr || best->verdict < serves.verdict) best = &serves;
  }
  if (best == nullptr) {
    std::string says = "a gland marked " + words_of(marks) + " does not serve " + demand.needed;
    if (!demand.otherwise.empty()) says += ": " + demand.otherwise;
    add(check, Verdict::no_fit, says, demand.source);
    return;
  }
  std::string says = std::string(to_string(best->mark)) +
                     (best->verdict == Verdict::fits ? " serves " : " may serve ") + demand.needed;
  if (!best->note.empty()) says += ": " + best->note;
  add(check, best->verdict, says, best->source);
}

template <class Mark>
std::span<const Mark> one_of(const std::optional<Mark>& mark) {
  return mark ? std::span<const Mark>(&*mark, 1) : std::span<const Mark>{};
}

/// Whether a gland that is filled with compound takes the cores.
void judge_chamber(const cable::Cable& cable, const Gland& gland,
                   const std::optional<SealingBundle>& bundle, Check& check) {
  const Verdict verdict = bundle ? bundle->verdict : Verdict::not_known;
  const bool open = verdict != Verdict::fits && verdict != Verdict::no_fit;
  if (open && !cable.cores) {
    check.lacks.push_back({"number of cores", "cores", fit::Lack::Where::at_the_end});
  } else if (open && !gland.max_cores && !gland.max_bundle_mm && !gland.chamber_bore_mm) {
    lacks_column("max_cores", check);
  } else if (open) {
    check.lacks.push_back({"size of the cores", "csa_mm2", k_elsewhere});
  }
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

/// A gland with a ring against a place that asks for compound.
void refuse_ring(const Demand& demand, Check& check) {
  std::string says = "it does not seal round the cores, as is demanded";
  if (!demand.would_change.empty()) {
    says += "; not known, and could change that: " + joined(demand.would_change, ", ");
  }
  add(check, Verdict::no_fit, says, demand.source);
}

/// A gland with a ring where one is allowed.
void judge_ring(const Demand& demand, const cable::Cable& cable, const Gland& gland, Check& check) {
  if (cable.armour != cable::ArmourKind::none && !gland.inner) {
    add(check, Verdict::no_fit,
        "it has no inner seal, and no compound round the cores: gas reaches the space of the "
        "armour",
        "IEC 60079-14, a flameproof gland of an armoured cable seals on the bedding [secondary]");
  } else if (demand.allowed_from_memory) {
    add(check, Verdict::not_known, demand.says + "; check against the standard", demand.source);
  } else {
    add(check, Verdict::fits,
        demand.says + "; the gland must be certified as equipment, not as a component only",
        demand.source);
  }
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
void caution_couple(const std::string& one, const std::string& other, const Standards& standards,
                    Check& check) {
  const Table& index = standards.table("anodic_index");
  const Table& limits = standards.table("anodic_difference");
  const auto a = potential_of(index, one);
  const auto b = potential_of(index, other);
  if (!a || !b || one == other) return;
  const double far = std::max(std::abs(a->high_v - b->low_v), std::abs(b->high_v - a->low_v));
  std::string places;
  for (std::size_t i = 0; i < limits.rows.size(); ++i) {
    const double limit = limits.number(i, "difference_v");
    if (at_most(far, limit)) continue;
    places += (places.empty() ? "" : "; ") + limits.text(i, "place") + " (" + plain(limit) + " V)";
  }
  if (places.empty()) return;
  add(check, Verdict::fits,
      "caution: " + one + " in " + other + " is up to " + plain(far) + " V apart, too far " +
          places + ". Outdoors no joint stays dry: seal it, look again, or use a nearer metal",
      detail::source_of(index, index.status));
}

}  // namespace

std::optional<Check> check_protection(const Demand& demand, const Gland& gland) {
  if (!demand.protection) return std::nullopt;
  Check check = start(CheckName::protection);
  judge_marks<Protection>(*demand.protection, gland.protection, "protection", check);
  if (demand.enclosure) {
    add(check, demand.enclosure->verdict, demand.enclosure->says, demand.enclosure->source);
  }
  return check;
}

std::optional<Check> check_level(const Demand& demand, const Gland& gland) {
  if (!demand.level) return std::nullopt;
  Check check = start(CheckName::level);
  judge_marks<Level>(*demand.level, gland.level, "level", check);
  return check;
}

std::optional<Check> check_group(const Demand& demand, const Gland& gland) {
  Check check = start(CheckName::group);
  if (demand.gas_group) {
    judge_marks(*demand.gas_group, one_of(gland.gas_group), "gas_group", check);
  } else if (demand.dust_group) {
    judge_marks(*demand.dust_group, one_of(gland.dust_group), "dust_group", check);
  } else {
    return std::nullopt;
  }
  return check;
}

std::optional<Check> check_ingress(const Demand& demand, const Gland& gland) {
  if (demand.ingress.empty()) return std::nullopt;
  Check check = start(CheckName::ingress);
  for (const IngressDemand& one : demand.ingress) {
    if (one.not_given.any()) {
      not_given(one.needed, one.not_given, one.source, check);
      continue;
    }
    if (gland.ip.empty()) {
      add(check, Verdict::not_known, one.needed + " is asked for; the gland list does not state ip",
          one.source);
      lacks_column("ip", check);
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
    std::string says = "IP" + to_text(gland.ip);
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
      lacks_column(column, check);
      return;
    }
    const bool stands = lowest ? at_most(*stated, *asked) : at_least(*stated, *asked);
    add(check, stands ? Verdict::fits : Verdict::no_fit,
        what + ", the gland is for " + (lowest ? "down to " : "up to ") + plain(*stated) + " degC",
        needed.source);
  };
  judge(needed.min_degc, gland.temp_min_degc, true, "temp_min_c");
  judge(needed.max_degc, gland.temp_max_degc, false, "temp_max_c");
  if (needed.entry_up_to_degc && gland.temp_max_degc &&
      !at_least(*gland.temp_max_degc, *needed.entry_up_to_degc)) {
    add(check, Verdict::not_known,
        "the entry may come to " + plain(*needed.entry_up_to_degc) +
            " degC, because its temperature is not given (entry_temp_c)",
        needed.source);
    check.lacks.push_back({"temperature at the entry", "entry_temp_c", k_elsewhere});
  }
  // An ambient range with only one end given may still lie wholly beyond the gland.
  if (needed.max_degc && gland.temp_min_degc && !at_least(*needed.max_degc, *gland.temp_min_degc)) {
    add(check, Verdict::no_fit,
        "the gland is for " + plain(*gland.temp_min_degc) + " degC and warmer", needed.source);
  }
  if (needed.min_degc && gland.temp_max_degc && !at_most(*needed.min_degc, *gland.temp_max_degc)) {
    add(check, Verdict::no_fit,
        "the gland is for " + plain(*gland.temp_max_degc) + " degC and colder", needed.source);
  }
  if (!needed.cable_says.empty()) {
    add(check, needed.cable, needed.cable_says.substr(2), needed.source);
    check.lacks.insert(check.lacks.end(), needed.lacks.begin(), needed.lacks.end());
  }
  if (check.says.empty()) return std::nullopt;
  return check;
}

std::optional<Check> check_sealing(const Demand& demand, const cable::Cable& cable,
                                   const Gland& gland, const std::optional<SealingBundle>& bundle) {
  Check check = start(CheckName::sealing);
  if (demand.sealing == SealingDemand::none) {
    // Compound round the cores must take them, whatever the place.
    if (sealing_of(gland) != Sealing::barrier) return std::nullopt;
    judge_chamber(cable, gland, bundle, check);
    return check;
  }
  const bool barrier = demand.sealing == SealingDemand::barrier;
  const bool compound = sealing_of(gland) != Sealing::compression;
  if (demand.refused) {
    add(check, Verdict::no_fit, demand.says, demand.source);
  } else if (compound) {
    add(check, Verdict::fits,
        barrier ? "it seals round the cores, as is demanded"
                : "a gland that seals round the cores is always allowed",
        demand.source);
    judge_chamber(cable, gland, bundle, check);
  } else if (barrier) {
    refuse_ring(demand, check);
  } else {
    judge_ring(demand, cable, gland, check);
  }
  if (demand.type_not_given && !compound && check.verdict == Verdict::no_fit) {
    add(check, Verdict::not_known, "the type of protection is not given, and may ask for less",
        demand.source);
    check.verdict = Verdict::not_known;
    check.lacks.push_back({"protection of the enclosure", "protection", k_elsewhere});
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

std::optional<Check> check_metals(const Touching& touching, const Gland& gland,
                                  const Standards& standards) {
  Check check = start(CheckName::metals);
  const auto meet = [&](const std::optional<std::string>& one,
                        const std::optional<std::string>& other) {
    if (one && other) caution_couple(*one, *other, standards, check);
  };
  if (touching.armour == cable::ArmourMaterial::aluminium) {
    // The joint that carries the earth.
    meet("aluminium", gland.material);
    if (!check.says.empty()) check.says = "armour: " + check.says;
  }
  if (touching.adaptor) meet(gland.material, touching.adaptor);
  meet(touching.adaptor ? touching.adaptor : gland.material, touching.enclosure);
  if (check.says.empty()) return std::nullopt;
  return check;
}

std::optional<Check> check_adaptor(const Demand& demand, std::span<const Protection> marks) {
  if (!demand.protection) return std::nullopt;
  Check check = start(CheckName::entry);
  if (marks.empty()) {
    add(check, Verdict::not_known,
        "the adaptor's own protection is not given: " + demand.protection->needed +
            " is asked for, add it as --adaptor M25:M20:db",
        demand.protection->source);
    check.lacks.push_back({"protection of the adaptor, as M25:M20:db", "adaptor", k_elsewhere});
  } else {
    judge_marks(*demand.protection, marks, "protection", check);
  }
  return check;
}

}  // namespace cutback::area

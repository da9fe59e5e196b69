#include "core/fit/rules.hpp"

#include <algorithm>
#include <array>

#include "core/fit/checks.hpp"
#include "cutback/area/bundle.hpp"
#include "cutback/area/check.hpp"
#include "cutback/compare.hpp"
#include "cutback/earth/armour_earth.hpp"
#include "cutback/earth/gland_rating.hpp"
#include "cutback/earth/path.hpp"
#include "cutback/entry/entry_check.hpp"
#include "cutback/entry/joint_check.hpp"
#include "cutback/error.hpp"
#include "cutback/fit/absurd.hpp"
#include "cutback/fit/questions.hpp"
#include "cutback/strip/bend.hpp"

namespace cutback::fit::detail {
namespace {

using cable::ArmourKind;

// ---- entry ----------------------------------------------------------------------------------

/// Adds what a second rule says to a check: the worse verdict, both sentences, both sources.
void join(Check& check, const std::optional<Check>& other) {
  if (!other) return;
  check.verdict = worst(check.verdict, other->verdict);
  check.says += "; " + other->says;
  check.source += "; " + other->source;
  check.lacks.insert(check.lacks.end(), other->lacks.begin(), other->lacks.end());
}

/// The threads alone, with what an adaptor must be.
Check check_threads(const Case& at) {
  Check check = entry::check_entry(at.gland, at.entry());
  if (at.entry().to_suit && is_flameproof(at.question)) {
    check.verdict = worst(check.verdict, Verdict::not_known);
    check.says +=
        "; nobody adds a hole to a flameproof enclosure but its maker: give the entry that it has";
    check.source += "; IEC 60079-14 (from memory)";
    check.lacks.push_back({"entry of the flameproof enclosure", "entry", Lack::Where::elsewhere});
  } else if (at.entry().to_suit && at.question.demand->hazard != area::Hazard::none) {
    check.says += "; caution: only where the enclosure's documents allow another hole";
    check.source += "; IEC 60079-14 (from memory)";
  }
  if (at.adaptor != nullptr) {
    join(check, area::check_adaptor(*at.question.demand, at.adaptor->protection));
  }
  return check;
}

std::optional<double> core_mm(const Case& at) {
  const auto& construction = at.question.job->construction;
  return construction ? construction->core_mm : std::nullopt;
}

std::optional<Against> against_threads(const Case& at) {
  const Verdict verdict = check_threads(at).verdict;
  return verdict == Verdict::fits ? against_passage(at, at.adaptor) : Against{.verdict = verdict};
}

/// Where the bedding or the sheath passes and where only the cores do are two rows of the table, of
/// which one is asked: a row decides by how far a diameter lies in a range, or by whether it does.
std::optional<Against> against_entry(const Case& at) {
  return at.barrier ? std::nullopt : against_threads(at);
}
std::optional<Against> against_entry_of_cores(const Case& at) {
  return at.barrier ? against_threads(at) : std::nullopt;
}

Check check_whole_entry(const Case& at, GlandFit& fit) {
  const Check threads = check_threads(at);
  if (at.adaptor != nullptr) fit.adaptor = *at.adaptor;
  if (threads.verdict != Verdict::fits) return threads;
  const tables::Standards& standards = *at.question.standards;
  Check check = entry::check_passage(entry::passage(at.gland, at.entry(), at.adaptor, standards),
                                     at.cable(), at.barrier, core_mm(at), standards);
  if (!at.barrier && check.lacks.empty()) check.lacks = settled_by(check, at.cable());
  check.says = threads.says + "; " + check.says;
  check.source = threads.source + "; " + check.source;
  return check;
}

std::optional<Check> check_entry(const Case& at, GlandFit& fit) {
  if (at.barrier) return std::nullopt;
  return check_whole_entry(at, fit);
}
std::optional<Check> check_entry_of_cores(const Case& at, GlandFit& fit) {
  if (!at.barrier) return std::nullopt;
  return check_whole_entry(at, fit);
}

// ---- thread ---------------------------------------------------------------------------------

std::optional<Check> check_thread(const Case& at, GlandFit& fit) {
  for (const Figure figure : {Figure::thread_length, Figure::washer, Figure::bedding_past,
                              Figure::bedding_end, Figure::sealing}) {
    if (is_absurd(figure, at.gland, *at.question.standards)) {
      return check_absurd(CheckName::thread, figure, at);
    }
  }
  const auto thread_of = [&](bool flameproof) {
    return entry::check_thread(
        at.gland, at.entry(), at.adaptor,
        {.flameproof = flameproof, .volume_cm3 = at.question.job->area.volume_cm3},
        *at.question.standards);
  };
  fit.thread = thread_of(is_flameproof(at.question));
  Check& check = fit.thread->check;
  // The enclosure may be of a type that asks less of its entry.
  if (at.question.demand->type_not_given && check.verdict == Verdict::no_fit &&
      thread_of(false).check.verdict != Verdict::no_fit) {
    check.verdict = Verdict::not_known;
    check.says += "; the type of protection is not given, and may ask for less";
    check.lacks.push_back({"protection of the enclosure", "protection", Lack::Where::elsewhere});
  }
  return check;
}

std::optional<Check> check_joint(const Case& at, GlandFit& /*fit*/) {
  const auto& protection = at.question.job->area.protection;
  const bool breathes =
      protection && area::type_of(*protection) == area::Type::nR && at.question.demand->protection;
  return entry::check_joint(
      at.gland, at.entry(), at.adaptor,
      {.ingress = at.question.demand->ingress, .restricted_breathing = breathes},
      *at.question.standards);
}

// ---- bend -----------------------------------------------------------------------------------

/// It asks nothing of a gland.
std::optional<Verdict> bend_alone(const Question& question) {
  return question.job->cable.sheath_od ? std::optional(Verdict::fits) : std::nullopt;
}

std::optional<Check> check_bend(const Case& at, GlandFit& /*fit*/) {
  return strip::check_bend(at.cable(), at.question.job->construction, *at.question.standards);
}

// ---- place ----------------------------------------------------------------------------------

std::optional<Check> check_protection(const Case& at, GlandFit& /*fit*/) {
  return area::check_protection(*at.question.demand, at.gland);
}

std::optional<Check> check_level(const Case& at, GlandFit& /*fit*/) {
  return area::check_level(*at.question.demand, at.gland);
}

std::optional<Check> check_group(const Case& at, GlandFit& /*fit*/) {
  return area::check_group(*at.question.demand, at.gland);
}

std::optional<Check> check_ingress(const Case& at, GlandFit& /*fit*/) {
  return area::check_ingress(*at.question.demand, at.gland);
}

std::optional<Check> check_temperature(const Case& at, GlandFit& /*fit*/) {
  return area::check_temperature(*at.question.demand, at.gland);
}

/// @param enclosing_mm  a diameter in which all cores lie, where one is known
std::optional<Check> sealing_with(const Case& at, std::optional<double> enclosing_mm) {
  std::optional<area::SealingBundle> bundle;
  if (at.barrier) {
    const job::Job& job = *at.question.job;
    area::SealingCores cores{.cores = job.cable.cores, .core_mm = {}, .enclosing_mm = enclosing_mm};
    if (job.construction) cores.core_mm = job.construction->core_mm;
    bundle =
        area::check_sealing_bundle(at.gland, cores, at.question.standards->table("bundle_factors"));
  }
  return area::check_sealing(*at.question.demand, at.cable(), at.gland, bundle);
}

/// The cores lie within the bedding, so that a bedding which the chamber takes settles it; else
/// their bundle does.
std::optional<Against> against_sealing(const Case& at) {
  const auto without = sealing_with(at, std::nullopt);
  if (!without) return std::nullopt;
  Against out{.verdict = without->verdict};
  const auto limit_mm = area::chamber_limit_mm(at.gland);
  if (!at.barrier || !limit_mm) return out;
  const Verdict within = sealing_with(at, limit_mm)->verdict;
  if (within == without->verdict) return out;
  return Against{.verdict = within,
                 .range = measure::Range{.low_mm = std::nullopt, .high_mm = limit_mm},
                 .diameter = Diameter::bedding,
                 .otherwise = without->verdict};
}

std::optional<Check> check_sealing(const Case& at, GlandFit& /*fit*/) {
  const auto& bedding = at.cable().bedding;
  return sealing_with(at, bedding ? std::optional(bedding->high_mm()) : std::nullopt);
}

// ---- metals ---------------------------------------------------------------------------------

std::optional<Check> check_metals(const Case& at, GlandFit& /*fit*/) {
  const cable::Cable& cable = at.cable();
  const bool armoured = cable.armour != cable::ArmourKind::none;
  return area::check_metals(
      {.enclosure = at.entry().material,
       .adaptor = at.adaptor != nullptr ? at.entry().adaptor_material : std::nullopt,
       .armour = armoured ? cable.armour_material : std::nullopt},
      at.gland, *at.question.standards);
}

// ---- earth ----------------------------------------------------------------------------------

std::optional<Check> check_earth(const Case& at, GlandFit& /*fit*/) {
  if (!is_asked(Topic::earth, at.question)) return std::nullopt;
  // Where the entry's thread is not known, an adaptor that is at hand may have to be used.
  const entry::Entry& entry = at.entry();
  const bool may_be = !entry.thread && !entry.to_suit && !entry.adaptors.empty();
  return earth::check_path(at.cable(), entry, at.gland, at.adaptor != nullptr || may_be);
}

// ---- fault ----------------------------------------------------------------------------------

/// The armour against the fault: no other gland helps where it is too thin.
earth::Finding armour_in_fault(const Question& question) {
  const job::Job& job = *question.job;
  if (job.cable.cores == 1 && !job.cable.armour_material) {
    return {Verdict::not_known, "a single core: what the armour is made of is not given", ""};
  }
  earth::Finding armour =
      earth::judge_armour(job::armour_earth_input(job, *question.standards), *question.standards);
  if (armour.verdict < Verdict::not_known) {
    armour.says = "the armour is too thin for the earth fault: " + armour.says +
                  "; a separate protective conductor is to be decided first";
  }
  return armour;
}

std::optional<Verdict> fault_alone(const Question& question) {
  if (!is_asked(Topic::fault, question)) return std::nullopt;
  return armour_in_fault(question).verdict;
}

std::optional<Against> against_fault(const Case& at) {
  if (!is_asked(Topic::fault, at.question)) return std::nullopt;
  return Against{
      .verdict =
          earth::judge_gland_rating(at.gland.fault_ka, at.question.job->fault).finding.verdict};
}

/// What of armour, fault and gland is not known.
std::vector<Lack> lacks_of_fault(const Case& at) {
  const job::Job& job = *at.question.job;
  const earth::EarthFault& fault = job.fault;
  std::vector<Lack> lacks;
  const auto add = [&](bool missing, const char* fact, const char* key, Lack::Where where) {
    if (missing) lacks.push_back({fact, key, where});
  };
  using enum Lack::Where;
  add(!fault.current_ka && !fault.loop_ohm, "fault current", "current_ka", elsewhere);
  add(!fault.current_ka && fault.loop_ohm && !fault.u0_v, "voltage to earth", "u0_v", elsewhere);
  add(!fault.time_s, "time of the fault", "time_s", elsewhere);
  add(job.cable.cores == 1 && !job.cable.armour_material, "armour's material", "armour_material",
      at_the_end);
  const bool wire = job.cable.armour == ArmourKind::wire;
  if (!earth::armour_area(job.cable, job.construction, *at.question.standards)) {
    add(wire, "wire and bedding", "armour_mm", at_the_end);
    add(!wire, "area of the armour", "", elsewhere);
  }
  add(!at.gland.fault_ka, "gland's fault rating", "fault_ka", elsewhere);
  return lacks;
}

std::optional<Check> check_fault(const Case& at, GlandFit& fit) {
  if (!is_asked(Topic::fault, at.question)) return std::nullopt;
  const earth::EarthFault& fault = at.question.job->fault;
  const earth::Finding armour = armour_in_fault(at.question);
  const earth::GlandRating gland = earth::judge_gland_rating(at.gland.fault_ka, fault);
  fit.armour_too_thin = armour.verdict < Verdict::not_known;
  Check check;
  check.name = CheckName::fault;
  check.lacks = lacks_of_fault(at);
  check.verdict = worst(armour.verdict, gland.finding.verdict);
  check.value = earth::current_ka(fault);
  check.high = gland.limit_ka;
  check.says = armour.says;
  check.source = armour.source;
  // Where the armour is too thin, a gland that would do is no news.
  if (fit.armour_too_thin && gland.finding.verdict == Verdict::fits) return check;
  check.says += "; " + gland.finding.says;
  check.source += (armour.source.empty() ? "" : "; ") + gland.finding.source;
  return check;
}

constexpr std::array k_rules{
    Rule{CheckName::outer_seal, Topic::cable, nullptr, against_outer_seal, check_outer_seal},
    Rule{CheckName::inner_seal, Topic::cable, nullptr, against_inner_seal, check_inner_seal},
    Rule{CheckName::bore, Topic::cable, nullptr, against_bore, check_bore},
    Rule{CheckName::armour, Topic::cable, nullptr, against_armour, check_armour},
    Rule{CheckName::build_up, Topic::cable, build_up_alone, nullptr, check_build_up},
    Rule{CheckName::entry, Topic::entry, nullptr, against_entry, check_entry},
    Rule{CheckName::entry, Topic::entry, nullptr, against_entry_of_cores, check_entry_of_cores},
    Rule{CheckName::thread, Topic::joint, nullptr, nullptr, check_thread},
    Rule{CheckName::joint, Topic::joint, nullptr, nullptr, check_joint},
    Rule{CheckName::bend, Topic::cable, bend_alone, nullptr, check_bend},
    Rule{CheckName::protection, Topic::place, nullptr, nullptr, check_protection},
    Rule{CheckName::level, Topic::place, nullptr, nullptr, check_level},
    Rule{CheckName::group, Topic::place, nullptr, nullptr, check_group},
    Rule{CheckName::ingress, Topic::place, nullptr, nullptr, check_ingress},
    Rule{CheckName::temperature, Topic::place, nullptr, nullptr, check_temperature},
    Rule{CheckName::sealing, Topic::place, nullptr, against_sealing, check_sealing},
    Rule{CheckName::metals, Topic::earth, nullptr, nullptr, check_metals},
    Rule{CheckName::earth, Topic::earth, nullptr, nullptr, check_earth},
    Rule{CheckName::fault, Topic::fault, fault_alone, against_fault, check_fault},
};
static_assert(k_rules.size() <= k_most_rules);

}  // namespace

Case::Case(const Question& asked, const gland::Gland& of)
    : question(asked),
      gland(of),
      barrier(made_off_as_barrier(sealing_of(of), *asked.demand)),
      adaptor(entry::adaptor_between(asked.job->entry, of.entry_thread)) {}

bool made_off_as_barrier(gland::Sealing sealing, const area::Demand& demand) {
  if (sealing != gland::Sealing::either) return sealing == gland::Sealing::barrier;
  // Every edition allows it in a flameproof entry; compression is disputed, or from memory.
  return demand.sealing != area::SealingDemand::none;
}

Against against_passage(const Case& at, const entry::Adaptor* adaptor) {
  const tables::Standards& standards = *at.question.standards;
  const entry::Passage passage = entry::passage(at.gland, at.entry(), adaptor, standards);
  Against out{
      .verdict = entry::trust_in(passage),
      .range = passage.range,
      .diameter = at.cable().armour == ArmourKind::none ? Diameter::sheath : Diameter::bedding};
  if (at.barrier) {
    out.otherwise = entry::verdict_of_cores(passage, at.cable(), core_mm(at), standards);
  }
  return out;
}

bool is_flameproof(const Question& question) {
  return question.demand->sealing != area::SealingDemand::none;
}

std::span<const Rule> rules() { return k_rules; }

/// Protection against ingress and a temperature are asked alone as well, and a single core in steel
/// is refused wherever it is met: these rules say for themselves whether they are asked.
bool may_be_asked(const Rule& rule, const Question& question) {
  return rule.topic == Topic::place || rule.name == CheckName::earth ||
         is_asked(rule.topic, question);
}

std::optional<Verdict> alone(const Rule& rule, const Question& question) {
  if (rule.alone == nullptr || !may_be_asked(rule, question)) return std::nullopt;
  return rule.alone(question);
}

std::optional<Check> say(const Rule& rule, const Case& at, GlandFit& fit) {
  if (!may_be_asked(rule, at.question)) return std::nullopt;
  return rule.say(at, fit);
}

std::optional<Against> against(const Rule& rule, const Case& at) {
  if (!may_be_asked(rule, at.question)) return std::nullopt;
  if (rule.against != nullptr) return rule.against(at);
  GlandFit unused;
  const auto check = rule.say(at, unused);
  return check ? std::optional(Against{.verdict = check->verdict}) : std::nullopt;
}

std::optional<Against> against_behind_adaptor(const Rule& rule, const Case& at) {
  const auto found = against(rule, at);
  if (!found || found->range || rule.name != CheckName::entry) return found;
  Against passing = against_passage(at, at.adaptor);
  passing.verdict = worst(passing.verdict, found->verdict);
  if (passing.otherwise) passing.otherwise = worst(*passing.otherwise, found->verdict);
  return passing;
}

Compared::Compared(const cable::Cable& cable, Diameter diameter) {
  const auto take = [&](const std::optional<measure::Estimate>& estimate) {
    if (estimate) estimate_ = &*estimate;
  };
  if (diameter == Diameter::sheath) take(cable.sheath_od);
  if (diameter == Diameter::bedding) take(cable.bedding);
  if (diameter == Diameter::wire) take(cable.wire);
  if (diameter == Diameter::wire && cable.wire && cable.wire_nominal) {
    nominal_ = cable.wire_nominal->nominal_mm;
  }
}

Finding Compared::in(const measure::Range& range) const {
  if (!nominal_) {
    const measure::Outcome outcome = measure::outcome_of(*estimate_, range);
    return {.verdict = outcome.verdict, .margin_mm = outcome.margin_mm, .counts_for_margin = true};
  }
  const double margin =
      std::min(*nominal_ - range.low_mm.value_or(0.0),
               range.high_mm.value_or(measure::k_largest_diameter_mm) - *nominal_);
  const bool fits = at_least(margin, 0.0);
  const Verdict inside = estimate_->caps.empty() ? Verdict::fits : Verdict::marginal_inside;
  return {
      .verdict = fits ? inside : Verdict::no_fit, .margin_mm = margin, .counts_for_margin = !fits};
}

Finding finding_of(const Against& against, const cable::Cable& cable) {
  Finding found{.verdict = against.verdict, .margin_mm = std::nullopt};
  if (!against.range) return found;
  const Compared compared(cable, against.diameter);
  if (against.otherwise) {
    const bool within =
        compared.known() && at_most(compared.estimate().high_mm(), *against.range->high_mm);
    return {.verdict = within ? against.verdict : *against.otherwise, .margin_mm = std::nullopt};
  }
  if (!compared.known()) {
    found.verdict = worst(found.verdict, Verdict::not_known);
    return found;
  }
  const Finding inside = compared.in(*against.range);
  found.margin_mm = inside.margin_mm;
  // Where something else fails as well, it is not by the diameter alone that it misses.
  found.counts_for_margin = inside.counts_for_margin && against.verdict >= Verdict::marginal_inside;
  found.verdict = worst(found.verdict, inside.verdict);
  return found;
}

std::optional<Finding> find(const Rule& rule, const Case& at) {
  std::optional<Finding> found;
  if (is_of_gland(rule)) {
    if (const auto gland = against(rule, at)) found = finding_of(*gland, at.cable());
  }
  if (rule.alone != nullptr) {
    if (const auto verdict = alone(rule, at.question)) {
      if (!found) found = Finding{.verdict = Verdict::fits, .margin_mm = std::nullopt};
      found->verdict = worst(found->verdict, *verdict);
    }
  }
  return found;
}

}  // namespace cutback::fit::detail

namespace cutback::fit {

Topic topic_of(CheckName name) {
  const std::span<const detail::Rule> all = detail::rules();
  const auto row = std::find_if(all.begin(), all.end(),
                                [&](const detail::Rule& rule) { return rule.name == name; });
  if (row == all.end()) throw InternalError("a check without a row in the table of rules");
  return row->topic;
}

}  // namespace cutback::fit

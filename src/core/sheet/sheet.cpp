#include "cutback/sheet/sheet.hpp"

#include <algorithm>

#include "core/sheet/accepts.hpp"
#include "core/sheet/depth_gate.hpp"
#include "core/sheet/steps.hpp"
#include "cutback/error.hpp"
#include "cutback/fit/needs.hpp"
#include "cutback/nearest.hpp"
#include "cutback/number.hpp"

namespace cutback::sheet {
namespace {

const fit::GlandFit& find_part(const std::vector<fit::GlandFit>& ranked, const std::string& part) {
  std::vector<std::string_view> parts;
  for (const fit::GlandFit& fit : ranked) {
    if (fit.gland->part == part) return fit;
    parts.push_back(fit.gland->part);
  }
  throw InputError(Fault{.code = ErrorCode::unknown_name,
                         .what = "this gland is not in the list",
                         .where = "--gland",
                         .given = part,
                         .allowed = {},
                         .hint = did_you_mean(part, parts)});
}

std::string why_chosen(const fit::GlandFit& fit, const std::vector<fit::GlandFit>& ranked,
                       bool named) {
  if (named) return "named by the user";
  const auto fitting = std::count_if(ranked.begin(), ranked.end(), [](const fit::GlandFit& other) {
    return other.verdict == Verdict::fits;
  });
  if (fit.verdict != Verdict::fits)
    return "the nearest of " + std::to_string(ranked.size()) + " in the list";
  if (fitting == 1)
    return "the only one of " + std::to_string(ranked.size()) + " in the list that fits";
  return "the first choice of " + std::to_string(fitting) + " that fit, out of " +
         std::to_string(ranked.size()) + " in the list";
}

void add_source(std::vector<std::string>& sources, const std::string& source) {
  if (!source.empty() && std::find(sources.begin(), sources.end(), source) == sources.end()) {
    sources.push_back(source);
  }
}

/// Why nothing may be cut yet.
std::vector<std::string> reasons_not_ready(const job::Job& job, const fit::GlandFit& fit) {
  std::vector<std::string> reasons;
  for (const fit::Check& check : fit.checks) {
    if (check.verdict == Verdict::fits) continue;
    reasons.push_back(std::string(to_string(check.name)) + " is " +
                      std::string(to_string(check.verdict)) + ": " + check.says);
  }
  std::string names;
  for (const fit::Lack& lack : fit::not_measured(job.cable)) {
    names += (names.empty() ? "" : ", ") + lack.fact;
  }
  if (!names.empty()) reasons.push_back("not measured: " + names + "; measure before cutting");
  return reasons;
}

void add_lacks(std::vector<fit::Lack>& to, const std::vector<fit::Lack>& lacks) {
  for (const fit::Lack& lack : lacks) {
    if (std::find(to.begin(), to.end(), lack) == to.end()) to.push_back(lack);
  }
}

bool is_outside(const fit::Gate& gate, const std::optional<measure::Estimate>& read) {
  if (!read || read->evidence != measure::Evidence::measured) return false;
  return !std::all_of(read->readings_mm.begin(), read->readings_mm.end(),
                      [&](double reading_mm) { return gate.holds(reading_mm); });
}

/// Readings that fit, by so many of them or so fine a caliper, may still lie outside of what two
/// crossed readings must show. A page does not say CUT beside a gate that its own cable fails.
void add_outside_gates(const fit::Gates& gates, const cable::Cable& cable,
                       std::vector<fit::Lack>& lacks) {
  const auto again = [&](const char* what, std::string_view key) {
    lacks.push_back({std::string(what) + " again, a reading lies outside its gate", key,
                     fit::Lack::Where::at_the_end});
  };
  if (is_outside(gates.sheath, cable.sheath_od)) again("sheath", "sheath_od_mm");
  if (cable.armour == cable::ArmourKind::none) return;
  if (is_outside(gates.bedding, cable.bedding)) again("bedding", "bedding_mm");
  const bool no_wire =
      std::all_of(gates.wire.begin(), gates.wire.end(),
                  [&](const fit::WireGate& wire) { return is_outside(wire.gate, cable.wire); });
  if (!gates.wire.empty() && no_wire) again("wire", "armour_mm");
}

/// What the page is good for, and what it lacks.
void put_state(Sheet& sheet) {
  const fit::GlandFit& fit = *sheet.fit;
  if (fit.verdict == Verdict::no_fit) {
    sheet.state = State::none;
    return;
  }
  add_lacks(sheet.lacks, fit::lacks_of(fit));
  add_lacks(sheet.lacks, fit::not_measured(sheet.job->cable));
  if (sheet.plan) add_lacks(sheet.lacks, sheet.plan->lacks);
  const bool unread = detail::is_only_unread(fit);
  // With a conductor size the number of cores says which cable it is: the page would be another.
  for (fit::Lack& lack : sheet.lacks) {
    if (lack.key == "cores" && sheet.job->cable.csa_mm2) {
      lack.where = fit::Lack::Where::elsewhere;
    }
  }
  const bool all_read_here =
      std::all_of(sheet.lacks.begin(), sheet.lacks.end(),
                  [](const fit::Lack& lack) { return lack.where == fit::Lack::Where::at_the_end; });
  if (!unread || !all_read_here || !sheet.gates.possible()) {
    sheet.state = State::not_yet;
  } else {
    add_outside_gates(sheet.gates, sheet.job->cable, sheet.lacks);
    sheet.state = sheet.lacks.empty() ? State::cut : State::measure;
  }
}

/// Cut marks for a gland that does not fit would be an invitation to cut.
bool may_be_made_off(const fit::GlandFit& fit) { return fit.verdict >= Verdict::not_known; }

/// The armour as protective conductor, where a fault is spoken of. Its verdicts are those of the
/// check `fault`.
std::optional<earth::EarthResult> earth_of(const job::Job& job, const fit::GlandFit& fit,
                                           const tables::Standards& standards) {
  if (fit.find(fit::CheckName::fault) == nullptr) return std::nullopt;
  earth::EarthInput in = job::armour_earth_input(job, standards);
  in.gland_ka = fit.gland->fault_ka;
  return earth::check_armour_earth(in, standards);
}

void gather_sources(Sheet& sheet, const tables::Standards& standards,
                    const std::string& list_name) {
  std::vector<std::string>& sources = sheet.sources;
  add_source(sources, "gland figures: " + list_name);
  for (const fit::Check& check : sheet.fit->checks) add_source(sources, check.source);
  for (const Test& test : sheet.tests) {
    if (!test.source.empty()) add_source(sources, test.name + ": " + test.source);
  }
  if (sheet.job->construction) {
    for (const std::string& source : sheet.job->construction->sources) add_source(sources, source);
  }
  add_source(sources,
             "marks and depths: lengths added along the cable's axis, each figure from the gland "
             "list and the entry; marks to 1 mm and order of work: common practice, no source");
  const fit::GlandFit& fit = *sheet.fit;
  std::string cautions;
  for (const area::Caution& caution :
       area::cautions(sheet.job->area, *fit.gland, fit.barrier, standards)) {
    if (cautions.find(caution.source) == std::string::npos) {
      cautions += (cautions.empty() ? "cautions: " : "; ") + caution.source;
    }
  }
  add_source(sources, cautions);
  constexpr std::size_t k_digits = 8;  // of the checksum: enough to tell one edition from another
  for (const char* id : {"caliper_limits", "armour_wire_bands"}) {
    const tables::Table& table = standards.table(id);
    add_source(sources, table.source() + " (table " + table.id + ", " +
                            std::string(to_string(table.status)) + ", checksum " +
                            table.checksum.substr(0, k_digits) + ")");
  }
}

}  // namespace

Choice choose(const job::Job& job, const std::vector<fit::GlandFit>& ranked,
              const std::string& part) {
  if (ranked.empty()) throw InternalError("an empty gland list reached the sheet");
  const bool named = !part.empty();
  Choice choice{.fit = {}, .because = {}, .fits_instead = {}, .advice = fit::advise(job, ranked)};
  const fit::GlandFit* chosen = named ? &find_part(ranked, part) : &ranked.front();
  if (!named && !may_be_made_off(*chosen) && choice.advice.nearest != nullptr) {
    chosen = choice.advice.nearest;
  }
  choice.fit = *chosen;
  choice.because = why_chosen(*chosen, ranked, named);
  if (chosen->verdict != Verdict::fits && ranked.front().verdict == Verdict::fits) {
    choice.fits_instead = ranked.front().gland->part;
  }
  return choice;
}

job::JobInput with_gland(job::JobInput input, const Sheet& sheet) {
  if (sheet.plan) input.gland = sheet.fit->gland->part;
  return input;
}

Sheet make_sheet(const fit::Question& question, Choice choice, const std::string& list_name) {
  const job::Job& job = *question.job;
  const tables::Standards& standards = *question.standards;
  Sheet sheet;
  sheet.job = &job;
  sheet.demand = question.demand.get();
  sheet.advice = std::move(choice.advice);
  sheet.fit = std::move(choice.fit);
  sheet.chosen_because = std::move(choice.because);
  sheet.fits_instead = std::move(choice.fits_instead);
  const fit::GlandFit* const chosen = &*sheet.fit;
  sheet.not_ready = reasons_not_ready(job, *chosen);
  sheet.remarks = job.cable.warnings;
  sheet.earth = earth_of(job, *chosen, standards);
  sheet.inspection = area::initial_inspection(job.area, standards);
  if (!chosen->barrier) {
    std::erase_if(sheet.inspection, [](const auto& item) { return item.key == "compound"; });
  }
  if (may_be_made_off(*chosen)) {
    sheet.plan = strip::plan_cuts(job, *chosen->gland,
                                  {.barrier = chosen->barrier,
                                   .adaptor = chosen->adaptor.has_value(),
                                   .bedding_thickness_mm = strip::bedding_thickness_mm(job)});
    const fit::Check* const build_up = chosen->find(fit::CheckName::build_up);
    if (build_up != nullptr && build_up->verdict != Verdict::fits) {
      sheet.plan->depths = {};
      sheet.remarks.push_back(job.cable.contradiction
                                  ? "no depth is given: the diameters do not agree with each "
                                    "other; measure them again"
                                  : "no depth is given: sheath, bedding and wire are not all "
                                    "measured yet");
    }
    sheet.parts = detail::parts_of(job, *chosen, fit::compound_of(question, *chosen));
    sheet.steps = detail::steps_of(job, *chosen, *sheet.plan);
    sheet.tests = detail::tests_of(job, *chosen, standards);
    for (const std::string& missing : sheet.plan->missing) sheet.remarks.push_back(missing);
    if (chosen->thread) {
      for (const std::string& note : chosen->thread->notes) sheet.remarks.push_back(note);
    }
  }
  sheet.gates = fit::gates_of(question, *chosen->gland);
  if (sheet.plan) {
    sheet.depths_from_mm = detail::depths_from_mm(question, sheet.plan->depths,
                                                  {.sheath_mm = strip::oversheath_thickness_mm(job),
                                                   .bedding_mm = strip::bedding_thickness_mm(job)},
                                                  sheet.gates.sheath);
  }
  sheet.not_asked = fit::not_asked(question);
  sheet.assumptions = fit::assumptions(question, chosen->gland);
  put_state(sheet);
  if (sheet.state == State::measure) {
    sheet.accepts = detail::accepts_of(question, *chosen->gland, sheet.lacks);
  }
  if (sheet.state == State::measure && sheet.plan) {
    for (const fit::Lack& lack : sheet.plan->lacks) {
      sheet.not_ready.push_back("not given: " + lack.fact);
    }
  }
  sheet.cautions = detail::cautions_of(job, *chosen, standards);
  sheet.own_cautions = detail::own_cautions_of(job, *chosen, standards);
  gather_sources(sheet, standards, list_name);
  return sheet;
}

}  // namespace cutback::sheet

#include "cutback/schedule/decide.hpp"

#include <algorithm>

#include "cutback/fit/select.hpp"
#include "cutback/job/job.hpp"
#include "cutback/strip/cut_plan.hpp"

namespace cutback::schedule {
namespace {

using fit::CheckName;
using fit::GlandFit;

std::optional<double> margin_of(const GlandFit& fit, CheckName name) {
  const fit::Check* check = fit.find(name);
  return check != nullptr ? check->margin_mm : std::nullopt;
}

bool all_measured(const cable::Cable& cable) {
  const auto measured = [](const std::optional<measure::Estimate>& estimate) {
    return !estimate || estimate->evidence == measure::Evidence::measured;
  };
  return measured(cable.sheath_od) && measured(cable.bedding) && measured(cable.wire);
}

std::vector<Accessory> accessories_of(const job::Job& job, const GlandFit& fit) {
  std::vector<Accessory> list;
  if (fit.adaptor) {
    list.push_back(
        {"adaptor", entry::to_text(fit.adaptor->a) + " to " + entry::to_text(fit.adaptor->b)});
  }
  if (fit.thread && job.entry.thread) {
    for (const entry::EntryPart& part : fit.thread->parts) {
      const std::string name = part.name.substr(0, part.name.find(','));
      if (name == "gland" || name == "wall") continue;
      list.push_back({name, entry::to_text(*job.entry.thread)});
    }
  }
  if (fit.barrier) list.push_back({"compound", "for " + fit.gland->part});
  return list;
}

/// The marks, where a route is given. Cuts that contradict each other are a remark of the end.
void add_marks(const job::Job& job, const GlandFit& fit, Decision& decision) {
  if (job.tails.cores.empty()) return;
  try {
    const strip::CutPlan plan =
        strip::plan_cuts(job, *fit.gland,
                         {.barrier = fit.barrier,
                          .adaptor = fit.adaptor.has_value(),
                          .bedding_thickness_mm = strip::bedding_thickness_mm(job)});
    decision.armour_cut_mm = plan.marks.armour_cut_mm;
    decision.sheath_cut_mm = plan.marks.sheath_cut_mm;
    decision.bedding_cut_mm = plan.marks.bedding_cut_mm;
  } catch (const InputError& error) {
    decision.reason += "; no marks: " + to_line(error.faults().front());
    decision.group = "no marks";
    decision.change = "look at the lengths of this end";
    decision.proven = false;
  }
}

std::string why_first(std::size_t fits, fit::Prefer prefer) {
  if (fits == 1) return "the only one that fits";
  const std::string_view by = prefer == fit::Prefer::price    ? "price"
                              : prefer == fit::Prefer::margin ? "margin"
                                                              : "stock";
  return "first by " + std::string(by) + " of " + std::to_string(fits) + " that fit";
}

void take_gland(const job::Job& job, const GlandFit& fit, Decision& decision) {
  decision.gland = fit.gland;
  decision.outer_margin_mm = margin_of(fit, CheckName::outer_seal);
  decision.inner_margin_mm = margin_of(fit, CheckName::inner_seal);
  decision.armour_margin_mm = margin_of(fit, CheckName::armour);
  decision.barrier = fit.barrier;
  decision.accessories = accessories_of(job, fit);
  add_marks(job, fit, decision);
}

std::string group_of(const GlandFit& fit) {
  const fit::Check& check = fit.deciding();
  return std::string(to_string(check.name)) + " " + std::string(to_string(check.verdict));
}

/// An adaptor that would make a gland fit: only where the thread is all that is wrong, and only
/// when the whole check says so.
std::string adaptor_that_helps(const fit::Question& question, const std::vector<GlandFit>& ranked) {
  if (!question.job->entry.thread || !question.job->entry.adaptors.empty()) return {};
  for (const GlandFit& fit : ranked) {
    const bool only_entry =
        std::all_of(fit.checks.begin(), fit.checks.end(), [](const fit::Check& check) {
          return check.verdict == Verdict::fits || check.name == CheckName::entry ||
                 check.name == CheckName::thread;
        });
    if (!only_entry) continue;
    job::Job job = *question.job;
    job.entry.adaptors.push_back({*job.entry.thread, fit.gland->entry_thread, {}});
    fit::Question with = question;
    with.job = &job;
    if (fit::check_gland(with, *fit.gland).verdict != Verdict::fits) continue;
    return "an adaptor " + entry::to_text(*job.entry.thread) + " to " +
           entry::to_text(fit.gland->entry_thread) + " for " + fit.gland->part;
  }
  return {};
}

/// No gland fits: the nearest, by how much, and what would help.
void take_advice(const fit::Question& question, const std::vector<GlandFit>& ranked,
                 Decision& decision) {
  const fit::Advice advice = fit::advise(*question.job, ranked);
  decision.reason = advice.nearest_says;
  decision.nearest = advice.nearest->gland;
  decision.group = group_of(*advice.nearest);
  decision.barrier = question.demand.sealing == area::SealingDemand::barrier;
  if (ranked.front().verdict >= Verdict::not_known) {
    decision.change =
        advice.measure_says.empty() ? "find what is not known" : "measure " + advice.measure_says;
    return;
  }
  decision.change = adaptor_that_helps(question, ranked);
  if (decision.change.empty()) decision.change = "order " + advice.order_says;
}

Decision decide_job(const job::Job& job, const Settings& settings) {
  Decision decision;
  decision.remarks = job.cable.warnings;
  const fit::Question question = fit::ask(job, *settings.standards);
  const fit::Selection selection = settings.glands->select(question);
  const GlandFit& best = selection.ranked.front();
  decision.verdict = best.verdict;
  decision.fits = selection.fits;
  if (best.verdict == Verdict::fits) {
    decision.proven = true;
    decision.reason = why_first(selection.fits, settings.glands->prefer());
    if (!all_measured(job.cable)) decision.reason += "; measure before cutting";
    take_gland(job, best, decision);
    return decision;
  }
  take_advice(question, selection.ranked, decision);
  if (best.verdict == Verdict::marginal_inside) take_gland(job, best, decision);
  return decision;
}

Fault no_sheath() {
  return {.code = ErrorCode::missing,
          .what = "nothing tells the sheath diameter",
          .where = {},
          .given = {},
          .allowed = "sheath_od_mm, or cores and csa_mm2 of a cable that a rule covers",
          .hint = {}};
}

}  // namespace

std::string unusable_text(const schedule::Decision& decision) {
  std::string text;
  for (const Fault& fault : decision.faults) text += (text.empty() ? "" : "; ") + to_line(fault);
  return text;
}

Decision decide(const job::JobInput& input, const Settings& settings) {
  try {
    const job::Job job = job::resolve(input, *settings.standards, job::Unstated::by_notation);
    if (job.cable.sheath_od) return decide_job(job, settings);
  } catch (const InputError& error) {
    Decision decision;
    decision.faults = error.faults();
    return decision;
  }
  Decision decision;
  decision.faults.push_back(no_sheath());
  return decision;
}

}  // namespace cutback::schedule

#include "cutback/schedule/decide.hpp"

#include <algorithm>

#include "core/schedule/decide_detail.hpp"
#include "cutback/fit/needs.hpp"
#include "cutback/fit/select.hpp"
#include "cutback/job/job.hpp"
#include "cutback/number.hpp"
#include "cutback/strip/cut_plan.hpp"

namespace cutback::schedule {
namespace {

using fit::GlandFit;
using gland::Gland;

/// The marks, where a route is given. Cuts that contradict each other are a remark of the end.
void add_marks(const job::Job& job, const detail::Fittings& fittings, Decision& decision) {
  if (job.tails.cores.empty()) return;
  try {
    const strip::CutPlan plan =
        strip::plan_cuts(job, *decision.gland,
                         {.barrier = fittings.barrier,
                          .adaptor = fittings.adaptor,
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

void say_why_first(std::size_t fits, fit::Prefer prefer, std::string& reason) {
  if (fits == 1) {
    reason += "the only one that fits";
    return;
  }
  reason += "first by ";
  reason += prefer == fit::Prefer::price    ? "price"
            : prefer == fit::Prefer::margin ? "margin"
                                            : "stock";
  reason += " of ";
  append_plain(reason, static_cast<double>(fits), 0);
  reason += " that fit";
}

std::string ordinal(std::size_t number) {
  const std::size_t last = number % 10;
  const bool teen = number / 10 % 10 == 1;
  const char* const ending = teen || last == 0 || last > 3 ? "th"
                             : last == 1                   ? "st"
                             : last == 2                   ? "nd"
                                                           : "rd";
  return std::to_string(number) + ending;
}

void say_from_stock(const Supply& supply, std::size_t fits, std::string& reason) {
  reason += supply.gland->stock ? "from stock: " : "not limited by stock: ";
  reason += supply.gland->part;
  reason += ", ";
  if (fits == 1) {
    reason += "the only one that fits";
    return;
  }
  reason += ordinal(supply.place);
  reason += " by price of ";
  append_plain(reason, static_cast<double>(fits), 0);
  reason += " that fit";
}

/// As a fresh one, but the storage of its texts is kept.
void clear(Decision& decision) {
  for (std::string* text :
       {&decision.reason, &decision.group, &decision.change, &decision.not_asked}) {
    text->clear();
  }
  decision.faults.clear();
  decision.remarks.clear();
  decision.verdict = Verdict::no_fit;
  decision.state = fit::State::none;
  decision.gland = nullptr;
  decision.nearest = nullptr;
  decision.fits = 0;
  for (std::optional<double>* figure :
       {&decision.outer_margin_mm, &decision.inner_margin_mm, &decision.armour_margin_mm,
        &decision.armour_cut_mm, &decision.sheath_cut_mm, &decision.bedding_cut_mm}) {
    figure->reset();
  }
  for (std::optional<UsedFigure>* figure :
       {&decision.sheath_od, &decision.bedding, &decision.armour}) {
    figure->reset();
  }
  decision.defaults = 0;
  decision.barrier.reset();
  decision.accessories.reset();
  decision.wavering = {};
  decision.out_of_stock = false;
  decision.proven = false;
  decision.made = false;
}

void take_gland(const fit::Question& question, const Gland& gland, detail::FittingsMemory& memory,
                Decision& decision) {
  decision.gland = &gland;
  const fit::Margins margins = fit::margins_of(question, gland);
  decision.outer_margin_mm = margins.outer_mm;
  decision.inner_margin_mm = margins.inner_mm;
  decision.armour_margin_mm = margins.armour_mm;
  const detail::Fittings fittings = memory.of(question, gland);
  decision.barrier = fittings.barrier;
  decision.accessories = fittings.accessories;
  add_marks(*question.job, fittings, decision);
}

std::optional<UsedFigure> used(const std::optional<measure::Estimate>& estimate) {
  if (!estimate) return std::nullopt;
  return UsedFigure{estimate->value_mm, estimate->expanded_mm, estimate->evidence};
}

std::string group_of(const GlandFit& fit) {
  const fit::Check& check = fit.deciding();
  return std::string(to_string(check.name)) + " " + std::string(to_string(check.verdict));
}

/// No gland fits: the nearest, by how much, and what would help.
void take_advice(const fit::Question& question, const fit::Found& found, const GlandFit& nearest,
                 fit::Search& search, Decision& decision) {
  const fit::Advice advice = fit::advise(*question.job, nearest);
  decision.reason = advice.nearest_says;
  decision.nearest = nearest.gland;
  decision.group = group_of(nearest);
  decision.barrier = question.demand->sealing == area::SealingDemand::barrier;
  if (nearest.armour_too_thin) {
    decision.group = "earth armour too thin";
    decision.change = "decide on a separate protective conductor";
    return;
  }
  if (const auto& remark = question.job->cable.contradiction) {
    decision.change = "measure again: " + remark->repeat;
    return;
  }
  if (found.verdict >= Verdict::not_known) {
    decision.change =
        advice.measure_says.empty() ? "find what is not known" : "measure " + advice.measure_says;
    return;
  }
  if (const Gland* gland = search.through_adaptor()) {
    const std::string through = fit::adaptor_name(*question.job->entry.thread, gland->entry_thread);
    decision.change = (through.starts_with('a') ? "an " : "a ") + through + " for " + gland->part;
    // Its own marking is not known before it is there, and is asked for then.
    if (question.demand->protection) decision.change += ", itself marked for the place";
  } else {
    decision.change = "order " + advice.order_says;
  }
}

/// What the end gets of limited stock. Its gland fits it for every true diameter within the spread,
/// and no other is free to be chosen: nothing wavers.
void take_supply(const fit::Question& question, const Supply& supply, Decision& decision) {
  decision.proven = supply.gland != nullptr;
  decision.out_of_stock = supply.gland == nullptr;
  if (decision.proven) {
    say_from_stock(supply, decision.fits, decision.reason);
    return;
  }
  decision.reason = supply.reason;
  decision.change = supply.change;
  decision.group = "stock";
  decision.nearest = supply.cheapest;
  decision.barrier = question.demand->sealing == area::SealingDemand::barrier;
}

/// Figures that are not measured: what is to be measured, and why.
void add_measuring(Decision& decision) {
  if (decision.wavering) {
    decision.reason += "; measure before ordering: ";
    decision.reason += decision.wavering.one->part;
    decision.reason += " or ";
    decision.reason += decision.wavering.other->part;
  } else if (decision.state == fit::State::order) {
    decision.reason += "; measure before cutting";
  }
}

/// Nothing tells the sheath diameter: no gland can be looked for.
void take_no_sheath(const job::Job& job, Decision& decision) {
  decision.verdict = Verdict::not_known;
  decision.state = fit::State::not_yet;
  decision.remarks = job.cable.warnings;
  decision.bedding = used(job.cable.bedding);
  decision.armour = used(job.cable.wire);
  decision.reason = "nothing tells the sheath diameter";
  // Why nothing was estimated either.
  for (const std::string& remark : decision.remarks) decision.reason += "; " + remark;
  decision.group = "sheath diameter not known";
  decision.change = "measure the sheath, or give its figure of the datasheet";
}

/// The end is finished: what its readings carry is said of it, and nothing is to be ordered.
void say_made(const MadeEnd& made, Decision& decision) {
  decision.made = true;
  decision.reason = made.words + "; " + decision.reason;
  if (decision.verdict == Verdict::fits) return;
  decision.change = "look at this end, and make it off again where it does not hold";
}

}  // namespace

namespace detail {

void apply(const RowNotes& notes, const GivenFigures& given, cable::Cable& cable) {
  cable.warnings.insert(cable.warnings.end(), notes.remarks.begin(), notes.remarks.end());
  if (!notes.no_estimate) return;
  if (!given.sheath) cable.sheath_od.reset();
  if (!given.bedding) cable.bedding.reset();
}

void decide(const fit::Question& question, fit::Search& search, fit::Prefer prefer,
            const Supply* supply, FittingsMemory& fittings, Decision& decision,
            std::optional<GlandFit>* nearest) {
  const job::Job& job = *question.job;
  clear(decision);
  decision.remarks = job.cable.warnings;
  decision.sheath_od = used(job.cable.sheath_od);
  decision.bedding = used(job.cable.bedding);
  decision.armour = used(job.cable.wire);
  const fit::Found found = search.find();
  decision.verdict = found.verdict;
  decision.state = fit::state_of(found.verdict, job.cable);
  for (const fit::Topic topic : fit::not_asked(question)) {
    if (!decision.not_asked.empty()) decision.not_asked += ' ';
    decision.not_asked += to_string(topic);
  }
  decision.fits = found.fits;
  if (supply != nullptr) {
    take_supply(question, *supply, decision);
    if (decision.out_of_stock) return;
    add_measuring(decision);
    take_gland(question, *supply->gland, fittings, decision);
    return;
  }
  decision.wavering = search.wavering(found);
  if (found.verdict == Verdict::fits) {
    decision.proven = true;
    say_why_first(found.fits, prefer, decision.reason);
  } else {
    GlandFit fit = nearest != nullptr ? fit::check_gland(question, *found.nearest)
                                      : search.why_not(*found.nearest);
    take_advice(question, found, fit, search, decision);
    if (nearest != nullptr) *nearest = std::move(fit);
  }
  add_measuring(decision);
  if (found.verdict >= Verdict::marginal_inside) {
    take_gland(question, *found.first, fittings, decision);
  }
}

}  // namespace detail

namespace {

/// The gland that the end was finished with, and no other.
void decide_made(const MadeEnd& made, const fit::Question& question, const Settings& settings,
                 detail::FittingsMemory& fittings, AskedEnd& end) {
  const auto glands = settings.glands->glands();
  const auto gland = std::find_if(glands.begin(), glands.end(),
                                  [&](const Gland& each) { return each.part == made.part; });
  if (gland == glands.end()) {
    end.decision.verdict = Verdict::not_known;
    end.decision.state = fit::State::not_yet;
    end.decision.reason = "no gland of the list has this part code";
    end.decision.group = "made with a gland that is not in the list";
  } else {
    const fit::Selector one({&*gland, 1}, settings.glands->prefer());
    fit::Search search(one, question);
    detail::decide(question, search, one.prefer(), nullptr, fittings, end.decision, &end.fit);
  }
  say_made(made, end.decision);
}

}  // namespace

std::string unusable_text(const schedule::Decision& decision) {
  std::string text;
  for (const Fault& fault : decision.faults) text += (text.empty() ? "" : "; ") + to_line(fault);
  return text;
}

void say_count_unclear(const CountDoubt& doubt, Decision& decision) {
  if (!decision.usable()) return;
  decision.reason += "; " + doubt.says;
  if (!decision.proven) return;
  decision.proven = false;
  decision.group = doubt.group;
  decision.change = doubt.change;
}

void say_place_in_doubt(const std::string& text, Decision& decision) {
  if (!decision.usable()) return;
  decision.reason += "; the place is told plain, and \"" + text + "\" speaks of a hazardous one";
  if (!decision.proven) return;
  decision.proven = false;
  decision.group = "place told in two ways";
  decision.change = "write the zone of this end, or take the words out where they mean another";
}

std::optional<measure::Evidence> weakest_evidence(const Decision& decision) {
  std::optional<measure::Evidence> weakest;
  for (const auto* figure : {&decision.sheath_od, &decision.bedding, &decision.armour}) {
    // Their order is from the strongest to the weakest.
    if (*figure && (!weakest || (*figure)->evidence > *weakest)) weakest = (*figure)->evidence;
  }
  return weakest;
}

std::string_view verdict_word(const Decision& decision) {
  if (!decision.usable()) return "unusable";
  return decision.out_of_stock ? "no-stock" : to_string(decision.verdict);
}

job::Job job_of(const job::JobInput& input, const Settings& settings, const RowNotes& notes,
                const MadeEnd* made) {
  const bool measured = made != nullptr && made->is_measured();
  job::Job job = measured ? resolve_made(input, *made, *settings.standards)
                          : job::resolve(input, *settings.standards, job::Unstated::by_notation);
  if (made != nullptr && !measured) {
    job.cable.warnings.insert(job.cable.warnings.end(), made->remarks.begin(), made->remarks.end());
  }
  detail::apply(notes,
                {input.sheath_od_mm.has_value() || (measured && made->sheath_od),
                 input.bedding_mm.has_value() || (measured && made->bedding)},
                job.cable);
  return job;
}

AskedEnd decide_asked(const job::JobInput& input, const Settings& settings, const Supply* supply,
                      const RowNotes& notes, const MadeEnd* made) {
  AskedEnd end;
  try {
    auto job = std::make_unique<const job::Job>(job_of(input, settings, notes, made));
    const bool finished = made != nullptr && made->is_finished();
    if (!job->cable.sheath_od) {
      take_no_sheath(*job, end.decision);
      if (finished) say_made(*made, end.decision);
      return end;
    }
    end.question = fit::ask(*job, *settings.standards, settings.asking);
    detail::FittingsMemory fittings;
    if (finished) {
      decide_made(*made, end.question, settings, fittings, end);
    } else {
      fit::Search search(*settings.glands, end.question);
      detail::decide(end.question, search, settings.glands->prefer(), supply, fittings,
                     end.decision, &end.fit);
    }
    if (end.decision.gland != nullptr) {
      end.fit = fit::check_gland(end.question, *end.decision.gland);
    }
    end.job = std::move(job);
    return end;
  } catch (const InputError& error) {
    AskedEnd unusable;
    unusable.decision.faults = error.faults();
    unusable.decision.made = made != nullptr && made->is_finished();
    return unusable;
  }
}

Decision decide(const job::JobInput& input, const Settings& settings, const Supply* supply,
                const RowNotes& notes, const MadeEnd* made) {
  return decide_asked(input, settings, supply, notes, made).decision;
}

}  // namespace cutback::schedule

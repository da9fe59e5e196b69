#include "cutback/fit/fit.hpp"

#include <algorithm>
#include <limits>

#include "core/fit/parts.hpp"
#include "cutback/area/bundle.hpp"
#include "cutback/area/check.hpp"
#include "cutback/earth/gland_rating.hpp"
#include "cutback/fit/select.hpp"

namespace cutback::fit {
namespace {

void add(std::vector<Check>& checks, std::optional<Check> check) {
  if (check) checks.push_back(std::move(*check));
}

/// A flameproof entry is asked about its thread in any case; another one where hole and wall are
/// known, so that a quick look at the van is not stopped by a wall that nobody measured. Through an
/// adaptor it is the adaptor's thread that engages.
bool thread_is_asked(const Question& question, bool adaptor) {
  if (question.demand.sealing != area::SealingDemand::none) return true;
  const entry::Entry& entry = question.job->entry;
  return !adaptor && entry.hole && entry.wall_mm;
}

/// Whoever speaks of the hole or of a hazardous place must name the thread as well.
bool entry_is_asked(const Question& question) {
  const entry::Entry& entry = question.job->entry;
  return entry.hole || entry.wall_mm || !question.demand.level.empty() ||
         !question.demand.protection.empty();
}

entry::EntryJoint joint_of(const Question& question) {
  return {.flameproof = question.demand.sealing != area::SealingDemand::none,
          .volume_cm3 = question.job->area.volume_cm3};
}

/// The cores in the chamber of a gland that is made off as a barrier.
std::optional<area::SealingBundle> bundle_of(const Question& question, const gland::Gland& gland) {
  if (!detail::made_off_as_barrier(gland.sealing, question.demand)) return std::nullopt;
  const job::Job& job = *question.job;
  area::SealingCores cores;
  cores.cores = job.cable.cores;
  if (job.construction) cores.core_mm = job.construction->core_mm;
  if (job.cable.bedding) cores.enclosing_mm = job.cable.bedding->high_mm();
  return area::check_sealing_bundle(gland, cores, question.standards->table("bundle_factors"));
}

/// Adds what a second rule says to a check: the worse verdict, both sentences, both sources.
void join(Check& check, const std::optional<Check>& other) {
  if (!other) return;
  check.verdict = worst(check.verdict, other->verdict);
  check.says += "; " + other->says;
  check.source += "; " + other->source;
}

double margin_or_none(const Check& check) {
  return check.margin_mm.value_or(-std::numeric_limits<double>::infinity());
}

bool better(const GlandFit& a, const GlandFit& b, Prefer prefer) {
  if (a.verdict != b.verdict) return a.verdict > b.verdict;
  const double preference_a = detail::preference(*a.gland, prefer);
  const double preference_b = detail::preference(*b.gland, prefer);
  if (preference_a != preference_b) return preference_a < preference_b;
  constexpr double k_none = -std::numeric_limits<double>::infinity();
  const double margin_a = a.margin_mm.value_or(k_none);
  const double margin_b = b.margin_mm.value_or(k_none);
  if (margin_a != margin_b) return margin_a > margin_b;
  return a.gland->part < b.gland->part;
}

}  // namespace

const Check* GlandFit::find(CheckName name) const {
  const auto it = std::find_if(checks.begin(), checks.end(),
                               [&](const Check& check) { return check.name == name; });
  return it == checks.end() ? nullptr : &*it;
}

const Check& GlandFit::deciding() const {
  return *std::min_element(checks.begin(), checks.end(), [](const Check& a, const Check& b) {
    if (a.verdict != b.verdict) return a.verdict < b.verdict;
    return margin_or_none(a) < margin_or_none(b);
  });
}

Question ask(const job::Job& job, const tables::Standards& standards) {
  return {&job, &standards, area::make_demand(job.area, job.cable, standards)};
}

GlandFit check_gland(const Question& question, const gland::Gland& gland) {
  const job::Job& job = *question.job;
  GlandFit fit;
  fit.gland = &gland;
  fit.barrier = detail::made_off_as_barrier(gland.sealing, question.demand);
  fit.checks.reserve(16);
  fit.checks.push_back(detail::check_outer_seal(job.cable, gland));
  add(fit.checks, detail::check_inner_seal(job.cable, gland, fit.barrier));
  add(fit.checks, detail::check_bore(job.cable, gland));
  fit.checks.push_back(detail::check_armour(job.cable, gland));
  add(fit.checks, detail::check_build_up(job.cable, job.construction));
  detail::add_other_checks(question, gland, fit);
  fit.verdict = Verdict::fits;
  for (const Check& check : fit.checks) {
    fit.verdict = worst(fit.verdict, check.verdict);
    if (!check.counts_for_margin || !check.margin_mm) continue;
    fit.margin_mm = std::min(fit.margin_mm.value_or(*check.margin_mm), *check.margin_mm);
  }
  return fit;
}

Margins margins_of(const Question& question, const gland::Gland& gland) {
  const cable::Cable& cable = question.job->cable;
  const bool barrier = detail::made_off_as_barrier(gland.sealing, question.demand);
  const auto inner = detail::find_inner_seal(cable, gland, barrier);
  return {.outer_mm = detail::find_outer_seal(cable, gland).margin_mm,
          .inner_mm = inner ? inner->margin_mm : std::nullopt,
          .armour_mm = detail::find_armour(cable, gland).margin_mm};
}

namespace detail {

bool made_off_as_barrier(gland::Sealing sealing, const area::Demand& demand) {
  if (sealing != gland::Sealing::either) return sealing == gland::Sealing::barrier;
  // Where compression is allowed from memory only, sealing round the cores is the sure way.
  return demand.sealing == area::SealingDemand::barrier || demand.allowed_from_memory;
}

DiameterFindings::DiameterFindings(const cable::Cable& cable, const gland::Gland& gland,
                                   bool barrier) {
  add(find_outer_seal(cable, gland));
  add(find_inner_seal(cable, gland, barrier));
  add(find_bore(cable, gland));
  add(find_armour(cable, gland));
}

void DiameterFindings::add(const std::optional<Finding>& finding) {
  if (finding) list_[size_++] = *finding;
}

void add_other_checks(const Question& question, const gland::Gland& gland, GlandFit& fit) {
  const job::Job& job = *question.job;
  if (auto entry = detail::check_entry(job.entry, gland, entry_is_asked(question))) {
    fit.adaptor = std::move(entry->adaptor);
    if (fit.adaptor)
      join(entry->check, area::check_adaptor(question.demand, fit.adaptor->protection));
    fit.checks.push_back(std::move(entry->check));
  }
  if (thread_is_asked(question, fit.adaptor.has_value())) {
    fit.thread = entry::check_thread(gland, job.entry, joint_of(question), *question.standards);
    fit.checks.push_back(fit.thread->check);
  }
  for (Check& check :
       area::check_area(question.demand, job.cable, gland, bundle_of(question, gland))) {
    fit.checks.push_back(std::move(check));
  }
  fit::add(fit.checks,
           area::check_material(job.entry.material, job.cable, gland, *question.standards));
  fit::add(fit.checks, earth::check_earth(gland, job.fault));
}

double preference(const gland::Gland& gland, Prefer prefer) {
  constexpr double k_last = std::numeric_limits<double>::infinity();
  switch (prefer) {
    case Prefer::price:
      return gland.price.value_or(k_last);
    case Prefer::stock:
      return gland.stock ? -static_cast<double>(*gland.stock) : k_last;
    case Prefer::margin:
      return 0.0;  // the margin itself comes next in any case
  }
  return 0.0;
}

}  // namespace detail

std::vector<GlandFit> fit_all(const Question& question, std::span<const gland::Gland> glands,
                              Prefer prefer) {
  std::vector<GlandFit> fits;
  fits.reserve(glands.size());
  for (const gland::Gland& gland : glands) fits.push_back(check_gland(question, gland));
  rank(fits, prefer);
  return fits;
}

void rank(std::vector<GlandFit>& fits, Prefer prefer) {
  std::sort(fits.begin(), fits.end(),
            [&](const GlandFit& a, const GlandFit& b) { return better(a, b, prefer); });
}

}  // namespace cutback::fit

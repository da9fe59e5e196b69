#include "cutback/sheet/sheet.hpp"

#include <algorithm>

#include "cutback/error.hpp"
#include "cutback/nearest.hpp"
#include "cutback/number.hpp"
#include "sheet/steps.hpp"

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

bool uses_estimates(const cable::Cable& cable) {
  const auto unmeasured = [](const std::optional<measure::Estimate>& estimate) {
    return estimate && estimate->evidence != measure::Evidence::measured;
  };
  return unmeasured(cable.sheath_od) || unmeasured(cable.bedding) || unmeasured(cable.wire);
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
  if (uses_estimates(job.cable)) {
    reasons.push_back("the diameters are not all measured: measure before cutting");
  }
  return reasons;
}

/// Cut marks for a gland that does not fit would be an invitation to cut.
bool may_be_made_off(const fit::GlandFit& fit) { return fit.verdict >= Verdict::not_known; }

void table_sources(const tables::Standards& standards, std::vector<std::string>& sources) {
  for (const char* id : {"caliper_limits", "armour_wire_bands"}) {
    const tables::Table& table = standards.table(id);
    add_source(sources, table.source() + " (table " + table.id + ", " +
                            std::string(to_string(table.status)) + ", checksum " + table.checksum +
                            ")");
  }
}

}  // namespace

Sheet make_sheet(const job::Job& job, const std::vector<fit::GlandFit>& ranked,
                 const std::string& part, const std::string& list_name,
                 const tables::Standards& standards) {
  Sheet sheet;
  sheet.job = &job;
  if (ranked.empty()) throw InternalError("an empty gland list reached the sheet");
  const bool named = !part.empty();
  const fit::GlandFit& chosen = named ? find_part(ranked, part) : ranked.front();
  sheet.chosen_because = why_chosen(chosen, ranked, named);
  sheet.not_ready = reasons_not_ready(job, chosen);
  sheet.remarks = job.cable.warnings;
  sheet.advice = fit::advise(job, ranked);
  if (!named && !may_be_made_off(chosen) && sheet.advice.nearest != nullptr) {
    sheet.fit = *sheet.advice.nearest;
    sheet.not_ready = reasons_not_ready(job, *sheet.fit);
  } else {
    sheet.fit = chosen;
  }
  if (may_be_made_off(*sheet.fit)) {
    sheet.plan = strip::plan_cuts(job, *sheet.fit->gland, sheet.fit->barrier, std::nullopt);
    sheet.parts = detail::parts_of(job, *sheet.fit);
    sheet.steps = detail::steps_of(job, *sheet.fit, *sheet.plan);
    for (const std::string& missing : sheet.plan->missing) sheet.remarks.push_back(missing);
  }
  sheet.cautions = detail::cautions_of(job, &*sheet.fit);
  add_source(sheet.sources, "gland figures: " + list_name);
  for (const fit::Check& check : sheet.fit->checks) add_source(sheet.sources, check.source);
  add_source(sheet.sources,
             "marks and depths: lengths added along the cable's axis, each figure from the gland "
             "list and the entry; order of work: common practice, no source");
  table_sources(standards, sheet.sources);
  return sheet;
}

}  // namespace cutback::sheet

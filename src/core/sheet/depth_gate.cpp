#include "core/sheet/depth_gate.hpp"

#include <algorithm>

#include "cutback/compare.hpp"
#include "cutback/job/job.hpp"
#include "cutback/number.hpp"

namespace cutback::sheet::detail {
namespace {

constexpr double k_step_mm = 0.1;
constexpr double k_fine_mm = 0.01;  ///< of the cable's own figure

bool holds(const std::optional<double>& depth_mm, const std::optional<double>& of_another_mm) {
  return !depth_mm || (of_another_mm && at_least(*of_another_mm, *depth_mm));
}

/// As two crossed readings would be, or better where the cable was measured better.
measure::Estimate as_read(const fit::Question& question, double diameter_mm,
                          const measure::Estimate& own) {
  measure::Estimate read = fit::read_crossed(question, diameter_mm);
  if (own.evidence == measure::Evidence::measured) {
    read.expanded_mm = std::min(read.expanded_mm, own.expanded_mm);
  }
  return read;
}

}  // namespace

std::optional<double> depths_from_mm(const fit::Question& question, const strip::Depths& depths,
                                     const strip::Nominals& nominals, const fit::Gate& sheath) {
  const cable::Cable& own = question.job->cable;
  const bool over_layers = own.armour != cable::ArmourKind::none && own.sheath_od && own.bedding;
  if (!over_layers || !depths.sheath_mm) return std::nullopt;
  // U is largest at the largest sheath.
  const double sheath_mm =
      std::max(own.sheath_od->value_mm, sheath.high_mm.value_or(own.sheath_od->value_mm));
  cable::Cable other = own;
  other.sheath_od = as_read(question, sheath_mm, *own.sheath_od);
  const auto all_hold = [&](double between_mm) {
    other.bedding = as_read(question, sheath_mm - between_mm, *own.bedding);
    const strip::Depths its = strip::depths_of(other, nominals);
    return holds(depths.sheath_mm, its.sheath_mm) && holds(depths.saw_mm, its.saw_mm) &&
           holds(depths.saw_limit_mm, its.saw_limit_mm);
  };
  // They hold for the cable that they were worked out for; below it in whole steps.
  double least_mm = own.sheath_od->value_mm - own.bedding->value_mm;
  double next_mm = round_down(least_mm, k_step_mm);
  while (at_least(next_mm, k_step_mm) && all_hold(next_mm)) {
    least_mm = next_mm;
    next_mm = round_half_up(next_mm - k_step_mm, k_step_mm);
  }
  return round_up(least_mm, k_fine_mm);
}

}  // namespace cutback::sheet::detail

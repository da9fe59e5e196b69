#include "cutback/measure/caliper.hpp"

#include <algorithm>

#include "cutback/number.hpp"

namespace cutback::measure {

double permissible_error_mm(std::span<const CaliperLimit> rows, double step_mm, double length_mm) {
  const CaliperLimit* largest = nullptr;
  for (const CaliperLimit& row : rows) {
    // A printed step of 0.02 is not exactly 0.02 in binary once it has been worked out.
    if (step_mm > row.step_mm + 1e-9) continue;
    if (length_mm <= row.length_max_mm) return row.mpe_mm;
    const bool same_step = largest != nullptr && row.step_mm == largest->step_mm;
    if (largest == nullptr || (same_step && row.mpe_mm > largest->mpe_mm)) largest = &row;
  }
  if (largest != nullptr) return largest->mpe_mm;
  // No caliper is wrong by more than a step of its scale (common practice, no source).
  return step_mm;
}

std::string coarse_step_note(const Caliper& caliper, std::span<const CaliperLimit> rows) {
  if (caliper.mpe_mm || rows.empty()) return {};
  const bool covered = std::any_of(rows.begin(), rows.end(), [&](const CaliperLimit& row) {
    return caliper.step_mm <= row.step_mm + 1e-9;
  });
  if (covered) return {};
  const std::string step = plain(caliper.step_mm, 3);
  return "no published permissible error for a caliper step of " + step +
         " mm: the step itself is taken, +/- " + step + " mm";
}

}  // namespace cutback::measure

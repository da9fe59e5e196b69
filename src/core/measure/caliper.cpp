#include "cutback/measure/caliper.hpp"

#include <algorithm>

#include "cutback/error.hpp"
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
  throw InputError(Fault{.code = ErrorCode::missing,
                         .what = "no published permissible error for so coarse a step",
                         .where = "step of the caliper",
                         .given = plain(step_mm, 6),
                         .allowed = {},
                         .hint = "give the permissible error from the instrument's own papers"});
}

}  // namespace cutback::measure

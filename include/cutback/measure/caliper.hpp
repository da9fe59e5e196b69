#pragma once
// The instrument: its step and its permissible error.

#include <optional>
#include <span>
#include <string>

namespace cutback::measure {

/// A row of the permissible-error table: outside jaws, largest error for a step and a length.
struct CaliperLimit {
  double step_mm;        ///< the row holds for steps up to and including this
  double length_max_mm;  ///< and for lengths up to and including this
  double mpe_mm;         ///< largest permissible error, plus or minus
};

struct Caliper {
  double step_mm = 0.05;           ///< vernier or display step, >= 0
  std::optional<double> mpe_mm;    ///< permissible error +-; from the table when absent
  double zero_mm = 0.0;            ///< reading with the jaws closed, subtracted
  double extra_standard_mm = 0.0;  ///< further standard uncertainty (temperature, jaw pressure)
};

/// Permissible error [mm] of outside jaws for a step and a length (caliper_limits table).
/// @return the first row that covers step and length; the largest of the step beyond its last row;
/// for a step coarser than every row the step itself, which is more than any row has for its own
[[nodiscard]] double permissible_error_mm(std::span<const CaliperLimit> rows, double step_mm,
                                          double length_mm);

/// One sentence where the step itself was taken; else empty.
[[nodiscard]] std::string coarse_step_note(const Caliper& caliper,
                                           std::span<const CaliperLimit> rows);

}  // namespace cutback::measure

#pragma once
// Diameters and lengths of entry threads.

#include <optional>

#include "cutback/entry/thread.hpp"
#include "cutback/tables/standards.hpp"

namespace cutback::entry {

/// Basic profile of a metric thread [mm] (ISO 68-1), unrounded.
struct MetricProfile {
  double pitch_diameter_mm;  ///< d2 = D2 = d - 0.649519 P
  double bore_mm;            ///< D1 = d - 1.082532 P, the crests of the tapped hole
  double core_mm;            ///< d3 = d - 1.226869 P, the root of the male thread
};

/// @throws InternalError for a thread that is not metric
[[nodiscard]] MetricProfile metric_profile(const Thread& thread);

/// An NPT thread (ASME B1.20.1) [mm], unrounded. The taper is 1 in 16 on the diameter.
struct NptGeometry {
  double outside_mm;              ///< D
  double hand_tight_mm;           ///< L1
  double effective_mm;            ///< L2
  double overall_mm;              ///< L4
  double small_end_diameter_mm;   ///< E0, pitch diameter at the small end
  double hand_tight_diameter_mm;  ///< E1, pitch diameter at the mouth of the hole
};

/// @param npt  table `npt_threads`  @throws InternalError for a thread that is not in it
[[nodiscard]] NptGeometry npt_geometry(const Thread& thread, const tables::Table& npt);

/// Length of engagement [mm] at or under which a metric thread is engaged short (ISO 965-1, group
/// S). @param group_n  table `engagement_group_n`  @return nothing outside the table
[[nodiscard]] std::optional<double> short_engagement_mm(const Thread& thread,
                                                        const tables::Table& group_n);

}  // namespace cutback::entry

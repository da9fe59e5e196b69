#pragma once
// Diameters and lengths of entry threads.

#include <optional>
#include <string_view>

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
  double small_end_core_mm;       ///< K0 = E0 - 0.8 p, root of the male thread at the small end
  bool from_memory;               ///< its row was not seen: it decides no pass
};

/// @param npt  table `npt_threads`  @throws InternalError for a thread that is not in it
[[nodiscard]] NptGeometry npt_geometry(const Thread& thread, const tables::Table& npt);

/// A diameter of a thread, and whether its figures are only remembered.
struct ThreadDiameter {
  double mm;
  bool from_memory;
  std::string_view source;
};

/// Root [mm] of a male thread at its narrowest: no bore through a part with this thread is wider.
/// Metric d3 (ISO 68-1), NPT K0 at the small end (ASME B1.20.1), PG inner diameter (DIN 40430).
[[nodiscard]] ThreadDiameter male_root(const Thread& thread, const tables::Standards& standards);

/// Outside diameter [mm] of a male thread: no narrower hole lets it through.
[[nodiscard]] ThreadDiameter male_outside(const Thread& thread, const tables::Standards& standards);

/// Length of engagement [mm] at or under which a metric thread is engaged short (ISO 965-1, group
/// S). @param group_n  table `engagement_group_n`  @return nothing outside the table
[[nodiscard]] std::optional<double> short_engagement_mm(const Thread& thread,
                                                        const tables::Table& group_n);

}  // namespace cutback::entry

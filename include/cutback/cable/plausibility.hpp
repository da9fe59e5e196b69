#pragma once
// An implausible reading is caught before a gland is cut on. Nothing here passes or fails a gland.

#include <optional>
#include <string>
#include <vector>

#include "cutback/cable/cable.hpp"
#include "cutback/cable/construction.hpp"
#include "cutback/measure/estimate.hpp"
#include "cutback/tables/standards.hpp"

namespace cutback::cable {

using tables::Standards;

/// The diameters of a construction as estimates: evidence `estimated`, +- the stated error.
[[nodiscard]] measure::Estimate sheath_od_estimate(const Construction& construction);
[[nodiscard]] measure::Estimate bedding_estimate(const Construction& construction);

/// Least thickness [mm] that an extruded bedding or oversheath may have at a point: nominal less 20
/// % and 0.2 mm (bedding: HD 604 S1/A1; oversheath over armour: from memory).
[[nodiscard]] double least_at_a_point_mm(double nominal_mm);

/// Twice the nominal [mm]: no standard limits the thick side, beyond this a reading is to be taken
/// again, and where the construction is known it contradicts it (common practice, no source).
[[nodiscard]] double most_likely_mm(double nominal_mm);

/// Bedding diameter from the sheath OD and the wire: OD - 2 (wire + sheath), with the pattern's
/// oversheath for that OD. Its spread joins that of the readings with 20 % of the sheath + 0.2 mm
/// on the diameter. Evidence `estimated`.
/// @return nothing when the OD or the wire is not known, or leaves no bedding
[[nodiscard]] std::optional<measure::Estimate> bedding_from_od(const Cable& cable, Pattern pattern,
                                                               const tables::Standards& standards);

/// The reverse: the sheath OD from the bedding and the wire.
[[nodiscard]] std::optional<measure::Estimate> od_from_bedding(const Cable& cable, Pattern pattern,
                                                               const tables::Standards& standards);

/// The sheath [mm] that a cable of this OD should have: the construction's, else that of the
/// British-pattern rule at this OD. Nothing without an OD.
[[nodiscard]] std::optional<double> nominal_sheath_mm(const Cable& cable,
                                                      const Construction* construction,
                                                      const Standards& standards);

/// The least diameter [mm] that so many cores of this size can lie in, without a gap between them
/// (arithmetic; the least insulation by IEC 60502-1, from memory: it withholds a pass and gives
/// none). Nothing where cores or size are not known.
[[nodiscard]] std::optional<double> least_round_cores_mm(const Cable& cable);

/// Compares the readings with each other and, where it is known, with what the construction should
/// measure. Values are compared, not intervals: a worse caliper makes no contradiction good. A
/// figure from a datasheet may differ by its default allowance besides.
/// @param construction  of the same cable; null when it is not known
/// @return the contradictions first
[[nodiscard]] std::vector<Remark> implausible_readings(const Cable& cable,
                                                       const Construction* construction,
                                                       const tables::Standards& standards);

}  // namespace cutback::cable

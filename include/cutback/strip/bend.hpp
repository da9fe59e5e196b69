#pragma once
// How the cable may bend outside the gland, and where it is held.

#include <optional>
#include <string>

#include "cutback/cable/cable.hpp"
#include "cutback/cable/construction.hpp"
#include "cutback/fit/check.hpp"
#include "cutback/tables/standards.hpp"

namespace cutback::strip {

/// What is known of the cable for its bending radius.
struct BendInput {
  bool armoured = true;
  double sheath_od_mm = 0.0;      ///< > 0
  std::optional<double> csa_mm2;  ///< of one conductor
  std::optional<bool> shaped;     ///< conductors shaped, or of solid aluminium
};

struct Bend {
  double factor = 0.0;      ///< inside radius as a multiple of the sheath diameter
  double radius_mm = 0.0;   ///< unrounded
  double support_mm = 0.0;  ///< the first support stands no further from the termination
  std::string because;      ///< what the factor was chosen by, or that it is the stricter one
  std::string source;       ///< with its status
};

/// The least inside radius of a fixed bend. What is not known falls to the larger factor.
[[nodiscard]] Bend bend_of(const BendInput& in, const tables::Standards& standards);

/// The same as a caution: always `fits`, with the radius as its value. Nothing where the sheath
/// diameter is not known.
[[nodiscard]] std::optional<fit::Check> check_bend(
    const cable::Cable& cable, const std::optional<cable::Construction>& construction,
    const tables::Standards& standards);

}  // namespace cutback::strip

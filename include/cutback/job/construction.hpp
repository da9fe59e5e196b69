#pragma once
// The construction of a cable, where the input says enough of it.

#include <optional>

#include "cutback/cable/construction.hpp"
#include "cutback/job/input.hpp"

namespace cutback::job {

/// Cores, size, insulation, voltage, conductor, armour and pattern as given, the rest at its
/// default.
/// @return nothing when the number of cores or their size is not given
[[nodiscard]] std::optional<cable::ConstructionInput> construction_input(const JobInput& in);

}  // namespace cutback::job

#pragma once
// Checks a construction before anything is worked out, and fills in its defaults.

#include "cutback/cable/construction.hpp"

namespace cutback::cable::detail {

/// @throws InputError with every independent fault
[[nodiscard]] ConstructionInput resolve(const ConstructionInput& in,
                                        const tables::Standards& standards);

/// True for the sizes that are made of four solid sectors.
[[nodiscard]] bool is_sectoral(const tables::Standards& standards, double csa_mm2);

}  // namespace cutback::cable::detail

#pragma once
// A cable worked out from its construction, as text and as JSON.

#include <string>

#include "cutback/cable/construction.hpp"
#include "cutback/print/print.hpp"

namespace cutback::print {

/// Diameters, the cross-section from the conductor outward, steps, cautions, sources; 80 columns.
[[nodiscard]] std::string cable_text(const cable::Construction& cable, const Style& style);
[[nodiscard]] std::string cable_json(const cable::Construction& cable);

}  // namespace cutback::print

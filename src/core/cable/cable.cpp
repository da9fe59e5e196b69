#include "cutback/cable/cable.hpp"

#include <cmath>

#include "cutback/compare.hpp"

namespace cutback::cable {

std::optional<WireBand> wire_band(std::span<const WireBand> bands, double diameter_mm) {
  for (const WireBand& band : bands) {
    if (within(diameter_mm, band.min_mm, band.max_mm)) return band;
  }
  return std::nullopt;
}

std::optional<Derived> sheath_thickness(const Cable& cable) {
  const auto value = sheath_thickness_mm(cable);
  if (!value) return std::nullopt;
  // A wire that is its nominal size may still lie anywhere in its band.
  const double wire_u = cable.wire_nominal
                            ? (cable.wire_nominal->max_mm - cable.wire_nominal->min_mm) / 2.0
                            : cable.wire->expanded_mm;
  const double expanded =
      std::hypot(cable.sheath_od->expanded_mm / 2.0, cable.bedding->expanded_mm / 2.0, wire_u);
  return Derived{*value, expanded};
}

}  // namespace cutback::cable

#include "cutback/cable/cable.hpp"

#include <algorithm>
#include <cmath>

#include "cutback/compare.hpp"

namespace cutback::cable {

std::optional<WireBand> wire_band(std::span<const WireBand> bands, double diameter_mm) {
  for (const WireBand& band : bands) {
    if (within(diameter_mm, band.min_mm, band.max_mm)) return band;
  }
  return std::nullopt;
}

std::optional<WireBand> standard_size(std::span<const WireBand> bands,
                                      const measure::Estimate& wire) {
  const auto band = wire_band(bands, wire.value_mm);
  if (!band) return std::nullopt;
  const bool readings_agree =
      std::all_of(wire.readings_mm.begin(), wire.readings_mm.end(), [&](double reading) {
        return within(reading, band->min_mm - wire.expanded_mm, band->max_mm + wire.expanded_mm);
      });
  const bool meets_another = std::any_of(bands.begin(), bands.end(), [&](const WireBand& other) {
    return other.iec == band->iec && other.nominal_mm != band->nominal_mm &&
           at_most(wire.low_mm(), other.max_mm) && at_least(wire.high_mm(), other.min_mm);
  });
  return readings_agree && !meets_another ? band : std::nullopt;
}

double wire_spread_mm(const Cable& cable) {
  if (cable.wire_nominal) return (cable.wire_nominal->max_mm - cable.wire_nominal->min_mm) / 2.0;
  return cable.wire ? cable.wire->expanded_mm : 0.0;
}

std::optional<Derived> sheath_thickness(const Cable& cable) {
  const auto value = sheath_thickness_mm(cable);
  if (!value) return std::nullopt;
  const double armour =
      cable.armour == ArmourKind::none ? 0.0 : armour_layers(cable.armour) * wire_spread_mm(cable);
  const double expanded =
      std::hypot(cable.sheath_od->expanded_mm / 2.0, cable.bedding->expanded_mm / 2.0, armour);
  return Derived{*value, expanded};
}

}  // namespace cutback::cable

#pragma once
// How deep to cut, so that nothing is cut that must stay whole.

#include <optional>

#include "cutback/cable/cable.hpp"

namespace cutback::strip {

/// How deep to cut [mm], rounded down to 0.1 mm; `spread_mm` is what the readings leave open. An
/// absent depth is not known, or leaves less than a tenth: by eye, lightly.
struct Depths {
  std::optional<double> sheath_mm;  ///< score the sheath to this
  std::optional<double> saw_mm;     ///< saw at the armour cut to this: half through the wire
  /// And never deeper than this: where the bedding begins under the sheath's thinnest point. Where
  /// it is the smaller one it stands for both, and half of each wire is sawn by eye.
  std::optional<double> saw_limit_mm;
  std::optional<double> bedding_mm;  ///< score the bedding to less than its least thickness
  std::optional<double> spread_mm;
};

/// Nominal thicknesses [mm] of the construction, where it is known.
struct Nominals {
  std::optional<double> sheath_mm;
  std::optional<double> bedding_mm;
};

/// Mean sheath t = (OD - bedding)/2 - armour; a braid counts two wires, for they cross, and tape
/// two thicknesses. Least at a point t_min = 0.8 min(t, nominal) - 0.2 (HD 604 S1/A1 for a bedding,
/// from memory for a sheath). Over wires the sheath is scored to t, and sawn to t + wire/2, neither
/// beyond t_min + wire less the spread of the readings. Over braid, tape or strip the sheath is
/// scored to less than t_min less that spread, on an unarmoured cable to less than t_min of what is
/// known of it; the bedding to less than its own least thickness.
[[nodiscard]] Depths depths_of(const cable::Cable& cable, const Nominals& nominals);

}  // namespace cutback::strip

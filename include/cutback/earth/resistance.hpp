#pragma once
// The resistance of an armour, and of a loop through it.

#include <optional>
#include <string>

#include "cutback/earth/adiabatic.hpp"
#include "cutback/tables/standards.hpp"

namespace cutback::earth {

/// What a resistance is worked out from.
struct ArmourConductor {
  double area_mm2 = 0.0;  ///< nominal, gross; > 0
  Material material = Material::steel;
  std::optional<double> wire_mm;  ///< nominal diameter of a wire; absent: of the least tolerance
  /// Wire length over cable length; absent: that of the shortest lay.
  std::optional<double> lay_ratio;
};

/// The largest resistance of an armour, and the sum that gives it.
struct LargestResistance {
  double ohm_per_km = 0.0;  ///< at 20 degC
  double lay_ratio = 1.0;
  double thin_ratio = 1.0;  ///< area of the thinnest wires allowed over the nominal area, <= 1
};

/// The resistivity of the metal over the area of wires as thin as their standard allows, as long as
/// the shortest lay makes them. Nothing in it is fitted to a resistance; beside the printed maxima
/// of British-pattern cables it lies from 1 % below to 13 % above.
/// @source IEC 60364-5-54:2011 Annex A; HD 604 S1/A1 (wire tolerances); lay: from memory
[[nodiscard]] LargestResistance largest_resistance(const ArmourConductor& armour,
                                                   const tables::Standards& standards);

/// A resistance at 20 degC brought to another temperature [degC] (the same Annex A): R (beta + t) /
/// (beta + 20).
[[nodiscard]] double at_temperature(double at_20_degc, const Metal& metal, double degc);

/// Impedance [ohm] of a length of line and armour, the armour counted 1.1 times and with the loop's
/// reactance of 0.3 mohm/m (PD CLC/TR 50480:2011, secondary). Without a line: that of the armour.
/// @param line_ohm, armour_ohm  of the whole length, each at its temperature; >= 0
[[nodiscard]] double loop_impedance_ohm(double line_ohm, double armour_ohm, double length_m,
                                        const tables::Standards& standards);

}  // namespace cutback::earth

#pragma once
// The armour of a cable as its protective conductor.

#include <optional>
#include <string>

#include "cutback/earth/adiabatic.hpp"
#include "cutback/earth/armour_area.hpp"
#include "cutback/earth/fault.hpp"
#include "cutback/tables/standards.hpp"

namespace cutback::earth {

/// Everything that is known; an absent member is not. All figures are finite and > 0.
struct EarthInput {
  std::optional<ArmourArea> armour;
  Material armour_material = Material::steel;
  std::optional<Insulation> insulation;
  bool insulation_is_taken = false;  ///< not given: the one with the lowest k
  std::optional<double> start_degc;  ///< of the armour when the fault begins; with final_degc
  std::optional<double> final_degc;  ///< that the cable allows the armour after the fault
  std::optional<double> line_mm2;    ///< cross-section of a line conductor
  Material line_material = Material::copper;
  std::optional<double> line_k;  ///< k1, where it is not the one of the insulation
  EarthFault fault;
  std::optional<double> gland_ka;  ///< the gland's declared rating for 1 s
  std::optional<double> length_m;
  std::optional<double> lay_ratio;  ///< wire length to cable length; absent: the shortest lay
  /// Of the armour in normal service; absent: where the rise begins that its k is for.
  std::optional<double> hot_degc;
};

struct EarthResult {
  std::optional<double> area_mm2;
  std::optional<KValue> k;             ///< of the armour, k2
  std::optional<KValue> line_k;        ///< of the line conductor, k1
  std::optional<double> required_mm2;  ///< by the adiabatic equation
  std::optional<double> table_required_mm2;
  std::optional<double> least_mm2;     ///< of the armour, less its stated error
  std::optional<double> withstand_ka;  ///< of the least area, for withstand_s
  double withstand_s = 1.0;            ///< the fault's time within 0.1 to 5 s, else 1 s
  std::optional<double> longest_s;     ///< for the fault's current, 0.1 to 5 s; absent under 0.1 s
  std::optional<double> resistance_ohm;      ///< of the armour at 20 degC, at most
  std::optional<double> resistance_hot_ohm;  ///< the same at the temperature in service
  /// Impedance of line and armour at the temperatures in service, at most; of a copper line whose
  /// size and insulation are known.
  std::optional<double> path_ohm;
  std::optional<double> loop_share;  ///< the armour's part of the loop's impedance, at most

  Finding area;    ///< how the area was found
  Finding factor;  ///< how k was found
  Finding adiabatic;
  Finding table;
  Finding gland;
  Finding resistance;
  /// Is the armour large enough? By calculation where a fault is spoken of; else by table 54.7,
  /// which alone never says no: a calculation may allow less.
  Verdict armour = Verdict::not_known;
};

/// The armour against the fault, by calculation alone (IEC 60364-5-54:2011 543.1.2). Only an area
/// that is enough at its least `fits`; whatever is missing is named.
[[nodiscard]] Finding judge_armour(const EarthInput& in, const tables::Standards& standards);

/// The same with all that goes with it: by table (BS 7671 table 54.7), the gland's rating, and the
/// armour's resistance as a maximum.
/// @throws InputError with every figure that is not finite and > 0
[[nodiscard]] EarthResult check_armour_earth(const EarthInput& in,
                                             const tables::Standards& standards);

}  // namespace cutback::earth

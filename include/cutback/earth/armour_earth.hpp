#pragma once
// The armour of a cable as its protective conductor.

#include <optional>
#include <string>

#include "cutback/cable/construction.hpp"
#include "cutback/earth/adiabatic.hpp"
#include "cutback/earth/gland_rating.hpp"
#include "cutback/tables/standards.hpp"

namespace cutback::earth {

/// Gross area of the armour, and how it was found.
struct ArmourArea {
  double area_mm2 = 0.0;
  std::string origin;        ///< for the printed result, for instance "34 wires of 1.25 mm"
  double error_ratio = 0.0;  ///< the true area is within area (1 +- error), 0 <= error < 1
};

/// N wires of a nominal diameter [mm], all counted: N pi d^2 / 4. @throws InputError unless both >
/// 0
[[nodiscard]] ArmourArea counted_area(int wires, double wire_mm);

/// Area and error of a cable's armour from its construction; nothing where it has none.
[[nodiscard]] std::optional<ArmourArea> constructed_area(const cable::Construction& construction);

/// Everything that is known; an absent member is not. All figures are finite and > 0.
struct EarthInput {
  std::optional<ArmourArea> armour;
  Material armour_material = Material::steel;
  std::optional<Insulation> insulation;
  std::optional<double> start_degc;  ///< of the armour when the fault begins; with final_degc
  std::optional<double> final_degc;  ///< that the cable allows the armour after the fault
  std::optional<double> line_mm2;    ///< cross-section of a line conductor
  Material line_material = Material::copper;
  std::optional<double> line_k;  ///< k1, where it is not the one of the insulation
  EarthFault fault;
  std::optional<double> gland_ka;  ///< the gland's declared rating for 1 s
  std::optional<double> length_m;
  double lay_ratio = 1.048;        ///< wire length to cable length: lay of 10 pitch diameters
  double hot_degc = 60.0;          ///< of the armour in normal service
  std::optional<double> loop_ohm;  ///< whole earth-fault loop
};

struct EarthResult {
  std::optional<double> area_mm2;
  std::optional<KValue> k;             ///< of the armour, k2
  std::optional<KValue> line_k;        ///< of the line conductor, k1
  std::optional<double> required_mm2;  ///< by the adiabatic equation
  std::optional<double> table_required_mm2;
  std::optional<double> withstand_ka;  ///< for withstand_s
  double withstand_s = 1.0;            ///< the fault's time within 0.1 to 5 s, else 1 s
  std::optional<double> longest_s;     ///< for the fault's current, 0.1 to 5 s; absent under 0.1 s
  std::optional<double> resistance_ohm;      ///< at 20 degC
  std::optional<double> resistance_hot_ohm;  ///< at the temperature in service
  std::optional<double> loop_share;          ///< resistance_hot_ohm / loop_ohm

  Finding area;    ///< how the area was found
  Finding factor;  ///< how k was found
  Finding adiabatic;
  Finding table;
  Finding gland;
  Finding resistance;
  /// Is the armour large enough? By calculation where the fault is known; else by table 54.7,
  /// which alone never says no: a calculation may allow less.
  Verdict armour = Verdict::not_known;
};

/// Checks the armour by calculation (IEC 60364-5-54:2011 543.1.2) and by table (BS 7671 table
/// 54.7), the gland's rating, and works out the armour's resistance.
/// @throws InputError with every figure that is not finite and > 0
[[nodiscard]] EarthResult check_armour_earth(const EarthInput& in,
                                             const tables::Standards& standards);

}  // namespace cutback::earth

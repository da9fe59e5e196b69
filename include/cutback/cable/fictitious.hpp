#pragma once
// The fictitious method of IEC 60502-1 Annex A. It chooses the thickness of the coverings; it does
// not say how thick a real cable is (that is geometry.hpp).

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "cutback/cable/armour.hpp"
#include "cutback/tables/standards.hpp"

namespace cutback::cable {

/// Every diameter of the method is rounded to this before the next step, half up.
inline constexpr double k_fictitious_step_mm = 0.1;

/// One core: nominal cross-section and nominal insulation thickness.
struct CoreSize {
  double csa_mm2 = 0.0;
  double insulation_mm = 0.0;
};

/// Fictitious diameter [mm] of a conductor (Table A.1, or of four solid sectors).
/// @throws InputError when the table has no such size
[[nodiscard]] double fictitious_conductor_mm(const tables::Standards& standards, double csa_mm2);

/// Fictitious diameter [mm] of a core: conductor + 2 x insulation, rounded.
[[nodiscard]] double fictitious_core_mm(const tables::Standards& standards, const CoreSize& core);

/// Assembly coefficient [-] of Table A.2. @param cores  1 to 61
/// @param one_layer  all cores in one layer: the starred rows
/// @throws InputError when the table has no such number
[[nodiscard]] double assembly_coefficient(const tables::Standards& standards, int cores,
                                          bool one_layer = false);

/// Fictitious diameter [mm] over laid-up cores: k x mean core diameter, rounded. For equal cores
/// this is A.2.2's k Dc, for four cores of which one is reduced its 2.42 (3 Dc1 + Dc2)/4. Other
/// unequal sets extend the same form: Deviation, the standard does not name them.
/// @param cores_mm  at least one fictitious core diameter
[[nodiscard]] double fictitious_laid_up_mm(std::span<const double> cores_mm, double k);

/// Fictitious increase [mm] of the inner covering on the diameter: 2 x 0.4 up to 40 mm, else 2 x
/// 0.6, whatever is really fitted.
[[nodiscard]] double inner_covering_increase_mm(const tables::Standards& standards,
                                                double laid_up_mm);

/// Fictitious increase [mm] for a concentric conductor or metal screen (from memory).
/// @param csa_mm2  up to 300; a size between two rows takes the larger. @throws InputError above
[[nodiscard]] double concentric_increase_mm(const tables::Standards& standards, double csa_mm2);

/// Fictitious increase [mm] for the additional bedding under tape armour (from memory).
[[nodiscard]] double tape_bedding_increase_mm(const tables::Standards& standards,
                                              double under_bedding_mm);

/// Nominal oversheath [mm] by the rule of a pattern (`iec`, `british`) from the diameter under it,
/// rounded to 0.1 mm, not under the least for its place.
[[nodiscard]] double oversheath_thickness_mm(const tables::Standards& standards,
                                             std::string_view pattern, double under_mm,
                                             bool armoured, bool single_core);

struct FictitiousInput {
  std::vector<CoreSize> cores;  ///< at least one
  bool one_layer = false;
  std::optional<double> concentric_csa_mm2;  ///< concentric conductor or screen over the covering
  ArmourKind armour = ArmourKind::wire;
};

/// The chain of diameters, each rounded to 0.1 mm, and the thicknesses that it chooses [mm].
struct Fictitious {
  double laid_up_mm = 0.0;
  double under_armour_mm = 0.0;
  std::optional<double> armour_mm;  ///< wire diameter, or thickness of one tape or strip
  double under_oversheath_mm = 0.0;
  double oversheath_mm = 0.0;
  double sheath_od_mm = 0.0;
  std::vector<std::string> steps;  ///< one line a step, with its figures
};

/// IEC 60502-1 Annex A from the conductor to the oversheath.
/// @throws InputError for an unknown size, for strip at or under 15 mm, and for braid, which the
/// standard has no rule for
[[nodiscard]] Fictitious fictitious_diameters(const FictitiousInput& in,
                                              const tables::Standards& standards);

}  // namespace cutback::cable

#pragma once
// How thick a real cable is: a model of the cores as they are made, fitted to printed diameters.
// Constants and their errors: data/cable_model.md.

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/cable/fictitious.hpp"
#include "cutback/tables/standards.hpp"

namespace cutback::cable {

enum class Conductor { circular, shaped, solid };

/// In the order in which a user is told of them.
[[nodiscard]] constexpr auto all_values(Conductor) {
  using enum Conductor;
  return std::array{circular, shaped, solid};
}

[[nodiscard]] constexpr std::string_view to_string(Conductor conductor) {
  switch (conductor) {
    case Conductor::circular:
      return "circular";
    case Conductor::shaped:
      return "shaped";
    case Conductor::solid:
      return "solid";
  }
  return "";
}

/// Copper area [mm2] that a stranded conductor must hold to have its largest resistance of
/// IEC 60228 (the nominal size is only its name). @throws InputError for a size without a row
[[nodiscard]] double conductor_area_mm2(const tables::Standards& standards, double csa_mm2);

/// Diameter [mm] of a circular stranded conductor with the least number of wires of IEC 60228.
[[nodiscard]] double stranded_diameter_mm(const tables::Standards& standards, double csa_mm2);

/// Diameter [mm] of the circle that `cores` equal sectors fill, each with insulation on every face
/// and a conductor profile of the given area inside.
/// @param profile_mm2  > 0; @param cores  >= 2; @param insulation_mm  >= 0
[[nodiscard]] double sector_circle_mm(double profile_mm2, int cores, double insulation_mm);

/// Laid-up cores as made, unrounded.
struct LaidUp {
  std::optional<double> conductor_mm;  ///< of the first core; absent for a shaped one
  std::optional<double> core_mm;       ///< of the first core; absent for a shaped one
  double diameter_mm = 0.0;
  std::vector<std::string> steps;
};

/// Diameter over the laid-up cores. Round cores: k x mean(d + 2 t (1 + over)) + slack; one solid
/// rod: d + 2 t; shaped: sectors of the mean profile and insulation.
/// @param cores  at least one; shaped needs two or more
[[nodiscard]] LaidUp laid_up_as_made(const std::vector<CoreSize>& cores, Conductor conductor,
                                     const tables::Standards& standards);

/// The layer of armour wires: how many, and their gross cross-section.
struct ArmourLayer {
  int wires = 0;
  double area_mm2 = 0.0;
};

/// n = floor(c pi Dp cos(a) / d), area = n pi d^2/4, with Dp = D + d, a the lay angle; c = 0.90 and
/// a lay of 10 Dp, calibrated on printed areas (armour_lay table).
/// @param under_mm  diameter under the armour, > 0; @param wire_mm  > 0
[[nodiscard]] ArmourLayer armour_layer(const tables::Standards& standards, double under_mm,
                                       double wire_mm);

}  // namespace cutback::cable

#pragma once
// How much metal an armour of wires has.

#include <optional>
#include <string>

#include "cutback/cable/cable.hpp"
#include "cutback/cable/construction.hpp"
#include "cutback/tables/standards.hpp"

namespace cutback::earth {

/// Gross area of the armour, and how it was found.
struct ArmourArea {
  double area_mm2 = 0.0;
  std::string origin;        ///< for the printed result, for instance "34 wires of 1.25 mm"
  double error_ratio = 0.0;  ///< the true area is within area (1 +- error), 0 <= error < 1
  std::optional<double> wire_mm = {};  ///< diameter of a wire
};

/// N wires, all counted: N pi d^2 / 4, where a measured wire may be as thin as
/// least_wire_mm().
/// @param cable  its wire is known; where its bedding is, no more wires than go round that
/// @throws InputError
[[nodiscard]] ArmourArea counted_area(int wires, const cable::Cable& cable);

/// What a known wire counts for at its least [mm]. One that lies in a standard band counts with its
/// nominal size, as the tables of armour areas have it, or where it was measured thinner, with the
/// reading; any other with the lower end of its interval.
[[nodiscard]] double least_wire_mm(const cable::Cable& cable);

/// Area and error of a cable's armour from its construction; nothing where it has none.
[[nodiscard]] std::optional<ArmourArea> constructed_area(const cable::Construction& construction);

/// The armour of a cable: by wire and bedding where they are given, else by its construction. A
/// wire in a standard band counts with its nominal size, any other with its value. The error is
/// that of the number of wires (8 % under 1.25 mm, else 6 %: the printed areas lie within), and
/// what wire and bedding at their least take away. Nothing where the armour is not wire, or
/// neither its wire nor its bedding is known.
[[nodiscard]] std::optional<ArmourArea> armour_area(
    const cable::Cable& cable, const std::optional<cable::Construction>& construction,
    const tables::Standards& standards);

}  // namespace cutback::earth

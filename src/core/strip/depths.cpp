#include "cutback/strip/depths.hpp"

#include <algorithm>
#include <cmath>

#include "cutback/cable/plausibility.hpp"
#include "cutback/compare.hpp"
#include "cutback/number.hpp"

namespace cutback::strip {
namespace {

using cable::ArmourKind;

constexpr double k_step_mm = 0.1;

/// A depth of `limit_mm` at most, as it is printed.
std::optional<double> depth_to(double limit_mm) {
  const double depth_mm = round_down(limit_mm, k_step_mm);
  if (!at_least(depth_mm, k_step_mm)) return std::nullopt;
  return depth_mm;
}

/// A depth under `limit_mm`: what begins there is not touched.
std::optional<double> depth_under(double limit_mm) {
  const double depth_mm = round_down(limit_mm, k_step_mm);
  return depth_to(at_least(depth_mm, limit_mm) ? depth_mm - k_step_mm / 2.0 : depth_mm);
}

/// How many wires or tapes lie on each other.
double layers_of(ArmourKind armour) {
  return armour == ArmourKind::braid || armour == ArmourKind::tape ? 2.0 : 1.0;
}

/// The mean sheath by the readings, with their spread.
std::optional<cable::Derived> sheath_of(const cable::Cable& cable) {
  if (!cable.sheath_od || !cable.bedding) return std::nullopt;
  const double both_mm = (cable.sheath_od->value_mm - cable.bedding->value_mm) / 2.0;
  const double od_mm = cable.sheath_od->expanded_mm / 2.0;
  const double bedding_mm = cable.bedding->expanded_mm / 2.0;
  if (cable.armour == ArmourKind::none)
    return cable::Derived{both_mm, std::hypot(od_mm, bedding_mm)};
  const auto wire_mm = cable::wire_size_mm(cable);
  if (!wire_mm) return std::nullopt;
  const double layers = layers_of(cable.armour);
  // A wire that is its nominal size may still lie anywhere in its band.
  const double wire_spread_mm =
      cable.wire_nominal ? (cable.wire_nominal->max_mm - cable.wire_nominal->min_mm) / 2.0
                         : cable.wire->expanded_mm;
  return cable::Derived{both_mm - layers * *wire_mm,
                        std::hypot(od_mm, bedding_mm, layers * wire_spread_mm)};
}

/// The thinnest point that the sheath may have.
double least_sheath_mm(double mean_mm, const std::optional<double>& nominal_mm) {
  return cable::least_at_a_point_mm(std::min(mean_mm, nominal_mm.value_or(mean_mm)));
}

void put_armoured(Depths& depths, const cable::Cable& cable, const Nominals& nominals) {
  const auto sheath = sheath_of(cable);
  if (!sheath || sheath->value_mm <= 0.0) return;
  depths.spread_mm = sheath->expanded_mm;
  const double least_mm = least_sheath_mm(sheath->value_mm, nominals.sheath_mm);
  if (cable.armour != ArmourKind::wire) {
    depths.sheath_mm = depth_under(least_mm - sheath->expanded_mm);
    return;
  }
  const double wire_mm = *cable::wire_size_mm(cable);
  const double limit_mm = least_mm + wire_mm - sheath->expanded_mm;
  depths.sheath_mm = depth_to(std::min(sheath->value_mm, limit_mm));
  depths.saw_mm = depth_to(std::min(sheath->value_mm + wire_mm / 2.0, limit_mm));
  depths.saw_limit_mm = depth_to(limit_mm);
}

void put_unarmoured(Depths& depths, const cable::Cable& cable, const Nominals& nominals) {
  const auto sheath = sheath_of(cable);
  if (!sheath && !nominals.sheath_mm) return;
  if (sheath && sheath->value_mm <= 0.0) return;
  const double mean_mm = sheath ? sheath->value_mm : *nominals.sheath_mm;
  const double spread_mm = sheath ? sheath->expanded_mm : 0.0;
  if (sheath) depths.spread_mm = spread_mm;
  depths.sheath_mm = depth_under(least_sheath_mm(mean_mm, nominals.sheath_mm) - spread_mm);
}

}  // namespace

Depths depths_of(const cable::Cable& cable, const Nominals& nominals) {
  Depths depths;
  if (cable.armour == ArmourKind::none) {
    put_unarmoured(depths, cable, nominals);
    return depths;
  }
  if (nominals.bedding_mm) {
    depths.bedding_mm = depth_under(cable::least_at_a_point_mm(*nominals.bedding_mm));
  }
  put_armoured(depths, cable, nominals);
  return depths;
}

}  // namespace cutback::strip

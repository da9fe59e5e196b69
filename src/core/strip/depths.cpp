#include "cutback/strip/depths.hpp"

#include <algorithm>

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

/// The thinnest point that the sheath may have.
double least_sheath_mm(double mean_mm, const std::optional<double>& nominal_mm) {
  return cable::least_at_a_point_mm(std::min(mean_mm, nominal_mm.value_or(mean_mm)));
}

void put_armoured(Depths& depths, const cable::Cable& cable, const Nominals& nominals) {
  const auto sheath = cable::sheath_thickness(cable);
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
  const auto sheath = cable::sheath_thickness(cable);
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

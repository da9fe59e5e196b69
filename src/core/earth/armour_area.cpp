#include "cutback/earth/armour_area.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <numbers>

#include "cutback/cable/geometry.hpp"
#include "cutback/compare.hpp"
#include "cutback/error.hpp"
#include "cutback/number.hpp"

namespace cutback::earth {
namespace {

/// A diameter with the lower end of its interval [mm].
struct Size {
  double value_mm;
  double low_mm;
  bool given;  ///< not worked out from something else
};

bool is_given(const std::optional<measure::Estimate>& estimate) {
  return estimate && estimate->evidence != measure::Evidence::estimated;
}

std::optional<Size> wire_of(const cable::Cable& cable,
                            const std::optional<cable::Construction>& construction) {
  if (is_given(cable.wire)) {
    return Size{*cable::wire_size_mm(cable), least_wire_mm(cable), true};
  }
  if (!construction || !construction->layers.armour_mm) return std::nullopt;
  return Size{*construction->layers.armour_mm, *construction->layers.armour_mm, false};
}

std::optional<Size> bedding_of(const cable::Cable& cable,
                               const std::optional<cable::Construction>& construction) {
  if (is_given(cable.bedding)) {
    return Size{cable.bedding->value_mm, cable.bedding->low_mm(), true};
  }
  if (construction) {
    const double bedding_mm = construction->bedding_diameter_mm;
    return Size{bedding_mm, bedding_mm - construction->bedding_expanded_mm, false};
  }
  if (!cable.bedding) return std::nullopt;
  return Size{cable.bedding->value_mm, cable.bedding->low_mm(), false};
}

/// By how much the number of wires may be off where the layers are known.
double count_error(double wire_mm) {
  constexpr double k_first_close_mm = 1.25;
  return at_least(wire_mm, k_first_close_mm) ? 0.06 : 0.08;
}

}  // namespace

double least_wire_mm(const cable::Cable& cable) {
  const measure::Estimate& wire = *cable.wire;
  if (!cable.wire_nominal) return wire.low_mm();
  const double nominal_mm = cable.wire_nominal->nominal_mm;
  if (wire.evidence != measure::Evidence::measured) return nominal_mm;
  return std::min(nominal_mm, wire.value_mm);
}

ArmourArea counted_area(int wires, const cable::Cable& cable) {
  const double wire_mm = *cable::wire_size_mm(cable);
  const double least_mm = least_wire_mm(cable);
  if (wires < 1 || least_mm <= 0.0) {
    throw InputError(Fault{.code = ErrorCode::out_of_range,
                           .what = "no armour",
                           .where = "wires and their diameter",
                           .given = fmt::format("{} of {} mm", wires, plain(wire_mm)),
                           .allowed = "both above 0",
                           .hint = {}});
  }
  if (is_given(cable.bedding)) {
    // Side by side their axes lie on a circle round the bedding.
    const double round_mm = std::numbers::pi * (cable.bedding->high_mm() + least_mm);
    const int most = static_cast<int>(round_mm / least_mm);
    if (wires > most) {
      throw InputError(Fault{.code = ErrorCode::contradiction,
                             .what = "more wires than go round the bedding",
                             .where = "wires",
                             .given = fmt::format("{} of {} mm on {} mm", wires, plain(wire_mm),
                                                  plain(cable.bedding->value_mm, 2)),
                             .allowed = fmt::format("at most {}", most),
                             .hint = "count again, and measure the bedding again"});
    }
  }
  const double thin = least_mm / wire_mm;
  return {.area_mm2 = wires * std::numbers::pi * wire_mm * wire_mm / 4.0,
          .origin = fmt::format("{} wires of {} mm", wires, plain(wire_mm)),
          .error_ratio = 1.0 - thin * thin,
          .wire_mm = wire_mm};
}

std::optional<ArmourArea> constructed_area(const cable::Construction& construction) {
  if (!construction.armour_area_mm2) return std::nullopt;
  return ArmourArea{
      .area_mm2 = *construction.armour_area_mm2,
      .origin = fmt::format("{} wires of {} mm, from the construction", *construction.wires,
                            plain(*construction.layers.armour_mm)),
      .error_ratio = cable::armour_area_error(construction),
      .wire_mm = construction.layers.armour_mm};
}

std::optional<ArmourArea> armour_area(const cable::Cable& cable,
                                      const std::optional<cable::Construction>& construction,
                                      const tables::Standards& standards) {
  if (cable.armour != cable::ArmourKind::wire) return std::nullopt;
  const auto wire = wire_of(cable, construction);
  const auto bedding = bedding_of(cable, construction);
  if (!wire || !bedding) return std::nullopt;
  if (construction && !wire->given && !bedding->given) return constructed_area(*construction);
  const cable::ArmourLayer layer =
      cable::armour_layer(standards, bedding->value_mm, wire->value_mm);
  const double least_mm2 =
      wire->low_mm > 0.0 && bedding->low_mm > 0.0
          ? cable::armour_layer(standards, bedding->low_mm, wire->low_mm).area_mm2 *
                (1.0 - count_error(wire->value_mm))
          : 0.0;
  if (layer.wires < 1 || least_mm2 <= 0.0) return std::nullopt;
  return ArmourArea{.area_mm2 = layer.area_mm2,
                    .origin = fmt::format("{} wires of {} mm on a bedding of {} mm", layer.wires,
                                          plain(wire->value_mm), plain(bedding->value_mm, 2)),
                    .error_ratio = 1.0 - least_mm2 / layer.area_mm2,
                    .wire_mm = wire->value_mm};
}

}  // namespace cutback::earth

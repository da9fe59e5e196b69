#pragma once
// One cable as it lies there.

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/cable/armour.hpp"
#include "cutback/measure/estimate.hpp"

namespace cutback::cable {

/// The covering under the armour, or over the cores of a cable without it, which may have none.
enum class BeddingMade { extruded, lapped, none };
enum class Fillers { none, non_hygroscopic, hygroscopic };
enum class ArmourMaterial { steel, aluminium, copper };
enum class Supply { ac, dc };

/// In the order in which a user is told of them.
[[nodiscard]] constexpr auto all_values(BeddingMade) {
  using enum BeddingMade;
  return std::array{extruded, lapped, none};
}

[[nodiscard]] constexpr std::string_view to_string(BeddingMade made) {
  switch (made) {
    case BeddingMade::extruded:
      return "extruded";
    case BeddingMade::lapped:
      return "lapped";
    case BeddingMade::none:
      return "none";
  }
  return "";
}

/// In the order in which a user is told of them.
[[nodiscard]] constexpr auto all_values(Fillers) {
  using enum Fillers;
  return std::array{none, non_hygroscopic, hygroscopic};
}

[[nodiscard]] constexpr std::string_view to_string(Fillers fillers) {
  switch (fillers) {
    case Fillers::none:
      return "none";
    case Fillers::non_hygroscopic:
      return "non-hygroscopic";
    case Fillers::hygroscopic:
      return "hygroscopic";
  }
  return "";
}

/// In the order in which a user is told of them.
[[nodiscard]] constexpr auto all_values(ArmourMaterial) {
  using enum ArmourMaterial;
  return std::array{steel, aluminium, copper};
}

/// In the order in which a user is told of them.
[[nodiscard]] constexpr auto all_values(Supply) {
  using enum Supply;
  return std::array{ac, dc};
}

[[nodiscard]] constexpr std::string_view to_string(ArmourMaterial material) {
  switch (material) {
    case ArmourMaterial::steel:
      return "steel";
    case ArmourMaterial::aluminium:
      return "aluminium";
    case ArmourMaterial::copper:
      return "copper";
  }
  return "";
}

[[nodiscard]] constexpr std::string_view to_string(Supply supply) {
  switch (supply) {
    case Supply::ac:
      return "ac";
    case Supply::dc:
      return "dc";
  }
  return "";
}

/// A cable: its diameters with their spread, and what is known of its make. An absent member is
/// not known. `bedding` is the diameter under the armour; `wire` the diameter of one armour wire
/// (or the thickness of a tape or strip, or the strand of a braid).
/// What a cable as made may differ by from its datasheet, where nothing else is said (common
/// practice, no source).
inline constexpr double k_od_allow_mm = 2.0;
inline constexpr double k_bedding_allow_mm = 1.0;

/// Something about the readings that cannot well be true.
struct Remark {
  std::string says;    ///< what does not agree, with its figures
  std::string repeat;  ///< which reading to take again
  std::string source;
  bool contradiction = false;  ///< no gland is proven to fit while it stands
};

struct Cable {
  ArmourKind armour = ArmourKind::wire;
  std::optional<measure::Estimate> sheath_od;
  std::optional<measure::Estimate> bedding;
  std::optional<measure::Estimate> wire;
  std::optional<WireBand> wire_nominal;  ///< set when the wire lies in a standard band

  std::optional<int> cores;
  std::optional<double> csa_mm2;
  std::optional<double> earth_csa_mm2;
  std::optional<double> length_m;
  std::optional<bool> circular;
  std::optional<bool> compact;
  std::optional<BeddingMade> bedding_made;
  std::optional<Fillers> fillers;
  std::optional<ArmourMaterial> armour_material;
  std::optional<Supply> supply;         ///< kind of current
  std::vector<std::string> warnings;    ///< about the readings; they change no verdict
  std::optional<Remark> contradiction;  ///< of the readings, the first; it caps every verdict
};

/// A length worked out from readings: value and expanded uncertainty [mm].
struct Derived {
  double value_mm;
  double expanded_mm;
};

/// The wire diameter that counts: the nominal of its band where it lies in one.
[[nodiscard]] inline std::optional<double> wire_size_mm(const Cable& cable) {
  if (cable.wire_nominal) return cable.wire_nominal->nominal_mm;
  if (cable.wire) return cable.wire->value_mm;
  return std::nullopt;
}

/// How far the wire may lie from wire_size_mm [mm]: a wire that is its nominal size may still lie
/// anywhere in its band.
[[nodiscard]] double wire_spread_mm(const Cable& cable);

/// The value of sheath_thickness() alone [mm].
[[nodiscard]] inline std::optional<double> sheath_thickness_mm(const Cable& cable) {
  if (!cable.sheath_od || !cable.bedding) return std::nullopt;
  const double both_mm = (cable.sheath_od->value_mm - cable.bedding->value_mm) / 2.0;
  if (cable.armour == ArmourKind::none) return both_mm;
  const auto wire = wire_size_mm(cable);
  if (!wire) return std::nullopt;
  return both_mm - armour_layers(cable.armour) * *wire;
}

/// Mean sheath thickness t = (OD - bedding)/2 - armour, the armour one wire, or two where they
/// cross or tapes lie on each other; with the spread of the figures combined (JCGM 100:2008 5.1.2).
/// Absent when one of them is not known.
[[nodiscard]] std::optional<Derived> sheath_thickness(const Cable& cable);

}  // namespace cutback::cable

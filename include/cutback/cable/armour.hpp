#pragma once
// Kinds of armour, and the standard sizes of round armour wire.

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace cutback::cable {

enum class ArmourKind { wire, braid, tape, strip, none };

/// In the order in which a user is told of them.
[[nodiscard]] constexpr auto all_values(ArmourKind) {
  using enum ArmourKind;
  return std::array{wire, braid, tape, strip, none};
}

[[nodiscard]] constexpr std::string_view to_string(ArmourKind kind) {
  switch (kind) {
    case ArmourKind::wire:
      return "wire";
    case ArmourKind::braid:
      return "braid";
    case ArmourKind::tape:
      return "tape";
    case ArmourKind::strip:
      return "strip";
    case ArmourKind::none:
      return "none";
  }
  return "";
}

/// A nominal size of round armour wire and the diameters it may have as made [mm], both closed.
struct WireBand {
  double nominal_mm;
  double min_mm;
  double max_mm;
};

/// Nominal oversheath over an armour: slope x diameter + constant, at least `least_mm`.
struct OversheathRule {
  std::string pattern;
  double slope;
  double constant_mm;
  double least_mm;
};

/// The band that contains a measured diameter, or nothing: then it is no standard wire.
[[nodiscard]] std::optional<WireBand> wire_band(std::span<const WireBand> bands,
                                                double diameter_mm);

}  // namespace cutback::cable

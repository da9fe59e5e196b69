#pragma once
// Kinds of armour, and the standard sizes of round armour wire.

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "cutback/measure/estimate.hpp"

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

/// How many wires or tapes lie on each other: a braid's wires cross, and tapes are two (IEC
/// 60502-1: the outer over the gap of the inner).
[[nodiscard]] constexpr int armour_layers(ArmourKind kind) {
  return kind == ArmourKind::braid || kind == ArmourKind::tape ? 2 : 1;
}

/// A nominal size of round armour wire and the diameters it may have as made [mm], both closed.
struct WireBand {
  double nominal_mm;
  double min_mm;
  double max_mm;
  bool iec = false;  ///< a size of IEC 60502-1 alone; else of HD 604
};

/// Nominal oversheath over an armour: slope x diameter + constant, at least `least_mm`.
struct OversheathRule {
  std::string pattern;
  double slope;
  double constant_mm;
  double least_mm;
};

/// The band that contains a diameter, or nothing: then it is no standard wire.
[[nodiscard]] std::optional<WireBand> wire_band(std::span<const WireBand> bands,
                                                double diameter_mm);

/// The standard size that a wire is, by how well its diameter is known: D lies in the band, every
/// reading in the band widened by U, and D +- U meets no other band of the same standard. Nothing
/// where that does not hold: the wire is then compared as it was found.
[[nodiscard]] std::optional<WireBand> standard_size(std::span<const WireBand> bands,
                                                    const measure::Estimate& wire);

}  // namespace cutback::cable

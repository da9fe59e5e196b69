#pragma once
// What the caliper showed.

#include <concepts>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace cutback::measure {

/// Readings taken at the same spot of a cable, at different angles. Never empty.
struct Place {
  std::vector<double> readings_mm;
};

/// Readings as they were given, read once. `text` is for messages and for writing them down again.
struct Readings {
  /// @throws InputError as parse_places does
  Readings(std::string_view notation, std::string_view where);
  /// From text alone, so that code can write `sheath_od_mm = "14.9+15.1"`.
  template <class Text>
  requires std::convertible_to<const Text&, std::string_view> Readings(const Text& notation)
      : Readings(std::string_view(notation), "readings") {}

  std::string text;
  std::vector<Place> places;  ///< never empty
  /// Of the readings in inches, where there are any: the smallest difference [mm] that the finest
  /// of them can show, for an inch scale is read by fractions or by few decimals. Figures in mm are
  /// often written without their last noughts, and say nothing.
  std::optional<double> scale_mm;
};

/// The places measured on one drum (or one cable end). Never empty.
struct Drum {
  std::string name;
  std::vector<Place> places;
};

/// A cable diameter above this is no cable.
inline constexpr double k_largest_diameter_mm = 300.0;

/// Reads `14.9+15.1` (one place, crossed), `14.9+15.1,15.0+15.2` (two places), inches as `0.59in`
/// or `19/32in`.
/// @param text   as typed; spaces round a number are ignored
/// @param where  option, column or JSON path, for the message
/// @return at least one place with at least one reading, each > 0 and at most k_largest_diameter_mm
/// @throws InputError with one fault for each reading that is wrong
[[nodiscard]] std::vector<Place> parse_places(std::string_view text, std::string_view where);

/// The reading [mm] where `text` is one figure of parse_figure's form; nothing where it has another
/// form or parse_places would refuse it.
[[nodiscard]] std::optional<double> plain_reading(std::string_view text);

/// The places in the notation that parse_places reads, in mm.
[[nodiscard]] std::string to_text(const std::vector<Place>& places);

}  // namespace cutback::measure

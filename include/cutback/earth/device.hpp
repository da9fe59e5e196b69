#pragma once
// A circuit breaker by its type and rating: from which current it trips at once.

#include <optional>
#include <string>
#include <string_view>

#include "cutback/tables/standards.hpp"

namespace cutback::earth {

/// A breaker of type B, C or D.
struct Device {
  char type = 'B';
  double rating_a = 0.0;  ///< 0.5 to 125 A

  friend bool operator==(const Device&, const Device&) = default;
};

/// How a device is written, for messages.
inline constexpr std::string_view k_device_form =
    "the type and rating of a circuit breaker (IEC 60898), B, C or D: B6, C32, D63; of any other "
    "device give the time";

/// Reads `C32`, `c 32 A`. @return nothing for anything else
[[nodiscard]] std::optional<Device> parse_device(std::string_view text);
[[nodiscard]] std::string to_text(const Device& device);

/// Currents [A] between which nobody can say whether it trips at once, and how soon that is.
struct TripBand {
  double never_to_a = 0.0;     ///< up to it, it does not trip at once
  double always_from_a = 0.0;  ///< from it on, it does
  double within_s = 0.0;       ///< in less than this
};

/// @param standards  table breaker_bands (IEC 60898-1, from memory: it decides nothing)
[[nodiscard]] TripBand trip_band(const Device& device, const tables::Standards& standards);

/// From which current on it trips at once, as a clause.
[[nodiscard]] std::string at_once_says(const Device& device, const tables::Standards& standards);

/// Why the device cannot be taken to trip within the time that was given; empty where it can. Below
/// the current from which it trips at once it trips by its heat, and the standard lets that take a
/// minute at 2.55 times its rating, and for ever at 1.13 times (IEC 60898-1, from memory: it
/// withholds a pass and gives none).
[[nodiscard]] std::string why_not_so_soon(const Device& device, double current_ka, double time_s,
                                          const tables::Standards& standards);

/// What the device says of the time of a fault, in one sentence: which time to give, or that its
/// curve must be looked up. It is no time by itself.
/// @param current_ka  of the fault; nothing where it is not known
[[nodiscard]] std::string device_says(const Device& device, std::optional<double> current_ka,
                                      const tables::Standards& standards);

}  // namespace cutback::earth

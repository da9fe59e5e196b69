#pragma once
// A fault to earth, as far as it is known.

#include <optional>
#include <string>

#include "cutback/earth/device.hpp"
#include "cutback/verdict.hpp"

namespace cutback::earth {

/// A verdict with the sentence that explains it.
struct Finding {
  Verdict verdict = Verdict::not_known;
  std::string says;
  std::string source;
};

/// A fault to earth; an absent member is not known. Each > 0. The current is given, or comes from
/// the voltage to earth and the impedance of the whole loop of a fault at this end.
struct EarthFault {
  std::optional<double> current_ka;  ///< r.m.s.
  std::optional<double> time_s;      ///< until the protection clears it
  /// Let-through energy I^2 t of the protective device [A2 s], for faults under 0.1 s.
  std::optional<double> let_through_a2s = {};
  std::optional<double> loop_ohm = {};
  std::optional<double> u0_v = {};  ///< voltage to earth
  /// Says which time is to be looked up, and is none by itself.
  std::optional<Device> device = {};
};

/// Whether a fault is spoken of at all: any fact of it asks for the others.
[[nodiscard]] bool is_asked(const EarthFault& fault);

/// The current [kA]: as given, else voltage to earth over the loop's impedance; nothing where
/// neither is known.
[[nodiscard]] std::optional<double> current_ka(const EarthFault& fault);

/// How the current was found, "230 V / 0.4 ohm = 575 A", or what is missing for it.
[[nodiscard]] std::string current_says(const EarthFault& fault);

}  // namespace cutback::earth

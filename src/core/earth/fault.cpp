#include "cutback/earth/fault.hpp"

#include <fmt/format.h>

#include "cutback/number.hpp"

namespace cutback::earth {
namespace {
constexpr double k_amperes_per_ka = 1000.0;
}  // namespace

bool is_asked(const EarthFault& fault) {
  return fault.current_ka || fault.time_s || fault.let_through_a2s || fault.loop_ohm ||
         fault.device;
}

std::optional<double> current_ka(const EarthFault& fault) {
  if (fault.current_ka) return fault.current_ka;
  if (!fault.loop_ohm || !fault.u0_v) return std::nullopt;
  return *fault.u0_v / *fault.loop_ohm / k_amperes_per_ka;
}

std::string current_says(const EarthFault& fault) {
  if (fault.current_ka) return plain(*fault.current_ka * k_amperes_per_ka) + " A as given";
  if (!fault.loop_ohm) return "the fault current is not given";
  if (!fault.u0_v) {
    return "the voltage to earth is not given, without which the loop gives no current";
  }
  return fmt::format("{} V / {} ohm = {} A", plain(*fault.u0_v), plain(*fault.loop_ohm, 4),
                     plain(*current_ka(fault) * k_amperes_per_ka, 1));
}

}  // namespace cutback::earth

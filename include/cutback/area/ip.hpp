#pragma once
// Does one ingress protection code serve another? IEC 60529.

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/tables/standards.hpp"
#include "cutback/verdict.hpp"

namespace cutback::area {

/// One row of the table `ip_water`: a required second numeral served by provided ones.
struct WaterRule {
  int required;
  int provided_min;  ///< both ends included
  int provided_max;
  bool sure;  ///< false: compare something more, or check against the standard
  std::string note;
};

[[nodiscard]] std::vector<WaterRule> water_rules(const tables::Standards& standards);

/// Whether the marked codes together serve the required one.
/// @param required  two characters, a numeral or X each, as `66`, `6X`; X asks for nothing
/// @param marked    the codes of the marking, as {`66`, `68`}; X says nothing
/// @return fits, no_fit, or not_known where the marking does not say or more must be compared;
///         `note` says why it is not known
struct IpAnswer {
  Verdict verdict;
  std::string note;
};
[[nodiscard]] IpAnswer serves(std::string_view required, std::span<const std::string> marked,
                              std::span<const WaterRule> rules);

/// `66/68` or `66 68` as {`66`, `68`}.
[[nodiscard]] std::vector<std::string> ip_codes(std::string_view text);

}  // namespace cutback::area

#pragma once
// Does one ingress protection code serve another? IEC 60529.

#include <span>
#include <string>
#include <vector>

#include "cutback/area/marking.hpp"
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

/// fits, no_fit, or not_known where the marking does not say or more must be compared.
struct IpAnswer {
  Verdict verdict;
  std::string note;  ///< why it is not known
};

/// Whether the marked codes together serve the required one, of which an X asks for nothing.
[[nodiscard]] IpAnswer serves(const IpCode& required, std::span<const IpCode> marked,
                              std::span<const WaterRule> rules);

}  // namespace cutback::area

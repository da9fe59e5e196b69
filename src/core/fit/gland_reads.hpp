#pragma once
// What of a gland each check reads.

#include <string>

#include "cutback/fit/check.hpp"
#include "cutback/gland/gland.hpp"

namespace cutback::fit::detail {

/// Every column that the check reads, as text: equal for glands that it cannot tell apart.
[[nodiscard]] std::string kind_of(const gland::Gland& gland, CheckName check);

}  // namespace cutback::fit::detail

#pragma once
// --dated: the only date that a page ever carries.

#include <string>

#include "cli/runtime.hpp"

namespace cutback::cli {

/// Now in UTC as `YYYYMMDDHHmmSSZ`, or the environment's SOURCE_DATE_EPOCH, so that a page with a
/// date can be made again.
/// @throws InputError where SOURCE_DATE_EPOCH is no number of seconds
[[nodiscard]] std::string utc_date(const Runtime& runtime);

}  // namespace cutback::cli

#pragma once
// The order in which people look for tags.

#include <string_view>

namespace cutback::run {

/// Runs of digits compare by their value, all else by bytes: `P-2` before `P-10`.
[[nodiscard]] bool natural_less(std::string_view a, std::string_view b);

}  // namespace cutback::run

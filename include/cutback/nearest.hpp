#pragma once
// "Did you mean ...?"

#include <span>
#include <string>
#include <string_view>

namespace cutback {

/// The candidate with the smallest edit distance to `given` (case ignored), or an empty string
/// when none is near enough to be meant (more than a third of the letters would change).
[[nodiscard]] std::string nearest(std::string_view given,
                                  std::span<const std::string_view> candidates);

/// A hint for a message: `did you mean "x"?`, or an empty string.
[[nodiscard]] std::string did_you_mean(std::string_view given,
                                       std::span<const std::string_view> candidates);

}  // namespace cutback

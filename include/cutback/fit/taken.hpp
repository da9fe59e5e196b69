#pragma once
// What a screen says of that which was taken for facts nobody gave.

#include <string>
#include <string_view>
#include <vector>

#include "cutback/assumption.hpp"
#include "cutback/fit/fit.hpp"

namespace cutback::fit {

/// `why` of what a profile decided: a screen always shows what of it moves a figure or a mark.
inline constexpr std::string_view k_of_profile = "remembered in your profile";

/// Of assumptions() those whose other value could fail this gland, in a few words each and in
/// their order: "no earth tag", "a hole made for the thread". An assumption that lies on the
/// stricter side, or that a margin outweighs, is not among them.
[[nodiscard]] std::vector<std::string> taken_that_may_fail(
    const std::vector<Assumption>& assumptions, const GlandFit& fit);

}  // namespace cutback::fit

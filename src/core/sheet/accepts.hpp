#pragma once
// Which answers to what is read at the end leave the gland good.

#include <vector>

#include "cutback/fit/fit.hpp"
#include "cutback/sheet/sheet.hpp"

namespace cutback::sheet::detail {

/// Of wall, kind of hole, wall's material and number of cores, where they are missing: each tried
/// in the check of the gland, so that nobody goes on with an answer that it does not stand.
/// @param lacks  what the sheet lacks
std::vector<Accepted> accepts_of(const fit::Question& question, const gland::Gland& gland,
                                 const std::vector<fit::Lack>& lacks);

/// Nothing of the fit is in the way but what can be read at the end.
bool is_only_unread(const fit::GlandFit& fit);

}  // namespace cutback::sheet::detail

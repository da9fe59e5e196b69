#pragma once
// Depths are those of the cable that was given; whoever reads another one inside the gates cuts to
// the same figures.

#include <optional>

#include "cutback/fit/gates.hpp"
#include "cutback/strip/depths.hpp"

namespace cutback::sheet::detail {

/// What sheath less bedding must be at least [mm], by two crossed readings each, so that every
/// depth holds: a thinner sheath wants other ones. Nothing where no depth depends on it.
/// @param depths    of the question's cable
/// @param nominals  that they were worked out with
[[nodiscard]] std::optional<double> depths_from_mm(const fit::Question& question,
                                                   const strip::Depths& depths,
                                                   const strip::Nominals& nominals,
                                                   const fit::Gate& sheath);

}  // namespace cutback::sheet::detail

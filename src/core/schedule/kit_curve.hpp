#pragma once
// What each further part buys: maximum coverage by 1, 2, ... parts.

#include <vector>

#include "cutback/schedule/kit.hpp"

namespace cutback::schedule::detail {

/// From one part to the first number that serves every end that can be served, `most` at most.
[[nodiscard]] std::vector<KitStep> curve_of(const Wanted& wanted, std::size_t most,
                                            const ProgramSolver& solve);

}  // namespace cutback::schedule::detail

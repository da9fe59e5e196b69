#pragma once
// The solvers behind sharing and kits: in the target cutback_extra, with the libraries they need.

#include "cutback/schedule/program.hpp"
#include "cutback/schedule/share.hpp"

namespace cutback::solve {

/// A plan of least cost, by the network simplex method (LEMON). The same for the same problem.
/// @param transport  at least one group and one arc
/// @throws InternalError when the method finds no plan
[[nodiscard]] schedule::TransportPlan cheapest_plan(const schedule::Transport& transport);

/// The best solution found within the time, by branch and bound (CBC), and the bound. The same for
/// the same program wherever it is proven. Silent.
/// @param seconds  at least 0
[[nodiscard]] schedule::ProgramResult solve_program(const schedule::Program& program,
                                                    double seconds);

}  // namespace cutback::solve

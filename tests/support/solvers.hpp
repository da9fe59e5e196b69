#pragma once
// The solvers as tests call them, and schedules in small figures.

#include <string>
#include <utility>
#include <vector>

#include "cutback/schedule/kit.hpp"
#include "cutback/schedule/share.hpp"
#include "cutback/solve/solvers.hpp"

namespace cutback::test {

inline schedule::Part part(const std::string& code, std::int64_t cost_units,
                           std::optional<std::int64_t> stock = std::nullopt) {
  return {.code = code, .cost_units = cost_units, .priced = true, .stock = stock};
}

inline schedule::ProgramResult solved(const schedule::Program& program) {
  return solve::solve_program(program, 60.0);
}

/// A solver that has no time: nothing found, no bound.
inline schedule::ProgramResult no_time(const schedule::Program&) {
  return {.x = {}, .bound = -schedule::Program::k_no_limit, .proven = false};
}

inline std::vector<std::string> codes(const schedule::Wanted& wanted, const schedule::Kit& kit) {
  std::vector<std::string> list;
  for (const auto& one : kit.parts) list.push_back(wanted.parts[one.part].code);
  return list;
}

}  // namespace cutback::test

#pragma once
// A linear program in columns from 0 to 1, all or some of them whole: what is handed to a solver.

#include <cstddef>
#include <cstdint>
#include <functional>
#include <utility>
#include <vector>

namespace cutback::schedule {

/// Minimise sum(objective * x) with every row between its limits and every x from 0 to 1.
struct Program {
  struct Row {
    std::vector<std::pair<std::size_t, double>> terms;  ///< column and factor
    double lower = 0.0;
    double upper = 0.0;  ///< k_no_limit: none
  };
  static constexpr double k_no_limit = 1e30;
  std::vector<double> objective;
  std::vector<bool> whole;  ///< whether the column is 0 or 1
  std::vector<Row> rows;
  std::vector<double> start;  ///< a solution to begin with; may be empty
  double time_share = 1.0;    ///< of the time that is left, at most this part
};

struct ProgramResult {
  std::vector<double> x;  ///< the best that was found; empty where none was
  double bound = 0.0;     ///< no solution has a lower objective
  bool proven = false;    ///< that x is optimal
};

using ProgramSolver = std::function<ProgramResult(const Program&)>;

}  // namespace cutback::schedule

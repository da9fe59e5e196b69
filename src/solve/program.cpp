// CBC through its C interface, which prepares the program and adds cuts as the solver alone does.
#include <Cbc_C_Interface.h>

#include <algorithm>
#include <memory>
#include <string>

#include "cutback/solve/solvers.hpp"

namespace cutback::solve {
namespace {

struct Delete {
  void operator()(Cbc_Model* model) const { Cbc_deleteModel(model); }
};
using Model = std::unique_ptr<Cbc_Model, Delete>;

/// The rows as the columns that CBC takes.
struct Matrix {
  std::vector<CoinBigIndex> start{0};
  std::vector<int> row;
  std::vector<double> value;
};

Matrix by_columns(const schedule::Program& program) {
  std::vector<std::vector<std::pair<int, double>>> columns(program.objective.size());
  for (std::size_t row = 0; row < program.rows.size(); ++row) {
    for (const auto& [column, factor] : program.rows[row].terms) {
      columns[column].emplace_back(static_cast<int>(row), factor);
    }
  }
  Matrix matrix;
  for (const auto& column : columns) {
    for (const auto& [row, factor] : column) {
      matrix.row.push_back(row);
      matrix.value.push_back(factor);
    }
    matrix.start.push_back(static_cast<CoinBigIndex>(matrix.row.size()));
  }
  return matrix;
}

void load(Cbc_Model* model, const schedule::Program& program) {
  const Matrix matrix = by_columns(program);
  const std::size_t count = program.objective.size();
  const std::vector<double> none(count, 0.0);
  const std::vector<double> all(count, 1.0);
  std::vector<double> lower;
  std::vector<double> upper;
  for (const auto& row : program.rows) {
    lower.push_back(row.lower);
    upper.push_back(row.upper);
  }
  Cbc_loadProblem(model, static_cast<int>(count), static_cast<int>(program.rows.size()),
                  matrix.start.data(), matrix.row.data(), matrix.value.data(), none.data(),
                  all.data(), program.objective.data(), lower.data(), upper.data());
  for (std::size_t i = 0; i < count; ++i) {
    if (program.whole[i]) Cbc_setInteger(model, static_cast<int>(i));
  }
  if (program.start.empty()) return;
  std::vector<int> columns;
  for (std::size_t i = 0; i < count; ++i) columns.push_back(static_cast<int>(i));
  Cbc_setMIPStartI(model, static_cast<int>(count), columns.data(), program.start.data());
}

}  // namespace

schedule::ProgramResult solve_program(const schedule::Program& program, double seconds) {
  const Model model(Cbc_newModel());
  Cbc_setParameter(model.get(), "log", "0");
  Cbc_setParameter(model.get(), "timeMode", "elapsed");
  Cbc_setParameter(model.get(), "sec", std::to_string(std::max(seconds, 0.0)).c_str());
  Cbc_setParameter(model.get(), "threads", "0");  // one thread: the same every time
  load(model.get(), program);
  Cbc_solve(model.get());
  schedule::ProgramResult result;
  result.proven = Cbc_isProvenOptimal(model.get()) != 0;
  result.bound = Cbc_getBestPossibleObjValue(model.get());
  const double* x = Cbc_bestSolution(model.get());
  if (x != nullptr) result.x.assign(x, x + program.objective.size());
  return result;
}

}  // namespace cutback::solve

#pragma once
// Sets of columns of one component: by greed, and by a program.

#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/schedule/cover.hpp"
#include "cutback/schedule/program.hpp"

namespace cutback::schedule::detail {

/// One component with its columns numbered from 0, by part code.
struct Local {
  std::vector<std::size_t> parts;              ///< of each column
  std::vector<std::vector<std::size_t>> rows;  ///< columns of each row
  std::vector<std::int64_t> ends;              ///< of each row
  std::vector<std::int64_t> cost_units;        ///< of each column
};
[[nodiscard]] Local local_of(const Cover& cover, const std::vector<Part>& parts);

/// Columns that are chosen.
using Choice = std::vector<bool>;

[[nodiscard]] std::int64_t ends_served(const Local& local, const Choice& choice);
[[nodiscard]] bool covers_all(const Local& local, const Choice& choice);
/// The sum of `weight` over what is chosen.
[[nodiscard]] std::int64_t total(const std::vector<std::int64_t>& weight, const Choice& choice);

/// Takes the column that adds the most ends for its weight. @return false when none adds any
bool take_best(const Local& local, const std::vector<std::int64_t>& weight, Choice& choice);
/// The columns that add the most ends for their weight, one after the other, `most` at most.
[[nodiscard]] Choice greedy(const Local& local, const std::vector<std::int64_t>& weight,
                            std::size_t most);
/// Without columns that the others make needless, the heaviest first.
void drop_needless(const Local& local, const std::vector<std::int64_t>& weight, Choice& choice);

/// The columns of a solver's answer. Empty where it has none.
[[nodiscard]] Choice choice_of(const ProgramResult& result, std::size_t columns);

}  // namespace cutback::schedule::detail

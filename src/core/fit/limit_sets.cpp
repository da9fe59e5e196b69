#include "core/fit/limit_sets.hpp"

#include <utility>

namespace cutback::fit::detail {

LimitSets::LimitSets(const Kinds& kinds, std::vector<double> limits, Bound bound,
                     std::size_t most_words)
    : kinds_(&kinds), bound_(bound), limits_(std::move(limits)), words_(kinds.words()) {
  std::vector<std::pair<double, std::size_t>> sorted;  // kinds by their limits
  GlandSet set(words_, 0);
  for (std::size_t kind = 0; kind < limits_.size(); ++kind) {
    if (limits_[kind] == k_no_limit) {
      kinds.put_all(set, kind);
    } else {
      sorted.emplace_back(limits_[kind], kind);
    }
  }
  std::sort(sorted.begin(), sorted.end());
  const auto is_new = [&](std::size_t i) {
    return i == 0 || sorted[i].first > sorted[i - 1].first;
  };
  std::size_t different = 0;
  for (std::size_t i = 0; i < sorted.size(); ++i) different += is_new(i) ? 1U : 0U;
  const std::size_t most_sets = 1 + most_words / std::max<std::size_t>(words_, 1);
  const std::size_t step = 1 + different / most_sets;
  exact_ = step == 1;
  std::size_t number = 0;
  for (std::size_t i = 0; i < sorted.size(); ++i) {
    if (is_new(i) && number++ % step == 0) keep_set(set, sorted[i].first);
    kinds.put_all(set, sorted[i].second);
  }
  make_grid();
  keep_set(set, std::numeric_limits<double>::infinity());
}

void LimitSets::keep_set(const GlandSet& set, double breakpoint) {
  sets_.insert(sets_.end(), set.begin(), set.end());
  breakpoints_.push_back(breakpoint);
}

void LimitSets::make_grid() {
  grid_.push_back(0);
  if (breakpoints_.empty()) return;
  constexpr std::size_t k_cells_per_breakpoint = 4;
  last_cell_ = static_cast<double>(k_cells_per_breakpoint * breakpoints_.size());
  grid_start_ = breakpoints_.front();
  cells_per_mm_ = last_cell_ / std::max(breakpoints_.back() - grid_start_, 1.0);
  for (double cell = 1.0; cell <= last_cell_; ++cell) {
    // A cell too low, so that no rounding puts a breakpoint that is not reached among them.
    const double below = grid_start_ + (cell - 1.0) / cells_per_mm_;
    std::uint32_t reached = grid_.back();
    while (reached < breakpoints_.size() && breakpoints_[reached] < below) ++reached;
    grid_.push_back(reached);
  }
}

}  // namespace cutback::fit::detail

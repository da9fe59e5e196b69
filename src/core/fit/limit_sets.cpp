#include "core/fit/limit_sets.hpp"

#include <algorithm>
#include <utility>

namespace cutback::fit::detail {
namespace {

/// Sets kept of one limit at most: with 10,000 glands 1.3 MB.
constexpr std::size_t k_most_sets = 1024;

}  // namespace

LimitSets::LimitSets(std::span<const std::optional<double>> limits, Kind kind)
    : kind_(kind), words_((limits.size() + k_block * k_word - 1) / (k_block * k_word) * k_block) {
  std::vector<std::pair<double, std::size_t>> sorted;
  GlandSet set(words_, 0);
  for (std::size_t i = 0; i < limits.size(); ++i) {
    if (!limits[i]) {
      put(set, i);
    } else {
      sorted.emplace_back(kind == Kind::lower ? *limits[i] : -*limits[i], i);
    }
  }
  std::sort(sorted.begin(), sorted.end());
  std::size_t different = 0;
  for (std::size_t i = 0; i < sorted.size(); ++i) {
    if (i == 0 || sorted[i].first > sorted[i - 1].first) ++different;
  }
  const std::size_t step = 1 + different / k_most_sets;
  every_limit_ = step == 1;
  std::size_t number = 0;
  for (std::size_t i = 0; i < sorted.size(); ++i) {
    const bool fresh = i == 0 || sorted[i].first > sorted[i - 1].first;
    if (fresh && number++ % step == 0) keep_set(set, sorted[i].first);
    put(set, sorted[i].second);
  }
  sets_.insert(sets_.end(), set.begin(), set.end());
  make_grid();
}

void LimitSets::keep_set(const GlandSet& set, double breakpoint) {
  sets_.insert(sets_.end(), set.begin(), set.end());
  breakpoints_.push_back(breakpoint);
}

void LimitSets::make_grid() {
  if (breakpoints_.empty()) return;
  grid_start_ = breakpoints_.front();
  const double width = std::max(breakpoints_.back() - grid_start_, 1.0);
  cells_a_mm_ = static_cast<double>(k_cells) / width;
  for (std::size_t cell = 0; cell <= k_cells; ++cell) {
    // A cell too low, so that no rounding puts a breakpoint that is not reached among them.
    const double below = grid_start_ + (static_cast<double>(cell) - 1.0) / cells_a_mm_;
    grid_.push_back(static_cast<std::uint32_t>(
        std::lower_bound(breakpoints_.begin(), breakpoints_.end(), below) - breakpoints_.begin()));
  }
}

}  // namespace cutback::fit::detail

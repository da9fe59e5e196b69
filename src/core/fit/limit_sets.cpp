#include "core/fit/limit_sets.hpp"

#include <algorithm>
#include <bit>
#include <limits>
#include <utility>

namespace cutback::fit::detail {
namespace {

/// Sets kept of one limit at most: with 10,000 glands 1.3 MB.
constexpr std::size_t k_most_sets = 1024;

[[gnu::always_inline]] inline Kept keep(std::uint64_t* set, std::size_t words,
                                        std::span<const Passing> limits,
                                        const std::uint64_t* sure) {
  for (const Passing& limit : limits) {
    for (std::size_t word = 0; word < words; word += k_block) {
      for (std::size_t i = 0; i < k_block; ++i) set[word + i] &= limit.all[word + i];
    }
  }
  Kept kept;
  std::uint64_t beyond = 0;
  for (std::size_t word = 0; word < words; ++word) {
    beyond |= set[word] & ~sure[word];
    kept.count += static_cast<std::size_t>(std::popcount(set[word]));
  }
  kept.all_sure = beyond == 0;
  return kept;
}

#if defined(__x86_64__)

/// The same for a processor with sets of 256 bits and an instruction that counts bits.
[[gnu::target("avx2,popcnt")]] Kept keep_wide(std::uint64_t* set, std::size_t words,
                                              std::span<const Passing> limits,
                                              const std::uint64_t* sure) {
  return keep(set, words, limits, sure);
}

#endif

}  // namespace

Kept keep_passing(std::uint64_t* set, std::size_t words, std::span<const Passing> limits,
                  const std::uint64_t* sure) {
#if defined(__x86_64__)
  static const bool wide =
      __builtin_cpu_supports("avx2") != 0 && __builtin_cpu_supports("popcnt") != 0;
  if (wide) return keep_wide(set, words, limits, sure);
#endif
  return keep(set, words, limits, sure);
}

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
  sets_.reserve((different / step + 2) * words_);
  std::size_t number = 0;
  for (std::size_t i = 0; i < sorted.size(); ++i) {
    const bool fresh = i == 0 || sorted[i].first > sorted[i - 1].first;
    if (fresh && number++ % step == 0) keep_set(set, sorted[i].first);
    put(set, sorted[i].second);
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
  constexpr std::size_t k_cells_a_breakpoint = 4;
  last_cell_ = static_cast<double>(k_cells_a_breakpoint * breakpoints_.size());
  grid_start_ = breakpoints_.front();
  cells_a_mm_ = last_cell_ / std::max(breakpoints_.back() - grid_start_, 1.0);
  for (double cell = 1.0; cell <= last_cell_; ++cell) {
    // A cell too low, so that no rounding puts a breakpoint that is not reached among them.
    const double below = grid_start_ + (cell - 1.0) / cells_a_mm_;
    std::uint32_t reached = grid_.back();
    while (reached < breakpoints_.size() && breakpoints_[reached] < below) ++reached;
    grid_.push_back(reached);
  }
}

}  // namespace cutback::fit::detail

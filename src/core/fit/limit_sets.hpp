#pragma once
// For one limit of every gland of a list: which glands does this diameter pass?

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "cutback/compare.hpp"
#include "cutback/measure/judge.hpp"

namespace cutback::fit::detail {

/// A set of glands: one bit each, by their place in an index.
using GlandSet = std::vector<std::uint64_t>;
constexpr std::size_t k_word = 64;

/// Sets are worked on some words at a time, in one register where the processor has such wide ones;
/// a set has a whole number of blocks.
constexpr std::size_t k_block = 4;

inline void put(GlandSet& set, std::size_t place) {
  set[place / k_word] |= std::uint64_t{1} << (place % k_word);
}

/// Words of two sets. Every gland that passes is in `all`; every gland in `sure` passes,
/// and not only by the tolerance of a comparison. What lies between is to be looked at one by one.
struct Passing {
  const std::uint64_t* all = nullptr;
  const std::uint64_t* sure = nullptr;
};

/// What keep_passing() leaves of a set.
struct Kept {
  std::size_t count = 0;
  bool all_sure = true;  ///< nothing is left outside of what passes every check but the limits'
};

/// Takes out of `set` what does not pass every limit.
/// @param words  of the set: whole blocks
/// @param sure   as many words
[[nodiscard]] Kept keep_passing(std::uint64_t* set, std::size_t words,
                                std::span<const Passing> limits, const std::uint64_t* sure);

/// A limit that is reached within a quarter of the tolerance is reached for sure: however a check
/// reckons, it agrees, and a range whose two limits hold an interval so is not narrower than it.
inline constexpr double k_sure_mm = k_epsilon_mm / 4.0;

/// A diameter passes the glands whose limit is at most (lower limits) or at least (upper limits)
/// the diameter. For each breakpoint the set is kept; with many different limits only for some of
/// them, and then the next larger set answers.
class LimitSets {
 public:
  enum class Kind { lower, upper };
  LimitSets() = default;
  /// @param limits  one a place; where it is absent every diameter passes
  LimitSets(std::span<const std::optional<double>> limits, Kind kind);
  /// Whether any place has a limit at all.
  [[nodiscard]] bool limits_any() const { return breakpoints_.size() > 1; }
  [[nodiscard]] Passing at(double diameter_mm) const;
  /// The glands without this limit.
  [[nodiscard]] Passing unlimited() const { return {set(0), set(0)}; }

 private:
  void keep_set(const GlandSet& set, double breakpoint);
  void make_grid();
  /// How many breakpoints `value` reaches.
  [[nodiscard]] std::size_t reached(double value) const;
  [[nodiscard]] const std::uint64_t* set(std::size_t i) const { return sets_.data() + i * words_; }

  Kind kind_ = Kind::lower;
  bool every_limit_ = true;  ///< there is a set for every different limit
  std::size_t words_ = 0;
  /// Ascending, negated for upper limits; behind them one that no diameter reaches.
  std::vector<double> breakpoints_;
  std::vector<std::uint64_t> sets_;  ///< set i holds the limits below breakpoints_[i]
  std::vector<std::uint32_t> grid_;  ///< breakpoints that lie below a cell of equal width
  double grid_start_ = 0.0;
  double cells_a_mm_ = 0.0;
  double last_cell_ = 0.0;
};

inline std::size_t LimitSets::reached(double value) const {
  const double cell = std::clamp((value - grid_start_) * cells_a_mm_, 0.0, last_cell_);
  std::size_t i = grid_[static_cast<std::size_t>(cell)];
  // Cells are narrow enough for nearly all to hold one breakpoint or two: no branch to mispredict.
  i += static_cast<std::size_t>(at_least(value, breakpoints_[i]));
  i += static_cast<std::size_t>(at_least(value, breakpoints_[i]));
  while (at_least(value, breakpoints_[i])) ++i;
  return i;
}

inline Passing LimitSets::at(double diameter_mm) const {
  const double value = kind_ == Kind::lower ? diameter_mm : -diameter_mm;
  const std::size_t all = reached(value);
  std::size_t sure = all;
  while (sure > 0 && breakpoints_[sure - 1] > value + k_sure_mm) --sure;
  // Where a set stands for several limits, those behind its breakpoint may not be reached yet.
  if (!every_limit_ && sure > 0) --sure;
  return {set(all), set(sure)};
}

/// Of a single range, what Passing is of many limits.
struct Passes {
  bool all = true;
  bool sure = true;
};

/// Whether `low_mm` passes the lower limit of a range and `high_mm` its upper one.
[[nodiscard]] inline Passes passes(const measure::Range& range, double low_mm, double high_mm) {
  Passes passes;
  const auto ask = [&](double value, double limit) {
    passes.all = passes.all && at_least(value, limit);
    passes.sure = passes.sure && limit <= value + k_sure_mm;
  };
  if (range.low_mm) ask(low_mm, *range.low_mm);
  if (range.high_mm) ask(-high_mm, -*range.high_mm);
  return passes;
}

}  // namespace cutback::fit::detail

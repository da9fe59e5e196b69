#pragma once
// For one limit of every gland of a list: which glands does this diameter pass?

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <vector>

#include "core/fit/kinds.hpp"
#include "cutback/compare.hpp"

namespace cutback::fit::detail {

enum class Bound { lower, upper };

/// The limit of a kind that has none: every diameter passes it.
inline constexpr double k_no_limit = -std::numeric_limits<double>::infinity();

/// Memory for the sets of one limit at most, in words: every tenth of a millimetre up to 300 mm in
/// a list of 10,000 glands.
inline constexpr std::size_t k_most_set_words = 500'000;

/// A diameter passes the glands whose limit is at most (lower limits) or at least (upper limits)
/// the diameter. The set is kept for each different limit; where those are very many, for some of
/// them, and the next larger set answers.
class LimitSets {
 public:
  /// @param kinds   borrowed
  /// @param limits  one per kind, upper ones negated; k_no_limit where there is none
  LimitSets(const Kinds& kinds, std::vector<double> limits, Bound bound,
            std::size_t most_words = k_most_set_words);

  /// Whether any place has a limit at all.
  [[nodiscard]] bool limits_any() const { return breakpoints_.size() > 1; }
  /// The words of the set that `diameter_mm` passes; where exact() is false, of a larger set.
  [[nodiscard]] const std::uint64_t* at(double diameter_mm) const {
    return set(reached(signed_value(diameter_mm)));
  }
  /// The places without this limit.
  [[nodiscard]] const std::uint64_t* unlimited() const { return set(0); }
  [[nodiscard]] bool exact() const { return exact_; }
  /// How far [mm] the diameter lies within one place's limit; infinite where it has none.
  [[nodiscard]] double margin(std::size_t place, double diameter_mm) const {
    return signed_value(diameter_mm) - limits_[kinds_->of(place)];
  }
  /// Whether the diameter passes one place's limit.
  [[nodiscard]] bool passes(std::size_t place, double diameter_mm) const {
    return at_least(signed_value(diameter_mm), limits_[kinds_->of(place)]);
  }

 private:
  [[nodiscard]] double signed_value(double diameter_mm) const {
    return bound_ == Bound::lower ? diameter_mm : -diameter_mm;
  }
  void keep_set(const GlandSet& set, double breakpoint);
  void make_grid();
  [[nodiscard]] std::size_t reached(double value) const;
  [[nodiscard]] const std::uint64_t* set(std::size_t i) const { return sets_.data() + i * words_; }

  const Kinds* kinds_;
  Bound bound_;
  std::vector<double> limits_;  ///< by kind
  std::size_t words_;
  bool exact_ = true;  ///< there is a set for every different limit
  /// Ascending; behind them one that no diameter reaches.
  std::vector<double> breakpoints_;
  std::vector<std::uint64_t> sets_;  ///< set i holds the limits below breakpoints_[i]
  std::vector<std::uint32_t> grid_;  ///< breakpoints that lie below a cell of equal width
  double grid_start_ = 0.0;
  double cells_per_mm_ = 0.0;
  double last_cell_ = 0.0;
};

/// How many breakpoints `value` reaches.
inline std::size_t LimitSets::reached(double value) const {
  const double cell = std::clamp((value - grid_start_) * cells_per_mm_, 0.0, last_cell_);
  std::size_t i = grid_[static_cast<std::size_t>(cell)];
  while (at_least(value, breakpoints_[i])) ++i;
  return i;
}

}  // namespace cutback::fit::detail

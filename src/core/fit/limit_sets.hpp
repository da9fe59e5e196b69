#pragma once
// For one limit of every gland of a list: which glands does this diameter pass?

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "cutback/compare.hpp"

namespace cutback::fit::detail {

/// A set of glands: one bit each, by their place in an index.
using GlandSet = std::vector<std::uint64_t>;
constexpr std::size_t k_word = 64;

/// Sets are worked on some words at a time, that the compiler keeps in registers; whatever shares
/// an entry thread begins and ends with a whole block.
constexpr std::size_t k_block = 4;
using Block = std::array<std::uint64_t, k_block>;

[[nodiscard]] inline Block block_at(const std::uint64_t* words) {
  Block block;
  std::copy_n(words, k_block, block.begin());
  return block;
}

inline void keep(Block& block, const std::uint64_t* words) {
  for (std::size_t i = 0; i < k_block; ++i) block[i] &= words[i];
}

/// Number of bits. By halves, all words at once: not every processor that this is built for has an
/// instruction for it.
[[nodiscard]] inline std::size_t count(const Block& block) {
  std::uint64_t bytes = 0;
  for (std::uint64_t word : block) {
    word -= word >> 1 & 0x5555555555555555;
    word = (word & 0x3333333333333333) + (word >> 2 & 0x3333333333333333);
    bytes += (word + (word >> 4)) & 0x0f0f0f0f0f0f0f0f;
  }
  static_assert(k_block * 8 < 256, "a byte holds the bits of one byte of every word");
  const std::uint64_t pairs = (bytes & 0x00ff00ff00ff00ff) + (bytes >> 8 & 0x00ff00ff00ff00ff);
  return static_cast<std::size_t>(pairs * 0x0001000100010001 >> 48);
}

inline void put(GlandSet& set, std::size_t place) {
  set[place / k_word] |= std::uint64_t{1} << (place % k_word);
}

/// Words of two sets. Every gland that passes is in `all`; every gland in `sure` passes,
/// and not only by the tolerance of a comparison. What lies between is to be looked at one by one.
struct Passing {
  const std::uint64_t* all = nullptr;
  const std::uint64_t* sure = nullptr;
};

/// A diameter passes the glands whose limit is at most (lower limits) or at least (upper limits)
/// the diameter. For each breakpoint the set is kept; with many different limits only for some of
/// them, and then the next larger set answers.
class LimitSets {
 public:
  enum class Kind { lower, upper };
  /// @param limits  one a place; where it is absent every diameter passes
  LimitSets(std::span<const std::optional<double>> limits, Kind kind);
  /// Whether any place has a limit at all.
  [[nodiscard]] bool limits_any() const { return !breakpoints_.empty(); }
  [[nodiscard]] Passing at(double diameter_mm) const;
  /// The glands without this limit.
  [[nodiscard]] Passing unlimited() const { return {set(0), set(0)}; }

 private:
  void keep_set(const GlandSet& set, double breakpoint);
  void make_grid();
  /// How many breakpoints `value` reaches.
  [[nodiscard]] std::size_t reached(double value) const;
  [[nodiscard]] const std::uint64_t* set(std::size_t i) const { return sets_.data() + i * words_; }

  Kind kind_;
  std::size_t words_;
  std::vector<double> breakpoints_;  ///< ascending; negated for upper limits
  std::vector<std::uint64_t> sets_;  ///< one more; set i holds the limits below breakpoints_[i]
  bool every_limit_ = true;          ///< there is a set for every different limit
  std::vector<std::uint32_t> grid_;  ///< breakpoints that lie below a cell of equal width
  double grid_start_ = 0.0;
  double cells_a_mm_ = 0.0;

  static constexpr std::size_t k_cells = 2048;
  /// A limit that is reached within a quarter of the tolerance is reached for sure: however a check
  /// reckons, it agrees, and a range whose two limits hold an interval so is not narrower than it.
  static constexpr double k_sure_mm = k_epsilon_mm / 4.0;
};

inline std::size_t LimitSets::reached(double value) const {
  if (breakpoints_.empty()) return 0;
  const double cell =
      std::clamp((value - grid_start_) * cells_a_mm_, 0.0, static_cast<double>(k_cells));
  std::size_t i = grid_[static_cast<std::size_t>(cell)];
  while (i < breakpoints_.size() && at_least(value, breakpoints_[i])) ++i;
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

}  // namespace cutback::fit::detail

#pragma once
// For one limit of every gland of a list: which glands does this diameter pass?

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace cutback::fit::detail {

/// A set of glands: one bit each, by their place in an index.
using GlandSet = std::vector<std::uint64_t>;
constexpr std::size_t k_word = 64;

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
};

}  // namespace cutback::fit::detail

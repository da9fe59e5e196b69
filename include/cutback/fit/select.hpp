#pragma once
// The choice for one end out of a long gland list, without a look at every gland.

#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <span>
#include <utility>
#include <vector>

#include "cutback/fit/fit.hpp"

namespace cutback::fit {

/// What is kept of a gland list for one end: the gland that fit_all would put first, where one
/// fits; else every gland of the list, in the order of fit_all.
struct Selection {
  std::vector<GlandFit> ranked;
  std::size_t fits = 0;  ///< glands whose verdict is `fits`
};

/// Puts fits into the order of fit_all.
void rank(std::vector<GlandFit>& fits, Prefer prefer);

/// A set of glands: one bit each, by their place in the list.
using GlandSet = std::vector<std::uint64_t>;

/// For one limit of a gland, the sets of glands that a diameter passes, by breakpoints: a diameter
/// passes those whose limit is at most (lower limits) or at least (upper limits) the diameter. With
/// many different limits only some of the sets are kept, and the next larger one answers.
class LimitSets {
 public:
  enum class Kind { lower, upper };
  /// @param limits  one a gland; where it is absent every diameter passes
  LimitSets(std::span<const std::optional<double>> limits, Kind kind);
  /// No gland that passes is missing; a few may be there that do not.
  [[nodiscard]] const GlandSet& passing(double diameter_mm) const;

 private:
  Kind kind_;
  std::vector<double> breakpoints_;  ///< ascending; negated for upper limits
  std::vector<GlandSet> sets_;       ///< one more: sets_[i] holds limits below breakpoints_[i]
};

/// A gland list prepared for many ends. The sets only leave out glands that cannot fit by a
/// diameter, the kind of armour or the entry thread; what is left is decided by the checks of
/// check_gland, as everywhere.
class Selector {
 public:
  /// @param glands  borrowed: they must outlive this object and every Selection. Not empty.
  Selector(std::span<const gland::Gland> glands, Prefer prefer);

  /// The same as fit_all would put first, and count.
  [[nodiscard]] Selection select(const Question& question) const;

  [[nodiscard]] std::span<const gland::Gland> glands() const { return glands_; }
  [[nodiscard]] Prefer prefer() const { return prefer_; }

 private:
  [[nodiscard]] GlandSet candidates(const Question& question) const;
  void keep_threads(const entry::Entry& entry, GlandSet& set) const;
  void keep_bedding(const cable::Cable& cable, GlandSet& set) const;

  std::span<const gland::Gland> glands_;
  Prefer prefer_;
  LimitSets outer_low_, outer_high_, inner_low_, inner_high_, bore_, clamp_low_, clamp_high_;
  std::map<cable::ArmourKind, GlandSet> armour_;
  std::vector<std::pair<entry::Thread, GlandSet>> threads_;
  std::vector<std::size_t> kinds_;  ///< glands alike in all but ranges of diameters and price
};

}  // namespace cutback::fit

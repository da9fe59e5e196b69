#pragma once
// What ends that ask alike leave open before their diameters are looked at.

#include <array>
#include <memory>
#include <mutex>
#include <vector>

#include "core/fit/rule_sets.hpp"

namespace cutback::fit::detail {

/// Glands that an adaptor would help into the hole.
struct ThroughAdaptor {
  SparseSet open;                        ///< nothing besides diameters speaks against them
  std::vector<const RuleSets*> whole;    ///< checks whose diameter must lie within as a whole
  std::vector<const RuleSets*> passing;  ///< those that must not be outside behind the adaptor
};

class OpenGlands {
 public:
  /// @param rules  every check of the gland that is asked
  OpenGlands(const GlandIndex& index, std::vector<std::shared_ptr<const RuleSets>> rules);

  [[nodiscard]] const std::vector<std::shared_ptr<const RuleSets>>& rules() const { return rules_; }
  /// Those that compare a diameter.
  [[nodiscard]] const std::vector<const RuleSets*>& comparing() const { return comparing_; }
  /// Glands of which nothing besides diameters is worse than the verdict.
  [[nodiscard]] const SparseSet& at_least(Verdict verdict) const {
    return open_[level_of(verdict)];
  }
  /// Those that fit but for their thread, and would go in behind an adaptor that is still to be
  /// had.
  /// @param question  of the ends that ask so; its entry has a thread, and no adaptor at hand
  [[nodiscard]] const ThroughAdaptor& through_adaptor(const Question& question) const;
  /// Glands by the number of checks that fail whatever the diameters are, from 0; those checks do
  /// not count that have a part of the end alone.
  [[nodiscard]] const std::vector<SparseSet>& by_failures() const;

 private:
  [[nodiscard]] std::vector<SparseSet> count_failures() const;
  [[nodiscard]] ThroughAdaptor put_adaptor(const Question& question) const;

  const GlandIndex& index_;
  std::vector<std::shared_ptr<const RuleSets>> rules_;
  std::vector<const RuleSets*> comparing_;
  std::array<SparseSet, k_levels.size()> open_;
  mutable std::once_flag counted_;
  mutable std::vector<SparseSet> by_failures_;
  mutable std::once_flag asked_through_;
  mutable ThroughAdaptor through_;
};

}  // namespace cutback::fit::detail

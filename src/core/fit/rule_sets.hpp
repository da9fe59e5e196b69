#pragma once
// One check of every gland of a list, for all ends that ask it alike.

#include <array>
#include <memory>
#include <mutex>
#include <optional>
#include <tuple>
#include <vector>

#include "core/fit/gland_index.hpp"

namespace cutback::fit::detail {

/// The verdicts that a gland can be looked for with, worst first.
inline constexpr std::array k_levels{Verdict::marginal_outside, Verdict::not_known,
                                     Verdict::marginal_inside, Verdict::fits};
/// Sets of glands by what their verdict is at least.
using Levels = std::array<GlandSet, k_levels.size()>;
[[nodiscard]] inline std::size_t level_of(Verdict verdict) {
  return static_cast<std::size_t>(verdict) - static_cast<std::size_t>(k_levels.front());
}

/// Limits that many checks share are kept once. Several threads may ask at once.
class LimitStore {
 public:
  [[nodiscard]] std::shared_ptr<const LimitSets> get(const Kinds& kinds, std::vector<double> limits,
                                                     Bound bound);

 private:
  using Key = std::tuple<const Kinds*, Bound, std::vector<double>>;
  std::mutex mutex_;
  std::map<Key, std::weak_ptr<const LimitSets>> known_;
};

/// @return what a check asks of a gland of each kind, in their order
[[nodiscard]] std::vector<std::optional<Against>> answers_of(const Rule& rule, const Kinds& kinds,
                                                             const Question& question);

class RuleSets {
 public:
  /// @param answers  by kind
  /// @param store    borrowed
  RuleSets(const Rule& rule, const GlandIndex& index, std::vector<std::optional<Against>> answers,
           LimitStore& store);

  [[nodiscard]] const Rule& rule() const { return rule_; }
  /// What is asked of one place; nothing where the check is not asked. Of a check that compares.
  [[nodiscard]] const std::optional<Against>& of(std::size_t place) const {
    return answers_[kinds_.of(place)];
  }
  /// What this end finds of one place; nothing where the check is not asked.
  [[nodiscard]] std::optional<Finding> find(std::size_t place, const cable::Cable& cable) const;
  /// The places whose part that no diameter plays in is at least so good; where it is not asked as
  /// well.
  [[nodiscard]] const GlandSet& at_least(Verdict verdict) const {
    return settled_[level_of(verdict)];
  }

  /// Whether a diameter is compared with any gland's range.
  [[nodiscard]] bool compares() const { return low_ != nullptr; }
  [[nodiscard]] Diameter diameter() const { return diameter_; }
  [[nodiscard]] const LimitSets& low() const { return *low_; }
  [[nodiscard]] const LimitSets& high() const { return *high_; }
  /// Whether it has verdicts of its own for what lies outside of a range.
  [[nodiscard]] bool has_otherwise() const { return !otherwise_.front().empty(); }
  [[nodiscard]] const GlandSet& otherwise_at_least(Verdict verdict) const {
    return otherwise_[level_of(verdict)];
  }

  /// The same behind an adaptor from each gland's own thread to that of the entry, which has none
  /// at hand; worked out when it is first asked for. A gland that needs no adaptor fails.
  /// @param question  one of those that these sets are for
  [[nodiscard]] const RuleSets& behind_adaptor(const GlandIndex& index,
                                               const Question& question) const;

 private:
  void settle();
  void take_limits();

  const Rule& rule_;
  const Kinds& kinds_;
  LimitStore& store_;
  /// By kind; of a check that compares. Where there are many kinds, most are of one that does not.
  std::vector<std::optional<Against>> answers_;
  GlandSet asked_;
  Levels settled_;
  Diameter diameter_ = Diameter::sheath;
  std::shared_ptr<const LimitSets> low_;
  std::shared_ptr<const LimitSets> high_;
  Levels otherwise_;
  mutable std::once_flag asked_behind_;
  mutable std::unique_ptr<const RuleSets> behind_;
};

}  // namespace cutback::fit::detail

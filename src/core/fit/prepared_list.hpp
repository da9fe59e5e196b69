#pragma once
// A gland list prepared for many searches, and what was asked of it so far.

#include <array>
#include <map>
#include <memory>
#include <mutex>
#include <string>
#include <unordered_map>
#include <vector>

#include "core/fit/open_glands.hpp"

namespace cutback::fit::detail {

class PreparedList {
 public:
  PreparedList(std::span<const gland::Gland> glands, Prefer prefer) : index_(glands, prefer) {}

  [[nodiscard]] const GlandIndex& index() const { return index_; }
  /// What the ends of this question leave open. Several threads may ask at once.
  /// @param asks  by rule, what the question says to it; empty: nothing is remembered
  [[nodiscard]] std::shared_ptr<const OpenGlands> open(const Question& question,
                                                       const AskKeys& asks);

 private:
  using OpenKey = std::vector<const RuleSets*>;
  [[nodiscard]] std::shared_ptr<const RuleSets> sets_of(std::size_t rule, const Question& question,
                                                        const AskKeys& asks);

  const GlandIndex index_;
  std::mutex mutex_;  ///< of all below
  LimitStore limits_;
  /// By rule, and by what is said to it.
  std::array<std::unordered_map<std::string, std::shared_ptr<const RuleSets>>, k_most_rules> rules_;
  std::map<OpenKey, std::shared_ptr<const OpenGlands>> open_;
};

}  // namespace cutback::fit::detail

#include "core/fit/prepared_list.hpp"

namespace cutback::fit::detail {
namespace {

// What is remembered at most. With 10,000 glands a set of sets takes some kilobytes.
constexpr std::size_t k_rules = 4096;
constexpr std::size_t k_open = 4096;

}  // namespace

std::shared_ptr<const RuleSets> PreparedList::sets_of(std::size_t rule, const Question& question,
                                                      const AskKeys& asks) {
  const auto make = [&] {
    return std::make_shared<const RuleSets>(detail::rules()[rule], index_.kinds[rule], index_,
                                            question, limits_);
  };
  if (asks.empty()) return make();
  if (rules_.size() >= k_rules) rules_.clear();
  auto& known = rules_[{rule, asks[rule]}];
  if (!known) known = make();
  return known;
}

std::shared_ptr<const OpenGlands> PreparedList::open(const Question& question,
                                                     const AskKeys& asks) {
  const std::lock_guard lock(mutex_);
  std::vector<std::shared_ptr<const RuleSets>> sets;
  OpenKey key;
  for (std::size_t rule = 0; rule < detail::rules().size(); ++rule) {
    if (!is_of_gland(detail::rules()[rule])) continue;
    sets.push_back(sets_of(rule, question, asks));
    key.push_back(sets.back().get());
  }
  if (asks.empty()) return std::make_shared<const OpenGlands>(index_, std::move(sets));
  if (open_.size() >= k_open) open_.clear();
  auto& known = open_[key];
  if (!known) known = std::make_shared<const OpenGlands>(index_, std::move(sets));
  return known;
}

}  // namespace cutback::fit::detail

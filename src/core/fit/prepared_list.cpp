#include "core/fit/prepared_list.hpp"

namespace cutback::fit::detail {
namespace {

// What is remembered at most. With 10,000 glands a set of sets takes some kilobytes.
constexpr std::size_t k_answers = 1024;  // of each check
constexpr std::size_t k_open = 4096;

}  // namespace

std::shared_ptr<const RuleSets> PreparedList::sets_of(std::size_t rule, const Question& question,
                                                      const AskKeys& asks) {
  const Rule& row = detail::rules()[rule];
  const auto make = [&] {
    return std::make_shared<const RuleSets>(row, index_, answers_of(row, index_.kinds[rule], question),
                                            limits_);
  };
  if (asks.empty()) return make();
  auto& known = rules_[rule];
  if (known.size() >= k_answers) known.clear();
  auto& sets = known[asks[rule]];
  if (!sets) sets = make();
  return sets;
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

#include "core/fit/open_glands.hpp"

#include <utility>

namespace cutback::fit::detail {
namespace {

bool is_of_hole(const Rule& rule) {
  return rule.topic == Topic::entry || rule.topic == Topic::joint;
}

void intersect(GlandSet& set, const GlandSet& with) {
  for (std::size_t word = 0; word < set.size(); ++word) set[word] &= with[word];
}

}  // namespace

OpenGlands::OpenGlands(const GlandIndex& index, std::vector<std::shared_ptr<const RuleSets>> rules)
    : index_(index), rules_(std::move(rules)) {
  for (const Verdict level : k_levels) {
    GlandSet open = index.taken;
    for (const auto& rule : rules_) intersect(open, rule->at_least(level));
    open_[level_of(level)] = SparseSet(open);
  }
  GlandSet elsewhere = index.taken;
  for (const auto& rule : rules_) {
    if (!is_of_hole(rule->rule())) intersect(elsewhere, rule->at_least(Verdict::fits));
    if (rule->compares()) comparing_.push_back(rule.get());
  }
  elsewhere_ = SparseSet(elsewhere);
}

const std::vector<SparseSet>& OpenGlands::by_failures() const {
  std::call_once(counted_, [this] { by_failures_ = count_failures(); });
  return by_failures_;
}

std::vector<SparseSet> OpenGlands::count_failures() const {
  std::vector<GlandSet> sets;
  for (std::size_t place = 0; place < index_.places.size(); ++place) {
    if (index_.places[place] == nullptr) continue;
    std::size_t failures = 0;
    for (const auto& rule : rules_) {
      if (rule->rule().alone != nullptr) continue;
      if (!has(rule->at_least(Verdict::marginal_inside), place)) ++failures;
    }
    while (sets.size() <= failures) sets.emplace_back(index_.words(), 0);
    put(sets[failures], place);
  }
  std::vector<SparseSet> counted;
  for (const GlandSet& set : sets) counted.emplace_back(set);
  return counted;
}

}  // namespace cutback::fit::detail

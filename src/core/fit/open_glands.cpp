#include "core/fit/open_glands.hpp"

#include <utility>

namespace cutback::fit::detail {
namespace {

bool is_of_hole(const Rule& rule) {
  return rule.topic == Topic::entry || rule.topic == Topic::joint;
}

bool reads_adaptor(const Rule& rule) { return is_of_hole(rule) || rule.topic == Topic::earth; }

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
  for (const auto& rule : rules_) {
    if (rule->compares()) comparing_.push_back(rule.get());
  }
}

const ThroughAdaptor& OpenGlands::through_adaptor(const Question& question) const {
  std::call_once(asked_through_, [&] { through_ = put_adaptor(question); });
  return through_;
}

ThroughAdaptor OpenGlands::put_adaptor(const Question& question) const {
  ThroughAdaptor through;
  GlandSet open = index_.taken;
  for (const auto& rule : rules_) {
    if (!is_of_hole(rule->rule())) {
      intersect(open, rule->at_least(Verdict::fits));
      if (rule->compares()) through.whole.push_back(rule.get());
    }
    if (!reads_adaptor(rule->rule())) continue;
    const RuleSets& behind = rule->behind_adaptor(index_, question);
    // Lengths, bore and marking of an adaptor that nobody has yet are not known.
    intersect(open, behind.at_least(is_of_hole(rule->rule()) ? Verdict::not_known : Verdict::fits));
    if (behind.compares()) through.passing.push_back(&behind);
  }
  through.open = SparseSet(open);
  return through;
}

const std::vector<SparseSet>& OpenGlands::by_failures() const {
  std::call_once(counted_, [this] { by_failures_ = count_failures(); });
  return by_failures_;
}

std::vector<SparseSet> OpenGlands::count_failures() const {
  std::vector<SparseSet> counted;
  for (std::size_t word = 0; word < index_.words(); ++word) {
    const std::uint64_t taken = index_.taken[word];
    BitCount failures;
    for (const auto& rule : rules_) {
      if (rule->rule().alone != nullptr) continue;
      failures.add(taken & ~rule->at_least(Verdict::marginal_inside)[word]);
    }
    std::uint64_t left = taken;
    for (std::size_t number = 0; left != 0; ++number) {
      const std::uint64_t bits = left & failures.counted(number);
      left &= ~bits;
      if (bits == 0) continue;
      if (counted.size() <= number) counted.resize(number + 1);
      counted[number].add(static_cast<std::uint32_t>(word), bits);
    }
  }
  return counted;
}

}  // namespace cutback::fit::detail

#include "core/fit/rule_sets.hpp"

#include <algorithm>
#include <utility>

#include "cutback/entry/thread_check.hpp"
#include "cutback/error.hpp"

namespace cutback::fit::detail {

std::shared_ptr<const LimitSets> LimitStore::get(const Kinds& kinds, std::vector<double> limits,
                                                 Bound bound) {
  const std::lock_guard lock(mutex_);
  auto& kept = known_[{&kinds, bound, limits}];
  auto sets = kept.lock();
  if (!sets) kept = sets = std::make_shared<const LimitSets>(kinds, std::move(limits), bound);
  return sets;
}

std::vector<std::optional<Against>> answers_of(const Rule& rule, const Kinds& kinds,
                                               const Question& question) {
  std::vector<std::optional<Against>> answers;
  answers.reserve(kinds.count());
  for (const gland::Gland* member : kinds.members()) {
    answers.push_back(against(rule, Case(question, *member)));
  }
  return answers;
}

RuleSets::RuleSets(const Rule& rule, const GlandIndex& index,
                   std::vector<std::optional<Against>> answers, LimitStore& store)
    : rule_(rule), kinds_(index.kinds_of(rule)), store_(store), answers_(std::move(answers)) {
  settle();
  const bool compares = std::any_of(answers_.begin(), answers_.end(),
                                    [](const auto& answer) { return answer && answer->range; });
  if (compares) {
    take_limits();
  } else {
    answers_ = {};
  }
}

const RuleSets& RuleSets::behind_adaptor(const GlandIndex& index, const Question& question) const {
  std::call_once(asked_behind_, [&] {
    job::Job job = *question.job;
    job.entry.adaptors.resize(1);
    if (!job.entry.adaptor_material)
      job.entry.adaptor_material = "brass";  // one of metal is ordered
    Question with = question;
    with.job = &job;
    std::vector<std::optional<Against>> answers;
    for (const gland::Gland* member : kinds_.members()) {
      if (entry::suits(member->entry_thread, question.job->entry)) {
        answers.push_back(Against{.verdict = Verdict::no_fit});
        continue;
      }
      job.entry.adaptors.front() = {*question.job->entry.thread, member->entry_thread, {}};
      answers.push_back(against_behind_adaptor(rule_, Case(with, *member)));
    }
    behind_ = std::make_unique<const RuleSets>(rule_, index, std::move(answers), store_);
  });
  return *behind_;
}

std::optional<Finding> RuleSets::find(std::size_t place, const cable::Cable& cable) const {
  if (!has(asked_, place)) return std::nullopt;
  if (compares()) return finding_of(*of(place), cable);
  Finding found{.verdict = Verdict::no_fit, .margin_mm = std::nullopt};
  for (const Verdict level : k_levels) {
    if (has(at_least(level), place)) found.verdict = level;
  }
  return found;
}

void RuleSets::settle() {
  for (GlandSet& set : settled_) set.assign(kinds_.words(), 0);
  asked_.assign(kinds_.words(), 0);
  for (std::size_t kind = 0; kind < answers_.size(); ++kind) {
    const std::optional<Against>& answer = answers_[kind];
    if (answer) kinds_.put_all(asked_, kind);
    const Verdict verdict = answer ? answer->verdict : Verdict::fits;
    for (const Verdict level : k_levels) {
      if (verdict >= level) kinds_.put_all(settled_[level_of(level)], kind);
    }
  }
}

void RuleSets::take_limits() {
  std::vector<double> low(answers_.size(), k_no_limit);
  std::vector<double> high(answers_.size(), k_no_limit);
  bool first = true;
  for (std::size_t kind = 0; kind < answers_.size(); ++kind) {
    const std::optional<Against>& answer = answers_[kind];
    if (!answer || !answer->range) continue;
    if (!first && answer->diameter != diameter_) {
      throw InternalError("one check compares two diameters at one end");
    }
    first = false;
    diameter_ = answer->diameter;
    if (answer->range->low_mm) low[kind] = *answer->range->low_mm;
    if (answer->range->high_mm) high[kind] = -*answer->range->high_mm;
    if (!answer->otherwise) continue;
    for (const Verdict level : k_levels) {
      GlandSet& set = otherwise_[level_of(level)];
      set.resize(kinds_.words(), 0);
      if (*answer->otherwise >= level) kinds_.put_all(set, kind);
    }
  }
  low_ = store_.get(kinds_, std::move(low), Bound::lower);
  high_ = store_.get(kinds_, std::move(high), Bound::upper);
}

}  // namespace cutback::fit::detail

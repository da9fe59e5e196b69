#include "core/fit/rule_sets.hpp"

#include <algorithm>
#include <utility>

#include "cutback/entry/thread_check.hpp"
#include "cutback/error.hpp"

namespace cutback::fit::detail {

std::shared_ptr<const LimitSets> LimitStore::get(std::vector<double> limits, Bound bound) {
  auto& kept = known_[bound == Bound::lower ? 0 : 1][limits];
  auto sets = kept.lock();
  if (!sets) kept = sets = std::make_shared<const LimitSets>(std::move(limits), bound);
  return sets;
}

std::vector<std::optional<Against>> answers_of(const Rule& rule, const Kinds& kinds,
                                               const Question& question) {
  std::vector<std::optional<Against>> answers;
  answers.reserve(kinds.members.size());
  for (const gland::Gland* member : kinds.members) {
    answers.push_back(against(rule, Case(question, *member)));
  }
  return answers;
}

RuleSets::RuleSets(const Rule& rule, const GlandIndex& index,
                   std::vector<std::optional<Against>> answers, LimitStore& store)
    : rule_(rule), kinds_(index.kinds_of(rule)), answers_(std::move(answers)) {
  settle(index);
  const bool compares = std::any_of(answers_.begin(), answers_.end(),
                                    [](const auto& answer) { return answer && answer->range; });
  if (compares) take_limits(index, store);
}

const RuleSets& RuleSets::behind_adaptor(const GlandIndex& index, const Question& question) const {
  std::call_once(asked_behind_, [&] {
    job::Job job = *question.job;
    job.entry.adaptors.resize(1);
    if (!job.entry.adaptor_material) job.entry.adaptor_material = "brass";  // one of metal is ordered
    Question with = question;
    with.job = &job;
    std::vector<std::optional<Against>> answers;
    for (const gland::Gland* member : kinds_.members) {
      if (entry::suits(member->entry_thread, question.job->entry)) {
        answers.push_back(Against{.verdict = Verdict::no_fit});
        continue;
      }
      job.entry.adaptors.front() = {*question.job->entry.thread, member->entry_thread, {}};
      answers.push_back(against(rule_, Case(with, *member)));
    }
    LimitStore store;
    behind_ = std::make_unique<const RuleSets>(rule_, index, std::move(answers), store);
  });
  return *behind_;
}

void RuleSets::settle(const GlandIndex& index) {
  for (GlandSet& set : settled_) set.assign(index.words(), 0);
  for (std::size_t place = 0; place < index.places.size(); ++place) {
    if (index.places[place] == nullptr) continue;
    const std::optional<Against>& answer = of(place);
    const Verdict verdict = answer ? answer->verdict : Verdict::fits;
    for (const Verdict level : k_levels) {
      if (verdict >= level) put(settled_[level_of(level)], place);
    }
  }
}

void RuleSets::take_limits(const GlandIndex& index, LimitStore& store) {
  std::vector<double> low(index.places.size(), k_no_limit);
  std::vector<double> high(index.places.size(), k_no_limit);
  bool first = true;
  for (std::size_t place = 0; place < index.places.size(); ++place) {
    if (index.places[place] == nullptr) continue;
    const std::optional<Against>& answer = of(place);
    if (!answer || !answer->range) continue;
    if (!first && answer->diameter != diameter_) {
      throw InternalError("one check compares two diameters at one end");
    }
    first = false;
    diameter_ = answer->diameter;
    if (answer->range->low_mm) low[place] = *answer->range->low_mm;
    if (answer->range->high_mm) high[place] = -*answer->range->high_mm;
    if (!answer->otherwise) continue;
    for (const Verdict level : k_levels) {
      GlandSet& set = otherwise_[level_of(level)];
      set.resize(index.words(), 0);
      if (*answer->otherwise >= level) put(set, place);
    }
  }
  low_ = store.get(std::move(low), Bound::lower);
  high_ = store.get(std::move(high), Bound::upper);
}

}  // namespace cutback::fit::detail

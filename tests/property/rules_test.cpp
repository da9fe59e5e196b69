// What the table of checks promises: a check reads what is marked as read by it, and nothing else;
// and what it finds without words is what it says.
#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include "core/fit/rules.hpp"
#include "cutback/job/input.hpp"
#include "support/any.hpp"

using namespace cutback;
using fit::detail::Against;
using fit::detail::Case;
using fit::detail::Rule;

namespace {

bool same(const std::optional<Against>& a, const std::optional<Against>& b) {
  if (!a || !b) return a.has_value() == b.has_value();
  if (a->verdict != b->verdict || a->range.has_value() != b->range.has_value()) return false;
  if (!a->range) return true;
  return a->range->low_mm == b->range->low_mm && a->range->high_mm == b->range->high_mm &&
         a->diameter == b->diameter && a->otherwise == b->otherwise;
}

/// The job and question of an input; nothing where it contradicts itself.
struct Asked {
  explicit Asked(const job::JobInput& in)
      : job(test::resolved(in)), question(fit::ask(job, test::standards())) {}
  job::Job job;
  fit::Question question;
};
std::unique_ptr<Asked> asked(const job::JobInput& in) {
  try {
    return std::make_unique<Asked>(in);
  } catch (const InputError&) {
    return nullptr;
  }
}

std::string name_of(const Rule& rule) { return std::string(to_string(rule.name)); }

}  // namespace

TEST_CASE("rules: every column and every field is marked", "[property][fit]") {
  for (const gland::Column& column : gland::columns()) {
    INFO(column.name);
    CHECK(column.checks.has_value());
  }
  for (const job::Field& field : job::fields()) {
    INFO(field.key);
    CHECK(field.feeds.into != job::Feeds::Into::unmarked);
  }
}

TEST_CASE("rules: a check reads no column that is not marked so", "[property][fit]") {
  int changed = 0;
  CHECK(rc::check("one column changed or taken away", [&] {
    const auto end = asked(test::any_end(3));
    const gland::Gland before = test::any_gland(5);
    for (const gland::Column& column : gland::columns()) {
      gland::Gland after = before;
      if (*rc::gen::inRange(0, 3) == 0 && !column.required) {
        gland::take_away(after, column);
      } else {
        test::put_any(after, column);
      }
      for (const Rule& rule : fit::detail::rules()) {
        if (!is_of_gland(rule)) continue;
        const bool alike = same(against(rule, Case(end->question, before)),
                                against(rule, Case(end->question, after)));
        if (!alike) ++changed;
        if (!alike && !column.checks->has(rule.name)) {
          RC_FAIL(name_of(rule) + " reads the column " + std::string(column.name));
        }
      }
    }
  }));
  CHECK(changed > 100);
}

TEST_CASE("rules: a check reads no field that is not marked so", "[property][fit]") {
  int changed = 0;
  CHECK(rc::check("one field changed or taken away", [&] {
    const job::JobInput in = test::any_end(3);
    const auto before = asked(in);
    const gland::Gland gland = test::any_gland(5);
    for (const job::Field& field : job::fields()) {
      job::JobInput other = in;
      if (*rc::gen::inRange(0, 3) == 0) {
        job::take_away(other, field);
      } else {
        test::set(other, field, test::any_text(field));
      }
      const auto after = asked(other);
      if (after == nullptr) continue;
      for (const Rule& rule : fit::detail::rules()) {
        if (!is_of_gland(rule)) continue;
        const bool alike = same(against(rule, Case(before->question, gland)),
                                against(rule, Case(after->question, gland)));
        if (!alike) ++changed;
        if (!alike && !field.feeds.checks.has(rule.name)) {
          RC_FAIL(name_of(rule) + " reads the field " + std::string(field.key));
        }
      }
    }
  }));
  CHECK(changed > 100);
}

TEST_CASE("rules: what a check finds without words is what it says", "[property][fit]") {
  CHECK(rc::check("verdict and margin", [] {
    const auto end = asked(test::any_end(3));
    const gland::Gland gland = test::any_gland(5);
    const Case at(end->question, gland);
    for (const Rule& rule : fit::detail::rules()) {
      fit::GlandFit unused;
      const auto said = fit::detail::say(rule, at, unused);
      const auto found = find(rule, at);
      RC_TAG(name_of(rule));
      RC_ASSERT(said.has_value() == found.has_value());
      if (!said) continue;
      RC_ASSERT(said->name == rule.name);
      RC_ASSERT(said->verdict == found->verdict);
      RC_ASSERT(said->counts_for_margin == found->counts_for_margin);
      if (found->counts_for_margin) RC_ASSERT(said->margin_mm == found->margin_mm);
      RC_ASSERT(!said->says.empty());
      RC_ASSERT(!said->source.empty());
    }
  }));
}

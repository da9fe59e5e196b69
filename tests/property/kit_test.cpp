#include "cutback/schedule/kit.hpp"

#include <rapidcheck.h>
#include <algorithm>
#include <bit>
#include <catch2/catch.hpp>
#include <limits>
#include <random>

#include "support/solvers.hpp"

using namespace cutback;
using schedule::KitBy;
using schedule::Wanted;

namespace {

/// Some parts of so many. Sets of any size mostly give way to reduction alone; pairs and triples of
/// parts at one price leave something to search.
schedule::PartSet any_set(std::uint32_t parts, int sparse) {
  schedule::PartSet set;
  if (sparse == 0) {
    for (int i = *rc::gen::inRange(2, 4); i > 0; --i) set.push_back(*rc::gen::inRange(0U, parts));
    std::sort(set.begin(), set.end());
    set.erase(std::unique(set.begin(), set.end()), set.end());
    return set;
  }
  for (std::uint32_t part = 0; part < parts; ++part) {
    if (*rc::gen::inRange(0, sparse) == 0) set.push_back(part);
  }
  return set;
}

Wanted any_wanted() {
  Wanted wanted;
  const int sparse = *rc::gen::element(0, 0, 2, 4);
  const auto parts = *rc::gen::inRange(sparse == 0 ? 6U : 1U, 10U);
  const int dearest = *rc::gen::inRange(1, 5);
  for (std::uint32_t i = 0; i < parts; ++i) {
    wanted.parts.push_back(
        test::part("P" + std::to_string(i), *rc::gen::inRange(0, dearest) * 100));
  }
  schedule::Grouper grouper;
  const int groups = *rc::gen::inRange(0, 20);
  for (int i = 0; i < groups; ++i) grouper.add(any_set(parts, sparse), *rc::gen::inRange(1, 9));
  wanted.groups = grouper.groups();
  return wanted;
}

/// The ends that the parts of `mask` serve.
std::int64_t served_by(const Wanted& wanted, unsigned mask) {
  std::int64_t ends = 0;
  for (const auto& group : wanted.groups) {
    const bool served = std::any_of(group.parts.begin(), group.parts.end(),
                                    [&](std::uint32_t part) { return (mask >> part & 1U) != 0; });
    if (served) ends += group.ends;
  }
  return ends;
}

std::int64_t cost_of(const Wanted& wanted, unsigned mask) {
  std::int64_t cost = 0;
  for (std::size_t i = 0; i < wanted.parts.size(); ++i) {
    if ((mask >> i & 1U) != 0) cost += wanted.parts[i].cost_units;
  }
  return cost;
}

using Measures = std::pair<std::int64_t, std::int64_t>;

Measures measures(KitBy by, std::int64_t parts, std::int64_t cost) {
  return by == KitBy::parts ? Measures{parts, cost} : Measures{cost, parts};
}

/// Every set of parts looked at.
Measures least(const Wanted& wanted, KitBy by) {
  const unsigned all = (1U << wanted.parts.size()) - 1;
  const std::int64_t want = served_by(wanted, all);
  Measures best{std::numeric_limits<std::int64_t>::max(), 0};
  for (unsigned mask = 0; mask <= all; ++mask) {
    if (served_by(wanted, mask) < want) continue;
    best = std::min(best, measures(by, std::popcount(mask), cost_of(wanted, mask)));
  }
  return best;
}

std::int64_t most_with(const Wanted& wanted, int parts) {
  std::int64_t most = 0;
  for (unsigned mask = 0; mask < (1U << wanted.parts.size()); ++mask) {
    if (std::popcount(mask) <= parts) most = std::max(most, served_by(wanted, mask));
  }
  return most;
}

unsigned mask_of(const std::vector<std::size_t>& parts) {
  unsigned mask = 0;
  for (const std::size_t part : parts) mask |= 1U << part;
  return mask;
}

unsigned mask_of(const schedule::Kit& kit) {
  unsigned mask = 0;
  for (const auto& part : kit.parts) mask |= 1U << part.part;
  return mask;
}

}  // namespace

TEST_CASE("choose_kit: the same as every set of parts tried", "[property][kit]") {
  int searched = 0;
  CHECK(rc::check("exhaustive", [&] {
    const Wanted wanted = any_wanted();
    const KitBy by = *rc::gen::element(KitBy::parts, KitBy::price);
    const schedule::Kit kit = schedule::choose_kit(wanted, by, test::solved);
    const unsigned mask = mask_of(kit);
    const Measures got =
        measures(by, static_cast<std::int64_t>(kit.parts.size()), cost_of(wanted, mask));
    RC_ASSERT(got == least(wanted, by));
    RC_ASSERT(kit.cost_units == cost_of(wanted, mask));
    RC_ASSERT(kit.proven);
    RC_ASSERT(kit.ties_broken);
    RC_ASSERT(kit.bound == got.first);
    RC_ASSERT(kit.served == served_by(wanted, ~0U));
    RC_ASSERT(served_by(wanted, mask) == kit.served);
    for (const schedule::KitPart& part : kit.parts) {
      RC_ASSERT(part.fits == served_by(wanted, 1U << part.part));
      RC_ASSERT(part.alone == kit.served - served_by(wanted, mask & ~(1U << part.part)));
    }
    if (kit.rows > 0) ++searched;
  }));
  CHECK(searched > 2);
}

TEST_CASE("choose_kit: each step of the curve is the most that so many parts serve",
          "[property][kit]") {
  CHECK(rc::check("curve", [] {
    const Wanted wanted = any_wanted();
    const KitBy by = *rc::gen::element(KitBy::parts, KitBy::price);
    const schedule::Kit kit = schedule::choose_kit(wanted, by, test::solved);
    int parts = 0;
    for (const schedule::KitStep& step : kit.curve) {
      ++parts;
      RC_ASSERT(step.exact);
      RC_ASSERT(step.ends == most_with(wanted, parts));
      RC_ASSERT(step.parts.size() <= static_cast<std::size_t>(parts));
      RC_ASSERT(served_by(wanted, mask_of(step.parts)) == step.ends);
    }
    RC_ASSERT(kit.curve.empty() == (kit.served == 0));
    if (!kit.curve.empty()) RC_ASSERT(kit.curve.back().ends == kit.served);
  }));
}

TEST_CASE("choose_kit: without time a kit that serves all, and a bound that holds",
          "[property][kit]") {
  CHECK(rc::check("greedy", [] {
    const Wanted wanted = any_wanted();
    const KitBy by = *rc::gen::element(KitBy::parts, KitBy::price);
    const schedule::Kit kit = schedule::choose_kit(wanted, by, test::no_time);
    RC_ASSERT(served_by(wanted, mask_of(kit)) == served_by(wanted, ~0U));
    const Measures best = least(wanted, by);
    RC_ASSERT(kit.bound <= best.first);
    const std::int64_t got =
        measures(by, static_cast<std::int64_t>(kit.parts.size()), kit.cost_units).first;
    RC_ASSERT(kit.proven == (kit.bound == got));
    int parts = 0;
    for (const schedule::KitStep& step : kit.curve) {
      ++parts;
      const std::int64_t most = most_with(wanted, parts);
      RC_ASSERT(step.ends <= most);
      if (step.exact) RC_ASSERT(step.ends == most);
    }
    if (!kit.curve.empty()) RC_ASSERT(kit.curve.back().ends == kit.served);
  }));
}

TEST_CASE("choose_kit: a part the fewer never makes the kit smaller", "[property][kit]") {
  CHECK(rc::check("monotone", [] {
    const Wanted wanted = any_wanted();
    const std::size_t gone = *rc::gen::inRange<std::size_t>(0, wanted.parts.size());
    Wanted fewer{.parts = wanted.parts, .groups = {}};
    schedule::Grouper grouper;
    for (const auto& group : wanted.groups) {
      schedule::PartSet set = group.parts;
      std::erase(set, static_cast<std::uint32_t>(gone));
      if (set.empty() && !group.parts.empty()) return;  // not the same ends any more
      grouper.add(set, group.ends);
    }
    fewer.groups = grouper.groups();
    for (const KitBy by : {KitBy::parts, KitBy::price}) {
      const schedule::Kit before = schedule::choose_kit(wanted, by, test::solved);
      const schedule::Kit after = schedule::choose_kit(fewer, by, test::solved);
      if (by == KitBy::parts) RC_ASSERT(after.parts.size() >= before.parts.size());
      if (by == KitBy::price) RC_ASSERT(after.cost_units >= before.cost_units);
    }
  }));
}

TEST_CASE("choose_kit: the order of glands and ends does not matter", "[property][kit]") {
  CHECK(rc::check("order", [] {
    const Wanted wanted = any_wanted();
    Wanted turned = wanted;  // both from back to front
    const std::size_t last = wanted.parts.size() - 1;
    std::reverse(turned.parts.begin(), turned.parts.end());
    std::reverse(turned.groups.begin(), turned.groups.end());
    for (auto& group : turned.groups) {
      for (auto& part : group.parts) part = static_cast<std::uint32_t>(last - part);
      std::sort(group.parts.begin(), group.parts.end());
    }
    const KitBy by = *rc::gen::element(KitBy::parts, KitBy::price);
    RC_ASSERT(test::codes(wanted, schedule::choose_kit(wanted, by, test::solved)) ==
              test::codes(turned, schedule::choose_kit(turned, by, test::solved)));
  }));
}

TEST_CASE("choose_kit: prices of three and four decimals, every set tried", "[property][kit]") {
  std::mt19937 random(20261129);  // the same cases each time
  const auto below = [&](unsigned most) { return static_cast<std::uint32_t>(random() % most); };
  for (const int decimals : {3, 4}) {
    for (int i = 0; i < 200; ++i) {
      Wanted wanted;
      wanted.decimals = decimals;
      const std::uint32_t parts = 6 + below(4);
      for (std::uint32_t part = 0; part < parts; ++part) {
        // Alike to the cent: 1.230 to 1.249, and the same with one decimal more.
        const std::uint32_t cent = decimals == 3 ? 10 : 100;
        wanted.parts.push_back(test::part("P" + std::to_string(part),
                                          123 * cent + below(2 * cent)));
      }
      schedule::Grouper grouper;
      for (std::uint32_t group = 0; group < 8 + below(12); ++group) {
        schedule::PartSet set;
        for (std::uint32_t j = 0; j < 2 + below(2); ++j) set.push_back(below(parts));
        std::sort(set.begin(), set.end());
        set.erase(std::unique(set.begin(), set.end()), set.end());
        grouper.add(set, 1 + below(9));
      }
      wanted.groups = grouper.groups();
      for (const KitBy by : {KitBy::parts, KitBy::price}) {
        const schedule::Kit kit = schedule::choose_kit(wanted, by, test::solved);
        REQUIRE(kit.proven);
        REQUIRE(kit.cost_units == cost_of(wanted, mask_of(kit)));
        REQUIRE(measures(by, std::popcount(mask_of(kit)), kit.cost_units) == least(wanted, by));
      }
    }
  }
}

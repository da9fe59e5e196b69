#include "cutback/schedule/share.hpp"

#include <rapidcheck.h>
#include <algorithm>
#include <catch2/catch.hpp>
#include <map>
#include <numeric>
#include <random>

#include "cutback/number.hpp"
#include "support/build_job.hpp"
#include "support/solvers.hpp"

using namespace cutback;
using schedule::Wanted;

namespace {

/// Up to four parts and four groups of up to three ends, two groups never alike.
Wanted any_wanted() {
  Wanted wanted;
  const std::size_t parts = *rc::gen::inRange<std::size_t>(1, 5);
  for (std::size_t i = 0; i < parts; ++i) {
    wanted.parts.push_back(
        test::part("P" + std::to_string(i), *rc::gen::inRange(0, 6), *rc::gen::inRange(0, 4)));
    if (*rc::gen::inRange(0, 5) == 0) wanted.parts.back().stock.reset();
  }
  schedule::Grouper grouper;
  const int groups = *rc::gen::inRange(0, 5);
  for (int i = 0; i < groups; ++i) {
    schedule::PartSet set;
    for (std::uint32_t part = 0; part < parts; ++part) {
      if (*rc::gen::inRange(0, 2) == 0) set.push_back(part);
    }
    grouper.add(set, *rc::gen::inRange(1, 4));
  }
  wanted.groups = grouper.groups();
  return wanted;
}

struct Best {
  std::int64_t served = 0;
  std::int64_t cost = 0;
};

bool better(const Best& a, const Best& b) {
  return a.served != b.served ? a.served > b.served : a.cost < b.cost;
}

/// Every way to supply the ends one by one, looked at once for each state of the stock.
class Exhaustive {
 public:
  explicit Exhaustive(const Wanted& wanted) : wanted_(wanted) {
    for (std::size_t group = 0; group < wanted.groups.size(); ++group) {
      for (std::int64_t i = 0; i < wanted.groups[group].ends; ++i) ends_.push_back(group);
    }
  }
  Best best() {
    std::vector<std::int64_t> stock;
    for (const auto& part : wanted_.parts) stock.push_back(part.stock.value_or(1000));
    return from(0, stock);
  }

 private:
  Best from(std::size_t end, std::vector<std::int64_t>& stock) {
    if (end == ends_.size()) return {};
    const auto key = std::make_pair(end, stock);
    const auto known = known_.find(key);
    if (known != known_.end()) return known->second;
    Best best = from(end + 1, stock);  // it goes without
    for (const std::size_t part : wanted_.groups[ends_[end]].parts) {
      if (stock[part] == 0) continue;
      --stock[part];
      Best with = from(end + 1, stock);
      ++stock[part];
      ++with.served;
      with.cost += wanted_.parts[part].cost_units;
      if (better(with, best)) best = with;
    }
    known_.emplace(key, best);
    return best;
  }

  const Wanted& wanted_;
  std::vector<std::size_t> ends_;
  std::map<std::pair<std::size_t, std::vector<std::int64_t>>, Best> known_;
};

}  // namespace

TEST_CASE("share_out: the same as every way tried, and proven by its dual", "[property][share]") {
  int short_of = 0;
  CHECK(rc::check("exhaustive", [&] {
    const Wanted wanted = any_wanted();
    const schedule::Share share = schedule::share_out(wanted, solve::cheapest_plan);
    const Best best = Exhaustive(wanted).best();
    RC_ASSERT(share.served == best.served);
    RC_ASSERT(share.cost_units == best.cost);
    RC_ASSERT(share.proven);
    if (share.out_of_stock > 0) ++short_of;
    std::vector<std::int64_t> used(wanted.parts.size(), 0);
    for (std::size_t group = 0; group < wanted.groups.size(); ++group) {
      const auto& set = wanted.groups[group].parts;
      std::int64_t ends = 0;
      for (const schedule::Handed& given : share.groups[group]) {
        RC_ASSERT(
            std::binary_search(set.begin(), set.end(), static_cast<std::uint32_t>(given.part)));
        RC_ASSERT(given.ends > 0);
        used[given.part] += given.ends;
        ends += given.ends;
      }
      RC_ASSERT(ends <= wanted.groups[group].ends);
      // An end goes without only where every part that fits has run out.
      if (ends == wanted.groups[group].ends) continue;
      for (const std::size_t part : set) {
        RC_ASSERT(wanted.parts[part].stock.has_value());
        RC_ASSERT(share.used[part] == *wanted.parts[part].stock);
      }
    }
    RC_ASSERT(used == share.used);
    for (std::size_t part = 0; part < used.size(); ++part) {
      RC_ASSERT(used[part] <= wanted.parts[part].stock.value_or(1000));
    }
  }));
  CHECK(short_of > 5);
}

TEST_CASE("share_out: more stock never serves fewer ends", "[property][share]") {
  CHECK(rc::check("monotone", [] {
    Wanted wanted = any_wanted();
    const schedule::Share before = schedule::share_out(wanted, solve::cheapest_plan);
    const std::size_t more = *rc::gen::inRange<std::size_t>(0, wanted.parts.size());
    if (wanted.parts[more].stock) *wanted.parts[more].stock += 1;
    const schedule::Share after = schedule::share_out(wanted, solve::cheapest_plan);
    RC_ASSERT(after.served >= before.served);
    RC_ASSERT(after.served <= before.served + 1);
    if (after.served == before.served) RC_ASSERT(after.cost_units <= before.cost_units);
  }));
}

TEST_CASE("check_plan: a dearer plan is not proven", "[property][share]") {
  int looked_at = 0;
  CHECK(rc::check("worse", [&] {
    const Wanted wanted = any_wanted();
    std::vector<std::size_t> rows;
    const schedule::Transport transport = schedule::transport_of(wanted, rows);
    if (rows.empty()) return;
    schedule::TransportPlan plan = solve::cheapest_plan(transport);
    for (std::size_t i = 0; i < plan.flow.size(); ++i) {
      if (plan.flow[i] == 0) continue;
      --plan.flow[i];  // an end goes without for nothing
      const auto check = schedule::check_plan(transport, plan);
      RC_ASSERT(check.feasible);
      RC_ASSERT(!check.proven());
      ++plan.flow[i];
      ++looked_at;
    }
    plan.flow[0] += transport.ends[transport.arcs[0].group] + 1;
    RC_ASSERT(!schedule::check_plan(transport, plan).feasible);
  }));
  CHECK(looked_at > 50);
}

TEST_CASE("share_out: prices of three and four decimals, every way tried", "[property][share]") {
  std::mt19937 random(20261128);  // the same cases each time
  const auto below = [&](int most) {
    return static_cast<int>(random() % static_cast<unsigned>(most));
  };
  for (const int decimals : {3, 4}) {
    const double unit = decimals == 3 ? 0.001 : 0.0001;
    int told_apart = 0;
    for (int i = 0; i < 200; ++i) {
      // Prices that are alike to the cent.
      std::vector<gland::Gland> glands;
      for (int part = 0; part < 4; ++part) {
        gland::Gland& gland = glands.emplace_back(test::small_gland());
        gland.part = "P" + std::to_string(part);
        gland.price = parse_number(fixed(1.23 + unit * below(decimals == 3 ? 20 : 200), decimals));
        gland.stock = below(4);
      }
      REQUIRE(schedule::decimals_of(glands) <= decimals);
      Wanted wanted{.parts = schedule::parts_of(glands, decimals), .decimals = decimals};
      schedule::Grouper grouper;
      for (int group = 0; group < 4; ++group) {
        schedule::PartSet set;
        for (std::uint32_t part = 0; part < 4; ++part) {
          if (below(2) == 0) set.push_back(part);
        }
        grouper.add(set, 1 + below(3));
      }
      wanted.groups = grouper.groups();
      const schedule::Share share = schedule::share_out(wanted, solve::cheapest_plan);
      const Best best = Exhaustive(wanted).best();
      REQUIRE(share.proven);
      REQUIRE(share.served == best.served);
      REQUIRE(share.cost_units == best.cost);
      // What whole cents would have taken for as good.
      for (const auto& part : wanted.parts) {
        if (part.cost_units % (decimals == 3 ? 10 : 100) != 0) {
          ++told_apart;
          break;
        }
      }
    }
    CHECK(told_apart > 100);
  }
}

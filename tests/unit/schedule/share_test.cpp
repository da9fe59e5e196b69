#include "cutback/schedule/share.hpp"

#include <catch2/catch.hpp>

#include "cutback/error.hpp"
#include "support/build_job.hpp"
#include "support/solvers.hpp"

using namespace cutback;
using schedule::share_out;
using schedule::Wanted;

TEST_CASE("share_out: the part that only one group can use is kept for it", "[unit][schedule]") {
  // CHEAP fits both groups, DEAR only the first: by price alone the second would go without.
  const Wanted wanted{.parts = {test::part("CHEAP", 100, 2), test::part("DEAR", 900, 2)},
                      .groups = {{.ends = 2, .parts = {0, 1}}, {.ends = 2, .parts = {0}}}};
  const schedule::Share share = share_out(wanted, solve::cheapest_plan);
  CHECK(share.served == 4);
  CHECK(share.out_of_stock == 0);
  CHECK(share.cost_units == 2 * 100 + 2 * 900);
  REQUIRE(share.groups[0].size() == 1);
  CHECK(share.groups[0][0].part == 1);
  CHECK(share.proven);
}

TEST_CASE("share_out: no stock, nothing that fits, no group", "[unit][schedule]") {
  Wanted wanted{.parts = {test::part("NONE", 100, 0)}, .groups = {{.ends = 3, .parts = {0}}}};
  schedule::Share share = share_out(wanted, solve::cheapest_plan);
  CHECK(share.served == 0);
  CHECK(share.out_of_stock == 3);
  CHECK(share.proven);
  wanted.groups[0].parts.clear();
  share = share_out(wanted, solve::cheapest_plan);
  CHECK(share.out_of_stock == 0);
  CHECK(share.proven);
  wanted.groups.clear();
  CHECK(share_out(wanted, solve::cheapest_plan).proven);
}

TEST_CASE("share_out: a group gets the cheapest first, and no limit is no limit",
          "[unit][schedule]") {
  const Wanted wanted{
      .parts = {test::part("B", 300), test::part("A", 200, 2), test::part("C", 400, 9)},
      .groups = {{.ends = 5, .parts = {0, 1, 2}}}};
  const schedule::Share share = share_out(wanted, solve::cheapest_plan);
  REQUIRE(share.groups[0].size() == 2);
  CHECK(share.groups[0][0].part == 1);
  CHECK(share.groups[0][0].ends == 2);
  CHECK(share.groups[0][1].part == 0);
  CHECK(share.groups[0][1].ends == 3);
  CHECK(share.used == std::vector<std::int64_t>{3, 2, 0});
}

TEST_CASE("share_out: a plan that gives out too much is a bug, one too dear is not proven",
          "[unit][schedule]") {
  const Wanted wanted{.parts = {test::part("A", 100, 1)}, .groups = {{.ends = 2, .parts = {0}}}};
  const auto all = [](const schedule::Transport&) {
    return schedule::TransportPlan{.flow = {2}, .stock_value = {0}};
  };
  CHECK_THROWS_AS(share_out(wanted, all), InternalError);
  const auto none = [](const schedule::Transport&) {
    return schedule::TransportPlan{.flow = {0}, .stock_value = {0}};
  };
  CHECK_FALSE(share_out(wanted, none).proven);
}

TEST_CASE("share_out: figures that leave 64 bits are refused", "[unit][schedule]") {
  const std::int64_t dear = 1000000000;  // the dearest that a gland list may hold
  Wanted wanted{.parts = std::vector<schedule::Part>(1000, test::part("A", dear, 1)),
                .groups = {{.ends = 1000000, .parts = {0}}}};
  CHECK(share_out(wanted, solve::cheapest_plan).served == 1);
  wanted.groups[0].ends = 10000000;
  CHECK_THROWS_AS(share_out(wanted, solve::cheapest_plan), InputError);
}

TEST_CASE("parts_of: exact prices, and the dearest where no price is stated", "[unit][schedule]") {
  std::vector<gland::Gland> glands(3, test::small_gland());
  glands[0].price = 11.196;
  glands[1].price.reset();
  glands[1].stock.reset();
  glands[2].price = 0.29;
  REQUIRE(schedule::decimals_of(glands) == 3);
  const auto parts = schedule::parts_of(glands, 3);
  CHECK(parts[0].cost_units == 11196);
  CHECK(parts[1].cost_units == 11196);
  CHECK_FALSE(parts[1].priced);
  CHECK_FALSE(parts[1].stock.has_value());
  CHECK(parts[2].cost_units == 290);
  CHECK(parts[2].stock == 4);
  glands[2].price = 0.1234567;
  CHECK_THROWS_AS(schedule::decimals_of(glands), InputError);
}

#include "cutback/schedule/tally.hpp"

#include <catch2/catch.hpp>

#include "support/build_job.hpp"

using namespace cutback;
using schedule::Decision;
using schedule::Tally;

namespace {

Decision with_gland(const gland::Gland& gland, bool proven) {
  Decision decision;
  decision.gland = &gland;
  decision.verdict = proven ? Verdict::fits : Verdict::marginal_inside;
  decision.proven = proven;
  decision.group = proven ? "" : "outer-seal marginal-inside";
  decision.accessories =
      std::make_shared<const schedule::Accessories>(schedule::Accessories{{"locknut", "M20"}});
  return decision;
}

Decision without_gland() {
  Decision decision;
  decision.faults.push_back({.code = ErrorCode::missing, .what = "the tag is blank"});
  return decision;
}

}  // namespace

TEST_CASE("takeoff: spares are rounded up and stock is taken off", "[unit][schedule]") {
  const std::vector<gland::Gland> glands{test::small_gland()};  // price 10, stock 4
  Tally tally;
  for (int i = 0; i < 21; ++i) tally.add(with_gland(glands.front(), true));
  tally.add(with_gland(glands.front(), false));
  const auto lines = schedule::takeoff(tally, glands, 5.0);
  REQUIRE(lines.size() == 2);
  CHECK(lines[0].part == "TEST-20");
  CHECK(lines[0].ends == 21);
  CHECK(lines[0].quantity == 23);  // 21 + 1.05 up
  CHECK(lines[0].not_proven == 1);
  CHECK(lines[0].stock == 4);
  CHECK(lines[0].to_order == 19);
  CHECK(lines[0].total == Approx(190.0));
  CHECK(lines[1].part == "locknut");
  CHECK(lines[1].quantity == 23);
  CHECK_FALSE(lines[1].total);
}

TEST_CASE("takeoff: a spare that comes out whole is not rounded up further", "[unit][schedule]") {
  const std::vector<gland::Gland> glands{test::small_gland()};
  Tally tally;
  for (int i = 0; i < 20; ++i) tally.add(with_gland(glands.front(), true));
  CHECK(schedule::takeoff(tally, glands, 5.0)[0].quantity == 21);
  CHECK(schedule::takeoff(tally, glands, 0.0)[0].quantity == 20);
}

TEST_CASE("Tally: parts add up to the whole", "[unit][schedule]") {
  const gland::Gland gland = test::small_gland();
  Tally one;
  one.add(with_gland(gland, true));
  Tally two;
  two.add(with_gland(gland, false));
  two.add(without_gland());
  one.add(std::move(two));
  CHECK(one.ends == 3);
  CHECK(one.unusable == 1);
  CHECK(one.exceptions == 2);
  CHECK(one.glands.at(&gland).proven == 1);
  CHECK(one.glands.at(&gland).not_proven == 1);
  CHECK(one.groups.at("unusable: the tag is blank") == 1);
}

TEST_CASE("grouped: the largest group first and in the schedule's order within",
          "[unit][schedule]") {
  Tally tally;
  tally.groups = {{"a", 1}, {"b", 2}};
  tally.list = {{.line = 2, .group = "b"}, {.line = 3, .group = "a"}, {.line = 4, .group = "b"}};
  const auto list = schedule::grouped(tally);
  REQUIRE(list.size() == 3);
  CHECK(list[0]->line == 2);
  CHECK(list[1]->line == 4);
  CHECK(list[2]->line == 3);
}

TEST_CASE("Tally: a row of several cables counts as often", "[unit][schedule]") {
  const gland::Gland gland = test::small_gland();
  schedule::Decision decision;
  decision.verdict = Verdict::fits;
  decision.gland = &gland;
  decision.proven = true;
  schedule::Tally tally;
  tally.add(decision, 3);
  tally.add(decision);
  CHECK(tally.ends == 4);
  CHECK(tally.by_verdict[static_cast<std::size_t>(Verdict::fits)] == 4);
  const std::vector<gland::Gland> list{gland};
  CHECK(tally.glands.at(&gland).proven == 4);
}

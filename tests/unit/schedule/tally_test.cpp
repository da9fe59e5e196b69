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
  const auto takeoff = schedule::takeoff(tally, glands, {.spare_percent = 5.0});
  const auto& lines = takeoff.lines;
  REQUIRE(lines.size() == 2);
  CHECK(lines[0].part == "TEST-20");
  CHECK(lines[0].ends == 21);
  CHECK(lines[0].quantity == 23);  // 21 + 1.05 up
  CHECK(lines[0].not_proven == 1);
  CHECK(lines[0].stock == 4);
  CHECK(lines[0].to_order == 19);
  CHECK(lines[0].total == 19000);  // in units of two decimals
  CHECK(lines[0].from_stock == 4);
  CHECK(lines[0].provisional == 1);  // 22 and 5 % are 24 in all
  CHECK(lines[0].provisional_total == 1000);
  CHECK(takeoff.total == 19000);
  CHECK(lines[1].part == "locknut");
  CHECK(lines[1].quantity == 23);
  CHECK_FALSE(lines[1].total);
}

TEST_CASE("takeoff: a spare that comes out whole is not rounded up further", "[unit][schedule]") {
  const std::vector<gland::Gland> glands{test::small_gland()};
  Tally tally;
  for (int i = 0; i < 20; ++i) tally.add(with_gland(glands.front(), true));
  CHECK(schedule::takeoff(tally, glands, {.spare_percent = 5.0}).lines[0].quantity == 21);
  CHECK(schedule::takeoff(tally, glands, {}).lines[0].quantity == 20);
}

TEST_CASE("takeoff: packs, least orders and priced accessories", "[unit][schedule]") {
  std::vector<gland::Gland> glands{test::small_gland()};  // price 10, stock 4
  glands.front().price = 1.2365;
  Tally tally;
  for (int i = 0; i < 21; ++i) tally.add(with_gland(glands.front(), true));
  for (int i = 0; i < 8; ++i) tally.add(with_gland(glands.front(), false));
  schedule::TakeoffTerms terms;
  terms.currency = "KWD";
  terms.accessories = {{.name = "TEST-20",
                        .thread = "",
                        .part = "",
                        .price = {},
                        .stock = {},
                        .pack = 10,
                        .min_order = {}},
                       {.name = "locknut",
                        .thread = "",
                        .part = "",
                        .price = 9.0,
                        .stock = {},
                        .pack = {},
                        .min_order = {}},
                       {.name = "locknut",
                        .thread = "M20",
                        .part = "LN",
                        .price = 0.125,
                        .stock = 20,
                        .pack = {},
                        .min_order = 6},
                       {.name = "shroud",
                        .thread = "",
                        .part = "",
                        .price = 0.5,
                        .stock = {},
                        .pack = {},
                        .min_order = {}}};
  const schedule::Takeoff takeoff = schedule::takeoff(tally, glands, terms);
  CHECK(takeoff.decimals == 4);
  REQUIRE(takeoff.lines.size() == 3);
  const auto& gland = takeoff.lines[0];
  CHECK(gland.from_stock == 4);
  CHECK(gland.to_order == 20);     // 17 in packs of 10
  CHECK(gland.provisional == 10);  // 29 less 4 are 25, in packs 30
  CHECK(gland.total == 247300);
  CHECK(gland.provisional_total == 123650);
  const auto& locknut = takeoff.lines[1];
  CHECK(locknut.part == "locknut");
  CHECK(locknut.description == "M20, LN");
  CHECK(schedule::name_of(locknut) == "locknut M20, LN");
  CHECK(schedule::name_of(gland) == "TEST-20");
  CHECK(locknut.to_order == 6);  // 1 is needed, 6 is the least
  CHECK(locknut.provisional == 3);
  CHECK(locknut.total == 7500);
  const auto& shroud = takeoff.lines[2];
  CHECK(shroud.part == "shroud");
  CHECK(shroud.to_order == 21);
  std::int64_t sum = 0;
  for (const auto& line : takeoff.lines) sum += line.total.value_or(0);
  CHECK(takeoff.total == sum);
  CHECK(schedule::is_accessory("locknut"));
  CHECK_FALSE(schedule::is_accessory("lock nut"));
}

TEST_CASE("takeoff: group by group, the stock in their order", "[unit][schedule]") {
  const std::vector<gland::Gland> glands{test::small_gland()};  // price 10, stock 4
  Tally tally;
  for (int i = 0; i < 3; ++i) tally.add(with_gland(glands.front(), true), 1, "Level 1");
  for (int i = 0; i < 3; ++i) tally.add(with_gland(glands.front(), true), 1, "Level 2");
  tally.add(with_gland(glands.front(), true));
  const schedule::Takeoff takeoff = schedule::takeoff(tally, glands, {});
  REQUIRE(takeoff.lines.size() == 6);
  std::vector<std::string> groups;
  std::vector<std::uint64_t> orders;
  for (const auto& line : takeoff.lines) {
    if (line.part != "TEST-20") continue;
    groups.push_back(line.group);
    orders.push_back(line.to_order);
  }
  CHECK(groups == std::vector<std::string>{"", "Level 1", "Level 2"});
  CHECK(orders == std::vector<std::uint64_t>{0, 0, 3});  // 1 and 3 of the 4 in stock
  CHECK(takeoff.total == 3000);
}

TEST_CASE("takeoff: what is provisional gets stock once, whatever the groups", "[unit][schedule]") {
  const std::vector<gland::Gland> glands{test::small_gland()};  // price 10, stock 4
  const auto order = [&](std::initializer_list<std::pair<const char*, bool>> ends) {
    Tally tally;
    for (const auto& [group, proven] : ends) {
      tally.add(with_gland(glands.front(), proven), 3, group);
    }
    return schedule::takeoff(tally, glands, {});
  };
  const auto glands_of = [](const schedule::Takeoff& takeoff) {
    std::vector<std::vector<std::uint64_t>> list;
    for (const auto& line : takeoff.lines) {
      if (line.part == "TEST-20")
        list.push_back({line.from_stock, line.to_order, line.provisional});
    }
    return list;
  };
  using Lines = std::vector<std::vector<std::uint64_t>>;
  // Six of which four are there, as without groups.
  const auto provisional = order({{"N", false}, {"S", false}});
  CHECK(glands_of(provisional) == Lines{{0, 0, 0}, {0, 0, 2}});
  CHECK(provisional.provisional_total == 2000);
  CHECK(order({{"", false}, {"", false}}).provisional_total == provisional.provisional_total);
  // What is proven comes first, in whichever group it stands.
  CHECK(glands_of(order({{"N", false}, {"S", true}})) == Lines{{0, 0, 0}, {3, 0, 2}});
}

TEST_CASE("takeoff: a gland's own pack, and the file of accessories before it",
          "[unit][schedule]") {
  std::vector<gland::Gland> glands{test::small_gland()};  // stock 4
  glands.front().pack = 25;
  Tally tally;
  for (int i = 0; i < 21; ++i) tally.add(with_gland(glands.front(), true));
  schedule::TakeoffTerms terms;
  CHECK(schedule::takeoff(tally, glands, terms).lines[0].to_order == 25);
  CHECK(schedule::takeoff(tally, glands, terms).lines[0].pack == 25);
  schedule::AccessoryPrice sold;
  sold.name = "TEST-20";
  sold.min_order = 40;
  terms.accessories = {sold};
  CHECK(schedule::takeoff(tally, glands, terms).lines[0].to_order == 50);  // 40 in packs of 25
  terms.accessories.front().pack = 10;
  CHECK(schedule::takeoff(tally, glands, terms).lines[0].to_order == 40);
}

TEST_CASE("takeoff: one part code for every thread is one line, one pack and one stock",
          "[unit][schedule]") {
  std::vector<gland::Gland> glands{test::small_gland(), test::small_gland()};
  glands[1].part = "TEST-25";
  Tally tally;
  tally.add(with_gland(glands[0], true), 30);
  Decision other = with_gland(glands[1], true);
  other.accessories =
      std::make_shared<const schedule::Accessories>(schedule::Accessories{{"locknut", "M25"}});
  tally.add(other, 90);
  schedule::TakeoffTerms terms;
  terms.accessories = {{.name = "locknut",
                        .thread = "",
                        .part = "LN",
                        .price = 0.5,
                        .stock = 10,
                        .pack = 100,
                        .min_order = 200}};
  const auto locknuts = [&] {
    std::vector<schedule::TakeoffLine> lines;
    for (const auto& line : schedule::takeoff(tally, glands, terms).lines) {
      if (line.part == "locknut") lines.push_back(line);
    }
    return lines;
  };
  const auto one = locknuts();
  REQUIRE(one.size() == 1);
  CHECK(one[0].description == "LN");
  CHECK(one[0].ends == 120);
  CHECK(one[0].from_stock == 10);
  CHECK(one[0].to_order == 200);
  // Without a code it is another part for each thread.
  terms.accessories[0].part = "";
  CHECK(locknuts().size() == 2);
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
  CHECK(one.parts.at("").glands.at(&gland).proven == 1);
  CHECK(one.parts.at("").glands.at(&gland).not_proven == 1);
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
  CHECK(tally.parts.at("").glands.at(&gland).proven == 4);
}

#include "cutback/schedule/kit.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

#include "support/solvers.hpp"

using namespace cutback;
using schedule::choose_kit;
using schedule::KitBy;
using schedule::Wanted;

namespace {

using Codes = std::vector<std::string>;

/// A and B together, or the dear C alone, serve all.
Wanted two_or_one() {
  return {.parts = {test::part("A", 100), test::part("B", 100), test::part("C", 900)},
          .groups = {{.ends = 6, .parts = {0, 2}}, {.ends = 4, .parts = {1, 2}}}};
}

/// A ring of five parts and five groups: no part is needless or forced, three are needed.
Wanted ring() {
  Wanted wanted;
  for (const char* code : {"A", "B", "C", "D", "E"}) wanted.parts.push_back(test::part(code, 100));
  for (std::uint32_t i = 0; i < 5; ++i) {
    schedule::PartSet pair{i, (i + 1) % 5};
    std::sort(pair.begin(), pair.end());
    wanted.groups.push_back({.ends = 1, .parts = pair});
  }
  return wanted;
}

}  // namespace

TEST_CASE("choose_kit: the fewest parts, or the least price", "[unit][kit]") {
  const Wanted wanted = two_or_one();
  const schedule::Kit fewest = choose_kit(wanted, KitBy::parts, test::solved);
  CHECK(test::codes(wanted, fewest) == Codes{"C"});
  CHECK(fewest.cost_units == 900);
  CHECK(fewest.bound == 1);
  const schedule::Kit cheapest = choose_kit(wanted, KitBy::price, test::solved);
  CHECK(test::codes(wanted, cheapest) == Codes{"A", "B"});
  CHECK(cheapest.bound == 200);
  CHECK(cheapest.parts[0].fits == 6);
  CHECK(cheapest.parts[0].alone == 6);
}

TEST_CASE("choose_kit: among kits of as many parts the cheapest, then by code", "[unit][kit]") {
  Wanted wanted = ring();
  CHECK(test::codes(wanted, choose_kit(wanted, KitBy::parts, test::solved)) ==
        Codes{"A", "B", "D"});
  wanted.parts[0].cost_units = 150;
  const schedule::Kit kit = choose_kit(wanted, KitBy::parts, test::solved);
  CHECK(test::codes(wanted, kit) == Codes{"B", "C", "E"});
  CHECK(kit.rows == 5);
  CHECK(kit.columns == 5);
  CHECK(kit.ties_broken);
}

TEST_CASE("choose_kit: the curve", "[unit][kit]") {
  const Wanted wanted = ring();
  const schedule::Kit kit = choose_kit(wanted, KitBy::parts, test::solved);
  REQUIRE(kit.curve.size() == 3);
  CHECK(kit.curve[0].ends == 2);
  CHECK(kit.curve[1].ends == 4);
  CHECK(kit.curve[2].ends == 5);
}

TEST_CASE("choose_kit: ends that nothing fits, and nothing at all", "[unit][kit]") {
  Wanted wanted = two_or_one();
  wanted.groups.push_back({.ends = 3, .parts = {}});
  const schedule::Kit kit = choose_kit(wanted, KitBy::parts, test::solved);
  CHECK(kit.served == 10);
  CHECK(kit.not_served == 3);
  CHECK(kit.proven);
  wanted.groups = {{.ends = 3, .parts = {}}};
  const schedule::Kit nothing = choose_kit(wanted, KitBy::price, test::solved);
  CHECK(nothing.parts.empty());
  CHECK(nothing.curve.empty());
  CHECK(nothing.proven);
}

TEST_CASE("choose_kit: without time the bound is what ends without a part in common need",
          "[unit][kit]") {
  const Wanted wanted = ring();
  const schedule::Kit kit = choose_kit(wanted, KitBy::parts, test::no_time);
  CHECK(kit.parts.size() == 3);
  CHECK(kit.bound == 2);
  CHECK_FALSE(kit.proven);
}

TEST_CASE("choose_kit: a solver's answer is added up again", "[unit][kit]") {
  const Wanted wanted = ring();
  const auto lies = [](const schedule::Program& program) {
    return schedule::ProgramResult{
        .x = std::vector<double>(program.objective.size(), 0.0), .bound = 0.0, .proven = true};
  };
  const schedule::Kit kit = choose_kit(wanted, KitBy::parts, lies);
  CHECK(kit.parts.size() == 3);
  CHECK_FALSE(kit.proven);
}

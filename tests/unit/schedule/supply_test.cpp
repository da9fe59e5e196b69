#include "cutback/schedule/supply.hpp"

#include <catch2/catch.hpp>

#include "cutback/schedule/tally.hpp"
#include "support/build_job.hpp"
#include "support/solvers.hpp"

using namespace cutback;
using Catch::Contains;
using schedule::Decision;
using schedule::Side;
using schedule::Supplies;
using schedule::Supply;

namespace {

/// Glands that all take small_cable: `A` at 1.00, `B` at 2.00 ... with these stocks.
std::vector<gland::Gland> glands_with(const std::vector<std::optional<double>>& stocks) {
  std::vector<gland::Gland> glands;
  for (std::size_t i = 0; i < stocks.size(); ++i) {
    gland::Gland gland = test::small_gland();
    gland.part = std::string(1, static_cast<char>('A' + i));
    gland.price = static_cast<double>(i + 1);
    gland.stock = stocks[i];
    glands.push_back(gland);
  }
  return glands;
}

/// One group of so many ends `C1 a`, `C2 a` ..., on lines from 2, that every gland fits.
struct OneGroup {
  OneGroup(const std::vector<gland::Gland>& glands, std::int64_t count)
      : wanted{.parts = schedule::parts_of(glands, 2), .groups = {{.ends = count, .parts = {}}}} {
    for (std::uint32_t i = 0; i < glands.size(); ++i) wanted.groups[0].parts.push_back(i);
    for (std::size_t i = 1; i <= static_cast<std::size_t>(count); ++i) {
      ends.push_back({.row = i + 1, .name = "C" + std::to_string(i) + " a"});
    }
  }
  schedule::Wanted wanted;
  std::vector<schedule::WantedEnd> ends;
};

Decision decided(const std::vector<gland::Gland>& glands, const Supply& supply) {
  const fit::Selector selector(glands, fit::Prefer::price);
  return schedule::decide(test::small_cable(),
                          {.standards = &test::standards(), .glands = &selector}, &supply);
}

}  // namespace

TEST_CASE("supplies: the cheapest to the first ends, nothing to the last", "[unit][schedule]") {
  const auto glands = glands_with({2, 1});
  const OneGroup group(glands, 4);
  const auto share = schedule::share_out(group.wanted, solve::cheapest_plan);
  const Supplies supplies(group.wanted, share, group.ends, glands);
  CHECK(supplies.of(2, Side::both)->gland == &glands[0]);
  CHECK(supplies.of(3, Side::both)->gland == &glands[0]);
  CHECK(supplies.of(4, Side::both)->gland == &glands[1]);
  CHECK(supplies.of(4, Side::both)->place == 2);
  const Supply* const none = supplies.of(5, Side::both);
  CHECK(none->gland == nullptr);
  CHECK(none->cheapest == &glands[0]);
  CHECK(none->reason == "out of stock: A, whose 2 go to C1 a, C2 a; B, whose 1 goes to C3 a");
  CHECK(none->change == "order 1 of A");
  CHECK(supplies.of(6, Side::both) == nullptr);
  CHECK(supplies.of(2, Side::from) == nullptr);
}

TEST_CASE("supplies: long lists are cut short, and counted", "[unit][schedule]") {
  const auto glands = glands_with({0, 5, 1, 1, 1});
  const OneGroup group(glands, 11);
  const auto share = schedule::share_out(group.wanted, solve::cheapest_plan);
  const Supplies supplies(group.wanted, share, group.ends, glands);
  const Supply* const none = supplies.of(12, Side::both);
  CHECK(none->reason ==
        "out of stock: A, of which there is none; B, whose 5 go to C1 a, C2 a, C3 a and 2 more; "
        "C, whose 1 goes to C6 a; and 2 more parts with none left");
  CHECK(none->change == "order 3 of A, for this end and 2 more that the same glands fit");
}

TEST_CASE("decide: the gland that was given, with its own margins", "[unit][schedule]") {
  auto glands = glands_with({0, 3});
  glands[1].outer = {12.0, 17.0};
  const Decision decision = decided(glands, {.gland = &glands[1], .place = 2});
  const auto fit = test::checked(test::small_cable(), glands[1]);
  CHECK(decision.proven);
  CHECK(decision.verdict == Verdict::fits);
  CHECK(decision.gland == &glands[1]);
  CHECK(decision.fits == 2);
  CHECK(decision.outer_margin_mm == fit.find(fit::CheckName::outer_seal)->margin_mm);
  CHECK(decision.reason == "from stock: B, 2nd by price of 2 that fit; measure before cutting");
  CHECK(decision.accessories != nullptr);
}

TEST_CASE("decide: places are counted in words", "[unit][schedule]") {
  const auto glands = glands_with(std::vector<std::optional<double>>(3, 1.0));
  for (const auto& [place, word] : {std::pair{1, "1st"},
                                    {2, "2nd"},
                                    {3, "3rd"},
                                    {4, "4th"},
                                    {10, "10th"},
                                    {11, "11th"},
                                    {12, "12th"},
                                    {13, "13th"},
                                    {21, "21st"},
                                    {102, "102nd"},
                                    {112, "112th"}}) {
    const Decision decision =
        decided(glands, {.gland = &glands[0], .place = static_cast<std::size_t>(place)});
    CHECK_THAT(decision.reason, Contains(", " + std::string(word) + " by price of 3 that fit"));
  }
}

TEST_CASE("decide: one that fits, and one without a stated stock", "[unit][schedule]") {
  const auto glands = glands_with({std::nullopt});
  const Decision decision = decided(glands, {.gland = &glands[0], .place = 1});
  CHECK_THAT(decision.reason, Catch::StartsWith("not limited by stock: A, the only one that fits"));
}

TEST_CASE("decide: none was left", "[unit][schedule]") {
  const auto glands = glands_with({0});
  const Supply none{.cheapest = &glands[0], .reason = "why", .change = "what"};
  const Decision decision = decided(glands, none);
  CHECK_FALSE(decision.proven);
  CHECK(decision.out_of_stock);
  CHECK(decision.gland == nullptr);
  CHECK(decision.nearest == &glands[0]);
  CHECK(decision.fits == 1);
  CHECK(decision.reason == "why");
  CHECK(decision.change == "what");
  CHECK(decision.group == "stock");
  CHECK_FALSE(decision.outer_margin_mm);
  CHECK(decision.accessories == nullptr);
  CHECK(schedule::verdict_word(decision) == "no-stock");
  schedule::Tally tally;
  tally.add(decision);
  tally.add(schedule::Tally(tally));
  CHECK(tally.out_of_stock == 2);
  CHECK(tally.exceptions == 2);
  CHECK(tally.by_verdict[static_cast<std::size_t>(Verdict::fits)] == 0);
  CHECK(tally.parts.empty());
  CHECK(schedule::exception_of({"C1", "a", 2}, decision).verdict == "no-stock");
}

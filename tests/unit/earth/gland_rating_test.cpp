#include "cutback/earth/gland_rating.hpp"

#include <catch2/catch.hpp>

using namespace cutback;
using namespace cutback::earth;
using Catch::Contains;

namespace {

Verdict verdict(double rating_ka, double current_ka, double time_s) {
  return judge_gland_rating(rating_ka, {current_ka, time_s, {}}).finding.verdict;
}

}  // namespace

TEST_CASE("judge_gland_rating: from 1 s on the scaled rating decides", "[unit][earth]") {
  CHECK(verdict(10.0, 10.0, 1.0) == Verdict::fits);
  CHECK(verdict(10.0, 10.01, 1.0) == Verdict::no_fit);
  CHECK(verdict(10.0, 5.0, 4.0) == Verdict::fits);
  CHECK(verdict(10.0, 5.01, 4.0) == Verdict::no_fit);
}

TEST_CASE("judge_gland_rating: under 1 s a raised rating is for the papers", "[unit][earth]") {
  CHECK(verdict(3.0, 3.0, 0.25) == Verdict::fits);
  CHECK(verdict(3.0, 3.01, 0.25) == Verdict::not_known);
  CHECK(verdict(3.0, 6.0, 0.25) == Verdict::not_known);
  CHECK(verdict(3.0, 6.01, 0.25) == Verdict::no_fit);
  CHECK_THAT(judge_gland_rating(3.0, {4.0, 0.25, {}}).finding.says,
             Contains("check against the gland's papers") && Contains("3 / sqrt(0.25) = 6.00 kA"));
}

TEST_CASE("judge_gland_rating: over 5 s nothing fits", "[unit][earth]") {
  CHECK(verdict(10.0, 0.1, 5.0) == Verdict::fits);
  CHECK(verdict(10.0, 0.1, 5.1) == Verdict::not_known);
  CHECK(verdict(10.0, 9.0, 5.1) == Verdict::no_fit);
}

TEST_CASE("judge_gland_rating: the missing figure is named", "[unit][earth]") {
  CHECK_THAT(judge_gland_rating(10.0, {{}, 1.0, {}}).finding.says, Contains("current"));
  CHECK_THAT(judge_gland_rating(10.0, {1.0, {}, {}}).finding.says, Contains("time"));
  CHECK_THAT(judge_gland_rating({}, {1.0, 1.0, {}}).finding.says,
             Contains("no earth-fault rating"));
}

TEST_CASE("check_earth: nothing to check without a fault or without armour", "[unit][earth]") {
  gland::Gland gland;
  gland.armour = cable::ArmourKind::wire;
  gland.fault_ka = 4.0;
  CHECK_FALSE(check_earth(gland, {}).has_value());
  const auto check = check_earth(gland, {2.0, 4.0, {}});
  REQUIRE(check.has_value());
  CHECK(check->name == fit::CheckName::earth);
  CHECK(check->verdict == Verdict::fits);
  CHECK(check->value == 2.0);
  CHECK(check->high == 2.0);
  CHECK_FALSE(check->margin_mm.has_value());
  gland.fault_ka.reset();
  CHECK(check_earth(gland, {2.0, 4.0, {}})->verdict == Verdict::not_known);
  gland.armour = cable::ArmourKind::none;
  CHECK_FALSE(check_earth(gland, {2.0, 4.0, {}}).has_value());
}

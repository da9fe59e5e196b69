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

TEST_CASE("judge_gland_rating: the current may come from the loop", "[unit][earth]") {
  EarthFault fault;
  fault.time_s = 1.0;
  fault.loop_ohm = 0.115;
  CHECK_THAT(judge_gland_rating(2.0, fault).finding.says, Contains("voltage to earth"));
  fault.u0_v = 230.0;  // 2 kA
  CHECK(judge_gland_rating(2.0, fault).finding.verdict == Verdict::fits);
  CHECK(judge_gland_rating(1.99, fault).finding.verdict == Verdict::no_fit);
}

TEST_CASE("current_ka: as given or by voltage and loop", "[unit][earth]") {
  EarthFault fault;
  CHECK_FALSE(is_asked(fault));
  fault.u0_v = 230.0;  // says nothing of a fault by itself
  CHECK_FALSE(is_asked(fault));
  CHECK_FALSE(current_ka(fault).has_value());
  fault.loop_ohm = 0.4;
  CHECK(is_asked(fault));
  CHECK(*current_ka(fault) == Approx(0.575));
  CHECK(current_says(fault) == "230 V / 0.4 ohm = 575 A");
}

#include "cutback/measure/judge.hpp"

#include <catch2/catch.hpp>
#include <cmath>

using namespace cutback;
using namespace cutback::measure;

namespace {

Estimate measured(double value, double standard) {
  Estimate estimate;
  estimate.value_mm = value;
  estimate.standard_mm = standard;
  estimate.k = 1.959963984540054;
  estimate.expanded_mm = estimate.k * standard;
  estimate.readings_mm = {value};
  return estimate;
}

}  // namespace

TEST_CASE("judge: the four answers", "[unit][measure]") {
  const Estimate estimate = measured(15.0, 0.1);
  CHECK(judge(estimate, {14.0, 16.0}).verdict == Verdict::fits);
  CHECK(judge(estimate, {14.9, 16.0}).verdict == Verdict::marginal_inside);
  CHECK(judge(estimate, {15.1, 16.0}).verdict == Verdict::marginal_outside);
  CHECK(judge(estimate, {15.2, 16.0}).verdict == Verdict::no_fit);
  CHECK(judge(estimate, {14.0, 15.1}).verdict == Verdict::marginal_inside);
  CHECK(judge(estimate, {14.0, 14.9}).verdict == Verdict::marginal_outside);
  CHECK(judge(estimate, {14.0, 14.8}).verdict == Verdict::no_fit);
}

TEST_CASE("judge: limits are closed", "[unit][measure]") {
  const Estimate estimate = measured(15.0, 0.1);
  const double wide = estimate.expanded_mm;
  CHECK(judge(estimate, {15.0 - wide, 15.0 + wide}).verdict == Verdict::fits);
  CHECK_FALSE(judge(estimate, {15.0 - wide, 15.0 + wide}).narrow);
  CHECK(judge(estimate, {15.0 + wide, 17.0}).verdict == Verdict::marginal_outside);
  CHECK(judge(estimate, {15.0, 17.0}).verdict == Verdict::marginal_inside);
}

TEST_CASE("judge: the margin is to the nearer limit", "[unit][measure]") {
  const Estimate estimate = measured(15.0, 0.0);
  CHECK(judge(estimate, {14.0, 15.5}).margin_mm == Approx(0.5));
  CHECK(judge(estimate, {14.75, 15.5}).margin_mm == Approx(0.25));
  CHECK(judge(estimate, {15.25, 16.5}).margin_mm == Approx(-0.25));
}

TEST_CASE("judge: without spread it is a step", "[unit][measure]") {
  const Judgement at = judge(measured(15.0, 0.0), {15.0, 15.0});
  CHECK(at.verdict == Verdict::fits);
  CHECK(at.probability == 1.0);
  const Judgement off = judge(measured(15.0, 0.0), {15.1, 16.0});
  CHECK(off.verdict == Verdict::no_fit);
  CHECK(off.probability_below == 1.0);
  CHECK(off.probability == 0.0);
  CHECK(judge(measured(15.0, 0.0), {14.0, 14.9}).probability_above == 1.0);
}

TEST_CASE("judge: an absent limit does not bind", "[unit][measure]") {
  const Estimate estimate = measured(15.0, 0.1);
  const Judgement high = judge(estimate, {{}, 16.0});
  CHECK(high.verdict == Verdict::fits);
  CHECK(high.probability_below == 0.0);
  CHECK(high.margin_mm == Approx(1.0 - estimate.expanded_mm));
  const Judgement low = judge(estimate, {15.05, {}});
  CHECK(low.verdict == Verdict::marginal_outside);
  CHECK(low.probability_above == 0.0);
  CHECK_FALSE(low.narrow);
  CHECK(judge(estimate, {14.0, {}}).margin_mm == Approx(1.0 - estimate.expanded_mm));
}

TEST_CASE("judge: without any limit nothing is known", "[unit][measure]") {
  const Judgement none = judge(measured(15.0, 0.1), {});
  CHECK(none.verdict == Verdict::not_known);
  CHECK(none.reasons.size() == 1);
}

TEST_CASE("judge: a reading outside caps a fits", "[unit][measure]") {
  Estimate estimate = measured(15.0, 0.1);
  estimate.readings_mm = {14.5, 15.5};
  CHECK(judge(estimate, {14.5, 15.5}).verdict == Verdict::fits);
  const Judgement outside = judge(estimate, {14.4, 15.4});
  CHECK(outside.verdict == Verdict::marginal_inside);
  REQUIRE(outside.reasons.size() == 1);
  CHECK(outside.reasons[0] == "reading outside the range: 15.5 mm");
  CHECK(outside.probability > 0.999);
}

TEST_CASE("judge: readings outside are named beside a limit that is not met too",
          "[unit][measure]") {
  Estimate estimate = measured(15.0, 0.1);
  estimate.readings_mm = {14.8, 15.2};
  const Judgement inside = judge(estimate, {14.0, 15.1});
  CHECK(inside.verdict == Verdict::marginal_inside);
  CHECK(inside.reasons == std::vector<std::string>{"reading outside the range: 15.2 mm"});
  CHECK(judge(estimate, {14.0, 14.9}).reasons.empty());
}

TEST_CASE("judge: a cap of the estimate holds for every range", "[unit][measure]") {
  Estimate estimate = measured(15.0, 0.1);
  estimate.caps = {{"first"}, {"second"}};
  const Judgement capped = judge(estimate, {10.0, 20.0});
  CHECK(capped.verdict == Verdict::marginal_inside);
  CHECK(capped.reasons == std::vector<std::string>{"first", "second"});
  CHECK(judge(estimate, {15.1, 20.0}).verdict == Verdict::marginal_outside);
  const Judgement no_fit = judge(estimate, {17.0, 20.0});
  CHECK(no_fit.verdict == Verdict::no_fit);
  CHECK(no_fit.reasons.empty());
}

TEST_CASE("judge: a range too narrow for the measurement", "[unit][measure]") {
  const Judgement narrow = judge(measured(15.0, 0.1), {14.9, 15.1});
  CHECK(narrow.narrow);
  CHECK(narrow.verdict == Verdict::marginal_inside);
  REQUIRE(narrow.reasons.size() == 1);
  CHECK(narrow.reasons[0].find("better caliper") != std::string::npos);
  const Judgement datasheet = judge(from_datasheet(15.0, 1.0), {14.5, 15.5});
  CHECK(datasheet.narrow);
  CHECK(datasheet.reasons[0].find("measure the cable") != std::string::npos);
  CHECK(datasheet.probability == Approx(0.5));
}

TEST_CASE("judge: a datasheet figure without an allowance is a point", "[unit][measure]") {
  CHECK(judge(from_datasheet(18.0, 0.0), {13.0, 18.0}).verdict == Verdict::fits);
  CHECK(judge(from_datasheet(18.0, 0.0), {13.0, 17.9}).verdict == Verdict::no_fit);
}

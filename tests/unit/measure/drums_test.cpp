#include "cutback/measure/drums.hpp"

#include <array>
#include <catch2/catch.hpp>
#include <cmath>

#include "cutback/error.hpp"

using namespace cutback;
using namespace cutback::measure;

namespace {

constexpr std::array<CaliperLimit, 2> k_limits{{{0.02, 100, 0.02}, {0.1, 300, 0.05}}};
const double k_caliper_variance = 0.05 * 0.05 / 12.0 + 0.05 * 0.05 / 3.0;

DrumsInput input(std::initializer_list<const char*> drums, Range range = {}) {
  DrumsInput in;
  for (const char* places : drums) {
    in.drums.push_back({"D" + std::to_string(in.drums.size() + 1), parse_places(places, "test")});
  }
  in.range = range;
  return in;
}

constexpr const char* k_five = "14.7+14.9,14.75+14.85,14.8+14.9,14.7+14.8,14.8+14.95";

bool warned(const DrumsResult& result, const char* words) {
  for (const std::string& warning : result.warnings) {
    if (warning.find(words) != std::string::npos) return true;
  }
  return false;
}

}  // namespace

TEST_CASE("analyse_drums: one drum is what measure_here makes of its places", "[unit][measure]") {
  const DrumsInput in = input({k_five}, {12.0, 16.0});
  const DrumsResult result = analyse_drums(in, k_limits);
  const Estimate here = measure_here({.places = in.drums[0].places}, k_limits);
  CHECK(result.estimate.value_mm == here.value_mm);
  CHECK(result.estimate.expanded_mm == here.expanded_mm);
  CHECK(result.estimate.degrees_of_freedom == here.degrees_of_freedom);
  CHECK(result.judgement.verdict == Verdict::fits);
  REQUIRE(result.deciding.has_value());
  CHECK(*result.deciding == 0);
  CHECK_FALSE(result.difference.has_value());
  REQUIRE(result.tolerance.has_value());
  CHECK(result.tolerance->factor == Approx(5.0768745).margin(1e-6));
  CHECK(result.drums[0].further.settling == Settling::settled);
}

TEST_CASE("analyse_drums: one place needs the variation along the drum", "[unit][measure]") {
  DrumsInput in = input({"14.9+15.1"}, {12.0, 18.0});
  DrumsResult result = analyse_drums(in, k_limits);
  CHECK(result.pooled_degrees == 0.0);
  CHECK(result.judgement.verdict == Verdict::marginal_inside);
  CHECK(result.judgement.reasons.at(0).find("how a drum varies") != std::string::npos);
  CHECK(result.drums[0].further.settling == Settling::not_known);

  in.along_mm = 0.3;
  result = analyse_drums(in, k_limits);
  CHECK(result.pooled_standard_mm == Approx(0.3 / std::sqrt(3.0)));
  CHECK(std::isinf(result.pooled_degrees));
  CHECK(result.judgement.verdict == Verdict::fits);
  CHECK(result.estimate.standard_mm == Approx(std::sqrt(0.03 * 2.0 + k_caliper_variance)));
  CHECK(result.estimate.k == Approx(1.959963984540054));
  CHECK_FALSE(result.tolerance.has_value());
}

TEST_CASE("analyse_drums: a stated variation gives way to the places", "[unit][measure]") {
  DrumsInput in = input({k_five});
  in.along_mm = 5.0;
  in.between_mm = 5.0;
  const DrumsResult result = analyse_drums(in, k_limits);
  CHECK(result.pooled_standard_mm < 0.1);
  CHECK(warned(result, "along a drum is not used"));
  CHECK(warned(result, "between drums is not used"));
}

TEST_CASE("analyse_drums: the worst drum decides and the smallest margin among equals",
          "[unit][measure]") {
  const DrumsInput in =
      input({"15+15,15.1+15.1", "15.6+15.6,15.7+15.7", "14.2+14.2,14.3+14.3"}, {13.0, 16.0});
  DrumsResult result = analyse_drums(in, k_limits);
  CHECK(*result.deciding == 1);
  CHECK(result.judgement.verdict == result.drums[1].judgement.verdict);
  CHECK(result.estimate.value_mm == Approx(15.65));
  CHECK(result.drums[0].judgement.verdict == Verdict::fits);
  DrumsInput narrow = in;
  narrow.range = {15.0, 16.0};
  result = analyse_drums(narrow, k_limits);
  CHECK(*result.deciding == 2);
  CHECK(result.judgement.verdict == Verdict::no_fit);
}

TEST_CASE("analyse_drums: without a range there is no verdict", "[unit][measure]") {
  const DrumsResult result = analyse_drums(input({"15+15", "15+15,15.1+15.1"}), k_limits);
  CHECK(result.judgement.verdict == Verdict::not_known);
  CHECK(*result.deciding == 0);  // the wider interval
  CHECK(result.drums[0].further.settling == Settling::settled);
}

TEST_CASE("analyse_drums: drums that differ are named", "[unit][measure]") {
  const DrumsResult result = analyse_drums(input({"15+15,15.1+15.1", "16+16,16.1+16.1"}), k_limits);
  REQUIRE(result.difference.has_value());
  CHECK(*result.difference->f == Approx(1.0 / 0.005));
  CHECK(result.difference->critical == Approx(18.5128205128).epsilon(1e-9));
  CHECK(result.difference->differ);
  CHECK(warned(result, "drums differ"));

  const DrumsResult alike = analyse_drums(input({"15+15,15.1+15.1", "15+15,15.1+15.1"}), k_limits);
  CHECK(*alike.difference->f == 0.0);
  CHECK_FALSE(alike.difference->differ);
}

TEST_CASE("analyse_drums: drums whose places do not vary at all", "[unit][measure]") {
  const DrumsResult differ = analyse_drums(input({"15+15,15+15", "15.1+15.1,15.1+15.1"}), k_limits);
  REQUIRE(differ.difference.has_value());
  CHECK_FALSE(differ.difference->f.has_value());
  CHECK(differ.difference->differ);
  const DrumsResult alike = analyse_drums(input({"15+15,15+15", "15+15,15+15"}), k_limits);
  CHECK(alike.difference->f == 0.0);
  CHECK_FALSE(alike.difference->differ);
  CHECK_FALSE(analyse_drums(input({"15+15", "15.1+15.1"}), k_limits).difference.has_value());
}

TEST_CASE("analyse_drums: a drum that was not measured", "[unit][measure]") {
  DrumsInput in = input({"15+15,15.1+15.1", "15.2+15.2,15.4+15.4", "14.9+14.9"}, {13.0, 17.0});
  in.unmeasured = true;
  const DrumsResult result = analyse_drums(in, k_limits);
  const double means[] = {15.05, 15.3, 14.9};
  const double mean = (means[0] + means[1] + means[2]) / 3.0;
  double squares = 0.0;
  for (const double m : means) squares += (m - mean) * (m - mean);
  const double v1 = squares / 2.0 * (1.0 + 1.0 / 3.0);
  const double within = (0.005 + 0.02) / 2.0;
  const double v2 = within * (1.0 - (0.5 + 0.5 + 1.0) / 3.0);
  CHECK(result.estimate.value_mm == Approx(mean));
  CHECK(result.estimate.standard_mm == Approx(std::sqrt(v1 + v2 + k_caliper_variance)));
  const double u4 = std::pow(result.estimate.standard_mm, 4);
  CHECK(result.effective_degrees == Approx(u4 / (v1 * v1 / 2.0 + v2 * v2 / 2.0)));
  CHECK_FALSE(result.deciding.has_value());
  CHECK_FALSE(result.tolerance.has_value());
  CHECK(result.estimate.expanded_mm > result.drums[0].estimate.expanded_mm);
}

TEST_CASE("analyse_drums: one drum says nothing of another", "[unit][measure]") {
  DrumsInput in = input({"15+15,15.1+15.1"}, {10.0, 20.0});
  in.unmeasured = true;
  DrumsResult result = analyse_drums(in, k_limits);
  CHECK(result.judgement.verdict == Verdict::marginal_inside);
  CHECK(result.judgement.reasons.at(0).find("how drums differ") != std::string::npos);
  in.between_mm = 0.6;
  result = analyse_drums(in, k_limits);
  CHECK(result.judgement.verdict == Verdict::fits);
  CHECK(result.estimate.standard_mm ==
        Approx(std::sqrt(0.12 * 2.0 + 0.005 * 0.5 + k_caliper_variance)));
}

TEST_CASE("analyse_drums: uncrossed places use the largest ovality of all drums",
          "[unit][measure]") {
  const DrumsInput in = input({"15.0,15.0", "14.8+15.2,14.9+15.1"});
  const DrumsResult result = analyse_drums(in, k_limits);
  CHECK(result.drums[0].estimate.caps.empty());
  CHECK(result.drums[0].estimate.standard_mm ==
        Approx(std::sqrt(0.4 * 0.4 / 8.0 + k_caliper_variance)));
  CHECK(result.drums[1].estimate.standard_mm == Approx(std::sqrt(k_caliper_variance)));
  DrumsInput unknown = input({"15,15.1"}, {10.0, 20.0});
  CHECK(analyse_drums(unknown, k_limits).judgement.verdict == Verdict::marginal_inside);
  unknown.declared_ovality_mm = 0.4;
  CHECK(analyse_drums(unknown, k_limits).judgement.verdict == Verdict::fits);
}

TEST_CASE("analyse_drums: an oval place caps its drum and the question as a whole",
          "[unit][measure]") {
  DrumsInput in = input({"15+15,15+15", "13+17,15+15"}, {10.0, 20.0});
  DrumsResult result = analyse_drums(in, k_limits);
  CHECK(result.drums[0].judgement.verdict == Verdict::fits);
  CHECK(result.drums[1].judgement.verdict == Verdict::marginal_inside);
  CHECK(result.judgement.verdict == Verdict::marginal_inside);
  CHECK(warned(result, "drum D2, place 1: the readings differ by 4 mm"));
  in.unmeasured = true;
  result = analyse_drums(in, k_limits);
  CHECK(result.judgement.verdict == Verdict::marginal_inside);
  CHECK(result.judgement.reasons.size() == 1);
}

TEST_CASE("analyse_drums: how many more places would settle it", "[unit][measure]") {
  // Two places, t with few degrees of freedom: more places narrow the interval a lot.
  DrumsInput in = input({"15+15,15.1+15.1"}, {14.0, 15.3});
  DrumsResult result = analyse_drums(in, k_limits);
  CHECK(result.judgement.verdict == Verdict::marginal_inside);
  const Further further = result.drums[0].further;
  REQUIRE(further.settling == Settling::places);
  CHECK(further.verdict == Verdict::fits);
  // Measured in truth, at the same mean and spread, that number decides and one fewer does not.
  for (const std::size_t more : {further.places - 1, further.places}) {
    const auto n = static_cast<double>(2 + more);
    const double s2 = 0.005;
    const double off = std::sqrt(s2 * (n - 1.0) / 2.0);  // two places off, the rest at the mean
    DrumsInput then = in;
    then.caliper.step_mm = 0.05;
    then.drums[0].places = {{{15.05 - off, 15.05 - off}}, {{15.05 + off, 15.05 + off}}};
    for (std::size_t i = 0; i < more; ++i) then.drums[0].places.push_back({{15.05, 15.05}});
    then.range.low_mm = 10.0;
    const DrumsResult after = analyse_drums(then, k_limits);
    CHECK(after.pooled_standard_mm == Approx(std::sqrt(s2)));
    const bool inside = after.estimate.high_mm() <= 15.3;
    CHECK(inside == (more == further.places));
  }
  in.range.high_mm = 15.06;
  CHECK(analyse_drums(in, k_limits).drums[0].further.settling == Settling::no_number);
  in.range.high_mm = 14.8;
  result = analyse_drums(in, k_limits);
  CHECK(result.judgement.verdict == Verdict::marginal_outside);
  REQUIRE(result.drums[0].further.settling == Settling::places);
  CHECK(result.drums[0].further.verdict == Verdict::no_fit);
}

TEST_CASE("analyse_drums: no number of places lifts a cap", "[unit][measure]") {
  const DrumsResult result = analyse_drums(input({"13+17,15+15"}, {10.0, 20.0}), k_limits);
  CHECK(result.drums[0].further.settling == Settling::no_number);
}

TEST_CASE("analyse_drums: few places are said to be few", "[unit][measure]") {
  CHECK(warned(analyse_drums(input({"15+15,15.1+15.1"}), k_limits), "few places"));
  CHECK_FALSE(warned(analyse_drums(input({k_five}), k_limits), "few places"));
}

TEST_CASE("analyse_drums: the level changes the interval", "[unit][measure]") {
  DrumsInput in = input({k_five});
  const double usual = analyse_drums(in, k_limits).estimate.expanded_mm;
  in.level_ratio = 0.99;
  CHECK(analyse_drums(in, k_limits).estimate.expanded_mm > usual);
}

TEST_CASE("analyse_drums: all that is wrong is said at once", "[unit][measure]") {
  DrumsInput in = input({"15"}, {16.0, 15.0});
  in.drums.push_back({"empty", {}});
  in.along_mm = -1;
  in.between_mm = -1;
  in.declared_ovality_mm = -1;
  in.ovality_limit_ratio = 2;
  in.level_ratio = 0.2;
  in.caliper.step_mm = -0.05;
  try {
    (void)analyse_drums(in, k_limits);
    FAIL("no error");
  } catch (const InputError& error) {
    CHECK(error.faults().size() == 8);
  }
  CHECK_THROWS_AS((void)analyse_drums({}, k_limits), InputError);
}

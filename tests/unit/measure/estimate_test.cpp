#include "cutback/measure/estimate.hpp"

#include <array>
#include <catch2/catch.hpp>
#include <cmath>

#include "cutback/error.hpp"

using namespace cutback;
using namespace cutback::measure;

namespace {

constexpr double k_normal = 1.959963984540054;
constexpr std::array<CaliperLimit, 2> k_limits{{{0.02, 100, 0.02}, {0.1, 300, 0.05}}};
const double k_caliper_005 = std::sqrt(0.05 * 0.05 / 12.0 + 0.05 * 0.05 / 3.0);

MeasureInput input(const char* readings) {
  MeasureInput in;
  in.places = parse_places(readings, "--od");
  return in;
}

}  // namespace

TEST_CASE("measure_here: one crossed place carries the caliper alone", "[unit][measure]") {
  const Estimate estimate = measure_here(input("14.9+15.1"), k_limits);
  CHECK(estimate.value_mm == Approx(15.0));
  CHECK(estimate.standard_mm == Approx(k_caliper_005));
  CHECK(estimate.k == Approx(k_normal).epsilon(0).margin(1e-12));
  CHECK(estimate.expanded_mm == Approx(k_normal * k_caliper_005));
  CHECK(std::isinf(estimate.degrees_of_freedom));
  CHECK(estimate.caps.empty());
  CHECK(estimate.warnings.empty());
  CHECK(estimate.evidence == Evidence::measured);
}

TEST_CASE("measure_here: one uncrossed reading is capped", "[unit][measure]") {
  MeasureInput in = input("15");
  Estimate estimate = measure_here(in, k_limits);
  REQUIRE(estimate.caps.size() == 1);
  CHECK(estimate.caps[0].reason.find("right angles") != std::string::npos);

  in.declared_ovality_mm = 0.4;
  estimate = measure_here(in, k_limits);
  CHECK(estimate.caps.empty());
  CHECK(estimate.standard_mm == Approx(std::hypot(k_caliper_005, 0.4 / std::sqrt(8.0))));

  in.declared_ovality_mm.reset();
  in.section = Section::round;
  estimate = measure_here(in, k_limits);
  CHECK(estimate.caps.empty());
  CHECK(estimate.standard_mm == Approx(k_caliper_005));
}

TEST_CASE("measure_here: an ovality seen elsewhere serves an uncrossed place", "[unit][measure]") {
  const Estimate estimate = measure_here(input("14.9+15.1,15"), k_limits);
  CHECK(estimate.caps.empty());
  CHECK(estimate.value_mm == Approx(15.0));
  CHECK(estimate.standard_mm == Approx(std::hypot(k_caliper_005, 0.2 / std::sqrt(8.0))));
  CHECK(measure_here(input("15,15.1"), k_limits).caps.size() == 1);
}

TEST_CASE("measure_here: several places predict a new one", "[unit][measure]") {
  MeasureInput in = input("14.9+14.9,15+15,15.2+15.2");
  in.caliper = {.step_mm = 0.0, .mpe_mm = 0.0};
  const Estimate estimate = measure_here(in, k_limits);
  const double mean = 45.1 / 3.0;
  const double s = std::sqrt(
      (std::pow(14.9 - mean, 2) + std::pow(15.0 - mean, 2) + std::pow(15.2 - mean, 2)) / 2.0);
  CHECK(estimate.value_mm == Approx(mean));
  CHECK(estimate.standard_mm == Approx(s * std::sqrt(4.0 / 3.0)));
  CHECK(estimate.degrees_of_freedom == 2.0);
  CHECK(estimate.k == Approx(4.30265272974946).epsilon(0).margin(1e-9));
}

TEST_CASE("measure_here: places count alike however many readings they have", "[unit][measure]") {
  const Estimate estimate = measure_here(input("14+14+14,15+15"), k_limits);
  CHECK(estimate.value_mm == Approx(14.5));
}

TEST_CASE("measure_here: the zero is subtracted", "[unit][measure]") {
  MeasureInput in = input("15.1+15.1");
  in.caliper.zero_mm = 0.1;
  const Estimate estimate = measure_here(in, k_limits);
  CHECK(estimate.value_mm == Approx(15.0));
  CHECK(estimate.readings_mm[1] == Approx(15.0));
  CHECK(estimate.warnings.empty());  // the caliper showed a multiple of its step
}

TEST_CASE("measure_here: further uncertainty and a stated error count", "[unit][measure]") {
  MeasureInput in = input("15.1+15.1");
  in.caliper = {.step_mm = 0.0, .mpe_mm = 0.03, .extra_standard_mm = 0.04};
  CHECK(measure_here(in, k_limits).standard_mm == Approx(std::hypot(0.03 / std::sqrt(3.0), 0.04)));
  in.caliper = {.step_mm = 0.0, .mpe_mm = 0.0};
  CHECK(measure_here(in, k_limits).standard_mm == 0.0);
}

TEST_CASE("measure_here: not round", "[unit][measure]") {
  const Estimate over = measure_here(input("13+15.4"), k_limits);
  REQUIRE(over.caps.size() == 1);
  CHECK(over.caps[0].reason == "not round: ask the seal maker");
  REQUIRE(over.warnings.size() == 1);
  CHECK(over.warnings[0] ==
        "place 1: the readings differ by 2.4 mm, 16.9 % of their mean; the limit is 15 %");
  MeasureInput at = input("18.5+21.5");  // exactly 15 % of 20 passes
  CHECK(measure_here(at, k_limits).caps.empty());
  at.section = Section::round;
  at.ovality_limit_ratio = 0.1;
  CHECK(measure_here(at, k_limits).caps[0].reason == "not round: measure the wire again");
}

TEST_CASE("measure_here: a reading that the caliper cannot show", "[unit][measure]") {
  const Estimate estimate = measure_here(input("14.93+15.1"), k_limits);
  REQUIRE(estimate.warnings.size() == 1);
  CHECK(estimate.warnings[0].find("14.93: no multiple of the caliper's step of 0.05 mm") == 0);
  MeasureInput many = input("14.91+14.92+14.93+14.94+14.96+14.97+14.98");
  CHECK(measure_here(many, k_limits).warnings[0].find("14.96 and 2 more") != std::string::npos);
  many.caliper.step_mm = 0.0;
  CHECK(measure_here(many, k_limits).warnings.empty());
}

TEST_CASE("measure_here: above 25 mm the source names the tape", "[unit][measure]") {
  CHECK(measure_here(input("25+25"), k_limits).source.find("tape") == std::string::npos);
  CHECK(measure_here(input("25.1+25.1"), k_limits).source.find("tape") != std::string::npos);
}

TEST_CASE("measure_here: all that is wrong is said at once", "[unit][measure]") {
  MeasureInput in;
  in.caliper = {.step_mm = -1, .mpe_mm = -1, .zero_mm = 20, .extra_standard_mm = -1};
  in.places = {{{15.0, 15.0}}, {{}}};
  in.level_ratio = 1.0;
  try {
    (void)measure_here(in, k_limits);
    FAIL("no error");
  } catch (const InputError& error) {
    CHECK(error.faults().size() == 7);
  }
  in = input("15");
  in.places.clear();
  CHECK_THROWS_AS((void)measure_here(in, k_limits), InputError);
}

TEST_CASE("from_datasheet: anywhere within the allowance", "[unit][measure]") {
  const Estimate estimate = from_datasheet(18.0, 0.6);
  CHECK(estimate.low_mm() == Approx(17.4));
  CHECK(estimate.high_mm() == Approx(18.6));
  CHECK(estimate.standard_mm == Approx(0.6 / std::sqrt(3.0)));
  CHECK(estimate.k == 0.0);
  CHECK(estimate.spread == Spread::rectangular);
  CHECK(estimate.evidence == Evidence::datasheet);
  CHECK_THROWS_AS((void)from_datasheet(0.0, 0.6), InputError);
  CHECK_THROWS_AS((void)from_datasheet(18.0, -0.6), InputError);
  CHECK_THROWS_AS((void)from_datasheet(301.0, 0.6), InputError);
}

TEST_CASE("from_model: keeps its own source", "[unit][measure]") {
  const Estimate estimate = from_model(18.0, 1.0, "a model");
  CHECK(estimate.evidence == Evidence::estimated);
  CHECK(estimate.source == "a model");
}

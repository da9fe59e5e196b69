#include "core/measure/budget.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <limits>

using namespace cutback;
using namespace cutback::detail;

namespace {
constexpr double k_infinite = std::numeric_limits<double>::infinity();
}

TEST_CASE("combine: no scatter gives the normal factor", "[unit][measure]") {
  const Term caliper{0.04, k_infinite};
  const Combined one = combine({&caliper, 1}, 0.95);
  CHECK(one.standard == Approx(0.2));
  CHECK(std::isinf(one.effective_degrees));
  CHECK(one.k == Approx(1.959963984540054).epsilon(0).margin(1e-12));
  const Combined none = combine({}, 0.95);
  CHECK(none.standard == 0.0);
  CHECK(none.expanded == 0.0);
  CHECK(std::isinf(none.degrees_used));
}

TEST_CASE("combine: degrees of freedom are whole and at least one", "[unit][measure]") {
  const std::vector<Term> terms{{0.7, 0.5}, {0.0, 3.0}};
  CHECK(combine(terms, 0.95).degrees_used == 1.0);
  const Term four{0.1 * 0.1 * 1.2, 4.0};
  CHECK(combine({&four, 1}, 0.95).degrees_used == 4.0);
  const std::vector<Term> swamped{{1e-9, 2.0}, {1.0, k_infinite}};
  CHECK(std::isinf(combine(swamped, 0.95).degrees_used));
}

TEST_CASE("scatter_of: the noise of binary fractions is no spread", "[unit][measure]") {
  const std::vector<measure::Place> places{{{13.00, 15.40}}, {{13.10, 15.30}}, {{13.05, 15.35}}};
  const std::vector<PlaceFigures> figures = figures_of(places, 0.0);
  const Scatter scatter = scatter_of({&figures, 1});
  CHECK(scatter.standard_mm == 0.0);
  CHECK(scatter.degrees_of_freedom == 2.0);
}

TEST_CASE("scatter_of: pooled over cables about their own means", "[unit][measure]") {
  const std::vector<std::vector<PlaceFigures>> cables{
      {{10.0, 0, 1}, {10.2, 0, 1}}, {{20.0, 0, 1}, {20.4, 0, 1}}, {{30.0, 0, 1}}};
  const Scatter scatter = scatter_of(cables);
  CHECK(scatter.degrees_of_freedom == 2.0);
  CHECK(scatter.standard_mm == Approx(std::sqrt((0.02 + 0.08) / 2.0)));
}

TEST_CASE("known_ovality: the largest seen or declared", "[unit][measure]") {
  const std::vector<PlaceFigures> places{{15.0, 0.2, 2}, {15.0, 0.0, 1}, {15.0, 0.3, 3}};
  CHECK(known_ovality(places, {}) == 0.3);
  CHECK(known_ovality(places, 0.5) == 0.5);
  CHECK(known_ovality(places, 0.1) == 0.3);
  CHECK_FALSE(known_ovality({&places[1], 1}, {}).has_value());
}

TEST_CASE("need_readings: a reading equal to the zero is no diameter", "[unit][measure]") {
  const auto faults_of = [](double reading_mm, double zero_mm) {
    std::vector<Fault> faults;
    const std::vector<measure::Place> places{{{reading_mm}}};
    need_readings(faults, places, zero_mm, "x");
    return faults.size();
  };
  CHECK(faults_of(0.05, 0.05) == 1);
  CHECK(faults_of(0.0, 0.0) == 1);
  CHECK(faults_of(0.06, 0.05) == 0);
  CHECK(faults_of(300.0, 0.0) == 0);
  CHECK(faults_of(300.1, 0.0) == 1);
  CHECK(faults_of(300.1, 0.1) == 0);
}

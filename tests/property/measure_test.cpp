#include <rapidcheck.h>
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "cutback/io/standards.hpp"
#include "cutback/measure/estimate.hpp"
#include "cutback/measure/judge.hpp"

using namespace cutback;
using namespace cutback::measure;

namespace {

/// One to five places with one to three readings of a cable of about 15 mm, in hundredths.
std::vector<Place> some_places() {
  const int count = *rc::gen::inRange(1, 6);
  std::vector<Place> places(static_cast<std::size_t>(count));
  for (Place& place : places) {
    const int readings = *rc::gen::inRange(1, 4);
    for (int r = 0; r < readings; ++r) {
      place.readings_mm.push_back(*rc::gen::inRange(1400, 1600) / 100.0);
    }
  }
  return places;
}

MeasureInput some_input() {
  return {.places = some_places(),
          .caliper = {.step_mm = *rc::gen::inRange(0, 11) / 100.0,
                      .mpe_mm = *rc::gen::inRange(0, 11) / 100.0}};
}

Range some_range() {
  const double low = *rc::gen::inRange(1300, 1600) / 100.0;
  return {low, low + *rc::gen::inRange(0, 300) / 100.0};
}

bool near(double a, double b, double tolerance) { return std::abs(a - b) <= tolerance; }

}  // namespace

TEST_CASE("measure: readings typed are read back", "[property][measure]") {
  CHECK(rc::check("to_text then parse_places", [] {
    const std::vector<Place> places = some_places();
    const std::vector<Place> back = parse_places(to_text(places), "here");
    RC_ASSERT(back.size() == places.size());
    for (std::size_t i = 0; i < places.size(); ++i) {
      RC_ASSERT(back[i].readings_mm == places[i].readings_mm);
    }
  }));
}

TEST_CASE("measure: the order of readings within a place does not matter", "[property][measure]") {
  CHECK(rc::check("turned round", [] {
    MeasureInput in = some_input();
    const Estimate before = measure_here(in, {});
    for (Place& place : in.places) std::reverse(place.readings_mm.begin(), place.readings_mm.end());
    const Estimate after = measure_here(in, {});
    RC_ASSERT(before.value_mm == after.value_mm);
    RC_ASSERT(before.expanded_mm == after.expanded_mm);
    RC_ASSERT(before.caps.size() == after.caps.size());
  }));
}

TEST_CASE("measure: scaling everything scales every length", "[property][measure]") {
  CHECK(rc::check("times two to three", [] {
    const MeasureInput in = some_input();
    const double factor = *rc::gen::inRange(20, 31) / 10.0;
    MeasureInput scaled = in;
    for (Place& place : scaled.places) {
      for (double& reading : place.readings_mm) reading *= factor;
    }
    scaled.caliper.step_mm *= factor;
    *scaled.caliper.mpe_mm *= factor;
    const Range range = some_range();
    const Estimate one = measure_here(in, {});
    const Estimate other = measure_here(scaled, {});
    RC_ASSERT(near(other.value_mm, factor * one.value_mm, 1e-9));
    RC_ASSERT(near(other.standard_mm, factor * one.standard_mm, 1e-9));
    RC_ASSERT(near(other.expanded_mm, factor * one.expanded_mm, 1e-8));
    const Judgement before = judge(one, range);
    const Judgement after = judge(other, {factor * *range.low_mm, factor * *range.high_mm});
    RC_ASSERT(near(after.margin_mm, factor * before.margin_mm, 1e-8));
  }));
}

TEST_CASE("judge: a wider interval never gains a fits", "[property][measure]") {
  CHECK(rc::check("more uncertainty", [] {
    Estimate estimate = measure_here(some_input(), {});
    const Range range = some_range();
    const Judgement before = judge(estimate, range);
    // Not by a worse caliper: that brings more degrees of freedom, a smaller k, and may well narrow
    // the interval of a few scattered places.
    const double factor = 1.0 + *rc::gen::inRange(0, 300) / 100.0;
    estimate.standard_mm *= factor;
    estimate.expanded_mm *= factor;
    const Judgement after = judge(estimate, range);
    if (before.verdict != Verdict::fits) RC_ASSERT(after.verdict != Verdict::fits);
    if (before.verdict != Verdict::no_fit) RC_ASSERT(after.verdict != Verdict::no_fit);
    RC_ASSERT(after.margin_mm <= before.margin_mm);
  }));
}

TEST_CASE("judge: a wider range never loses a fits and never gains a no-fit",
          "[property][measure]") {
  CHECK(rc::check("more range", [] {
    const Estimate estimate = measure_here(some_input(), {});
    const Range range = some_range();
    const Range wider{*range.low_mm - *rc::gen::inRange(0, 100) / 100.0,
                      *range.high_mm + *rc::gen::inRange(0, 100) / 100.0};
    const Judgement before = judge(estimate, range);
    const Judgement after = judge(estimate, wider);
    if (before.verdict == Verdict::fits) RC_ASSERT(after.verdict == Verdict::fits);
    if (after.verdict == Verdict::no_fit) RC_ASSERT(before.verdict == Verdict::no_fit);
    RC_ASSERT(after.margin_mm >= before.margin_mm);
    RC_ASSERT(after.probability >= before.probability - 1e-12);
  }));
}

TEST_CASE("judge: the three probabilities make one", "[property][measure]") {
  CHECK(rc::check("sum", [] {
    const Estimate estimate = *rc::gen::arbitrary<bool>()
                                  ? measure_here(some_input(), {})
                                  : from_datasheet(15.0, *rc::gen::inRange(0, 200) / 100.0);
    const Judgement j = judge(estimate, some_range());
    RC_ASSERT(near(j.probability + j.probability_below + j.probability_above, 1.0, 1e-12));
    RC_ASSERT(j.probability >= 0.0);
    if (j.verdict == Verdict::fits && estimate.spread == Spread::student) {
      RC_ASSERT(j.probability >= 0.95 - 1e-3);
    }
  }));
}

#include <rapidcheck.h>
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <random>

#include "core/measure/budget.hpp"
#include "cutback/measure/drums.hpp"
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
  CHECK(rc::check("times 1.1 to 1.4", [] {
    const MeasureInput in = some_input();
    // Above 25 mm a diameter is known to 0.5 mm, whatever its scale.
    const double factor = *rc::gen::inRange(11, 15) / 10.0;
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

TEST_CASE("measure: one more place with the same spread never widens the interval",
          "[property][measure]") {
  CHECK(rc::check("n to n + 1", [] {
    const detail::Scatter scatter{*rc::gen::inRange(0, 50) / 100.0,
                                  static_cast<double>(*rc::gen::inRange(1, 40))};
    const auto places = static_cast<std::size_t>(*rc::gen::inRange(1, 40));
    const double caliper = *rc::gen::inRange(0, 10) / 100.0;
    const auto expanded = [&](std::size_t more) {
      const detail::Scatter with{scatter.standard_mm,
                                 scatter.degrees_of_freedom + static_cast<double>(more)};
      const std::vector<detail::Term> terms{
          detail::new_place_term(with, places + more),
          {caliper * caliper, std::numeric_limits<double>::infinity()}};
      return detail::combine(terms, 0.95).expanded;
    };
    for (std::size_t more = 0; more < 20; ++more) {
      RC_ASSERT(expanded(more + 1) <= expanded(more) * (1.0 + 1e-12));
    }
  }));
}

TEST_CASE("drums: their order does not change the answer", "[property][measure]") {
  CHECK(rc::check("turned round", [] {
    DrumsInput in;
    const int count = *rc::gen::inRange(1, 5);
    for (int i = 0; i < count; ++i) in.drums.push_back({std::to_string(i), some_places()});
    in.caliper = {.step_mm = 0.05, .mpe_mm = 0.05};
    in.range = some_range();
    in.unmeasured = *rc::gen::arbitrary<bool>();
    in.between_mm = 0.3;
    const DrumsResult before = analyse_drums(in, {});
    std::reverse(in.drums.begin(), in.drums.end());
    const DrumsResult after = analyse_drums(in, {});
    RC_ASSERT(before.judgement.verdict == after.judgement.verdict);
    RC_ASSERT(near(before.estimate.value_mm, after.estimate.value_mm, 1e-9));
    RC_ASSERT(near(before.estimate.expanded_mm, after.estimate.expanded_mm, 1e-9));
    for (const DrumResult& drum : before.drums) {
      RC_ASSERT(in.unmeasured || before.judgement.verdict <= drum.judgement.verdict);
    }
  }));
}

TEST_CASE("drums: the interval holds a new place about as often as it says",
          "[property][measure]") {
  struct Row {
    int drums, places;
    double spread_mm, step_mm, mpe_mm, least, most;
  };
  // Shares that an independent simulation of 20 000 jobs gave, give or take its noise and ours.
  for (const Row& row :
       {Row{1, 3, 0.05, 0.02, 0.03, 0.915, 0.939}, Row{1, 5, 0.05, 0.02, 0.03, 0.936, 0.960},
        Row{1, 8, 0.05, 0.05, 0.05, 0.946, 0.970}, Row{3, 4, 0.05, 0.02, 0.03, 0.940, 0.964}}) {
    constexpr int k_jobs = 2500;
    std::mt19937_64 random(20261125);
    std::normal_distribution<double> normal;
    std::uniform_real_distribution<double> even(-1.0, 1.0);
    int held = 0;
    for (int job = 0; job < k_jobs; ++job) {
      const double error = row.mpe_mm * even(random);
      DrumsInput in;
      in.caliper = {.step_mm = row.step_mm, .mpe_mm = row.mpe_mm};
      for (int d = 0; d < row.drums; ++d) {
        Drum& drum = in.drums.emplace_back();
        for (int p = 0; p < row.places; ++p) {
          const double shown = 15.0 + row.spread_mm * normal(random) + error;
          const double reading = std::round(shown / row.step_mm) * row.step_mm;
          drum.places.push_back({{reading, reading}});
        }
      }
      const DrumsResult result = analyse_drums(in, {});
      const Estimate& estimate = result.drums.front().estimate;
      const double new_place = 15.0 + row.spread_mm * normal(random);
      if (new_place >= estimate.low_mm() && new_place <= estimate.high_mm()) ++held;
    }
    const double share = static_cast<double>(held) / k_jobs;
    INFO(row.drums << " drums, " << row.places << " places: " << share);
    CHECK(share >= row.least);
    CHECK(share <= row.most);
  }
}

// A finished end never gets a verdict better than its readings carry, whatever the schedule says of
// it.
#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include "cutback/schedule/decide.hpp"
#include "support/any.hpp"

using namespace cutback;

namespace {

measure::Readings any_readings(const char* key) {
  return measure::Readings(test::any_text(job::field_named(key)), key);
}

}  // namespace

TEST_CASE("law: a finished end is judged by its readings", "[property][made]") {
  CHECK(rc::check("as if it had been measured so, and never better", [] {
    const job::JobInput planned = test::any_end(3);
    schedule::MadeEnd made;
    made.part = "TEST-20";
    if (*rc::gen::arbitrary<bool>()) made.sheath_od = any_readings("sheath_od_mm");
    if (*rc::gen::arbitrary<bool>()) made.bedding = any_readings("bedding_mm");
    if (*rc::gen::arbitrary<bool>()) made.armour = any_readings("armour_mm");
    const std::vector<gland::Gland> glands{test::small_gland()};
    const fit::Selector selector(glands, fit::Prefer::price);
    const schedule::Settings settings{.standards = &test::standards(), .glands = &selector};
    const schedule::Decision finished = schedule::decide(planned, settings, nullptr, {}, &made);
    RC_ASSERT(finished.made);
    // Each reading alone, the rest as the schedule has it: none is carried beyond that.
    job::Job job;
    try {
      job = schedule::resolve_made(planned, made, test::standards());
    } catch (const InputError&) {
      RC_ASSERT(!finished.usable());
      return;
    }
    if (!finished.usable() || !job.cable.sheath_od) return;
    const auto carries = [&](const std::optional<measure::Readings>& readings,
                             const std::optional<measure::Estimate>& estimate,
                             measure::Section section) {
      if (!readings) return true;
      const measure::Estimate alone =
          measure::measure_here({.places = readings->places,
                                 .caliper = job.caliper,
                                 .section = section,
                                 .declared_ovality_mm = planned.ovality_mm},
                                test::standards().caliper_limits);
      return estimate->evidence == measure::Evidence::measured &&
             estimate->value_mm == alone.value_mm && estimate->expanded_mm == alone.expanded_mm &&
             estimate->caps.size() == alone.caps.size();
    };
    RC_ASSERT(carries(made.sheath_od, job.cable.sheath_od, measure::Section::oval));
    RC_ASSERT(carries(made.bedding, job.cable.bedding, measure::Section::oval));
    const fit::Question question = fit::ask(job, test::standards(), settings.asking);
    RC_ASSERT(finished.verdict == fit::check_gland(question, glands.front()).verdict);
    if (finished.state == fit::State::fits) {
      RC_ASSERT(job.cable.sheath_od->evidence == measure::Evidence::measured);
    }
  }));
}

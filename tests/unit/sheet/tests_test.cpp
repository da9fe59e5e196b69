// What the tests of a finished end must read.
#include <catch2/catch.hpp>

#include "cutback/sheet/sheet.hpp"
#include "support/build_job.hpp"

using namespace cutback;
using Catch::Contains;

namespace {

std::vector<sheet::Test> tests_of(job::JobInput in) {
  in.reach_mm = 200.0;
  in.strip_mm = 10.0;
  const job::Job job = test::resolved(in);
  const std::vector<gland::Gland> glands{test::small_gland()};
  const fit::Question question = fit::ask(job, test::standards());
  const auto ranked = fit::fit_all(question, glands, fit::Prefer::price);
  return sheet::make_sheet(question, sheet::choose(job, ranked, ""), "test").tests;
}

sheet::Test find(const std::vector<sheet::Test>& tests, const std::string& name) {
  for (const sheet::Test& test : tests) {
    if (test.name == name) return test;
  }
  FAIL("no test " << name);
  return {};
}

}  // namespace

TEST_CASE("sheet: the armour's resistance is a maximum at 20 degC", "[unit][sheet]") {
  job::JobInput in = test::small_cable();
  in.length_m = 100.0;
  const sheet::Test test = find(tests_of(in), "armour, end to end");
  // 138 x 1.07434 x 100 / (20.358 mm2 x 0.8920 x 1000)
  CHECK(*test.most == Approx(0.8165).margin(0.00011));
  CHECK(test.says == "at most 0.8165 ohm at 20 degC (100 m)");
  CHECK_FALSE(test.least.has_value());
  in.length_m.reset();
  const sheet::Test without = find(tests_of(in), "armour, end to end");
  CHECK_FALSE(without.most.has_value());
  CHECK_THAT(without.says, Contains("length"));
}

TEST_CASE("sheet: the insulation test goes by the voltage between lines", "[unit][sheet]") {
  job::JobInput in = test::small_cable();
  const auto says = [&] { return find(tests_of(in), "insulation").says; };
  CHECK(says() == "at least 1.0 Mohm at 500 V d.c.; over 500 V nominal 1000 V d.c.");
  in.u0_v = 230.0;  // 398 V
  CHECK(says() == "at least 1.0 Mohm at 500 V d.c.");
  in.u0_v = 400.0;  // 693 V
  CHECK(says() == "at least 1.0 Mohm at 1000 V d.c.");
  in.u0_v = 1900.0;
  CHECK_THAT(says(), Contains("no figure"));
}

TEST_CASE("sheet: bend and first support stand among the tests", "[unit][sheet]") {
  job::JobInput in = test::small_cable();
  in.cores = 3;
  in.csa_mm2 = 2.5;
  const auto tests = tests_of(in);
  CHECK(*find(tests, "bend outside the gland").least == 90.0);
  CHECK(*find(tests, "first support").most == 150.0);
}

TEST_CASE("sheet: a hazardous place asks for gas-free conditions before a test", "[unit][sheet]") {
  const auto asked = [](const std::optional<area::Zone>& zone) {
    job::JobInput in = test::small_cable();
    in.zone = zone;
    // A gland that is outside has no steps: all that does not speak of the zone is left open.
    in.hole.reset();
    const job::Job job = test::resolved(in);
    std::vector<gland::Gland> glands{test::small_gland()};
    glands.front().sealing = gland::Sealing::barrier;
    const fit::Question question = fit::ask(job, test::standards());
    const auto ranked = fit::fit_all(question, glands, fit::Prefer::price);
    const sheet::Sheet made = sheet::make_sheet(question, sheet::choose(job, ranked, ""), "test");
    for (const sheet::Step& step : made.steps) {
      if (step.text.find("gas-free") != std::string::npos) return step.hold;
    }
    return false;
  };
  CHECK(asked(area::Zone::zone_1));
  CHECK_FALSE(asked(area::Zone::none));
  CHECK_FALSE(asked({}));
}

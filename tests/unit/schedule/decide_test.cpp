#include "cutback/schedule/decide.hpp"

#include <catch2/catch.hpp>

#include "support/build_job.hpp"

using namespace cutback;
using Catch::Contains;
using schedule::Accessories;
using schedule::Decision;

namespace {

Decision decided(const job::JobInput& in, const std::vector<gland::Gland>& glands) {
  const fit::Selector selector(glands, fit::Prefer::price);
  return schedule::decide(in, {.standards = &test::standards(), .glands = &selector});
}

const std::vector<gland::Gland> k_small{test::small_gland()};

}  // namespace

TEST_CASE("decide: the gland and margins that fit gives", "[unit][schedule]") {
  const Decision decision = decided(test::small_cable(), k_small);
  const auto fit = test::checked(test::small_cable(), k_small.front());
  REQUIRE(decision.usable());
  CHECK(decision.verdict == Verdict::fits);
  CHECK(decision.gland == &k_small.front());
  CHECK(decision.fits == 1);
  CHECK(decision.outer_margin_mm == fit.find(fit::CheckName::outer_seal)->margin_mm);
  CHECK(decision.inner_margin_mm == fit.find(fit::CheckName::inner_seal)->margin_mm);
  CHECK(decision.barrier == false);
  CHECK(decision.proven);
  CHECK(decision.reason == "the only one that fits; measure before cutting");
}

TEST_CASE("decide_asked: the gland's own checks stand beside the decision", "[unit][schedule]") {
  const fit::Selector selector(k_small, fit::Prefer::price);
  const schedule::Settings settings{.standards = &test::standards(), .glands = &selector};
  for (const char* sheath : {"14.9+15.1", "15.0", "24.9+25.1"}) {  // fits, may fit, does not
    job::JobInput in = test::small_cable();
    in.sheath_od_mm = sheath;
    const schedule::AskedEnd end = schedule::decide_asked(in, settings);
    REQUIRE(end.fit);
    CHECK(end.question.job == end.job.get());
    CHECK(end.fit->gland == &k_small.front());
    CHECK(end.fit->verdict == end.decision.verdict);
    CHECK(end.fit->checks.size() == fit::check_gland(end.question, k_small.front()).checks.size());
    CHECK(end.decision.reason == schedule::decide(in, settings).reason);
  }
  job::JobInput exchanged = test::small_cable();
  exchanged.bedding_mm = "16.0+16.1";
  const schedule::AskedEnd unusable = schedule::decide_asked(exchanged, settings);
  CHECK_FALSE(unusable.decision.usable());
  CHECK(unusable.job == nullptr);
  CHECK_FALSE(unusable.fit);
}

TEST_CASE("decide: one figure without evidence is a datasheet's", "[unit][schedule]") {
  job::JobInput in = test::small_cable();
  in.sheath_od_mm = "15.0";  // +- 2 reaches past 16
  const Decision decision = decided(in, k_small);
  CHECK(decision.verdict == Verdict::marginal_inside);
  CHECK(decision.gland == &k_small.front());
  CHECK(decision.fits == 0);
  CHECK_FALSE(decision.proven);
  CHECK_THAT(decision.change, Contains("measure the sheath"));
  CHECK(decision.group == "outer-seal marginal-inside");
}

TEST_CASE("decide: marks where a route is given", "[unit][schedule]") {
  job::JobInput in = test::small_cable();
  in.reach_mm = 170.0;
  in.strip_mm = 10.0;
  const Decision decision = decided(in, k_small);
  // w = 1.5 + 2.5, tip = 4 + 180; b = max(15, 4 + 4) + 5; a = 20, e = 10.5
  CHECK(decision.bedding_cut_mm == Approx(184.0 - 20.0));
  CHECK(decision.armour_cut_mm == Approx(184.0 + 20.0));
  CHECK(decision.sheath_cut_mm == Approx(184.0 + 20.0 + 10.5));
}

TEST_CASE("decide: a gland whose cuts contradict each other is an exception", "[unit][schedule]") {
  job::JobInput in = test::small_cable();
  in.reach_mm = 5.0;
  in.strip_mm = 100.0;
  const Decision decision = decided(in, k_small);
  CHECK(decision.verdict == Verdict::fits);
  CHECK_FALSE(decision.proven);
  CHECK(decision.group == "no marks");
  CHECK_FALSE(decision.armour_cut_mm);
}

// By hand: sqrt(4000^2 x 1 s)/46 = 87 mm2 (IEC 60364-5-54:2011 543.1.2; k 46, BS 7671 table 54.4);
// a 3 x 2.5 mm2 cable has far less armour.
TEST_CASE("decide: armour too thin for the earth fault is an exception", "[unit][schedule]") {
  job::JobInput in = test::small_cable();
  in.cores = 3.0;
  in.csa_mm2 = 2.5;
  in.insulation = cable::Insulation::xlpe;
  const Decision without = decided(in, k_small);
  REQUIRE(without.proven);
  auto glands = k_small;
  glands.front().fault_ka = 10.0;  // the gland itself would carry it
  in.current_ka = 4.0;
  in.time_s = 1.0;
  const Decision decision = decided(in, glands);
  CHECK(decision.verdict == Verdict::no_fit);
  CHECK_FALSE(decision.proven);
  CHECK(decision.group == "earth armour too thin");
  CHECK(decision.change == "decide on a separate protective conductor");
  CHECK_THAT(decision.reason, Contains("86.96 mm2 needed"));
  in.current_ka = 0.2;
  CHECK(decided(in, glands).proven);
}

TEST_CASE("decide: what cannot be true is a fault of the row", "[unit][schedule]") {
  job::JobInput in = test::small_cable();
  in.bedding_mm = "16.0+16.1";
  CHECK_FALSE(decided(in, k_small).usable());
  CHECK_THAT(decided(in, k_small).faults.front().what, Contains("not smaller than the sheath"));
  in = {};
  in.bedding_mm.reset();
  const Decision open = decided(in, k_small);  // what is missing is no contradiction
  CHECK(open.verdict == Verdict::not_known);
  CHECK_THAT(open.reason, Contains("sheath diameter"));
}

TEST_CASE("decide: where only the thread is wrong an adaptor is proposed", "[unit][schedule]") {
  job::JobInput in = test::small_cable();
  in.entry = "M25";
  const Decision decision = decided(in, k_small);
  CHECK(decision.verdict == Verdict::no_fit);
  CHECK(decision.gland == nullptr);
  CHECK(decision.nearest == &k_small.front());
  CHECK(decision.change == "a reducer M25 to M20 for TEST-20");
  in.adaptor = "M25:M20";
  in.adaptor_mm = 10.0;
  in.adaptor_thread_mm = 10.0;
  in.adaptor_bore_mm = 14.0;
  const Decision with = decided(in, k_small);
  CHECK(with.verdict == Verdict::fits);
  REQUIRE(with.accessories != nullptr);
  CHECK(*with.accessories ==
        Accessories{{"adaptor", "M25 to M20"}, {"sealing washer", "M25"}, {"locknut", "M25"}});
}

TEST_CASE("decide: a clearance hole takes washer and locknut, and wants its wall",
          "[unit][schedule]") {
  job::JobInput in = test::small_cable();
  const Accessories both{{"sealing washer", "M20"}, {"locknut", "M20"}};
  CHECK(*decided(in, k_small).accessories == both);
  in.wall_mm.reset();
  const Decision without = decided(in, k_small);
  CHECK(without.verdict == Verdict::not_known);
  CHECK_THAT(without.reason, Contains("wall"));
}

TEST_CASE("decide: where nothing is near the change is what to order", "[unit][schedule]") {
  job::JobInput in = test::small_cable();
  in.sheath_od_mm = "24.9+25.1";
  in.bedding_mm = "18.9+19.1";
  const Decision decision = decided(in, k_small);
  CHECK(decision.verdict == Verdict::no_fit);
  CHECK_THAT(decision.reason, Contains("TEST-20") && Contains("too small"));
  CHECK_THAT(decision.change, Contains("order a gland with thread M20"));
}

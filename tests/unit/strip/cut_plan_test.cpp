#include "cutback/strip/cut_plan.hpp"

#include <catch2/catch.hpp>

#include "cutback/error.hpp"
#include "support/build_job.hpp"

using namespace cutback;
using Catch::Contains;

namespace {

job::JobInput with_reach() {
  job::JobInput in = test::small_cable();
  in.reach_mm = 180;
  in.strip_mm = 10;
  in.slack_mm = 40;
  in.cores = 3;
  return in;
}

strip::CutPlan plan(const job::JobInput& in, const gland::Gland& gland) {
  return strip::plan_cuts(test::resolved(in), gland, {});
}

}  // namespace

TEST_CASE("plan_cuts: the marks redone by hand", "[unit][strip]") {
  const auto p = plan(with_reach(), test::small_gland());
  // w = 1.5 + 2.5 = 4; b = max(15, 4 + 4) + 5 = 20; tip = 4 + 180 + 10 + 40 = 234
  CHECK(*p.axis.inside_face_mm == Approx(4.0));
  CHECK(*p.axis.bedding_end_mm == Approx(20.0));
  CHECK(*p.marks.shoulder_mm == Approx(234.0));
  CHECK(*p.marks.bedding_cut_mm == Approx(214.0));
  CHECK(*p.marks.armour_cut_mm == Approx(254.0));
  CHECK(*p.marks.sheath_cut_mm == Approx(264.5));
  REQUIRE(p.tails.size() == 3);
  CHECK(*p.tails[0].length_mm == Approx(214.0));
  CHECK(p.tails[0].cut_back_mm == Approx(0.0));
  CHECK(p.missing.empty());
}

TEST_CASE("plan_cuts: a tail without a strip length has no length", "[unit][strip]") {
  job::JobInput in = with_reach();
  in.strip_mm.reset();
  const auto p = plan(in, test::small_gland());
  REQUIRE(p.tails.size() == 3);
  CHECK_FALSE(p.tails[0].length_mm.has_value());
  CHECK(*p.tails[0].less_strip_mm == Approx(204.0));
  // Nor has any mark a figure from the end: it would be a strip length short.
  CHECK_FALSE(p.marks.armour_cut_mm.has_value());
  CHECK_FALSE(p.marks.bedding_cut_mm.has_value());
  CHECK_FALSE(p.marks.sheath_cut_mm.has_value());
  CHECK_FALSE(p.marks.shoulder_mm.has_value());
  CHECK(*p.marks.exposed_min_mm == Approx(10.5));
  CHECK_FALSE(plan(with_reach(), test::small_gland()).tails[0].less_strip_mm.has_value());
}

TEST_CASE("plan_cuts: exposed 10.5 is cut at 10.5 to 11", "[unit][strip]") {
  // Common practice, no source.
  const auto p = plan(with_reach(), test::small_gland());
  CHECK(*p.marks.exposed_min_mm == Approx(10.5));
  CHECK(*p.marks.exposed_max_mm == Approx(11.0));
}

TEST_CASE("plan_cuts: depths from the readings and from the construction", "[unit][strip]") {
  const auto p = plan(with_reach(), test::small_gland());
  CHECK(*p.depths.sheath_mm == Approx(1.6));
  // t_min + wire less the spread: 0.8 x 1.6 - 0.2 + 0.9 - 0.07 = 1.91, under 1.6 + 0.45
  CHECK(*p.depths.saw_mm == Approx(1.9));
  CHECK(*p.depths.saw_limit_mm == Approx(1.9));
  CHECK_FALSE(p.depths.bedding_mm.has_value());
  CHECK(*strip::plan_cuts(test::resolved(with_reach()), test::small_gland(),
                          {.bedding_thickness_mm = 0.88})
             .depths.bedding_mm == Approx(0.5));  // 0.8 x 0.88 - 0.2 = 0.504 (HD 604 S1/A1)
}

TEST_CASE("plan_cuts: a tapped hole has no locknut and a long stack moves the bedding",
          "[unit][strip]") {
  auto gland = test::small_gland();
  gland.entry_length_mm = 5.0;
  CHECK(*plan(with_reach(), gland).axis.bedding_end_mm == Approx(13.0));  // 4 + 4 + 5
  auto in = with_reach();
  in.hole = entry::Hole::threaded;
  CHECK(*plan(in, gland).axis.bedding_end_mm == Approx(10.0));  // max(5, 4) + 5
}

TEST_CASE("plan_cuts: washer and locknut of the entry before the gland's", "[unit][strip]") {
  auto gland = test::small_gland();
  gland.washer_mm = 2.0;
  CHECK(*plan(with_reach(), gland).axis.inside_face_mm == Approx(4.0));
  auto in = with_reach();
  in.washer_mm.reset();
  CHECK(*plan(in, gland).axis.inside_face_mm == Approx(4.5));
}

TEST_CASE("plan_cuts: routes by coordinates with their bends", "[unit][strip]") {
  auto in = with_reach();
  in.bend_radius_mm = 12;
  in.reach_mm.reset();
  in.core_list = {{.core = "U", .reach_mm = 180.0},
                  {.core = "V", .x_mm = 120.0, .y_mm = 75.0},
                  {.core = "PE", .spare = true}};
  const auto p = plan(in, test::small_gland());
  // V: 120 + 75 - 0.4292 x 12 = 189.85; tip 4 + 189.85 + 10 + 40 = 243.85 -> 244
  CHECK(p.tails[1].tip_mm == Approx(244.0));
  CHECK(p.tails[0].cut_back_mm == Approx(10.0));
  // the spare reaches as far, here with the strip length of all
  CHECK(p.tails[2].tip_mm == Approx(244.0));
  CHECK(*p.marks.shoulder_mm == Approx(244.0));
}

TEST_CASE("plan_cuts: nothing is guessed where a figure is missing", "[unit][strip]") {
  auto gland = test::small_gland();
  gland.armour_stop_mm.reset();
  auto p = plan(with_reach(), gland);
  CHECK_FALSE(p.marks.armour_cut_mm.has_value());
  CHECK_FALSE(p.marks.sheath_cut_mm.has_value());
  CHECK(p.marks.bedding_cut_mm.has_value());
  CHECK_THAT(p.missing.front(), Contains("shoulder mark"));
  auto in = with_reach();
  in.armour_stop_mm = 22;
  CHECK(*plan(in, gland).marks.armour_cut_mm == Approx(256.0));
  in.reach_mm.reset();
  p = plan(in, gland);
  CHECK_FALSE(p.marks.shoulder_mm.has_value());
  CHECK(p.tails.empty());
  CHECK_THAT(p.missing.back(), Contains("reach_mm"));
}

TEST_CASE("plan_cuts: barrier uses the gland's own bedding end", "[unit][strip]") {
  auto gland = test::small_gland();
  gland.bedding_end_mm = -8.0;
  const auto p = strip::plan_cuts(test::resolved(with_reach()), gland, {.barrier = true});
  CHECK(*p.marks.bedding_cut_mm == Approx(242.0));
}

TEST_CASE("plan_cuts: a bedding behind the armour and a tail shorter than its strip are refused",
          "[unit][strip]") {
  auto gland = test::small_gland();
  gland.bedding_end_mm = -20.0;
  CHECK_THROWS_WITH(strip::plan_cuts(test::resolved(with_reach()), gland, {.barrier = true}),
                    Contains("behind the armour") && Contains("-20 mm"));
  auto in = with_reach();
  in.reach_mm = 2;
  in.slack_mm = 0;
  in.strip_mm = 30;
  CHECK_THROWS_WITH(plan(in, test::small_gland()),
                    Contains("strip 30 mm") && Contains("tail 16 mm"));
}

TEST_CASE("plan_cuts: an unarmoured cable has one cut", "[unit][strip]") {
  auto in = with_reach();
  in.armour = cable::ArmourKind::none;
  in.armour_mm.reset();
  in.bedding_mm.reset();
  auto gland = test::small_gland();
  gland.armour = cable::ArmourKind::none;
  const auto p = plan(in, gland);
  CHECK(*p.marks.sheath_cut_mm == Approx(214.0));
  CHECK_FALSE(p.marks.armour_cut_mm.has_value());
  CHECK_FALSE(p.marks.bedding_cut_mm.has_value());
  CHECK_FALSE(p.depths.saw_mm.has_value());
  gland.entry_length_mm.reset();  // nobody knows where the sheath ends
  CHECK_FALSE(plan(in, gland).marks.sheath_cut_mm.has_value());
}

TEST_CASE("plan_cuts: what is missing is named, and nothing else", "[unit][strip]") {
  auto in = with_reach();
  in.locknut_mm.reset();
  CHECK_THAT(plan(in, test::small_gland()).missing.front(),
             Contains("locknut") && !Contains("not given: ,") && !Contains("--adaptor-length") &&
                 !Contains("entry thread"));
}

TEST_CASE("plan_cuts: an adaptor moves the shoulder outward", "[unit][strip]") {
  auto in = with_reach();
  const strip::Termination how{.adaptor = true};
  auto p = strip::plan_cuts(test::resolved(in), test::small_gland(), how);
  CHECK_FALSE(p.marks.shoulder_mm.has_value());
  CHECK(p.tails.empty());
  CHECK_THAT(p.missing.front(), Contains("--adaptor-length") && Contains("--adaptor-thread"));
  in.adaptor_mm = 12;
  p = strip::plan_cuts(test::resolved(in), test::small_gland(), how);
  CHECK(*p.marks.shoulder_mm == Approx(246.0));  // 12 more than without
  CHECK_FALSE(p.marks.bedding_cut_mm.has_value());
  in.adaptor_thread_mm = 10;
  p = strip::plan_cuts(test::resolved(in), test::small_gland(), how);
  // b = max(15, 12 + max(10, 1.5 + 2.5 + 4)) + 5 = 27
  CHECK(*p.axis.bedding_end_mm == Approx(27.0));
  in.adaptor_thread_mm = 6;
  p = strip::plan_cuts(test::resolved(in), test::small_gland(), how);
  CHECK(*p.axis.bedding_end_mm == Approx(25.0));
  in.adaptor_mm = 2;
  p = strip::plan_cuts(test::resolved(in), test::small_gland(), how);
  CHECK(*p.axis.bedding_end_mm == Approx(20.0));  // the gland's own thread reaches further
}

TEST_CASE("plan_cuts: behind an adaptor the gland's washer and locknut do not count",
          "[unit][strip]") {
  auto gland = test::small_gland();
  gland.washer_mm = 2.0;
  gland.locknut_mm = 3.0;
  auto in = with_reach();
  in.washer_mm.reset();
  in.locknut_mm.reset();
  CHECK(plan(in, gland).marks.bedding_cut_mm.has_value());
  in.adaptor_mm = 12;
  in.adaptor_thread_mm = 10;
  const auto p = strip::plan_cuts(test::resolved(in), gland, {.adaptor = true});
  CHECK_FALSE(p.marks.shoulder_mm.has_value());
  CHECK_THAT(p.missing.front(),
             Contains("sealing washer of the adaptor") && Contains("locknut of the adaptor"));
}

TEST_CASE("plan_cuts: a figure that is missing is never nought", "[unit][strip]") {
  const auto lacking = [](std::optional<double> job::JobInput::*member) {
    auto in = with_reach();
    in.*member = std::nullopt;
    return plan(in, test::small_gland());
  };
  for (const auto member : {&job::JobInput::wall_mm, &job::JobInput::washer_mm}) {
    const auto p = lacking(member);
    CHECK_FALSE(p.axis.inside_face_mm.has_value());
    CHECK_FALSE(p.marks.shoulder_mm.has_value());
    CHECK_FALSE(p.marks.armour_cut_mm.has_value());
    CHECK_THAT(p.missing.front(), Contains("no mark has a figure"));
  }
  // Without the locknut only the end of the bedding is not known.
  const auto p = lacking(&job::JobInput::locknut_mm);
  CHECK(*p.marks.shoulder_mm == Approx(234.0));
  CHECK_FALSE(p.marks.bedding_cut_mm.has_value());
  CHECK_THAT(p.missing.front(), Contains("locknut") && Contains("no mark for the bedding cut"));
  auto no_hole = with_reach();
  no_hole.hole.reset();
  auto gland = test::small_gland();
  // 15 mm of thread stand out of wall and locknut in a hole of either kind, 7 mm do not.
  CHECK(*plan(no_hole, gland).axis.bedding_end_mm == Approx(20.0));
  gland.entry_length_mm = 7.0;
  CHECK_FALSE(plan(no_hole, gland).marks.bedding_cut_mm.has_value());
  gland.entry_length_mm.reset();
  CHECK_FALSE(plan(with_reach(), gland).marks.bedding_cut_mm.has_value());
}

TEST_CASE("plan_cuts: bends that do not fit into the route", "[unit][strip]") {
  auto in = with_reach();
  in.bend_radius_mm = 12;
  in.reach_mm.reset();
  in.cores = 1;
  in.core_list = {{.core = "U", .x_mm = 1.0, .y_mm = 1.0}};
  const auto tight = plan(in, test::small_gland());
  CHECK_THAT(tight.missing.back(), Contains("cannot be made"));
  CHECK_THAT(tight.tails.at(0).route, Catch::StartsWith("1 + 1 = 2"));  // nothing is taken off
  in.core_list = {{.core = "U", .x_mm = 100.0, .y_mm = 5.0}};
  CHECK_THAT(plan(in, test::small_gland()).missing.back(), Contains("cannot be made"));
}

TEST_CASE("plan_cuts: each fact that the axis lacks is named once, with what to do",
          "[unit][strip]") {
  using Sentences = std::vector<std::string>;
  const auto missing = [](const job::JobInput& in, const gland::Gland& gland,
                          const strip::Termination& how = {}) {
    return strip::plan_cuts(test::resolved(in), gland, how).missing;
  };
  const std::string no_bedding = ": no mark for the bedding cut; give it and print again";
  const std::string no_mark =
      ": no mark has a figure from the cable's end; give it and print again";
  auto in = with_reach();
  in.locknut_mm.reset();
  CHECK(missing(in, test::small_gland()) == Sentences{"not given: locknut" + no_bedding});
  in = with_reach();
  in.wall_mm.reset();
  in.washer_mm.reset();
  CHECK(missing(in, test::small_gland()) ==
        Sentences{"not given: wall, sealing washer (0: none)" + no_mark});

  auto gland = test::small_gland();
  gland.entry_length_mm.reset();
  CHECK(missing(with_reach(), gland) ==
        Sentences{"not given: the length of the gland's entry thread" + no_bedding});
  gland = test::small_gland();
  gland.exposed_armour_mm.reset();
  CHECK(missing(with_reach(), gland) ==
        Sentences{"exposed_armour_mm of the gland is not stated: take it from the gland's "
                  "instructions"});

  const std::string length =
      "the length of the adaptor between its washer and the gland's (--adaptor-length)";
  CHECK(missing(with_reach(), test::small_gland(), {.adaptor = true}) ==
        Sentences{"not given: " + length +
                  ", the length of the adaptor's own thread (--adaptor-thread)" + no_mark});
  gland = test::small_gland();
  gland.bedding_end_mm = -8.0;
  CHECK(missing(with_reach(), gland, {.barrier = true, .adaptor = true}) ==
        Sentences{"not given: " + length + no_mark});
  in = with_reach();
  in.adaptor_mm = 12;
  CHECK(missing(in, test::small_gland(), {.adaptor = true}) ==
        Sentences{"not given: the length of the adaptor's own thread (--adaptor-thread)" +
                  no_bedding});
}

TEST_CASE("plan_cuts: a barrier gland that does not say where the bedding ends", "[unit][strip]") {
  const auto p =
      strip::plan_cuts(test::resolved(with_reach()), test::small_gland(), {.barrier = true});
  REQUIRE(p.missing.size() == 1);
  CHECK_THAT(p.missing[0], Catch::StartsWith("bedding_end_mm of the gland is not stated"));
  REQUIRE(p.lacks.size() == 1);
  CHECK(p.lacks[0].fact == "bedding_end_mm of the gland");
  CHECK(p.lacks[0].where == fit::Lack::Where::elsewhere);
  CHECK(*p.marks.shoulder_mm == Approx(234.0));
  CHECK_FALSE(p.marks.bedding_cut_mm.has_value());
}

TEST_CASE("plan_cuts: a route is written so that a pencil can redo it", "[unit][strip]") {
  auto in = with_reach();
  in.reach_mm.reset();
  const auto routes = [&](std::optional<double> radius) {
    in.bend_radius_mm = radius;
    std::vector<std::string> texts;
    for (const strip::Tail& tail : plan(in, test::small_gland()).tails) texts.push_back(tail.route);
    return texts;
  };
  using Sentences = std::vector<std::string>;
  in.core_list = {{.core = "U", .reach_mm = 180.5},
                  {.core = "V", .x_mm = -120.0, .y_mm = 75.0, .z_mm = 0.0},
                  {.core = "PE", .spare = true}};
  CHECK(routes(12.0) ==
        Sentences{"180.5", "120 + 75 - 1 x 0.4292 x 12 = 189.8", "as the furthest, 189.8"});
  CHECK(routes(2.0)[1] == "120 + 75 - 1 x 0.4292 x 2 = 194.1");
  CHECK(routes({})[1] == "120 + 75 = 195");
  CHECK(plan(in, test::small_gland()).tails[1].tip_mm == Approx(249.0));  // 4 + 195 + 10 + 40
  in.core_list[1].z_mm = 30.0;
  CHECK(routes(12.0)[1] == "120 + 75 + 30 - 2 x 0.4292 x 12 = 214.7");
  in.core_list[1] = {.core = "V", .x_mm = 1.0, .y_mm = 1.0};
  CHECK(routes(12.0)[1] == "1 + 1 = 2");
  in.core_list[1] = {.core = "V", .x_mm = 12.0, .y_mm = 12.0};  // a leg as long as the radius
  CHECK(routes(12.0)[1] == "12 + 12 - 1 x 0.4292 x 12 = 18.8");
  in.core_list[1] = {.core = "V", .x_mm = 5.0};
  CHECK(routes(12.0)[1] == "5 = 5");
}

TEST_CASE("plan_cuts: a core without a strip length adds nothing and says so", "[unit][strip]") {
  auto in = with_reach();
  in.strip_mm.reset();
  const auto p = plan(in, test::small_gland());
  CHECK(*p.axis.tip_mm == Approx(224.0));  // 4 + 180 + 40
  REQUIRE(p.missing.size() == 1);
  CHECK_THAT(p.missing[0], Catch::StartsWith("strip_mm is not given for every core"));
  REQUIRE(p.lacks.size() == 1);
  CHECK(p.lacks[0].key == "strip_mm");
  // The tail of 1 mm is longer than nothing, one of 0 mm is not: the bedding ends at 20.
  in.slack_mm = 0;
  in.reach_mm = 17;
  CHECK(*plan(in, test::small_gland()).tails.at(0).less_strip_mm == Approx(1.0));
  in.reach_mm = 16;
  CHECK_THROWS_WITH(plan(in, test::small_gland()), Contains("tail 0 mm") && Contains("strip 0 mm"));
}

TEST_CASE("plan_cuts: cores of which none has a route", "[unit][strip]") {
  job::Job job = test::resolved(with_reach());
  job.tails.cores = {{.name = "1"}, {.name = "2"}};
  const auto p = strip::plan_cuts(job, test::small_gland(), {});
  CHECK(p.tails.empty());
  CHECK_FALSE(p.marks.shoulder_mm.has_value());
  CHECK_FALSE(p.marks.sheath_cut_mm.has_value());
  // One that has none beside one that has: it is taken for a spare, and that is said.
  job.tails.cores[1].reach_mm = 180.0;
  job.tails.cores[1].strip_mm = 10.0;
  const auto one = strip::plan_cuts(job, test::small_gland(), {});
  CHECK_THAT(one.missing.front(), Contains("core 1 has no route"));
  CHECK(one.tails.at(0).route == "as the furthest, 180");
  job.tails.cores[0].spare = true;
  CHECK(strip::plan_cuts(job, test::small_gland(), {}).missing.empty());
}

TEST_CASE("plan_cuts: marks without one of their figures", "[unit][strip]") {
  auto gland = test::small_gland();
  gland.exposed_armour_mm.reset();
  const auto p = plan(with_reach(), gland);
  CHECK(*p.marks.armour_cut_mm == Approx(254.0));
  CHECK_FALSE(p.marks.sheath_cut_mm.has_value());
  CHECK_FALSE(p.marks.exposed_min_mm.has_value());
  auto in = with_reach();
  in.armour = cable::ArmourKind::none;
  in.armour_mm.reset();
  in.bedding_mm.reset();
  in.reach_mm.reset();
  gland.armour = cable::ArmourKind::none;
  const auto bare = plan(in, gland);
  CHECK(*bare.axis.bedding_end_mm == Approx(20.0));
  CHECK_FALSE(bare.marks.sheath_cut_mm.has_value());
}

TEST_CASE("plan_cuts: a gland's own extra exposure is the upper end of it", "[unit][strip]") {
  auto gland = test::small_gland();
  gland.exposed_plus_mm = 1.5;
  const auto p = plan(with_reach(), gland);
  CHECK(*p.marks.exposed_min_mm == Approx(10.5));
  CHECK(*p.marks.exposed_max_mm == Approx(12.0));
}

TEST_CASE("bedding_thickness_mm: of nothing there is none", "[unit][strip]") {
  job::Job job;
  CHECK_FALSE(strip::bedding_thickness_mm(job).has_value());
  CHECK_FALSE(strip::oversheath_thickness_mm(job).has_value());
  job.construction.emplace();
  job.construction->layers.bedding_mm = 0.0;
  job.construction->layers.oversheath_mm = 1.8;
  CHECK_FALSE(strip::bedding_thickness_mm(job).has_value());
  job.construction->layers.bedding_mm = 0.5;
  CHECK(*strip::bedding_thickness_mm(job) == 0.5);
  CHECK(*strip::oversheath_thickness_mm(job) == 1.8);
}

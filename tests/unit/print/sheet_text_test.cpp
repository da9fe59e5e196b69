#include <fmt/format.h>

#include <catch2/catch.hpp>

#include "cutback/number.hpp"
#include "cutback/print/pages.hpp"
#include "cutback/print/print.hpp"
#include "print/pages/card_text.hpp"
#include "support/build_sheet.hpp"

using namespace cutback;
using Catch::Matchers::Contains;

namespace {

using Made = test::MadeSheet;

}  // namespace

TEST_CASE("sheet_text: a mark without a route is route and strip length less far than with them",
          "[unit][print]") {
  job::JobInput in = test::small_cable();
  in.material = "steel";
  in.cores = 3;
  in.slack_mm = 40;
  const Made open(in);
  in.reach_mm = 180;
  in.strip_mm = 10;
  const Made known(in);
  REQUIRE(open.sheet.state == sheet::State::measure);
  REQUIRE(known.sheet.plan->marks.armour_cut_mm.has_value());
  const double rest = *known.sheet.plan->marks.armour_cut_mm - 180.0 - 10.0;
  CHECK_THAT(print::sheet_text(open.sheet, {}),
             Contains(fmt::format("1 armour    reach + strip + {} =", plain(rest))));
}

TEST_CASE("sheet_text: screen and card say of every mark the same", "[unit][print]") {
  const auto known = [] {
    job::JobInput in = test::small_cable();
    in.material = "steel";
    in.cores = 3;
    in.csa_mm2 = 4;
    in.reach_mm = 180;
    in.strip_mm = 10;
    return in;
  };
  gland::Gland no_stop = test::small_gland();
  no_stop.armour_stop_mm.reset();
  gland::Gland plain_one = test::small_gland();
  plain_one.armour = cable::ArmourKind::none;
  plain_one.inner.reset();
  job::JobInput no_route = known();
  no_route.reach_mm.reset();
  job::JobInput no_strip = known();
  no_strip.strip_mm.reset();
  job::JobInput no_wall = known();
  no_wall.wall_mm.reset();
  job::JobInput unarmoured = known();
  unarmoured.armour = cable::ArmourKind::none;
  unarmoured.bedding_mm.reset();
  unarmoured.armour_mm.reset();
  job::JobInput unarmoured_open = unarmoured;
  unarmoured_open.reach_mm.reset();
  struct Case {
    const char* name;
    job::JobInput in;
    gland::Gland gland;
  };
  for (const Case& one :
       {Case{"known", known(), test::small_gland()},
        Case{"no route", no_route, test::small_gland()},
        Case{"no strip", no_strip, test::small_gland()},
        Case{"no wall", no_wall, test::small_gland()}, Case{"no stop", known(), no_stop},
        Case{"no stop, no route", no_route, no_stop}, Case{"unarmoured", unarmoured, plain_one},
        Case{"unarmoured, no route", unarmoured_open, plain_one}}) {
    INFO(one.name);
    const Made made(one.in, one.gland);
    REQUIRE(made.sheet.has_marks());
    std::string screen = print::sheet_text(made.sheet, {});
    screen = screen.substr(screen.find("\nCUTS"));
    const print::CardText card = print::card_text(
        {.tag = "T", .end = "e", .sheet = &made.sheet, .why = {}, .remedy = {}, .qr_text = {}});
    REQUIRE(card.marks.size() >= 2);
    for (const print::MarkWords& mark : card.marks) {
      INFO(mark.number << " " << mark.before << mark.figure << " " << mark.after);
      std::string before = mark.before;
      if (const auto minus = before.find("\u2212"); minus != std::string::npos) {
        before.replace(minus, 3, "-");
      }
      const std::string row =
          mark.figure.empty() ? mark.after : before + mark.figure + " " + mark.after;
      CHECK_THAT(screen, Contains(mark.check().empty() ? row : mark.check()));
      CHECK_THAT(screen, Contains(mark.depth));
    }
  }
}

TEST_CASE("sheet_text: with the route open one sum alone is done on site", "[unit][print]") {
  job::JobInput in = test::small_cable();
  in.material = "steel";
  in.cores = 3;
  const Made made(in);
  const print::CardText card = print::card_text(
      {.tag = "T", .end = "e", .sheet = &made.sheet, .why = {}, .remedy = {}, .qr_text = {}});
  const strip::Axis& axis = made.sheet.plan->axis;
  int sums = 0;
  for (const print::MarkWords& mark : card.marks) sums += mark.blank ? 1 : 0;
  CHECK(sums == 1);
  REQUIRE(card.marks.size() == 4);
  CHECK(card.marks[2].figure == plain(*axis.armour_stop_mm + *axis.bedding_end_mm, 1));
  CHECK(card.marks[2].after == "in front of mark 1");
}

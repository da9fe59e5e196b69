#include <fmt/format.h>

#include <catch2/catch.hpp>

#include "cutback/number.hpp"
#include "cutback/print/print.hpp"
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
             Contains(fmt::format("1 armour    route + strip + {} mm from the end", plain(rest))));
}

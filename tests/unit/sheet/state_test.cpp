// What a sheet is good for: each end with its twin.
#include <catch2/catch.hpp>

#include "cutback/gland/columns.hpp"
#include "support/build_sheet.hpp"

using namespace cutback;
using sheet::State;

namespace {

job::JobInput whole_end_of_direct_current() {
  job::JobInput in = test::whole_end();
  in.supply = cable::Supply::dc;
  return in;
}

using Made = test::MadeSheet;

bool lacks(const Made& made, std::string_view key) {
  for (const fit::Lack& lack : made.sheet.lacks) {
    if (lack.key == key) return true;
  }
  return false;
}

}  // namespace

TEST_CASE("sheet: cut, once everything that decides is measured and told", "[unit][sheet]") {
  const Made made(whole_end_of_direct_current());
  CHECK(made.sheet.state == State::cut);
  CHECK(made.sheet.has_marks());
  CHECK(made.sheet.lacks.empty());
}

TEST_CASE("sheet: what can be read at the end is measured first", "[unit][sheet]") {
  const auto without = [](auto take) {
    job::JobInput in = whole_end_of_direct_current();
    take(in);
    return Made(in);
  };
  const Made route = without([](auto& in) { in.reach_mm.reset(); });
  CHECK(route.sheet.state == State::measure);
  CHECK(lacks(route, "reach_mm"));
  const Made strip = without([](auto& in) { in.strip_mm.reset(); });
  CHECK(strip.sheet.state == State::measure);
  CHECK(lacks(strip, "strip_mm"));
  const Made wall = without([](auto& in) { in.wall_mm.reset(); });
  CHECK(wall.sheet.state == State::measure);
  CHECK(lacks(wall, "wall_mm"));
  const Made material = without([](auto& in) { in.material.reset(); });
  CHECK(material.sheet.state == State::measure);
  CHECK(lacks(material, "material"));
  // Left out, the bedding is estimated from sheath and wire: that shows the way and passes nothing.
  const Made bedding = without([](auto& in) { in.bedding_mm.reset(); });
  CHECK(bedding.sheet.state == State::measure);
  CHECK(lacks(bedding, "bedding_mm"));
  CHECK(bedding.sheet.has_marks());
}

TEST_CASE("sheet: what only papers tell is not yet, and has no marks", "[unit][sheet]") {
  gland::Gland no_bore = test::small_gland();
  no_bore.inner.reset();
  CHECK(Made(whole_end_of_direct_current(), no_bore).sheet.state == State::cut);
  no_bore.bore_mm.reset();
  const Made bore(whole_end_of_direct_current(), no_bore);
  CHECK(bore.sheet.state == State::not_yet);
  CHECK(lacks(bore, "bore_mm"));
  CHECK_FALSE(bore.sheet.has_marks());
  job::JobInput place = whole_end_of_direct_current();
  place.ip = "66";
  CHECK(Made(place).sheet.state == State::not_yet);
  gland::Gland rated = test::small_gland();
  gland::put(rated, gland::columns()[gland::column_place("ip")], std::string_view("66"));
  CHECK(Made(place, rated).sheet.state == State::cut);
}

TEST_CASE("sheet: near a limit is not yet, outside is none", "[unit][sheet]") {
  gland::Gland near = test::small_gland();
  near.outer = {11.0, 15.05};
  CHECK(Made(whole_end_of_direct_current(), near).sheet.state == State::not_yet);
  near.outer = {11.0, 14.0};
  CHECK(Made(whole_end_of_direct_current(), near).sheet.state == State::none);
}

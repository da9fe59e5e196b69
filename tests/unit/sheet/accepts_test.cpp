// What may be written into the blanks of a page: what lies outside of it, given at once, is
// refused.
#include <catch2/catch.hpp>

#include "support/build_sheet.hpp"

using namespace cutback;
using sheet::State;
using test::whole_end;

namespace {

std::string limit(const job::JobInput& in, std::string_view key,
                  const gland::Gland& gland = test::small_gland()) {
  const test::MadeSheet made(in, gland);
  for (const fit::Lack& lack : made.sheet.lacks) UNSCOPED_INFO(lack.fact);
  REQUIRE(made.sheet.state == State::measure);
  for (const sheet::Accepted& each : made.sheet.accepts) {
    if (each.key == key) return each.words;
  }
  return {};
}

State state(const job::JobInput& in, const gland::Gland& gland = test::small_gland()) {
  return test::MadeSheet(in, gland).sheet.state;
}

/// The figure behind "at most".
double most(const std::string& text) {
  REQUIRE(text.rfind("at most ", 0) == 0);
  return std::stod(text.substr(8));
}

}  // namespace

TEST_CASE("accepts: a wall is at most what the thread allows", "[unit][sheet]") {
  job::JobInput in = whole_end();
  in.wall_mm.reset();
  const double wall = most(limit(in, "wall_mm"));
  in.wall_mm = wall;
  CHECK(state(in) == State::cut);
  in.wall_mm = wall + 0.5;
  CHECK(state(in) != State::cut);
  CHECK(state(in) != State::measure);
}

TEST_CASE("accepts: a wall's material must carry the earth", "[unit][sheet]") {
  job::JobInput in = whole_end();
  in.material.reset();
  const std::string must = limit(in, "material");
  CHECK(must == "metal: go on; plastic: stop and ask");
  in.material = "polymer";
  CHECK(state(in) == State::not_yet);
}

TEST_CASE("accepts: a single core stops the work", "[unit][sheet]") {
  job::JobInput in = whole_end();
  in.cores.reset();
  CHECK(limit(in, "cores") == "2 or more; fewer: stop and ask");
  in.cores = 1;
  CHECK(state(in) != State::cut);
  CHECK(state(in) != State::measure);
  in.cores = 2;
  CHECK(state(in) == State::cut);
}

TEST_CASE("accepts: the kind of hole, with a wall that one kind alone suits", "[unit][sheet]") {
  job::JobInput in = whole_end();
  in.hole.reset();
  in.wall_mm = 2.5;
  CHECK(limit(in, "hole") == "clearance: go on; threaded: stop and ask");
  in.hole = entry::Hole::threaded;
  CHECK(state(in) != State::cut);
}

TEST_CASE("accepts: wall and hole both blank have a limit for each kind", "[unit][sheet]") {
  job::JobInput in = whole_end();
  in.hole.reset();
  in.wall_mm.reset();
  const std::string must = limit(in, "wall_mm");
  CHECK_THAT(must, Catch::Contains("clearance hole: at most ") && Catch::Contains("threaded: "));
}

TEST_CASE("accepts: nothing is said where nothing is blank", "[unit][sheet]") {
  CHECK(test::MadeSheet(whole_end(), test::small_gland()).sheet.accepts.empty());
}

TEST_CASE("accepts: the wall of a flameproof hole is one that fits without asking more",
          "[unit][sheet]") {
  job::JobInput in = whole_end();
  in.hole = entry::Hole::threaded;
  in.material = "aluminium";
  in.zone = area::Zone::zone_1;
  in.protection = area::Protection::d;
  in.gas_group = area::GasGroup::IIA;
  in.csa_mm2 = 2.5;
  in.insulation = cable::Insulation::xlpe;
  in.ip = "54";
  in.wall_mm.reset();
  gland::Gland gland = test::small_gland();
  gland.sealing = gland::Sealing::barrier;
  gland.chamber_bore_mm = 14.0;
  gland.chamber_length_mm = 25.0;
  gland.bedding_end_mm = -12.0;
  gland.protection = {area::Protection::db};
  gland.level = {area::Level::Gb};
  gland.gas_group = area::GasMark::IIC;
  gland.ip = *area::parse_ip_codes("66/68");
  gland.temp_min_degc = -40;
  gland.temp_max_degc = 100;
  gland.max_cores = 7;
  const std::string must = limit(in, "wall_mm", gland);
  REQUIRE(must.rfind("at least ", 0) == 0);
  // IEC 60079-1:2014 5.3: 8 mm of thread; the chamfer of the hole is not known, and counts.
  const double wall = std::stod(must.substr(9));
  CHECK(wall >= 8.0);
  in.wall_mm = wall;
  CHECK(state(in, gland) == State::cut);
  in.wall_mm = wall - 0.5;
  CHECK(state(in, gland) != State::cut);
}

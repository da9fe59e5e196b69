#include "cutback/entry/hardware.hpp"

#include <catch2/catch.hpp>

using namespace cutback;
using namespace cutback::entry;
using Catch::Contains;

namespace {

gland::Gland gland_with_parts() {
  gland::Gland gland;
  gland.entry_thread = *parse_thread("M20");
  gland.washer_mm = 2.0;
  gland.locknut_mm = 3.0;
  return gland;
}

Entry wall(Hole hole) {
  Entry entry;
  entry.hole = hole;
  entry.wall_mm = 5.0;
  return entry;
}

}  // namespace

TEST_CASE("hardware_of: the entry's figure, else the gland's, else not known", "[unit][entry]") {
  Entry entry = wall(Hole::clearance);
  const Hardware own = hardware_of(gland_with_parts(), entry, false);
  CHECK(own.washer_mm == 2.0);
  CHECK(own.locknut_mm == 3.0);
  CHECK(own.inside_face_mm() == 7.0);
  CHECK(own.inside_mm() == 3.0);
  CHECK(own.missing().empty());
  const Hardware none = hardware_of({}, entry, false);
  CHECK_FALSE(none.washer_mm.has_value());
  CHECK_FALSE(none.locknut_mm.has_value());
  CHECK_FALSE(none.inside_face_mm().has_value());
  CHECK_FALSE(none.inside_mm().has_value());
  CHECK(none.missing().size() == 2);
  entry.washer_mm = 0.0;
  entry.locknut_mm = 6.0;
  const Hardware given = hardware_of(gland_with_parts(), entry, false);
  CHECK(given.washer_mm == 0.0);
  CHECK(given.locknut_mm == 6.0);
}

TEST_CASE("hardware_of: behind an adaptor the parts are the adaptor's", "[unit][entry]") {
  Entry entry = wall(Hole::clearance);
  const Hardware at = hardware_of(gland_with_parts(), entry, true);
  CHECK_FALSE(at.washer_mm.has_value());
  CHECK_FALSE(at.locknut_mm.has_value());
  REQUIRE(at.missing().size() == 2);
  CHECK_THAT(at.missing()[1].fact, Contains("of the adaptor"));
  entry.washer_mm = 1.0;
  entry.locknut_mm = 4.0;
  CHECK(hardware_of(gland_with_parts(), entry, true).missing().empty());
}

TEST_CASE("hardware_of: a tapped hole has no locknut, and tag and serrated washer outside",
          "[unit][entry]") {
  Entry entry = wall(Hole::threaded);
  entry.tag_mm = 1.5;
  entry.serrated_mm = 1.0;
  entry.locknut_mm = 4.0;
  const Hardware tapped = hardware_of(gland_with_parts(), entry, false);
  CHECK(tapped.locknut_mm == 0.0);
  CHECK(tapped.washers() == 2);  // on both sides of the tag
  CHECK(tapped.outside_mm() == 6.5);
  CHECK(tapped.inside_face_mm() == 11.5);
  CHECK(tapped.inside_mm() == 0.0);
  entry.hole = Hole::clearance;
  const Hardware clear = hardware_of(gland_with_parts(), entry, false);
  CHECK(clear.outside_mm() == 2.0);
  CHECK(clear.inside_mm() == 6.5);
}

TEST_CASE("hardware_of: without the kind of hole nothing is said of what is behind the wall",
          "[unit][entry]") {
  Entry entry;
  entry.wall_mm = 5.0;
  const Hardware open = hardware_of(gland_with_parts(), entry, false);
  CHECK(open.inside_face_mm() == 7.0);
  CHECK_FALSE(open.inside_mm().has_value());
  REQUIRE(open.missing().size() == 1);
  CHECK_THAT(open.missing()[0].fact, Contains("kind of hole"));
  entry.tag_mm = 1.0;
  CHECK_FALSE(hardware_of(gland_with_parts(), entry, false).inside_face_mm().has_value());
  entry.to_suit = true;
  CHECK(hardware_of(gland_with_parts(), entry, false).inside_mm() == 4.0);
}

TEST_CASE("wall_side: the side of an adaptor that is not the gland's", "[unit][entry]") {
  const Adaptor adaptor{*parse_thread("M25"), *parse_thread("M20"), {}};
  CHECK(to_text(wall_side(adaptor, gland_with_parts())) == "M25");
  const Adaptor turned{*parse_thread("M20"), *parse_thread("M25"), {}};
  CHECK(to_text(wall_side(turned, gland_with_parts())) == "M25");
}

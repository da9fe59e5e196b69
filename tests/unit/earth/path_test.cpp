#include "cutback/earth/path.hpp"

#include <catch2/catch.hpp>

using namespace cutback;
using namespace cutback::earth;
using Catch::Contains;

namespace {

cable::Cable three_cores() {
  cable::Cable cable;
  cable.cores = 3;
  return cable;
}

/// An aluminium-armoured single core on a.c., as it should be.
cable::Cable one_core() {
  cable::Cable cable;
  cable.cores = 1;
  cable.supply = cable::Supply::ac;
  cable.armour_material = cable::ArmourMaterial::aluminium;
  return cable;
}

entry::Entry hole_in(const char* material, entry::Hole hole) {
  entry::Entry entry;
  entry.material = material;
  entry.hole = hole;
  return entry;
}

gland::Gland of(std::optional<std::string> material) {
  gland::Gland gland;
  gland.material = std::move(material);
  return gland;
}

fit::Check path(const cable::Cable& cable, const entry::Entry& entry, const gland::Gland& gland,
                bool adaptor = false) {
  const auto check = check_path(cable, entry, gland, adaptor);
  REQUIRE(check.has_value());
  CHECK(check->name == fit::CheckName::earth);
  CHECK_FALSE(check->says.empty());
  CHECK_FALSE(check->source.empty());
  return *check;
}

constexpr auto k_tapped = entry::Hole::threaded;
constexpr auto k_clearance = entry::Hole::clearance;

}  // namespace

TEST_CASE("check_path: a metal gland in a metal wall is earthed, a plastic gland is not",
          "[unit][earth]") {
  const auto wall = hole_in("steel", k_tapped);
  CHECK(path(three_cores(), wall, of("brass")).verdict == Verdict::fits);
  const auto plastic = path(three_cores(), wall, of("polymer"));
  CHECK(plastic.verdict == Verdict::no_fit);
  CHECK_THAT(plastic.says, Contains("no path"));
  const auto unstated = path(three_cores(), wall, of({}));
  CHECK(unstated.verdict == Verdict::not_known);
  CHECK_THAT(unstated.says, Contains("does not state material"));
}

TEST_CASE("check_path: an adaptor must be of metal too", "[unit][earth]") {
  auto wall = hole_in("brass", k_tapped);
  CHECK(path(three_cores(), wall, of("brass"), true).verdict == Verdict::not_known);
  wall.adaptor_material = "polymer";
  CHECK(path(three_cores(), wall, of("brass"), true).verdict == Verdict::no_fit);
  wall.adaptor_material = "brass";
  CHECK(path(three_cores(), wall, of("brass"), true).verdict == Verdict::fits);
  wall.adaptor_material = "polymer";  // at hand, but not between them
  CHECK(path(three_cores(), wall, of("brass")).verdict == Verdict::fits);
}

TEST_CASE("check_path: a wall that does not conduct needs an earth tag", "[unit][earth]") {
  for (const entry::Hole hole : {k_tapped, k_clearance}) {
    auto wall = hole_in("polymer", hole);
    const auto unsaid = path(three_cores(), wall, of("brass"));
    CHECK(unsaid.verdict == Verdict::not_known);
    CHECK_THAT(unsaid.says, Contains("earth tag is needed"));
    wall.tag_mm = 0.0;
    CHECK(path(three_cores(), wall, of("brass")).verdict == Verdict::no_fit);
    wall.serrated_mm = 1.0;  // on plastic it bites on nothing
    CHECK(path(three_cores(), wall, of("brass")).verdict == Verdict::no_fit);
    wall.tag_mm = 1.5;
    const auto tagged = path(three_cores(), wall, of("brass"));
    CHECK(tagged.verdict == Verdict::fits);
    CHECK((tagged.says.find("sealed to the wall") != std::string::npos) == (hole == k_tapped));
  }
}

TEST_CASE("check_path: wall and kind of hole are named where they are missing", "[unit][earth]") {
  entry::Entry entry;
  const auto neither = path(three_cores(), entry, of("brass"));
  CHECK(neither.verdict == Verdict::not_known);
  CHECK_THAT(neither.says, Contains("wall") && Contains("kind of hole"));
  entry.to_suit = true;  // a clearance hole will be made
  entry.material = "aluminium";
  CHECK(path(three_cores(), entry, of("brass")).verdict == Verdict::fits);
}

TEST_CASE("way_of: what earths the gland in a clearance hole of a metal wall", "[unit][earth]") {
  auto wall = hole_in("steel", k_clearance);
  CHECK(way_of(wall) == Way::bare_metal);
  wall.serrated_mm = 0.8;
  CHECK(way_of(wall) == Way::serrated);
  wall.tag_mm = 1.5;
  CHECK(way_of(wall) == Way::tag);
  wall.hole = k_tapped;
  CHECK(way_of(wall) == Way::tapped_wall);
}

TEST_CASE("check_path: an unarmoured cable has no path to judge", "[unit][earth]") {
  auto cable = three_cores();
  cable.armour = cable::ArmourKind::none;
  CHECK_FALSE(check_path(cable, hole_in("polymer", k_tapped), of({}), false).has_value());
}

TEST_CASE("check_path: without the number of cores it may be a single one", "[unit][earth]") {
  cable::Cable cable;
  const auto wall = hole_in("brass", k_tapped);
  const auto check = path(cable, wall, of("brass"));
  CHECK(check.verdict == Verdict::not_known);
  CHECK_THAT(check.says, Contains("number of cores"));
  cable.supply = cable::Supply::dc;
  CHECK(path(cable, wall, of("brass")).verdict == Verdict::fits);
}

TEST_CASE("check_path: no steel armour of any kind round a single a.c. core", "[unit][earth]") {
  using cable::ArmourKind;
  const auto wall = hole_in("brass", k_tapped);
  for (const ArmourKind kind :
       {ArmourKind::wire, ArmourKind::tape, ArmourKind::strip, ArmourKind::braid}) {
    auto cable = one_core();
    cable.armour = kind;
    CHECK(path(cable, wall, of("brass")).verdict == Verdict::fits);
    cable.armour_material = cable::ArmourMaterial::steel;
    CHECK(path(cable, wall, of("brass")).verdict == Verdict::no_fit);
    cable.supply.reset();
    CHECK(path(cable, wall, of("brass")).verdict == Verdict::not_known);
    cable.supply = cable::Supply::dc;
    CHECK(path(cable, wall, of("brass")).verdict == Verdict::fits);
    cable.supply = cable::Supply::ac;
    cable.cores = 3;
    CHECK(path(cable, wall, of("brass")).verdict == Verdict::fits);
  }
}

TEST_CASE("check_path: no steel wall or gland round a single a.c. core", "[unit][earth]") {
  for (const char* wall : {"steel", "galvanised-steel", "cast-iron"}) {
    CHECK(path(one_core(), hole_in(wall, k_clearance), of("brass")).verdict == Verdict::no_fit);
    CHECK(path(three_cores(), hole_in(wall, k_clearance), of("brass")).verdict == Verdict::fits);
  }
  CHECK(path(one_core(), hole_in("brass", k_clearance), of("steel")).verdict == Verdict::no_fit);
  CHECK(path(one_core(), hole_in("aluminium", k_clearance), of("brass")).verdict == Verdict::fits);
}

TEST_CASE("check_path: no steel adaptor round a single a.c. core", "[unit][earth]") {
  // BS 7671 521.5.2: no ferrous metal round one conductor.
  auto wall = hole_in("aluminium", k_clearance);
  wall.adaptor_material = "steel";
  CHECK(path(one_core(), wall, of("brass")).verdict == Verdict::fits);
  CHECK(path(one_core(), wall, of("brass"), true).verdict == Verdict::no_fit);
  wall.adaptor_material = "brass";
  CHECK(path(one_core(), wall, of("brass"), true).verdict == Verdict::fits);
  wall.adaptor_material.reset();
  CHECK(path(one_core(), wall, of("brass"), true).verdict == Verdict::not_known);
}

TEST_CASE("check_path: a single core is not known until supply and metal are given",
          "[unit][earth]") {
  const auto wall = hole_in("brass", k_tapped);
  auto cable = one_core();
  cable.supply.reset();
  CHECK(path(cable, wall, of("brass")).verdict == Verdict::not_known);
  cable = one_core();
  cable.armour_material.reset();
  CHECK(path(cable, wall, of("brass")).verdict == Verdict::not_known);
  cable = one_core();
  CHECK(path(cable, wall, of("brass")).verdict == Verdict::fits);
  cable.armour = cable::ArmourKind::none;  // no metal of an armour to ask for
  cable.armour_material.reset();
  CHECK(path(cable, wall, of("brass")).verdict == Verdict::fits);
  CHECK(path(cable, wall, of("steel")).verdict == Verdict::no_fit);
  CHECK(path(cable, wall, of({})).verdict == Verdict::not_known);
}

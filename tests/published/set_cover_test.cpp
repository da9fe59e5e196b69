// Covers with a known optimum. The lines of the affine space AG(n, 3) are the triples of points
// whose sum is 0; a set of points that meets every line is what a cap (no line inside) leaves. The
// largest caps have 4 points of 9 and 9 of 27 (OEIS A090245, Pellegrino 1971; from memory), so that
// the smallest covers have 5 and 18: the Steiner triple systems of 9 and 27 points in Fulkerson,
// Nemhauser and Trotter 1974 (from memory). In PG(3, 2) the smallest set that meets every line is a
// plane, 7 points of 15 (Bose and Burton 1966; from memory).
#include <catch2/catch.hpp>

#include "support/solvers.hpp"

using namespace cutback;

namespace {

schedule::Wanted points(std::size_t count) {
  schedule::Wanted wanted;
  for (std::size_t i = 0; i < count; ++i) {
    wanted.parts.push_back(test::part(std::to_string(100 + i), 100));
  }
  return wanted;
}

void add_line(schedule::Wanted& wanted, std::uint32_t a, std::uint32_t b, std::uint32_t c) {
  if (a < b && b < c) wanted.groups.push_back({.ends = 1, .parts = {a, b, c}});
}

/// The third point on the line through two of AG(n, 3): minus their sum, digit by digit.
std::uint32_t third(std::uint32_t a, std::uint32_t b) {
  std::uint32_t point = 0;
  for (std::uint32_t unit = 1; unit <= 9; unit *= 3) {
    point += unit * ((6 - a / unit % 3 - b / unit % 3) % 3);
  }
  return point;
}

schedule::Wanted affine(std::uint32_t count) {
  schedule::Wanted wanted = points(count);
  for (std::uint32_t a = 0; a < count; ++a) {
    for (std::uint32_t b = a + 1; b < count; ++b) add_line(wanted, a, b, third(a, b));
  }
  return wanted;
}

}  // namespace

TEST_CASE("set cover: lines of AG(2,3) and AG(3,3)", "[published][kit]") {
  const schedule::Wanted plane = affine(9);
  REQUIRE(plane.groups.size() == 12);
  CHECK(schedule::choose_kit(plane, schedule::KitBy::parts, test::solved).parts.size() == 5);
  const schedule::Wanted space = affine(27);
  REQUIRE(space.groups.size() == 117);
  int programs = 0;  // the first tells how many parts; the others would choose between equal kits
  const schedule::Kit kit =
      schedule::choose_kit(space, schedule::KitBy::parts, [&](const schedule::Program& program) {
        return ++programs == 1 ? test::solved(program) : test::no_time(program);
      });
  CHECK(kit.parts.size() == 18);
  CHECK(kit.proven);
}

TEST_CASE("set cover: lines of PG(3,2)", "[published][kit]") {
  schedule::Wanted wanted = points(15);
  for (std::uint32_t a = 1; a <= 15; ++a) {
    for (std::uint32_t b = a + 1; b <= 15; ++b) add_line(wanted, a - 1, b - 1, (a ^ b) - 1);
  }
  REQUIRE(wanted.groups.size() == 35);
  CHECK(schedule::choose_kit(wanted, schedule::KitBy::parts, test::solved).parts.size() == 7);
}

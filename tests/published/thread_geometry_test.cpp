// Thread dimensions typed from: ISO 68-1 basic profile and ISO 965-1 lengths of engagement; ASME
// B1.20.1 basic dimensions of NPT threads, inches. Flameproof example: IEC 60079-1:2007 5.3.
#include <catch2/catch.hpp>

#include "core/entry/engagement.hpp"
#include "core/entry/stack.hpp"
#include "cutback/entry/geometry.hpp"
#include "cutback/io/standards.hpp"

using namespace cutback;
using namespace cutback::entry;

namespace {

const tables::Standards& standards() {
  static const tables::Standards all = io::builtin_standards();
  return all;
}

}  // namespace

TEST_CASE("ISO 68-1: basic diameters of entry threads", "[published][thread]") {
  struct Row {
    const char* thread;
    double pitch_diameter, bore, core;
  };
  const Row rows[] = {
      {"M12x1.5", 11.026, 10.376, 10.160},   {"M16x1.5", 15.026, 14.376, 14.160},
      {"M20x1.5", 19.026, 18.376, 18.160},   {"M25x1.5", 24.026, 23.376, 23.160},
      {"M32x1.5", 31.026, 30.376, 30.160},   {"M40x1.5", 39.026, 38.376, 38.160},
      {"M50x1.5", 49.026, 48.376, 48.160},   {"M63x1.5", 62.026, 61.376, 61.160},
      {"M75x1.5", 74.026, 73.376, 73.160},   {"M90x2", 88.701, 87.835, 87.546},
      {"M110x2", 108.701, 107.835, 107.546},
  };
  for (const Row& row : rows) {
    INFO(row.thread);
    const MetricProfile profile = metric_profile(*parse_thread(row.thread));
    CHECK(profile.pitch_diameter_mm == Approx(row.pitch_diameter).margin(0.0006));
    CHECK(profile.bore_mm == Approx(row.bore).margin(0.0006));
    CHECK(profile.core_mm == Approx(row.core).margin(0.0006));
  }
}

TEST_CASE("ISO 965-1: engagement up to which it is short", "[published][thread]") {
  const std::pair<const char*, double> rows[] = {
      {"M12", 5.6}, {"M20", 5.6}, {"M22", 5.6}, {"M25", 6.3}, {"M32", 6.3},  {"M40", 6.3},
      {"M50", 7.5}, {"M63", 7.5}, {"M75", 7.5}, {"M90", 9.5}, {"M110", 12.0}};
  for (const auto& [thread, printed] : rows) {
    INFO(thread);
    CHECK(short_engagement_mm(*parse_thread(thread), standards().table("engagement_group_n")) ==
          printed);
  }
  // Outside the table: no row for a pitch of 1.5 over 90 mm, and none for other kinds.
  for (const char* outside : {"M110x1.5", "M20x1", "NPT 1/2", "PG 16"}) {
    CHECK_FALSE(short_engagement_mm(*parse_thread(outside), standards().table("engagement_group_n"))
                    .has_value());
  }
}

TEST_CASE("ASME B1.20.1: L1, L2, L4 and E1 of every size", "[published][thread]") {
  struct Row {
    const char* thread;
    double outside, l1, l2, l4, e1;
  };
  const Row rows[] = {
      {"NPT 1/2", 0.840, 0.320, 0.5337, 0.7815, 0.77843},
      {"NPT 3/4", 1.050, 0.339, 0.5457, 0.7935, 0.98887},
      {"NPT 1", 1.315, 0.400, 0.6828, 0.9845, 1.23863},
      {"NPT 1 1/4", 1.660, 0.420, 0.7068, 1.0085, 1.58338},
      {"NPT 1 1/2", 1.900, 0.420, 0.7235, 1.0252, 1.82234},
      {"NPT 2", 2.375, 0.436, 0.7565, 1.0582, 2.29627},
      {"NPT 2 1/2", 2.875, 0.682, 1.1375, 1.5712, 2.76216},
      {"NPT 3", 3.500, 0.766, 1.2000, 1.6337, 3.38850},
      {"NPT 3 1/2", 4.000, 0.821, 1.2500, 1.6837, 3.88881},
      {"NPT 4", 4.500, 0.844, 1.3000, 1.7337, 4.38712},
  };
  for (const Row& row : rows) {
    INFO(row.thread);
    const NptGeometry g = npt_geometry(*parse_thread(row.thread), standards().table("npt_threads"));
    CHECK(g.outside_mm / 25.4 == Approx(row.outside).margin(1e-9));
    CHECK(g.hand_tight_mm / 25.4 == Approx(row.l1).margin(1e-9));
    CHECK(g.effective_mm / 25.4 == Approx(row.l2).margin(0.00006));
    CHECK(g.overall_mm / 25.4 == Approx(row.l4).margin(0.00011));
    CHECK(g.hand_tight_diameter_mm / 25.4 == Approx(row.e1).margin(0.000011));
  }
}

TEST_CASE("ASME B1.20.1: sizes known from memory agree with its formulas", "[published][thread]") {
  // E0 and E1 in inches, remembered as printed: D, n and L1 of the table must lead to them.
  struct Row {
    const char* thread;
    double e0, e1;
  };
  const Row rows[] = {{"NPT 1/8", 0.36351, 0.37360},
                      {"NPT 1/4", 0.47739, 0.49163},
                      {"NPT 3/8", 0.61201, 0.62701},
                      {"NPT 5", 5.39073, 5.44929},
                      {"NPT 6", 6.44609, 6.50597}};
  for (const Row& row : rows) {
    INFO(row.thread);
    const NptGeometry g = npt_geometry(*parse_thread(row.thread), standards().table("npt_threads"));
    CHECK(g.from_memory);
    CHECK(g.small_end_diameter_mm / 25.4 == Approx(row.e0).margin(0.000006));
    CHECK(g.hand_tight_diameter_mm / 25.4 == Approx(row.e1).margin(0.000006));
  }
  CHECK_FALSE(npt_geometry(*parse_thread("NPT 1/2"), standards().table("npt_threads")).from_memory);
}

TEST_CASE("DIN 40430: outside and inner diameter of PG threads", "[published][thread]") {
  struct Row {
    const char* thread;
    double outside, inner;
  };
  const Row rows[] = {{"PG 7", 12.5, 11.28},    {"PG 9", 15.5, 13.86},  {"PG 11", 18.6, 17.26},
                      {"PG 13.5", 20.4, 19.06}, {"PG 16", 22.5, 21.16}, {"PG 21", 28.3, 26.78},
                      {"PG 29", 37.0, 35.48},   {"PG 36", 47.0, 45.48}, {"PG 42", 54.0, 52.48},
                      {"PG 48", 59.3, 57.78}};
  for (const Row& row : rows) {
    INFO(row.thread);
    CHECK(male_outside(*parse_thread(row.thread), standards()).mm == row.outside);
    CHECK(male_root(*parse_thread(row.thread), standards()).mm == row.inner);
  }
}

TEST_CASE("male_root: what a bore through the thread cannot exceed", "[published][thread]") {
  // ISO 68-1 d3 of M20 x 1.5; ASME B1.20.1: K0 = E0 - 0.8 p = 0.75843 - 0.05714 in for 1/2.
  CHECK(male_root(*parse_thread("M20"), standards()).mm == Approx(18.160).margin(0.0006));
  CHECK(male_root(*parse_thread("NPT 1/2"), standards()).mm / 25.4 ==
        Approx(0.70129).margin(0.00001));
  CHECK(male_outside(*parse_thread("NPT 1/2"), standards()).mm == Approx(21.336));
  CHECK(male_outside(*parse_thread("M20"), standards()).mm == 20.0);
}

TEST_CASE("IEC 60079-1 5.3: turns engaged in a tapped wall", "[published][thread]") {
  // M20 x 1.5, gland thread 15, washer 2: wall 10 with chamfer 1, then wall 8 with chamfer 2.
  const Engagement good = engage({15.0, 2.0, 0.0, 0.0, 10.0, 1.0, 1.5});
  CHECK(good.engaged_mm == 9.0);
  CHECK(good.full_turns == 6);
  CHECK(good.limited_by_hole);
  const Engagement bad = engage({15.0, 2.0, 0.0, 0.0, 8.0, 2.0, 1.5});
  CHECK(bad.engaged_mm == 6.0);
  CHECK(bad.full_turns == 4);
  // A whole number of turns is that number whatever the binary fraction does.
  CHECK(engage({0.7 * 3.0, 0.0, 0.0, 0.0, 99.0, 0.0, 0.7}).full_turns == 3);
}

TEST_CASE("thread through a clearance hole: worked sum", "[published][thread]") {
  // Thread 15, washer 2, wall 3, tag 1.5, serrated 1, nut 3, pitch 1.5.
  const Stack stack = stack_up({15.0, 0.0, 2.0, 3.0, 1.5, 1.0, 3.0, 1.5});
  CHECK(stack.before_nut_mm == 7.5);
  CHECK(stack.needed_mm == 12.0);
  CHECK(stack.margin_mm == 3.0);
  CHECK(stack.nut_clamps);
}

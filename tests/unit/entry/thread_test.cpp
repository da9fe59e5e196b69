#include "cutback/entry/thread.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace cutback::entry;

TEST_CASE("parse_thread: metric with and without a pitch are the same thread", "[unit][thread]") {
  REQUIRE(parse_thread("M20").has_value());
  CHECK(parse_thread("M20") == parse_thread("m20 x 1.5"));
  CHECK_FALSE(parse_thread("M20") == parse_thread("M20x1"));
  CHECK_FALSE(parse_thread("M20") == parse_thread("M25"));
  CHECK(to_text(*parse_thread("M20x1.5")) == "M20");
  CHECK(to_text(*parse_thread("M20x1")) == "M20x1");
}

TEST_CASE("parse_thread: taper and PG", "[unit][thread]") {
  CHECK(parse_thread("NPT 1/2") == parse_thread("1/2\" NPT"));
  CHECK(parse_thread("NPT 1-1/4") == parse_thread("NPT 1 1/4"));
  CHECK(to_text(*parse_thread("npt 3/4")) == "NPT 3/4");
  CHECK(parse_thread("NPT 1/2")->pitch_mm == Approx(1.8143).margin(5e-5));
  CHECK(parse_thread("PG13.5") == parse_thread("PG 13.5"));
  CHECK(to_text(*parse_thread("pg 13.5")) == "PG 13.5");
}

TEST_CASE("parse_thread: what is no thread", "[unit][thread]") {
  for (const char* bad : {"", "M", "20", "M0", "M-20", "M20x", "M20x0", "M999", "NPT", "NPT 5/8",
                          "PG 12", "Mnan", "M20x1.5x2", "G 1/2"}) {
    INFO(bad);
    CHECK_FALSE(parse_thread(bad).has_value());
  }
}

TEST_CASE("parse_thread: only sizes and pitches that are made", "[unit][thread]") {
  // ISO 261, IEC 60423 (63, and 90 with 1.5), ASME B1.20.1 and DIN 40430.
  for (const char* good :
       {"M6", "M8x1", "M12", "M20", "M20x2.5", "M63", "M75", "M75x4", "M90x1.5", "M90", "M110",
        "M200x8", "NPT 1/8", "NPT 3/8", "NPT 5", "NPT 6", "PG 7"}) {
    INFO(good);
    CHECK(parse_thread(good).has_value());
    CHECK(thread_advice(good).empty());
  }
  for (const char* bad : {"M5", "M13", "M19", "M21", "M22.4", "M61", "M201", "M20x3", "M63x2",
                          "M20x1.75", "M20x0", "NPT 7/8", "NPT 7", "PG 12", "PG 18"}) {
    INFO(bad);
    CHECK_FALSE(parse_thread(bad).has_value());
    CHECK_FALSE(thread_advice(bad).empty());
  }
  // Every size has a pitch that it is written without.
  for (int size = 6; size <= 200; ++size) {
    const auto thread = parse_thread("M" + std::to_string(size));
    if (!thread) continue;
    CHECK(parse_thread(to_text(*thread)) == thread);
    CHECK(thread->pitch_mm > 0.0);
  }
}

TEST_CASE("thread_advice: the neighbours of a size that is not made", "[unit][thread]") {
  CHECK(thread_advice("M21") == "the nearest sizes are M20 and M22");
  CHECK(thread_advice("m61x1.5") == "the nearest sizes are M60 and M62");
  CHECK(thread_advice("M5") == "the smallest is M6");
  CHECK(thread_advice("M210") == "the largest is M200");
  CHECK(thread_advice("M20x3") == "M20 is made with a pitch of 2.5, 2, 1.5, 1 mm");
  CHECK(thread_advice("PG 12") == "the nearest sizes are PG 11 and PG 13.5");
  CHECK(thread_advice("NPT 5/8").substr(0, 19) == "NPT sizes are 1/8, ");
  CHECK(thread_advice("G 1/2").empty());
}

TEST_CASE("parse_thread: spaces, the pitch that is left out, and no number", "[unit][thread]") {
  CHECK(parse_thread("NPT  1/2 ") == parse_thread("NPT 1/2"));
  CHECK(parse_thread("M20  x 1.5") == parse_thread("M20"));
  CHECK(parse_thread("M75")->pitch_mm == 1.5);
  CHECK(parse_thread("M76")->pitch_mm == 2.0);
  CHECK(parse_thread("M68")->pitch_mm == 1.5);
  CHECK_FALSE(parse_thread("PG").has_value());
  CHECK_FALSE(parse_thread("PG x").has_value());
}

#include "cutback/entry/thread.hpp"

#include <catch2/catch.hpp>

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

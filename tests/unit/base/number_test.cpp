#include "cutback/number.hpp"

#include <catch2/catch.hpp>

using namespace cutback;

TEST_CASE("parse_number: plain decimals only", "[unit][number]") {
  CHECK(parse_number("15") == 15.0);
  CHECK(parse_number("+15.5") == 15.5);
  CHECK(parse_number(".5") == 0.5);
  CHECK(parse_number("-3") == -3.0);
  CHECK(parse_number("1e2") == 100.0);
  for (const char* bad : {"", "+", "-", "nan", "inf", "-inf", "1e400", "0x10", "15,1", "15 ", " 15",
                          "15mm", "--1", "+-1", "1e", "1.2.3"}) {
    INFO(bad);
    CHECK_FALSE(parse_number(bad).has_value());
  }
}

TEST_CASE("fixed and plain: the decimal that was meant counts", "[unit][number]") {
  CHECK(fixed(1.15, 1) == "1.2");
  CHECK(fixed(-0.04, 1) == "0.0");
  CHECK(fixed(0.1 + 0.2, 2) == "0.30");
  CHECK(plain(15.0) == "15");
  CHECK(plain(1.60) == "1.6");
  CHECK(plain(0.05) == "0.05");
  CHECK(plain(100.0, 0) == "100");
  CHECK(plain(1e9) == "1000000000");
}

TEST_CASE("round_half_up: IEC 60227-2 1.9.2 examples", "[unit][number]") {
  CHECK(round_half_up(1.74, 0.1) == Approx(1.7));
  CHECK(round_half_up(1.75, 0.1) == Approx(1.8));
}

TEST_CASE("round_down and round_up: a hair off a multiple is that multiple", "[unit][number]") {
  CHECK(round_down(1.6 - 1e-9, 0.1) == Approx(1.6));
  CHECK(round_down(1.59, 0.1) == Approx(1.5));
  CHECK(round_up(235.0 + 1e-9, 1.0) == Approx(235.0));
  CHECK(round_up(235.1, 1.0) == Approx(236.0));
}

TEST_CASE("round_uncertainty: two figures and upward as in JCGM 100 7.2.6", "[unit][number]") {
  CHECK(round_uncertainty(10.47).value == Approx(11.0));
  CHECK(round_uncertainty(0.0632575655941).value == Approx(0.064));
  CHECK(round_uncertainty(0.0632575655941).decimals == 3);
  CHECK(round_uncertainty(0.118060343).value == Approx(0.12));
  CHECK(round_uncertainty(2.0).value == Approx(2.0));
  CHECK(round_uncertainty(0.0).value == 0.0);
}

#include "cutback/number.hpp"

#include <array>
#include <catch2/catch.hpp>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <random>
#include <string>

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

// Against the C library: strtod rounds correctly (ISO/IEC 9899 7.22.1.3, F.5).
TEST_CASE("parse_figure: the nearest double, to the last bit", "[unit][number]") {
  std::mt19937_64 random(1);
  for (int i = 0; i < 20'000; ++i) {
    std::string text = std::to_string(random() % 1'000'000'000'000'000);
    text.resize(1 + random() % text.size());
    text.insert(text.size() - std::min<std::size_t>(text.size(), random() % 13), ".");
    INFO(text);
    CHECK(parse_figure(text) == std::strtod(text.c_str(), nullptr));
    CHECK(parse_number(text) == std::strtod(text.c_str(), nullptr));
  }
  for (const char* other : {"", ".", "1.2.", "..1", "+1", "-1", "1e1", " 1", "1 ", "1,2",
                            "1234567890123456", "0.0000000000001"}) {
    INFO(other);
    CHECK_FALSE(parse_figure(other).has_value());
  }
}

// Against the C library, for decimals that need no rounding.
TEST_CASE("append_fixed and append_plain: the digits of the decimal", "[unit][number]") {
  std::mt19937_64 random(2);
  for (int i = 0; i < 20'000; ++i) {
    const int decimals = static_cast<int>(random() % 7);
    const auto steps = static_cast<std::int64_t>(random() % 2'000'000) - 1'000'000;
    double value = static_cast<double>(steps);
    for (int k = 0; k < decimals; ++k) value /= 10.0;
    std::array<char, 64> printed{};
    std::snprintf(printed.data(), printed.size(), "%.*f", decimals, value);
    std::string want = printed.data();
    if (steps == 0) want.erase(0, want.find_first_not_of('-'));
    CHECK(fixed(value, decimals) == want);
    if (want.find('.') != std::string::npos) {
      want.erase(want.find_last_not_of('0') + 1);
      if (want.back() == '.') want.pop_back();
    }
    std::string text = "7.0";
    append_plain(text, value, decimals);
    CHECK(text == "7.0" + want);
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

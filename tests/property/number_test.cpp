#include "cutback/number.hpp"

#include <rapidcheck.h>
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <cstdlib>
#include <string>

using namespace cutback;

TEST_CASE("numbers: what is printed is read back", "[property][number]") {
  CHECK(rc::check("fixed then parse", [](int hundredths) {
    const double value = hundredths / 100.0;
    const auto back = parse_number(fixed(value, 2));
    RC_ASSERT(back.has_value());
    RC_ASSERT(std::abs(*back - value) < 1e-9);
  }));
}

TEST_CASE("numbers: rounding down never goes up and rounding up never goes down",
          "[property][number]") {
  CHECK(rc::check("down <= value <= up", [](int thousandths) {
    const double value = thousandths / 1000.0;
    RC_ASSERT(round_down(value, 0.1) <= value + 1e-6);
    RC_ASSERT(round_up(value, 1.0) >= value - 1e-6);
  }));
}

TEST_CASE("parse_figure: digits with one point at most, and nothing else", "[property][number]") {
  int figures = 0;
  CHECK(rc::check("as read one character after the other", [&] {
    const auto text = *rc::gen::resize(
        10,
        rc::gen::container<std::string>(rc::gen::weightedElement<char>(
            {{6, '0'}, {6, '7'}, {6, '9'}, {3, '.'}, {1, '-'}, {1, ':'}, {1, '/'}, {1, '\xB0'}})));
    const bool figure = text.find_first_not_of("0123456789.") == std::string::npos &&
                        std::count(text.begin(), text.end(), '.') <= 1 &&
                        text.find_first_of("0123456789") != std::string::npos;
    RC_ASSERT(parse_figure(text).has_value() == figure);
    if (!figure) return;
    ++figures;
    RC_ASSERT(*parse_figure(text) == std::strtod(text.c_str(), nullptr));
  }));
  CHECK(figures > 20);
}

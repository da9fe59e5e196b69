#include "cutback/number.hpp"

#include <rapidcheck.h>
#include <catch2/catch.hpp>
#include <cmath>

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

#include "cutback/money.hpp"

#include <catch2/catch.hpp>

#include "cutback/error.hpp"

using namespace cutback;

TEST_CASE("price_decimals: as many as write the price", "[unit][money]") {
  CHECK(price_decimals(11.2) == 2);
  CHECK(price_decimals(0.0) == 2);
  CHECK(price_decimals(1.244) == 3);
  CHECK(price_decimals(0.0003) == 4);
  CHECK(price_decimals(9999999.999999) == 6);
  CHECK_FALSE(price_decimals(0.1234567));
  CHECK_FALSE(price_decimals(1.0 / 3.0));
}

TEST_CASE("money: sums are whole units and written as such", "[unit][money]") {
  CHECK(price_units(1.244, 3) == 1244);
  CHECK(price_units(1.236, 3) == 1236);
  CHECK(price_units(0.29, 2) == 29);  // 0.29 * 100 is below 29 in binary
  CHECK(price_units(9999999.999999, 6) == 9999999999999);
  CHECK(money_text(1244, 3) == "1.244");
  CHECK(money_text(5, 2) == "0.05");
  CHECK(money_text(-5, 2) == "-0.05");
  CHECK(money_text(-123456, 4) == "-12.3456");
  CHECK(money_value(1244, 3) == 1.244);
  CHECK(money_times(1236, 1000) == 1236000);
  CHECK_THROWS_AS(money_times(9999999999999, 10'000'000), InputError);
  CHECK_THROWS_AS(money_sum(9'000'000'000'000'000'000, 9'000'000'000'000'000'000), InputError);
}

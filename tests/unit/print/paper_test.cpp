#include "cutback/print/paper.hpp"

#include <catch2/catch.hpp>
#include <string>

using cutback::print::paper_of;

TEST_CASE("Paper has the size of its standard") {
  // ISO 216:2007, Table 1; ANSI/ASME Y14.1, size A: 8.5 by 11 inches.
  struct Row {
    const char* name;
    double width_mm;
    double height_mm;
  };
  for (const Row& row : {Row{"A4", 210, 297}, Row{"a5", 148, 210}, Row{"A6", 105, 148},
                         Row{"letter", 8.5 * 25.4, 11 * 25.4}}) {
    INFO(row.name);
    const auto upright = paper_of(row.name, 1, false);
    REQUIRE(upright);
    CHECK(upright->width_mm == Approx(row.width_mm).margin(1e-9));
    CHECK(upright->height_mm == Approx(row.height_mm).margin(1e-9));
    CHECK(upright->across * upright->down == 1);
    const auto lying = paper_of(row.name, 1, true);
    REQUIRE(lying);
    CHECK(lying->width_mm == upright->height_mm);
    CHECK(lying->height_mm == upright->width_mm);
  }
}

TEST_CASE("Cards divide the long side first") {
  const auto two = paper_of("a4", 2, false);
  REQUIRE(two);
  CHECK(two->across == 1);
  CHECK(two->down == 2);
  const auto lying = paper_of("A4", 2, true);
  REQUIRE(lying);
  CHECK(lying->across == 2);
  CHECK(lying->down == 1);
  const auto four = paper_of("Letter", 4, true);
  REQUIRE(four);
  CHECK(four->across == 2);
  CHECK(four->down == 2);
}

TEST_CASE("Paper that there is not is not made up") {
  CHECK_FALSE(paper_of("a3", 1, false));
  CHECK_FALSE(paper_of("", 1, false));
  CHECK_FALSE(paper_of("a4", 3, false));
  CHECK_FALSE(paper_of("a4", 0, false));
  CHECK_FALSE(paper_of("a5", 2, false));
  CHECK_FALSE(paper_of("a6", 4, true));
}

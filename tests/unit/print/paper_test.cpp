#include "cutback/print/paper.hpp"

#include <catch2/catch.hpp>
#include <string>

using cutback::print::paper_of;

TEST_CASE("Paper has the size of its standard and lies on its long side") {
  // ISO 216:2007, Table 1; ANSI/ASME Y14.1, size A: 8.5 by 11 inches.
  struct Row {
    const char* name;
    double short_mm;
    double long_mm;
    bool small;
  };
  for (const Row& row : {Row{"A4", 210, 297, false}, Row{"a5", 148, 210, false},
                         Row{"A6", 105, 148, true}, Row{"letter", 8.5 * 25.4, 11 * 25.4, false}}) {
    INFO(row.name);
    const auto paper = paper_of(row.name, 1);
    REQUIRE(paper);
    CHECK(paper->width_mm == Approx(row.long_mm).margin(1e-9));
    CHECK(paper->height_mm == Approx(row.short_mm).margin(1e-9));
    CHECK(paper->across * paper->down == 1);
    CHECK(paper->small == row.small);
  }
}

TEST_CASE("Every card of a divided paper lies on its long side") {
  for (const char* name : {"A4", "Letter"}) {
    INFO(name);
    const auto usual = paper_of(name, 0);
    REQUIRE(usual);
    CHECK(usual->across == 1);
    CHECK(usual->down == 2);
    CHECK_FALSE(usual->small);
    const auto four = paper_of(name, 4);
    REQUIRE(four);
    CHECK(four->across == 2);
    CHECK(four->down == 2);
    CHECK(four->small);
    for (const auto& paper : {*usual, *four}) {
      CHECK(paper.width_mm / paper.across > paper.height_mm / paper.down);
    }
  }
  CHECK(paper_of("a5", 0)->down == 1);
}

TEST_CASE("Paper that there is not is not made up") {
  CHECK_FALSE(paper_of("a3", 1));
  CHECK_FALSE(paper_of("", 1));
  CHECK_FALSE(paper_of("a4", 3));
  CHECK_FALSE(paper_of("a4", -1));
  CHECK_FALSE(paper_of("a5", 2));
  CHECK_FALSE(paper_of("a6", 4));
}

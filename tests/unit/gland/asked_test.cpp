#include "cutback/gland/asked.hpp"

#include <catch2/catch.hpp>

#include "cutback/error.hpp"
#include "cutback/gland/columns.hpp"
#include "cutback/io/gland_list.hpp"

using namespace cutback;

TEST_CASE("asked: a range in one cell", "[unit][gland]") {
  struct Row {
    const char* text;
    double low;
    double high;
  };
  for (const Row& row :
       {Row{"11-16", 11, 16}, Row{"11 - 16", 11, 16}, Row{"11 to 16 mm", 11, 16},
        Row{"11.5...16.2", 11.5, 16.2},
        Row{"11\xE2\x80\x93"
            "16mm",
            11, 16},
        Row{"0-16", 0, 16}, Row{"0.5-1in", 12.7, 25.4}, Row{"1/2\"-1\"", 12.7, 25.4},
        Row{"11mm-16mm", 11, 16}, Row{"9-9", 9, 9}}) {
    INFO(row.text);
    const auto ends = gland::read_range(row.text);
    REQUIRE(ends);
    CHECK(ends->low == Approx(row.low));
    CHECK(ends->high == Approx(row.high));
  }
  for (const char* text : {"", "11", "16-11", "11-16-20", "-5-10", "-5", "11-", "-", "a-b",
                           "11,5-16", "11-16 kg", "about 11-16"}) {
    INFO(text);
    CHECK_FALSE(gland::read_range(text));
  }
}

TEST_CASE("asked: every question is a column, and the needed ones are all there", "[unit][gland]") {
  std::vector<std::string_view> names = gland::template_columns();
  for (const gland::Asked& asked : gland::asked()) {
    CHECK_NOTHROW(gland::column_place(asked.low));
    CHECK_NOTHROW(gland::column_place(asked.high));
    if (asked.is_range()) CHECK(gland::read_range(asked.example));
  }
  for (const gland::Column& column : gland::columns()) {
    if (!column.required) continue;
    INFO(column.name);
    CHECK(std::find(names.begin(), names.end(), column.name) != names.end());
  }
}

TEST_CASE("asked: the template lacks a gland and nothing else", "[unit][gland]") {
  try {
    static_cast<void>(io::read_gland_list(gland::template_text(), "new.csv"));
    FAIL("a list without a gland is none");
  } catch (const InputError& error) {
    REQUIRE(error.faults().size() == 1);
    CHECK(error.faults().front().what == "the list has no gland");
  }
  const auto list = io::read_gland_list(
      gland::template_text() +
          "A1,,M20,15,wire,11,16,8,12,12.5,0.9,1.25\n# a remark, with a comma\n",
      "new.csv");
  REQUIRE(list.glands.size() == 1);
  CHECK(list.warnings.empty());
  CHECK(list.glands.front().outer.high_mm == 16.0);
}

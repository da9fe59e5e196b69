#include "cutback/io/gland_edit.hpp"

#include <catch2/catch.hpp>

#include "cutback/error.hpp"

using namespace cutback;
using io::CellEdit;
using io::with_gland_cells;

TEST_CASE("gland_edit: one cell changes, every other byte stays", "[unit][io]") {
  const std::string list =
      "\xEF\xBB\xBFpart,armour_stop_mm,description\r\n"
      "# a remark, \"with quotes\"\r\n"
      "A, 20 ,\"one, with a \"\"quote\"\"\"\r\n"
      "\"B\",,two\r\n";
  const CellEdit stop{"armour_stop_mm", "24.5"};
  std::string wanted = list;
  wanted.replace(wanted.find(" 20 "), 4, "24.5");
  CHECK(with_gland_cells(list, "l", "A", {&stop, 1}) == wanted);
  wanted = list;
  wanted.replace(wanted.find("\"B\",,") + 4, 0, "24.5");
  CHECK(with_gland_cells(list, "l", "B", {&stop, 1}) == wanted);
  CHECK(with_gland_cells(list, "l", "A", {}) == list);
}

TEST_CASE("gland_edit: a column that is not there goes behind the last one", "[unit][io]") {
  const CellEdit past{"bedding_past_mm", "6"};
  CHECK(with_gland_cells("part,price\nA,1\nB\n", "l", "B", {&past, 1}) ==
        "part,price,bedding_past_mm\nA,1\nB,,6\n");
  // A row that ends before the column is filled up to it.
  CHECK(with_gland_cells("part,price,bedding_past_mm,stock\nA\n", "l", "A", {&past, 1}) ==
        "part,price,bedding_past_mm,stock\nA,,6\n");
  CHECK(with_gland_cells("part,price\nA,1", "l", "A", {&past, 1}) ==
        "part,price,bedding_past_mm\nA,1,6");
}

TEST_CASE("gland_edit: a blank last cell and a new column behind it", "[unit][io]") {
  const std::vector<CellEdit> both{{"armour_stop_mm", "20"}, {"bedding_past_mm", "6"}};
  CHECK(with_gland_cells("part,armour_stop_mm\nA,\n", "l", "A", both) ==
        "part,armour_stop_mm,bedding_past_mm\nA,20,6\n");
}

TEST_CASE("gland_edit: a gland goes behind the last row", "[unit][io]") {
  const std::vector<CellEdit> cells{{"price", "3"}, {"part", "B, 2"}, {"level", "Gb"}};
  CHECK(io::with_gland_added("price,part\r\n1,A", "l", cells) ==
        "price,part,level\r\n1,A\n3,\"B, 2\",Gb\r\n");
  CHECK_THROWS_AS(io::with_gland_added("price,part\n1,\"B, 2\"\n", "l", cells), InputError);
  CHECK_THROWS_AS(io::with_gland_added("price\n1\n", "l", cells), InputError);
}

TEST_CASE("gland_edit: a gland that was begun is a remark and found again", "[unit][io]") {
  const std::vector<CellEdit> cells{{"part", "B"}, {"description", "one, \"two\""}, {"price", ""}};
  const std::string list = "part,price\nA,1\n# for people\n";
  std::string text = io::with_begun(list, cells);
  CHECK(text.starts_with(list + "# begun,"));
  CHECK(io::take_begun(text) == cells);
  CHECK(text == list);
  CHECK(io::take_begun(text).empty());
  CHECK(text == list);
}

TEST_CASE("gland_edit: a part that is not there, or there twice", "[unit][io]") {
  const CellEdit stop{"armour_stop_mm", "20"};
  CHECK_THROWS_AS(with_gland_cells("part\nA\n", "l", "B", {&stop, 1}), InputError);
  CHECK_THROWS_AS(with_gland_cells("part\nA\nA\n", "l", "A", {&stop, 1}), InputError);
  CHECK_THROWS_AS(with_gland_cells("", "l", "A", {&stop, 1}), InputError);
}

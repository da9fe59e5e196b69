#include <catch2/catch.hpp>

#include "cutback/error.hpp"
#include "cutback/tables/standards.hpp"

using namespace cutback;

TEST_CASE("Table: the first row with the words, from a row on", "[unit][tables]") {
  tables::Table table;
  table.id = "colours";
  table.columns = {"name", "n"};
  table.rows = {{"red", 1.0}, {"blue", 2.0}, {"red", 3.0}};
  CHECK(table.find("name", "red") == 0U);
  CHECK(table.find("name", "red", 1) == 2U);
  CHECK_FALSE(table.find("name", "green"));
  CHECK(table.row("name", "blue") == 1U);
  CHECK_THROWS_AS(table.row("name", "blue", 2), InternalError);
  CHECK_THROWS_AS(table.find("colour", "red"), InternalError);
}

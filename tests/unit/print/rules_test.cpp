#include "cutback/print/rules.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <sstream>

#include "cutback/io/standards.hpp"

using namespace cutback;

TEST_CASE("rules: every table is listed with its source and status", "[unit][rules]") {
  const tables::Standards standards = io::builtin_standards();
  const auto list = nlohmann::ordered_json::parse(print::rules_json(standards)).at("tables");
  REQUIRE(list.size() == standards.tables.size());
  for (const auto& table : list) {
    CHECK_FALSE(table.at("document").get<std::string>().empty());
    CHECK_FALSE(table.at("clause").get<std::string>().empty());
    CHECK(table.at("rows").get<int>() > 0);
  }
}

TEST_CASE("rules: no table is wider than 80 columns", "[unit][rules]") {
  const tables::Standards standards = io::builtin_standards();
  std::string all = print::rules_text(standards, {});
  for (const tables::Table& table : standards.tables) all += print::rule_table_text(table, {});
  std::istringstream lines(all);
  for (std::string line; std::getline(lines, line);) {
    INFO(line);
    CHECK(line.size() <= 80);
  }
}

TEST_CASE("rules: an empty cell is null in JSON and left out of a record", "[unit][rules]") {
  tables::Table table;
  table.id = "two";
  table.columns = {"name", "words"};
  table.rows = {{std::string("a"), std::monostate{}}, {1.5, std::string(100, 'x')}};
  const auto rows = nlohmann::ordered_json::parse(print::rule_table_json(table)).at("rows");
  CHECK(rows[0][1].is_null());
  CHECK(rows[1][0].get<double>() == 1.5);
  const std::string text = print::rule_table_text(table, {});
  CHECK(text.find("1   name   a\n\n2   name   1.5\n    words  xxx") != std::string::npos);
}

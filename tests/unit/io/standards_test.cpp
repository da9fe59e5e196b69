#include "cutback/io/standards.hpp"

#include <catch2/catch.hpp>

#include "cutback/error.hpp"

using namespace cutback;
using Catch::Contains;

namespace {
const std::string k_good = R"({"id":"t","schema":1,"status":"checked","title":"T",
  "source":{"document":"D","edition":"E","clause":"C","transcribed":"2026-11-25","checked":"2026-11-25"},
  "interval":"i","notes":"n","columns":["a","b"],"rows":[[1,"x"],[2,null]]})";

std::string with(const std::string& from, const std::string& to) {
  std::string text = k_good;
  text.replace(text.find(from), from.size(), to);
  return text;
}
}  // namespace

TEST_CASE("builtin_standards: every table loads and names its source", "[unit][standards]") {
  const auto standards = io::builtin_standards();
  CHECK(standards.tables.size() >= 2);
  for (const auto& table : standards.tables) {
    INFO(table.id);
    CHECK_FALSE(table.document.empty());
    CHECK_FALSE(table.title.empty());
    CHECK(table.checksum.size() == 64);
  }
  CHECK(standards.wire_bands.size() == 7);
  CHECK_THROWS_AS(standards.table("no_such"), InternalError);
}

TEST_CASE("read_table: a good table, cell by cell", "[unit][standards]") {
  const auto table = io::read_table(k_good, "t.json");
  CHECK(table.number(0, "a") == 1.0);
  CHECK(table.text(0, "b") == "x");
  CHECK(table.text(1, "b").empty());
  CHECK(table.source() == "D (E), C");
  CHECK_THROWS_AS(table.number(0, "b"), InternalError);
  CHECK_THROWS_AS(table.number(9, "a"), InternalError);
}

TEST_CASE("read_table: a table is trusted no further than its weakest row", "[unit][standards]") {
  const auto table = [](const std::string& status) {
    return R"({"id":"t","schema":1,"status":")" + status +
           R"(","title":"T","source":{"document":"D","edition":"E","clause":"C","transcribed":"2026-11-25",
  "checked":"2026-11-25"},"interval":"i","notes":"n","columns":["a","status"],
  "rows":[[1,"checked"],[2,"from-memory"],[3,"derived"]]})";
  };
  CHECK(io::read_table(table("from-memory"), "t").status == tables::Status::from_memory);
  for (const char* stronger : {"checked", "secondary", "derived"}) {
    CHECK_THROWS_WITH(io::read_table(table(stronger), "t"), Contains("weakest row"));
  }
  std::string unknown = table("from-memory");
  unknown.replace(unknown.find("\"checked\"]"), 10, "\"sure\"]");
  CHECK_THROWS_WITH(io::read_table(unknown, "t"), Contains("status"));
}

TEST_CASE("read_table: each fault of form is refused", "[unit][standards]") {
  CHECK_THROWS_WITH(io::read_table(with("\"notes\":\"n\"", "\"note\":\"n\""), "t"),
                    Contains("unknown key"));
  CHECK_THROWS_WITH(io::read_table(with("\"notes\":\"n\",", ""), "t"), Contains("missing"));
  CHECK_THROWS_WITH(io::read_table(with("checked\",\"title", "sure\",\"title"), "t"),
                    Contains("status"));
  CHECK_THROWS_WITH(io::read_table(with("[2,null]", "[2]"), "t"), Contains("row 2"));
  CHECK_THROWS_WITH(io::read_table(with("[2,null]", "[2,true]"), "t"), Contains("row 2"));
  CHECK_THROWS_WITH(io::read_table(with("[[1,\"x\"],[2,null]]", "[]"), "t"), Contains("empty"));
  CHECK_THROWS_WITH(io::read_table(with("\"schema\":1", "\"schema\":2"), "t"), Contains("schema"));
}

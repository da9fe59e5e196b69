#include "io/json_strict.hpp"

#include <catch2/catch.hpp>

#include "cutback/error.hpp"

using namespace cutback;
using Catch::Contains;

TEST_CASE("parse_json: a duplicate key is an error with its path", "[unit][json]") {
  CHECK_THROWS_WITH(io::parse_json(R"({"cable":{"cores":3,"cores":4}})", "job.json"),
                    Contains("twice") && Contains("cable.cores"));
  CHECK_NOTHROW(io::parse_json(R"([{"a":1},{"a":2}])", "x"));
}

TEST_CASE("parse_json: syntax errors give line and column", "[unit][json]") {
  CHECK_THROWS_WITH(io::parse_json("{\n  \"a\": 1,,\n}", "job.json"),
                    Contains("line 2, column 10"));
}

TEST_CASE("parse_json: nesting 100000 deep is refused without a crash", "[unit][json]") {
  CHECK_THROWS_WITH(io::parse_json(std::string(100000, '['), "x"), Contains("nested too deep"));
}

TEST_CASE("parse_json: empty and binary files and huge numbers", "[unit][json]") {
  CHECK_THROWS_AS(io::parse_json("", "x"), InputError);
  CHECK_THROWS_AS(io::parse_json(" \n", "x"), InputError);
  CHECK_THROWS_WITH(io::parse_json(std::string("{\0}", 3), "x"), Contains("not a text file"));
  CHECK_THROWS_WITH(io::parse_json(R"({"a":1e400})", "x"), Contains("too large"));
  CHECK_THROWS_AS(io::parse_json(R"({"a":nan})", "x"), InputError);
  CHECK(io::parse_json("\xEF\xBB\xBF{\"a\":1}", "x").at("a") == 1);
}

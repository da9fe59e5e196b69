#include "cutback/io/csv.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

#include "io/utf8.hpp"

using namespace cutback;
using Catch::Contains;
using Rows = std::vector<std::vector<std::string>>;

namespace {

Rows read(std::string_view text) {
  io::CsvReader reader(text, "t.csv");
  io::CsvRecord record;
  Rows rows;
  while (reader.next(record)) rows.emplace_back(record.fields.begin(), record.fields.end());
  return rows;
}

std::vector<std::size_t> lines(std::string_view text) {
  io::CsvReader reader(text, "t.csv");
  io::CsvRecord record;
  std::vector<std::size_t> numbers;
  while (reader.next(record)) numbers.push_back(record.line);
  return numbers;
}

}  // namespace

TEST_CASE("CsvReader: plain fields with every kind of line end", "[unit][csv]") {
  const Rows expected{{"a", "b"}, {"c", "d"}};
  CHECK(read("a,b\nc,d\n") == expected);
  CHECK(read("a,b\r\nc,d\r\n") == expected);
  CHECK(read("a,b\r\nc,d") == expected);
  CHECK(read("\xEF\xBB\xBF"
             "a,b\nc,d\n") == expected);
}

TEST_CASE("CsvReader: empty fields count and empty lines do not", "[unit][csv]") {
  CHECK(read("a,\n,b\n,") == Rows{{"a", ""}, {"", "b"}, {"", ""}});
  CHECK(read("\n\r\na\n\n\nb\n\n") == Rows{{"a"}, {"b"}});
  CHECK(read("\"\"\n") == Rows{{""}});
  CHECK(read(" \n") == Rows{{" "}});
  CHECK(read("").empty());
  CHECK(read("\xEF\xBB\xBF").empty());
  CHECK(read("\n\r\n").empty());
}

TEST_CASE("CsvReader: quotes hold commas and line breaks and doubled quotes", "[unit][csv]") {
  CHECK(read("\"a,b\",c") == Rows{{"a,b", "c"}});
  CHECK(read("\"a\nb\",\"c\r\nd\",\"e\rf\"\n") == Rows{{"a\nb", "c\r\nd", "e\rf"}});
  CHECK(read("\"say \"\"no\"\"\",\"\"\"\",x") == Rows{{"say \"no\"", "\"", "x"}});
  CHECK(read("\"\",\"\"") == Rows{{"", ""}});
}

TEST_CASE("CsvReader: a record names the line on which it began", "[unit][csv]") {
  CHECK(lines("a\nb\n") == std::vector<std::size_t>{1, 2});
  CHECK(lines("a\r\n\r\n\"x\r\ny\nz\"\r\nb") == std::vector<std::size_t>{1, 3, 6});
}

TEST_CASE("CsvReader: fields stay valid while the reader lives", "[unit][csv]") {
  std::string text;
  for (int i = 0; i < 1000; ++i) text += "\"" + std::to_string(i) + "\"\"\"\n";
  io::CsvReader reader(text, "t.csv");
  io::CsvRecord record;
  std::vector<std::string_view> kept;
  while (reader.next(record)) kept.push_back(record.fields.front());
  REQUIRE(kept.size() == 1000);
  for (std::size_t i = 0; i < kept.size(); ++i) CHECK(kept[i] == std::to_string(i) + "\"");
}

TEST_CASE("CsvReader: what is wrong is refused with its line", "[unit][csv]") {
  CHECK_THROWS_WITH(read("a\n\"b\nc"), Contains("never closed") && Contains("t.csv, line 2"));
  CHECK_THROWS_WITH(read("a\n\""), Contains("never closed") && Contains("line 2"));
  CHECK_THROWS_WITH(read("\"\"\""), Contains("never closed"));
  CHECK_THROWS_WITH(read("\"a\"b\n"), Contains("after a closing quote") && Contains("line 1"));
  CHECK_THROWS_WITH(read("\"a\n\" ,b\n"), Contains("after a closing quote") && Contains("line 2"));
  CHECK_THROWS_WITH(read("a,b\nc,x\"y\n"), Contains("a quote inside a field") &&
                                               Contains("field 2") && Contains("line 2"));
  CHECK_THROWS_WITH(read("a\rb\r"), Contains("carriage return") && Contains("line 1"));
  CHECK_THROWS_WITH(read("a\n\rb"), Contains("carriage return") && Contains("line 2"));
  CHECK_THROWS_WITH(read("a\r"), Contains("carriage return"));
  CHECK_THROWS_WITH(read("\"a\"\r"), Contains("carriage return"));
  CHECK_THROWS_WITH(read(std::string_view("a\nb\0", 4)),
                    Contains("not a text file") && Contains("line 2"));
  CHECK_THROWS_WITH(read(std::string_view("\"\0\"\"x", 5)), Contains("not a text file"));
  CHECK_THROWS_WITH(read("a\n\nna\xEFve\n"), Contains("not UTF-8") && Contains("line 3"));
}

TEST_CASE("CsvReader: after an error it is at its end", "[unit][csv]") {
  for (const char* text : {"\"a\"b\nc\n", "\xFF\nc\n", "\"a"}) {
    io::CsvReader reader(text, "t.csv");
    io::CsvRecord record;
    CHECK_THROWS_AS(reader.next(record), InputError);
    CHECK_FALSE(reader.next(record));
  }
}

TEST_CASE("csv_field: what asks for quotes is found at every place", "[unit][csv]") {
  for (std::size_t length = 1; length < 40; ++length) {
    const std::string plain(length, 'x');
    CHECK(io::csv_field(plain) == plain);
    for (std::size_t place = 0; place < length; ++place) {
      for (const char special : {',', '\n', '\r', '"'}) {
        std::string text = plain;
        text[place] = special;
        CHECK(io::csv_field(text).front() == '"');
      }
      for (const char near : {'+', '-', '\v', '\x0e', '!', '#', '\xac', '\x8a', '\xa2', '\x7f'}) {
        std::string text = plain;
        text[place] = near;
        CHECK(io::csv_field(text) == text);
      }
    }
  }
}

TEST_CASE("csv_field: quoted only where it must be", "[unit][csv]") {
  CHECK(io::csv_field("a b") == "a b");
  CHECK(io::csv_field("").empty());
  CHECK(io::csv_field("a,b") == "\"a,b\"");
  CHECK(io::csv_field("a\"b") == "\"a\"\"b\"");
  CHECK(io::csv_field("a\nb") == "\"a\nb\"");
  CHECK(io::csv_field(" a") == "\" a\"");
  CHECK(io::csv_field("a ") == "\"a \"");
}

TEST_CASE("first_invalid_utf8: well-formed and ill-formed sequences", "[unit][csv]") {
  for (const char* good : {"", "plain text of more than eight bytes", "\xC2\x80", "\xDF\xBF",
                           "\xE0\xA0\x80", "\xED\x9F\xBF", "\xEE\x80\x80", "\xEF\xBF\xBF",
                           "\xF0\x90\x80\x80", "\xF4\x8F\xBF\xBF", "eightby\xC3\xA9te"}) {
    INFO(good);
    CHECK(io::first_invalid_utf8(good) == std::string_view::npos);
  }
  for (const char* bad :
       {"\x80", "\xC0\x80", "\xC1\xBF", "\xC2", "\xC2 ", "\xE0\x9F\xBF", "\xE1\x80", "\xED\xA0\x80",
        "\xF0\x8F\xBF\xBF", "\xF4\x90\x80\x80", "\xF0\x90\x80", "\xF5\x80\x80\x80", "\xFF"}) {
    INFO(bad);
    CHECK(io::first_invalid_utf8(bad) == 0);
    CHECK(io::first_invalid_utf8("12345678ab" + std::string(bad)) == 10);
  }
}

TEST_CASE("append_csv_text: no spreadsheet runs it, and it is read back as it was", "[unit][io]") {
  for (const std::string_view text : {"=1+1", "+1", "-1", "@SUM(A1)", "\tx", "\rx", "'=1", "''=1",
                                      "'", "''", "'a", "a=b", "", "C-01", "=a,\"b\"", "'-", "-"}) {
    INFO(text);
    std::string line;
    io::append_csv_text(line, text);
    line += '\n';
    io::CsvReader reader(line, "t.csv");
    io::CsvRecord record;
    if (!reader.next(record)) {
      CHECK(text.empty());
      continue;
    }
    const std::string_view field = record.fields.at(0);
    CHECK(field.find_first_of("=+-@\t\r") != 0);
    CHECK(io::text_of_csv(field) == text);
  }
}

TEST_CASE("CsvReader: semicolons and tabs between the fields", "[unit][io]") {
  for (const char sign : {';', '\t'}) {
    std::string text = "a|\"b|c\"|d,e\n1|2|3\n";
    std::replace(text.begin(), text.end(), '|', sign);
    io::CsvReader reader(text, "t.csv", 1, sign);
    io::CsvRecord record;
    REQUIRE(reader.next(record));
    const std::string quoted = std::string("b") + sign + "c";
    CHECK(record.fields == std::vector<std::string_view>{"a", quoted, "d,e"});
    REQUIRE(reader.next(record));
    CHECK(record.bare);
    CHECK(record.fields.size() == 3);
  }
}

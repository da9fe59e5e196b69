#include "cutback/io/csv_rows.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <thread>

using namespace cutback;
using Catch::Contains;

namespace {

struct Row {
  std::size_t line;
  std::vector<std::string> fields;
  friend bool operator==(const Row&, const Row&) = default;
};

std::vector<Row> rows_of(io::RowSource& source) {
  std::vector<Row> rows;
  io::RowBlock block;
  while (source.read(block)) {
    source.finish(block);
    for (std::size_t i = 0; i < block.rows; ++i) {
      const io::CsvRecord& record = block.records[i];
      rows.push_back({record.line, {record.fields.begin(), record.fields.end()}});
    }
  }
  return rows;
}

std::vector<Row> rows_at_once(std::string_view text) {
  std::vector<Row> rows;
  io::CsvReader reader(text, "t");
  io::CsvRecord record;
  while (reader.next(record)) {
    rows.push_back({record.line, {record.fields.begin(), record.fields.end()}});
  }
  return rows;
}

/// Longer than a piece, with line ends and quotes inside quotes.
std::string long_text() {
  std::string text = "\xEF\xBB\xBFtag,note\r\n";
  for (int i = 0; i < 9000; ++i) {
    text += "C" + std::to_string(i) + ",\"says \"\"" +
            std::string(static_cast<std::size_t>(i % 70), 'x') + "\"\",\nand more\"\r\n";
  }
  return text + "last,\"no line end\"";
}

/// The text through a named pipe.
std::vector<Row> rows_through_pipe(const std::string& text) {
  const std::string path =
      (std::filesystem::temp_directory_path() / ("cutback_pipe_" + std::to_string(::getpid())))
          .string();
  ::unlink(path.c_str());
  REQUIRE(::mkfifo(path.c_str(), 0600) == 0);
  std::thread writer([&] { std::ofstream(path, std::ios::binary) << text; });
  io::CsvRows source(path);
  CHECK_FALSE(source.taken());
  std::vector<Row> rows;
  try {
    rows = rows_of(source);
  } catch (...) {
    writer.join();
    ::unlink(path.c_str());
    throw;
  }
  writer.join();
  ::unlink(path.c_str());
  return rows;
}

std::string fault_of(const std::string& text) {
  try {
    rows_through_pipe(text);
  } catch (const InputError& error) {
    return error.what();
  }
  return "no fault";
}

}  // namespace

TEST_CASE("CsvRows: piece by piece the rows and lines are those of the whole", "[unit][csv]") {
  const std::string text = long_text();
  io::CsvRows source(text, "t");
  CHECK(source.taken() == 0.0);
  CHECK(rows_of(source) == rows_at_once(text));
  CHECK(source.taken() == 1.0);
}

TEST_CASE("CsvRows: a pipe gives the same rows", "[unit][csv]") {
  CHECK(rows_through_pipe(long_text()) == rows_at_once(long_text()));
  CHECK(rows_through_pipe("tag\nC1") == rows_at_once("tag\nC1"));
  CHECK(rows_through_pipe("").empty());
}

TEST_CASE("CsvRows: a row longer than a piece is one row", "[unit][csv]") {
  const std::string text = "tag\n\"" + std::string(200'000, '\n') + "\"\nC2\n";
  io::CsvRows source(text, "t");
  CHECK(rows_of(source) == rows_at_once(text));
  CHECK(rows_through_pipe(text) == rows_at_once(text));
}

TEST_CASE("CsvRows: a fault names its line in the whole file", "[unit][csv]") {
  const std::string start = long_text() + "\n";
  const auto lines = std::to_string(1 + std::count(start.begin(), start.end(), '\n'));
  CHECK_THAT(fault_of(start + "a,b\"c\n"), Contains("inside a field") && Contains("line " + lines));
  CHECK_THAT(fault_of(start + "a,\"b\n"), Contains("never closed") && Contains("line " + lines));
  CHECK_THAT(fault_of(start + "a,\xFF\n"), Contains("not UTF-8") && Contains("line " + lines));
}

TEST_CASE("CsvRows: a file that is not there", "[unit][csv]") {
  CHECK_THROWS_AS(io::CsvRows("/nowhere/at/all.csv"), FileError);
  CHECK_THROWS_AS(io::CsvRows("/tmp"), FileError);
}

TEST_CASE("CsvRows: a text that is kept from being a number", "[unit][csv]") {
  // ="0012", as programs write it for spreadsheets.
  const std::string text =
      "\"=\"\"0012\"\"\",b\n\"=\"\"\"\"\",b\n\"=\"\"a\"\"&\"\"b\"\"\",\"=A1\"\nc,d\n";
  io::CsvRows rows(text, "t.csv");
  CHECK(rows_of(rows) ==
        std::vector<Row>{
            {1, {"0012", "b"}}, {2, {"", "b"}}, {3, {"=\"a\"&\"b\"", "=A1"}}, {4, {"c", "d"}}});
}

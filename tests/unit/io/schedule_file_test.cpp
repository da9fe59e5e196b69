#include "cutback/io/schedule_file.hpp"

#include <catch2/catch.hpp>

#include "cutback/io/csv_rows.hpp"

using namespace cutback;
using Catch::Contains;
using io::ScheduleFile;

namespace {

/// A schedule and its text.
struct Opened {
  io::CsvRows rows;
  ScheduleFile file;
  explicit Opened(std::string_view text, std::optional<std::size_t> header_row = std::nullopt)
      : rows(text, "t.csv"), file(rows, "t.csv", {}, header_row) {}
};

std::vector<std::size_t> lines_of(ScheduleFile& file) {
  std::vector<std::size_t> lines;
  io::RowBlock block;
  while (file.read(block)) {
    file.finish(block);
    for (std::size_t i = 0; i < block.rows; ++i) lines.push_back(block.records[i].line);
  }
  return lines;
}

std::string fault_of(std::string_view text, std::optional<std::size_t> header_row = std::nullopt) {
  try {
    Opened opened(text, header_row);
    lines_of(opened.file);
  } catch (const InputError& error) {
    return error.what();
  }
  return "no fault";
}

}  // namespace

TEST_CASE("ScheduleFile: the headings are found below a title", "[unit][schedule]") {
  Opened opened("Site of nobody,,\n,,\nrevision,3,\ntag,sheath_od_mm,x\nC1,15,\nC2,16,\n");
  CHECK(lines_of(opened.file) == std::vector<std::size_t>{5, 6});
}

TEST_CASE("ScheduleFile: blank rows are passed over and lines still count", "[unit][schedule]") {
  Opened opened("tag,sheath_od_mm\nC1,15\n,\n\n , \nC2,\"16\"\n");
  CHECK(lines_of(opened.file) == std::vector<std::size_t>{2, 6});
}

TEST_CASE("ScheduleFile: the row of headings that is named", "[unit][schedule]") {
  const std::string_view text = "tag,sheath_od_mm\nold,1\ntag,bedding_mm\nC1,10\n";
  Opened opened(text, 3);
  CHECK(lines_of(opened.file) == std::vector<std::size_t>{4});
  CHECK(opened.file.layout().columns.front().field->key == "bedding_mm");
  CHECK_THAT(fault_of(text, 9), Contains("no row begins on this line"));
}

TEST_CASE("ScheduleFile: what is no schedule is refused", "[unit][schedule]") {
  CHECK_THAT(fault_of(""), Contains("no row of headings"));
  CHECK_THAT(fault_of("name,colour\nC1,red\n"), Contains("no row of headings"));
  CHECK_THAT(fault_of("tag,sheath_od_mm\n"), Contains("no cable below"));
  CHECK_THAT(fault_of("tag,sheath_od_mm\nC1,15\nC2,\"16\n"),
             Contains("never closed: t.csv, line 3"));
  CHECK_THAT(fault_of("tag,sheath_od_mm\nC1,\x81\n"), Contains("neither UTF-8 nor"));
  CHECK_THAT(fault_of("PK\x03\x04" + std::string(1, '\0')), Contains("not a text file"));
}

TEST_CASE("ScheduleFile: ten million columns are no schedule", "[unit][schedule]") {
  const std::string text = "tag,sheath_od_mm" + std::string(10'000'000, ',') + "\nC1,15\n";
  CHECK_THAT(fault_of(text), Contains("too many columns"));
}

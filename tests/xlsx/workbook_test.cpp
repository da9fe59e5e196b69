#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>

#include "cutback/io/schedule_workbook.hpp"
#include "cutback/io/table_kind.hpp"
#include "cutback/io/xlsx_rows.hpp"

using namespace cutback;
using Catch::Contains;

namespace {

constexpr std::int64_t k_created_unix_s = 946684800;

/// The first cell of each row, and the row's number.
std::vector<std::string> first_cells(const std::string& path, const std::string& sheet) {
  const auto book = io::open_xlsx(path, '.');
  const auto& sheets = book->sheets();
  const auto at = std::find_if(sheets.begin(), sheets.end(), [&](const io::SheetName& each) {
    return sheet.empty() || each.name == sheet;
  });
  std::vector<std::string> cells;
  if (at == sheets.end()) return {"no such sheet"};
  const auto rows = book->open(static_cast<std::size_t>(at - sheets.begin()));
  io::RowBlock block;
  while (rows->read(block)) {
    rows->finish(block);
    io::RowBlock moved = std::move(block);  // as ScheduleFile does: the views stay good
    for (std::size_t i = 0; i < moved.rows; ++i) {
      const auto& record = moved.records[i];
      cells.push_back(std::to_string(record.line) + " " + std::string(record.fields.at(0)));
    }
    block = {};
  }
  return cells;
}

std::string temporary(const std::string& name) {
  return (std::filesystem::temp_directory_path() / ("cutback_" + name)).string();
}

}  // namespace

TEST_CASE("ScheduleWorkbook: what is more than a sheet takes goes on in the next", "[xlsx]") {
  const std::string path = temporary("sheets.xlsx");
  io::FileWriter file(path);
  const auto book = io::new_schedule_workbook(file, k_created_unix_s, 2, 3);
  book->add_results("A,,fits,P,1,1.00,,,,,,,,x\nB,,fits,P,1,1.00,,,,,,,,x\n");
  book->add_results("C,,fits,P,1,1.00,,,,,,,,x\n");
  CHECK_FALSE(std::filesystem::exists(path));
  const std::vector<std::string> notes{"n"};
  book->finish({}, {}, {}, {}, notes);
  file.commit();
  CHECK(first_cells(path, "Results") == std::vector<std::string>{"1 Tag", "2 A", "3 B"});
  CHECK(first_cells(path, "Results 2") == std::vector<std::string>{"1 Tag", "2 C"});
  CHECK(first_cells(path, "Exceptions") == std::vector<std::string>{"1 Group"});
  CHECK(first_cells(path, "Notes") == std::vector<std::string>{"1 notes", "2 n"});
  CHECK(first_cells(path, "Results 3") == std::vector<std::string>{"no such sheet"});
  std::filesystem::remove(path);
}

TEST_CASE("ScheduleWorkbook: texts too long or not allowed in XML are still read back", "[xlsx]") {
  const std::string path = temporary("texts.xlsx");
  io::FileWriter file(path);
  const auto book = io::new_schedule_workbook(file, k_created_unix_s, 2);
  book->add_results("\x01_x0041_\xEF\xBF\xBF,,fits,,,,,,,,,,,\n" + std::string(15999, 'a') +
                    "\xC3\xA4z,,fits,,,,,,,,,,,\n");
  book->finish({}, {}, {}, {}, {});
  file.commit();
  const auto cells = first_cells(path, "Results");
  REQUIRE(cells.size() == 3);
  CHECK_THAT(cells[1], Contains("_x0041_\xEF\xBF\xBD"));
  CHECK(cells[2] == "3 " + std::string(15999, 'a') + " ...");
  std::filesystem::remove(path);
}

TEST_CASE("table_kind: by the first bytes alone", "[xlsx]") {
  using namespace std::string_view_literals;
  CHECK(io::table_kind("PK\x03\x04....") == io::TableKind::xlsx);
  CHECK(io::table_kind("PK\x05\x06....") == io::TableKind::xlsx);
  CHECK(io::table_kind("\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1"sv) == io::TableKind::old_workbook);
  CHECK(io::table_kind("PK-1,tag") == io::TableKind::text);
  CHECK(io::table_kind("") == io::TableKind::empty);
  CHECK(
      io::table_kind(
          "\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1..E\0n\0c\0r\0y\0p\0t\0e\0d\0P\0a\0c\0k\0a\0g\0e\0"sv) ==
      io::TableKind::locked);
  CHECK(io::table_kind("\r\n<HTML xmlns:x=\"a\"><TABLE>") == io::TableKind::web_page);
  CHECK(io::table_kind("<?xml version=\"1.0\"?><Workbook xmlns=\"urn:schemas-microsoft-com:office:"
                       "spreadsheet\">") == io::TableKind::xml_workbook);
  CHECK(io::table_kind("<25 kV,tag") == io::TableKind::text);
}

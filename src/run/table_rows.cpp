#include "run/table_rows.hpp"

#include <algorithm>
#include <array>

#include "cutback/error.hpp"
#include "cutback/io/csv_rows.hpp"
#include "cutback/io/table_kind.hpp"
#include "cutback/text.hpp"
#include "run/open_schedule.hpp"

namespace cutback::run {
namespace {

/// The sign that most lines have; a comma where none has any.
char separator_of(std::string_view beginning) {
  constexpr std::array<char, 3> k_signs{',', ';', '\t'};
  return *std::max_element(k_signs.begin(), k_signs.end(), [&](char a, char b) {
    return std::count(beginning.begin(), beginning.end(), a) <
           std::count(beginning.begin(), beginning.end(), b);
  });
}

std::size_t sheet_of(const std::vector<io::SheetName>& sheets, const std::string& wanted,
                     const std::string& path) {
  std::vector<std::size_t> usable;
  std::string names;
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    if (!sheets[i].has_cells) continue;
    names += (names.empty() ? "" : ", ") + sheets[i].name;
    if (sheets[i].name == wanted) return i;
    if (!sheets[i].hidden) usable.push_back(i);
  }
  if (wanted.empty() && usable.size() == 1) return usable.front();
  throw InputError(
      make_fault(wanted.empty() ? ErrorCode::missing : ErrorCode::unknown_name,
                 wanted.empty() ? "which sheet of the workbook?" : "the workbook has no such sheet",
                 path, wanted, names, ""));
}

void take_all(io::RowSource& source, TableRows& table) {
  table.row_word = source.row_word();
  io::RowBlock block;
  while (source.read(block)) {
    source.finish(block);
    for (std::size_t i = 0; i < block.rows; ++i) {
      const io::CsvRecord& record = block.records[i];
      if (record.hidden) continue;
      table.rows.push_back({record.line, {record.fields.begin(), record.fields.end()}});
    }
  }
}

}  // namespace

TableRows read_table(const std::string& path, const std::string& sheet, char decimal,
                     std::unique_ptr<io::Workbook> (*open_workbook)(const std::string&, char)) {
  TableRows table;
  if (is_workbook(path)) {
    if (open_workbook == nullptr) throw InternalError("no workbook can be opened");
    const auto book = open_workbook(path, decimal);
    const std::size_t place = sheet_of(book->sheets(), sheet, path);
    const auto rows = book->open(place);
    take_all(*rows, table);
    return table;
  }
  if (!sheet.empty()) {
    throw InputError(make_fault(ErrorCode::contradiction, "the file is no workbook (.xlsx)", path,
                                sheet, "", "leave the sheet out"));
  }
  io::CsvRows rows(path);
  const char separator = separator_of(rows.beginning());
  rows.set_separator(separator);
  if (!rows.encoding().empty()) table.notes.push_back("the text is " + rows.encoding());
  if (separator == ';') table.notes.emplace_back("semicolons stand between the cells");
  if (separator == '\t') table.notes.emplace_back("tabs stand between the cells");
  rows.check_all();
  take_all(rows, table);
  return table;
}

}  // namespace cutback::run

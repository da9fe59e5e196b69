#include "cli/appended_columns.hpp"

#include <algorithm>

#include "cutback/number.hpp"

namespace cutback::cli {
namespace {

bool has_two_ends(const run::Schedule& schedule) {
  return std::any_of(schedule.tables.begin(), schedule.tables.end(),
                     [](const auto& table) { return table.file->layout().two_ends; });
}

/// Part codes and reasons stay texts, also where they look like numbers.
bool holds_numbers(const std::string& column) {
  return column.ends_with("_mm") || column.ends_with("fits") || column.ends_with("price");
}

}  // namespace

AppendedColumns::AppendedColumns(const run::Schedule& schedule)
    : wide_(has_two_ends(schedule)), two_ends_(has_two_ends(schedule)) {
  for (const run::ScheduleTable& table : schedule.tables) {
    const std::string& name = table.file->source_name();
    io::AddedColumns& sheet = sheets_[name];
    sheet.sheet = name;
    // What an earlier run put there is renewed in its place.
    auto old = table.file->layout().own_results;
    sheet.columns.clear();
    for (const std::string& column : wide_.columns()) {
      const auto same = std::find_if(old.begin(), old.end(), [&](const auto& each) {
        return each.first == "cutback " + column;
      });
      sheet.columns.push_back(same == old.end() ? 0 : same->second + 1);
      if (same != old.end()) old.erase(same);
    }
    sheet.emptied.clear();
    for (const auto& each : old) sheet.emptied.push_back(each.second + 1);
    std::vector<io::AddedCell>& headings = sheet.rows[table.file->heading_line()];
    for (const std::string& column : wide_.columns())
      headings.push_back({"cutback " + column, false});
  }
}

void AppendedColumns::add(std::string_view csv) {
  constexpr std::size_t k_line = 1;  // behind the tag, and the end where there is one
  const std::string rows = wide_.rows(csv);
  io::CsvReader reader(rows, "results");
  io::CsvRecord row;
  const std::size_t named = two_ends_ ? 4 : 5;
  while (reader.next(row)) {
    const std::size_t at = k_line + (two_ends_ ? 0 : 1);
    const auto line = parse_number(row.fields[at]);
    const auto sheet = sheets_.find(io::text_of_csv(row.fields[at + 1]));
    if (!line || sheet == sheets_.end()) throw InternalError("a result of no row");
    auto& cells = sheet->second.rows[static_cast<std::size_t>(*line)];
    for (std::size_t i = named; i < row.fields.size(); ++i) {
      const bool number =
          holds_numbers(wide_.columns()[i - named]) && parse_number(row.fields[i]).has_value();
      cells.push_back(
          {std::string(number ? row.fields[i] : io::text_of_csv(row.fields[i])), number});
    }
  }
}

std::vector<io::AddedColumns> AppendedColumns::sheets() const {
  std::vector<io::AddedColumns> list;
  for (const auto& [name, sheet] : sheets_) list.push_back(sheet);
  return list;
}

}  // namespace cutback::cli

#include "cutback/io/schedule_file.hpp"

#include <algorithm>

namespace cutback::io {
namespace {

constexpr std::size_t k_rows_searched = 30;
constexpr std::size_t k_most_columns = 16384;  // more than any spreadsheet has

bool is_blank(const CsvRecord& record) {
  return std::all_of(record.fields.begin(), record.fields.end(), [](std::string_view text) {
    return text.find_first_not_of(" \t\r\n") == std::string_view::npos;
  });
}

InputError bad(ErrorCode code, std::string what, std::string where, std::string given,
               std::string hint) {
  return InputError(Fault{.code = code,
                          .what = std::move(what),
                          .where = std::move(where),
                          .given = std::move(given),
                          .allowed = {},
                          .hint = std::move(hint)});
}

/// Reads on to the row of headings and leaves the reader behind it.
void find_headings(CsvReader& reader, CsvRecord& record, const std::string& name,
                   const schedule::Format& format, std::optional<std::size_t> header_row) {
  for (std::size_t i = 0; reader.next(record); ++i) {
    const std::string where = name + ", line " + std::to_string(record.line);
    if (record.fields.size() > k_most_columns) {
      throw bad(ErrorCode::out_of_range, "this is no cable schedule: too many columns", where,
                std::to_string(record.fields.size()), "a row is one cable, a column one figure");
    }
    if (header_row ? record.line == *header_row
                   : schedule::known_headings(record.fields, format) >= 2) {
      return;
    }
    const bool past = header_row ? record.line > *header_row : i + 1 >= k_rows_searched;
    if (past) break;
  }
  if (header_row) {
    throw bad(ErrorCode::missing, "no row begins on this line", name,
              "--header-row " + std::to_string(*header_row), "");
  }
  throw bad(ErrorCode::missing, "there is no row of headings such as tag and sheath_od_mm", name,
            "", "say where it is with --header-row, and own headings with --column");
}

}  // namespace

ScheduleFile::ScheduleFile(std::string_view text, const std::string& name,
                           const schedule::Format& format, std::optional<std::size_t> header_row)
    : reader_(text, name) {
  CsvRecord record;
  find_headings(reader_, record, name, format, header_row);
  layout_ =
      schedule::make_layout(record.fields, format, name + ", line " + std::to_string(record.line));
  CsvReader ahead(text, name);
  const std::size_t headings = record.line;
  while (ahead.next(record)) {
    if (record.line > headings && !is_blank(record)) ++rows_;
  }
  if (rows_ == 0) {
    throw bad(ErrorCode::missing, "there is no cable below the headings", name, "", "");
  }
}

bool ScheduleFile::next(CsvRecord& record) {
  while (reader_.next(record)) {
    if (!is_blank(record)) return true;
  }
  return false;
}

}  // namespace cutback::io

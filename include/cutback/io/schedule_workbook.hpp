#pragma once
// What comes of a schedule as an .xlsx workbook (Office Open XML).

#include <cstddef>
#include <cstdint>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/io/exception_lines.hpp"
#include "cutback/io/files.hpp"
#include "cutback/schedule/tally.hpp"

namespace cutback::io {

/// Sheets Overview, Results, Take-off, Exceptions, Changes where there is an earlier revision, and
/// Notes; but for the first and the last with the columns of the CSV files (schedule_results.hpp),
/// headed in words. Only numbers are numbers: part codes and tags stay texts, also
/// where they look like a number or a formula. The same input and date give the same bytes.
class ScheduleWorkbook {
 public:
  ScheduleWorkbook() = default;
  ScheduleWorkbook(const ScheduleWorkbook&) = delete;
  ScheduleWorkbook& operator=(const ScheduleWorkbook&) = delete;
  virtual ~ScheduleWorkbook() = default;

  /// Appends rows to Results; what is more than a sheet takes goes on in `Results 2`.
  /// @param csv  whole lines of append_schedule_csv
  virtual void add_results(std::string_view csv) = 0;
  /// Writes the rest and looks whether all of it is in the file; to be called once, before the file
  /// is put in its place.
  /// @param changes  of changes_csv; a sheet Changes where it is not empty
  /// @param notes    lines such as the name of the schedule
  /// @throws FileError
  virtual void finish(const schedule::Tally& tally, const schedule::Takeoff& takeoff,
                      const ExceptionLines& exceptions, std::string_view changes,
                      std::span<const std::string> notes) = 0;
};

/// Holds one row in memory; the rest lies in temporary files until it is done.
/// @param file            outlives the workbook
/// @param decimals        of the prices
/// @param created_unix_s  when it says it was created, in seconds since 1970-01-01
/// @param rows_per_sheet    with the headings; 1,048,576 is what spreadsheets take
/// @throws FileError when nothing can be written there
[[nodiscard]] std::unique_ptr<ScheduleWorkbook> new_schedule_workbook(
    FileWriter& file, std::int64_t created_unix_s, int decimals,
    std::size_t rows_per_sheet = 1048576);

}  // namespace cutback::io

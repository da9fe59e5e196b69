#pragma once
// A cable schedule as CSV.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "cutback/io/csv.hpp"
#include "cutback/schedule/layout.hpp"

namespace cutback::io {

/// A schedule, read row by row. The whole text is looked through once when it is opened, so that a
/// file that cannot be understood is known before anything is written.
class ScheduleFile {
 public:
  /// @param text        borrowed: it must outlive this object
  /// @param name        of the file, for messages
  /// @param header_row  line of the headings, from 1; without it they are looked for in the first
  /// rows: the first row with two headings of a schedule
  /// @throws InputError when it is no CSV, has no headings or no row below them
  ScheduleFile(std::string_view text, const std::string& name, const schedule::Format& format,
               std::optional<std::size_t> header_row);

  [[nodiscard]] const schedule::Layout& layout() const { return layout_; }
  /// Rows below the headings that are not blank.
  [[nodiscard]] std::size_t rows() const { return rows_; }
  /// The next row that is not blank; its fields stay valid as long as this object lives.
  /// @return false at the end
  bool next(CsvRecord& record);

 private:
  CsvReader reader_;
  schedule::Layout layout_;
  std::size_t rows_ = 0;
};

}  // namespace cutback::io

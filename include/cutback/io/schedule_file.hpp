#pragma once
// A cable schedule, read row by row.

#include <cstddef>
#include <optional>
#include <string>

#include "cutback/io/rows.hpp"
#include "cutback/schedule/layout.hpp"

namespace cutback::io {

/// The headings of a table found and understood, and the rows below them.
class ScheduleFile {
 public:
  /// @param source      borrowed
  /// @param name        of the file, for messages
  /// @param header_row  row of the headings, from 1; without it they are looked for in the first
  /// rows: the first row with two headings of a schedule
  /// @throws InputError when there are no headings, or nothing below them
  ScheduleFile(RowSource& source, const std::string& name, const schedule::Format& format,
               std::optional<std::size_t> header_row);

  [[nodiscard]] const schedule::Layout& layout() const { return layout_; }
  [[nodiscard]] const RowSource& source() const { return source_; }
  /// What a message calls the row: `line 7`.
  [[nodiscard]] std::string row_name(std::size_t number) const;

  /// Takes the next rows; one thread at a time. @return false at the end
  bool read(RowBlock& block);
  /// Makes them ready, on any thread. Rows without a cell that says anything are taken out.
  /// @throws InputError where the text cannot be read as a table
  void finish(RowBlock& block) const;

 private:
  RowSource& source_;
  schedule::Layout layout_;
  std::optional<RowBlock> first_;  ///< the rows that came together with the headings
};

}  // namespace cutback::io

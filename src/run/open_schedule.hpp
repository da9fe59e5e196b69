#pragma once
// The files of a cable schedule, whatever kind they are, and the tables in them.

#include <deque>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "cutback/io/files.hpp"
#include "cutback/io/schedule_file.hpp"
#include "cutback/io/workbook.hpp"

namespace cutback::run {

/// Whether an ordinary file begins as a workbook does. What a pipe holds shows when it is read;
/// nothing of it may be lost before.
/// @throws FileError
[[nodiscard]] bool is_workbook(const std::string& path);

/// One file that is named.
struct ScheduleInput {
  std::string path;
  std::optional<io::WholeFile> pipe;  ///< what take_text() or take_pipe() took
};

/// How a schedule is opened.
struct Opening {
  /// Opens a workbook; null in a program that cannot.
  std::unique_ptr<io::Workbook> (*open_workbook)(const std::string& path, char decimal) = nullptr;
  std::vector<std::string> sheets;  ///< of workbooks; empty: all that are not hidden
  std::string sheets_option;        ///< what names them, for messages
  schedule::Format format;
  std::optional<std::size_t> header_row;
  /// The whole file is read once before, so that a fault in it is known before anything is written.
  bool check_first = false;
};

/// A sheet, or a file that is one table.
struct ScheduleTable {
  std::vector<std::string> notes;  ///< how the file is written, where that is not as usual
  std::string name;  ///< of the file, and of the sheet where the file has several: for messages
  std::unique_ptr<io::RowSource> rows;
  std::unique_ptr<io::ScheduleFile> file;
  std::vector<io::Aside> asides;  ///< texts beside its cells
};

/// A sheet in sight that holds no schedule: a cover, notes.
struct OtherSheet {
  std::string name;
  std::unique_ptr<io::RowSource> rows;  ///< not yet read
};

struct Schedule {
  std::vector<ScheduleTable> tables;  ///< one at least
  std::vector<std::string> not_read;  ///< sheets, each with the reason
  std::vector<OtherSheet> others;     ///< of these, those that are not hidden
  /// What the file of types says of hazardous places.
  std::vector<std::string> places_of_types;
};

/// Of a workbook all sheets that are not hidden and have the headings of a schedule, or those that
/// are named.
/// @throws InputError, FileError
[[nodiscard]] Schedule open_schedule(const std::deque<ScheduleInput>& inputs,
                                     const Opening& opening);

/// A table's text, read once, so that it is the same whenever it is opened, and a pipe can be
/// opened more than once; nothing of a workbook.
/// @throws FileError, InputError where it is longer than any schedule
[[nodiscard]] std::optional<io::WholeFile> take_text(const std::string& path);

/// All of a pipe, so that it can be opened more than once; nothing of an ordinary file.
/// @throws FileError
[[nodiscard]] std::optional<io::WholeFile> take_pipe(const std::string& path);

}  // namespace cutback::run

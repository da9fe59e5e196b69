#pragma once
// The file of a cable schedule, whatever kind it is.

#include <memory>
#include <optional>
#include <string>

#include "cutback/io/files.hpp"
#include "cutback/io/rows.hpp"

namespace cutback::run {

/// Whether an ordinary file begins as a workbook does. What a pipe holds shows when it is read;
/// nothing of it may be lost before.
/// @throws FileError
[[nodiscard]] bool is_workbook(const std::string& path);

/// How a schedule is opened.
struct Opening {
  /// Reads a sheet of a workbook; null: the file is CSV.
  std::unique_ptr<io::RowSource> (*open_workbook)(const std::string& path, const std::string& sheet,
                                                  char decimal) = nullptr;
  std::string sheet;   ///< of a workbook; empty: the first that is not hidden
  char decimal = '.';  ///< mark with which the numbers of a workbook are given
  /// The whole file is read once before, so that a fault in it is known before anything is written.
  bool check_first = false;
  const io::MappedFile* pipe = nullptr;  ///< what take_pipe() took; null: the file itself is read
};

/// @throws InputError, FileError
[[nodiscard]] std::unique_ptr<io::RowSource> open_schedule(const std::string& path,
                                                           const Opening& opening);

/// All of a pipe, so that it can be opened more than once; nothing of an ordinary file.
/// @throws FileError
[[nodiscard]] std::optional<io::MappedFile> take_pipe(const std::string& path);

}  // namespace cutback::run

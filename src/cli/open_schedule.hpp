#pragma once
// The file of a cable schedule, whatever kind it is.

#include <memory>
#include <optional>
#include <string>

#include "cli/runtime.hpp"
#include "cutback/io/files.hpp"
#include "cutback/io/rows.hpp"

namespace cutback::cli {

/// An ordinary file that begins as a workbook does is read as one (Runtime::extras), anything else
/// as CSV. Where the results go to stdout the whole file is read once before, so that a fault in it
/// is known before anything is written.
/// @param sheet    of a workbook; empty: the first that is not hidden
/// @param decimal  mark with which the numbers of a workbook are given
/// @param pipe     what take_pipe() took, borrowed; null where the file itself is read
/// @throws InputError, FileError
[[nodiscard]] std::unique_ptr<io::RowSource> open_schedule(const std::string& path,
                                                           const std::string& sheet, char decimal,
                                                           const Runtime& runtime,
                                                           const io::MappedFile* pipe = nullptr);

/// All of a pipe, so that it can be opened more than once; nothing of an ordinary file.
/// @throws FileError
[[nodiscard]] std::optional<io::MappedFile> take_pipe(const std::string& path);

}  // namespace cutback::cli

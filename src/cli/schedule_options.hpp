#pragma once
// The options that say how a schedule is written, for every command that reads one.

#include <cstddef>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "cli/runtime.hpp"
#include "cutback/error.hpp"
#include "cutback/io/files.hpp"
#include "cutback/io/rows.hpp"
#include "cutback/schedule/layout.hpp"

namespace CLI {
class App;
class Option;
}  // namespace CLI

namespace cutback::cli {

/// What was typed.
struct FormatOptions {
  std::string file;
  std::string sheet;  ///< of a workbook
  std::vector<std::string> columns;
  std::string decimal = ".";
  std::string evidence;
  std::string header_row;
};

/// What was meant.
struct TypedFormat {
  schedule::Format format;
  std::optional<std::size_t> header_row;
};

/// The schedule itself, as the one file that the command takes.
CLI::Option* add_schedule_file(CLI::App& command, FormatOptions& options);
void add_format(CLI::App& command, FormatOptions& options);

/// @param faults  what is wrong with them is added here
[[nodiscard]] TypedFormat understand(const FormatOptions& options, std::vector<Fault>& faults);

/// A file that begins as a workbook does is read as one (Runtime::extras), anything else as CSV.
/// Where the results go to stdout the whole file is read once before.
/// @param pipe  what run::take_pipe() took, borrowed; null where the file itself is read
/// @throws InputError, FileError
[[nodiscard]] std::unique_ptr<io::RowSource> open_schedule(const std::string& path,
                                                           const FormatOptions& options,
                                                           const TypedFormat& typed,
                                                           const Runtime& runtime,
                                                           const io::MappedFile* pipe = nullptr);

}  // namespace cutback::cli

#pragma once
// The options that say how a schedule is written, for every command that reads one.

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "cutback/error.hpp"
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

}  // namespace cutback::cli

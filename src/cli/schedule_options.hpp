#pragma once
// The options that say how a schedule is written, for every command that reads one.

#include <cstddef>
#include <deque>
#include <functional>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <vector>

#include "cli/runtime.hpp"
#include "cutback/error.hpp"
#include "cutback/schedule/headings.hpp"
#include "cutback/schedule/layout.hpp"
#include "run/load_types.hpp"
#include "run/made_ends.hpp"
#include "run/open_schedule.hpp"

namespace CLI {
class App;
class Option;
}  // namespace CLI

namespace cutback::cli {

/// What was typed.
struct FormatOptions {
  std::vector<std::string> files;
  std::vector<std::string> sheets;  ///< of workbooks
  std::vector<std::string> columns;
  std::vector<std::string> ignored;
  std::vector<std::string> blanks;
  std::vector<std::string> defaults;
  std::vector<std::string> words;
  std::string types;
  std::string columns_file;
  std::string save_columns;
  std::string decimal = ".";
  std::string evidence;
  std::string header_row;
  std::string ends;
};

/// What was meant. Not to be moved once it was used: the format borrows from it.
struct TypedFormat {
  schedule::Format format;
  std::optional<std::size_t> header_row;
  schedule::UsualHeadings usual;
  run::LoadedTypes types;
};

/// The schedule itself, as the files that the command takes.
CLI::Option* add_schedule_files(CLI::App& command, FormatOptions& options);
void add_format(CLI::App& command, FormatOptions& options);
/// --currency, the label of the prices.
void add_currency(CLI::App& command, std::string& label);

/// --made, a register of finished ends.
void add_made_option(CLI::App& command, std::string& file);
/// What the register says of the ends of a schedule. Its own warnings go to err.
/// @param schedule  is read to its end
[[nodiscard]] run::MadeSchedule load_made(const std::string& path, const run::Schedule& schedule,
                                          const Runtime& runtime);

/// @param faults  what is wrong with them is added here
[[nodiscard]] TypedFormat understand(const FormatOptions& options, std::vector<Fault>& faults);

/// Whether one of the files, or that of the types, is a workbook. @throws FileError
[[nodiscard]] bool any_workbook(const FormatOptions& options);

/// Whether every file can be opened a second time. Of a pipe that is not kept nobody knows whether
/// a row speaks of its place before all are read: a column for it is then taken for a row that
/// does.
[[nodiscard]] bool can_open_again(const std::deque<run::ScheduleInput>& inputs);

/// The files, for open_schedule. @param twice  pipes are kept, so that they can be read again
[[nodiscard]] std::deque<run::ScheduleInput> schedule_inputs(std::span<const std::string> files,
                                                             bool twice);

/// A file that begins as a workbook does is read as one (Runtime::extras), anything else as CSV.
/// Where the results go to stdout all is read once before. The first call reads the types.
/// @param inputs  borrowed as long as the schedule is read
/// @throws InputError, FileError
[[nodiscard]] run::Schedule open_schedule(const std::deque<run::ScheduleInput>& inputs,
                                          const FormatOptions& options, TypedFormat& typed,
                                          const tables::Standards& standards,
                                          const Runtime& runtime);

/// What is to be said of how a schedule was read: on stderr, unless --quiet, and in the files of
/// results always.
class ReaderNotes {
 public:
  explicit ReaderNotes(const Runtime& runtime) : runtime_(runtime) {}
  void add(std::string text) { lines_.push_back(std::move(text)); }
  /// Prints those that are new.
  void say();
  [[nodiscard]] const std::vector<std::string>& lines() const { return lines_; }

 private:
  const Runtime& runtime_;
  std::vector<std::string> lines_;
  std::size_t said_ = 0;
};

/// How the headings were understood and which sheets were not read; writes --save-columns.
void report_headings(const run::Schedule& schedule, const FormatOptions& options,
                     ReaderNotes& notes, const Runtime& runtime);

/// Which rows of a table are no ends.
void report_skipped(const run::Schedule& schedule, std::span<const schedule::SkippedRows> skipped,
                    ReaderNotes& notes);

/// Which words of cells were taken for what.
void report_words(const std::set<std::string>& taken, ReaderNotes& notes);

/// Whether every end is asked about its place, and why where no column says so.
/// @param rows_noted  as of run::ask_place
[[nodiscard]] bool asks_place(const run::Schedule& opened,
                              const std::deque<run::ScheduleInput>& inputs,
                              const std::function<run::Schedule()>& again, ReaderNotes& notes,
                              bool rows_noted = false);

/// The tables of a schedule, for whoever reads them one after the other.
[[nodiscard]] std::vector<io::ScheduleFile*> files_of(const run::Schedule& schedule);

/// "a.csv and 2 more files".
[[nodiscard]] std::string names_of(std::span<const std::string> files);

}  // namespace cutback::cli

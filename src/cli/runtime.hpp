#pragma once
// What a command is given to run with, so that it can be run inside a test.

#include <cstddef>
#include <functional>
#include <istream>
#include <map>
#include <optional>
#include <ostream>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "cli/extras.hpp"
#include "cli/file_clash.hpp"
#include "cli/own_tables.hpp"
#include "cutback/assumption.hpp"
#include "cutback/error.hpp"
#include "cutback/gland/gland.hpp"
#include "cutback/io/files.hpp"
#include "cutback/io/profile_file.hpp"
#include "cutback/schedule/layout.hpp"
#include "cutback/tables/standards.hpp"

namespace CLI {
class App;
}  // namespace CLI

namespace cutback::cli {

/// The part of the environment that a command may look at.
struct Environment {
  std::optional<std::string> glands;  ///< CUTBACK_GLANDS
  std::optional<std::string> data;    ///< CUTBACK_DATA
  /// The user's profile: cutback/profile.json in XDG_CONFIG_HOME, else in ~/.config.
  std::optional<std::string> profile;
  std::optional<std::string> source_date_epoch;  ///< SOURCE_DATE_EPOCH
  bool no_colour = false;                        ///< NO_COLOR is set and not empty
  std::istream* in = nullptr;                    ///< what is typed, or comes through a pipe
  bool in_is_terminal = false;
  bool out_is_terminal = false;
  std::size_t out_columns = 0;  ///< of the terminal that stdout is; 0 where it is none
  bool err_is_terminal = false;
  std::size_t err_columns = 0;        ///< of the terminal that stderr is; 0 where it is none
  const Extras* extras = nullptr;     ///< null in the program without them
  std::function<void()> become_full;  ///< goes on as the program with them, or throws FileError
  std::function<void()> check_build;  ///< throws FileError where it belongs to another build
  /// Ends stdout, for good. @return whether all that was written has arrived; null where stdout is
  /// not the program's own
  std::function<bool()> close_out;
};

/// Options that every command has.
struct CommonOptions {
  std::vector<std::string> glands;
  std::string supplier;
  std::string data;
  std::string profile;
  std::string output;
  std::string colour = "auto";
  bool json = false;
  bool quiet = false;
};

/// Several gland lists as one.
struct GlandLists {
  gland::GlandList all;
  /// Of each list the place behind its last gland, and its name.
  std::vector<std::pair<std::size_t, std::string>> ends;
};

/// What a user chooses besides the end: an empty word was not chosen.
struct Choices {
  std::string prefer;
  std::string units;  ///< `mm` or `in`
};

/// The streams and surroundings of one run.
struct Runtime {
  std::ostream& out;
  std::ostream& err;
  io::FileSet& files;  ///< what is written, but for stdout; finish() puts it in its places
  OwnTables& tables;   ///< standards() says which
  Environment environment;
  CommonOptions common;
  std::span<const NamedFile> named;  ///< what the command line and the environment name

  /// The tables: --data, else CUTBACK_DATA, else the built-in ones.
  [[nodiscard]] tables::Standards standards() const;
  /// The gland list: --glands, several as one, else CUTBACK_GLANDS, else what the profile
  /// remembers, else the built-in one, announced on err as invented. Its warnings go to err. The
  /// glands of the supplier that comes first among equals are marked.
  [[nodiscard]] gland::GlandList glands(const tables::Standards& standards) const;
  /// The same where several lists may be given, which list each gland is of.
  [[nodiscard]] GlandLists gland_lists(const tables::Standards& standards) const;
  /// The files of these lists; none where it is the built-in one.
  [[nodiscard]] std::vector<std::string> list_paths() const;
  /// What is to be said of a list wherever it is used: its warnings, and figures that cannot be.
  void warn_of(const gland::GlandList& list, const tables::Standards& standards) const;
  /// What is remembered: of --profile, else of the environment's file where there is one.
  [[nodiscard]] io::Profile profile() const;
  /// Its path; empty where nothing is remembered.
  [[nodiscard]] std::string profile_path() const;
  /// Puts what is remembered in where `in` and `choices` do not tell it, and says so in one line.
  /// @return what was decided so, to stand beside the other assumptions
  [[nodiscard]] std::vector<Assumption> remember(job::JobInput& in, Choices& choices) const;
  /// The same for a whole schedule: how it is read is remembered, and what its blank cells of
  /// caliper, rules and slack are taken for.
  /// @return what was decided so
  std::vector<Assumption> remember_for_schedule(Choices& choices, schedule::Format& format) const;
  /// What a profile decided, in one line on err.
  void say_decided(const std::vector<Assumption>& decided) const;
  /// Words of the trade and what each was taken for, in one line on err.
  void say_taken(const std::vector<std::string>& taken) const;
  /// A line on err, unless --quiet.
  void warn(const std::string& text) const;
  /// The functions of the full program, for a command that says it needs them
  /// (Command::needs_extras).
  [[nodiscard]] const Extras& extras() const;
  /// Whether results on stdout may carry colour.
  [[nodiscard]] bool colour() const;
  /// The result as text or JSON: to stdout, or to --output, with its own tables named.
  void emit(const std::string& text) const;
  /// The same of what is neither, pages for example.
  void emit_as_it_is(const std::string& bytes) const;
  /// What made a page, with its own tables named.
  [[nodiscard]] std::string program() const;
  /// stdout has taken all and is closed, and the files are in their places, all of them or none.
  /// After the command it is called once more; one that has something to say about its files calls
  /// it first, and prints no more then.
  /// @throws FileError
  void finish() const;
  /// @throws InputError where pages would go to a terminal
  void require_no_terminal(const std::string& what) const;

 private:
  /// Marks the glands of the list that --supplier names, else the profile. @param paths  of the
  /// lists
  /// @throws InputError where --supplier names none of them
  void prefer_supplier(const std::vector<std::string>& paths, GlandLists& lists) const;
  /// Whether what is remembered says which of the lists comes first.
  [[nodiscard]] bool decides_supplier(const io::Profile& remembered) const;
};

/// Makes sure that stdout has taken all. @throws FileError
void flush(std::ostream& out);
/// The error where stdout does not take all.
[[nodiscard]] FileError cannot_print();

/// One command, its options parsed.
struct Command {
  std::function<int(Runtime&)> run;
  /// Whether with these options it needs the full program; empty: never. Asked once, before run().
  /// @throws FileError where the answer stands in a file
  std::function<bool()> needs_extras;
};

/// What `--help` of a command with many options opens with; `--help-all` has the rest.
struct Brief {
  std::string example;
  std::string usage;                 ///< what follows the command's name
  std::vector<std::string> options;  ///< those that most jobs need
};

/// What the command line comes to.
struct Context {
  CommonOptions common;
  std::map<std::string, Brief> briefs;  ///< by command
  Command command;                      ///< without run() where none was given
};

/// Adds --json, --output, --colour, --quiet, --data, and --glands where a command reads a list.
enum class Reads { glands, no_glands };
void add_common(CLI::App& command, CommonOptions& common, Reads reads);

/// What a profile decided that can move a mark, in the words of a card: `slack 30 mm, rules
/// strict`.
[[nodiscard]] std::string on_paper(const std::vector<Assumption>& decided);

}  // namespace cutback::cli

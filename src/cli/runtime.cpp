#include "cli/runtime.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>

#include "cli/terminal.hpp"
#include "cutback/error.hpp"
#include "cutback/fit/absurd.hpp"
#include "cutback/io/gland_list.hpp"
#include "cutback/io/standards.hpp"
#include "cutback/text.hpp"

namespace cutback::cli {
namespace {

/// What a remark quotes may be a pasted file: a line of it is cut where no remark is as long.
std::string short_lines(std::string_view text) {
  constexpr std::size_t k_longest = 600;
  std::string out;
  for (;;) {
    const std::size_t size = std::min(text.find('\n'), text.size());
    std::size_t end = std::min(size, k_longest);
    while (end < size && end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) --end;
    out.append(text.substr(0, end)).append(end < size ? "..." : "");
    if (size == text.size()) return out;
    out += '\n';
    text.remove_prefix(size + 1);
  }
}

}  // namespace

tables::Standards Runtime::standards() const {
  if (common.data.empty() && !environment.data) return io::builtin_standards();
  tables::Standards standards =
      io::load_standards(common.data.empty() ? *environment.data : common.data);
  tables = own_tables(standards);
  return standards;
}

gland::GlandList Runtime::glands(const tables::Standards& standards) const {
  gland::GlandList list;
  if (!common.glands.empty()) {
    list = io::load_gland_list(common.glands);
  } else if (environment.glands) {
    list = io::load_gland_list(*environment.glands);
  } else {
    list = io::demo_gland_list();
    warn(
        "no gland list given: using the built-in demonstration list, whose glands are invented; "
        "give your own with --glands FILE");
  }
  warn_of(list, standards);
  return list;
}

void Runtime::warn_of(const gland::GlandList& list, const tables::Standards& standards) const {
  for (const std::string& warning : list.warnings) warn(warning);
  for (const std::string& absurd : fit::absurdities(list.glands, standards)) warn(absurd);
}

void Runtime::say_taken(const std::vector<std::string>& taken) const {
  if (!taken.empty()) warn("taken: " + joined(taken, "; "));
}

void Runtime::warn(const std::string& text) const {
  if (common.quiet) return;
  const std::string shown = "cutback: " + without_controls(short_lines(text));
  err << folded(shown, environment.err_columns) << '\n';
}

const Extras& Runtime::extras() const {
  if (environment.extras == nullptr) {
    throw InternalError("the command did not say that it needs the full program");
  }
  return *environment.extras;
}

bool Runtime::colour() const {
  if (common.colour == "always") return true;
  if (common.colour == "never" || !common.output.empty()) return false;
  return environment.out_is_terminal && !environment.no_colour;
}

void Runtime::emit(const std::string& text) const {
  emit_as_it_is(common.json ? with_json(text, tables) : with_words(text, tables));
}

std::string Runtime::program() const {
  const std::string program = "cutback " CUTBACK_VERSION;
  return tables.is_used() ? program + ", " + words_of(tables) : program;
}

void Runtime::emit_as_it_is(const std::string& text) const {
  if (common.output.empty()) {
    out << text;
  } else {
    files.add(common.output).append(text);
  }
}

void Runtime::finish() const {
  flush(out);
  // A disk across a network may say only now that it is full.
  if (environment.close_out && !environment.close_out()) throw cannot_print();
  files.commit();
}

void flush(std::ostream& out) {
  out << std::flush;
  if (!out) throw cannot_print();
}

FileError cannot_print() {
  return FileError(Fault{.code = ErrorCode::cannot_write,
                         .what = "the result cannot be written",
                         .where = "stdout",
                         .given = {},
                         .allowed = {},
                         .hint = "look whether the disk is full, or use --output FILE"});
}

void Runtime::require_no_terminal(const std::string& what) const {
  if (!common.output.empty() || !environment.out_is_terminal) return;
  throw InputError(Fault{.code = ErrorCode::missing,
                         .what = "a PDF is nothing for a terminal",
                         .where = what,
                         .given = {},
                         .allowed = {},
                         .hint = "give --output FILE"});
}

void add_common(CLI::App& command, CommonOptions& common, Reads reads) {
  if (reads == Reads::glands) {
    command
        .add_option("--glands", common.glands,
                    "Gland list (CSV); else the environment's CUTBACK_GLANDS, else an invented one")
        ->type_name("FILE")
        ->group("Common");
  }
  command.add_flag("--json", common.json, "Print the result as JSON")->group("Common");
  command.add_option("--output", common.output, "Write the result to a file, whole or not at all")
      ->type_name("FILE")
      ->group("Common");
  command
      .add_option("--colour", common.colour,
                  "Colour: auto, always or never (NO_COLOR is respected)")
      ->type_name("WHEN")
      ->group("Common");
  command.add_flag("--quiet", common.quiet, "No remarks on stderr, errors only")->group("Common");
  command
      .add_option("--data", common.data,
                  "Folder with tables of published values to use in place of the built-in ones")
      ->type_name("DIR")
      ->group("Common");
}

}  // namespace cutback::cli

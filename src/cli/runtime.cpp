#include "cli/runtime.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <filesystem>
#include <iterator>

#include "cli/terminal.hpp"
#include "cutback/entry/thread.hpp"
#include "cutback/error.hpp"
#include "cutback/fit/absurd.hpp"
#include "cutback/fit/taken.hpp"
#include "cutback/io/files.hpp"
#include "cutback/io/gland_list.hpp"
#include "cutback/io/standards.hpp"
#include "cutback/job/field_text.hpp"
#include "cutback/text.hpp"

namespace cutback::cli {
namespace {

/// A file that only the profile names must not be written over either.
void check_not_written(const std::string& path, std::span<const NamedFile> named) {
  std::vector<NamedFile> files(named.begin(), named.end());
  files.push_back({"the list that your profile remembers", path, false});
  std::vector<Fault> faults = file_clashes(files);
  if (!faults.empty()) throw InputError(std::move(faults));
}

/// Whether a gland list is the one meant: by its path, its file's name, or that without `.csv`.
bool is_supplier(const std::string& path, const std::string& name) {
  const std::filesystem::path file(path);
  const std::string wanted = small_letters(name);
  return path == name || small_letters(file.filename().string()) == wanted ||
         small_letters(file.stem().string()) == wanted;
}

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

/// What lies on the shelf would count as often as its list is given.
void check_given_once(const std::vector<std::string>& paths) {
  for (std::size_t i = 0; i < paths.size(); ++i) {
    for (std::size_t k = 0; k < i; ++k) {
      if (!same_file(io::input_place(paths[k]), io::input_place(paths[i]))) continue;
      throw InputError(make_fault(ErrorCode::duplicate, "a gland list is given twice", "--glands",
                                  paths[i], "", "leave one out: its stock would count twice"));
    }
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
  return gland_lists(standards).all;
}

GlandLists Runtime::gland_lists(const tables::Standards& standards) const {
  GlandLists lists;
  gland::GlandList& list = lists.all;
  check_given_once(common.glands);
  const std::vector<std::string> paths = list_paths();
  const bool remembered = common.glands.empty() && !environment.glands;
  for (const std::string& path : paths) {
    if (remembered) check_not_written(path, named);
    gland::GlandList one = io::load_gland_list(path);
    list.name += (list.name.empty() ? "" : " and ") + one.name;
    std::move(one.glands.begin(), one.glands.end(), std::back_inserter(list.glands));
    std::move(one.warnings.begin(), one.warnings.end(), std::back_inserter(list.warnings));
    lists.ends.emplace_back(list.glands.size(), one.name);
  }
  if (paths.empty()) {
    list = io::demo_gland_list();
    lists.ends.emplace_back(list.glands.size(), list.name);
    warn(
        "no gland list given: using the built-in demonstration list, whose glands are invented; "
        "give your own with --glands FILE");
  }
  prefer_supplier(paths, lists);
  warn_of(list, standards);
  return lists;
}

std::vector<std::string> Runtime::list_paths() const {
  if (!common.glands.empty()) return common.glands;
  if (environment.glands) return {*environment.glands};
  return io::lists_of(profile());
}

void Runtime::prefer_supplier(const std::vector<std::string>& paths, GlandLists& lists) const {
  const bool typed = !common.supplier.empty();
  const std::string name = typed ? common.supplier : profile().supplier.value_or("");
  if (name.empty() || (!typed && paths.size() < 2)) return;
  bool found = false;
  std::size_t first = 0;
  for (std::size_t i = 0; i < paths.size(); ++i) {
    const bool is_first = is_supplier(paths[i], name);
    found = found || is_first;
    for (; first < lists.ends[i].first; ++first) lists.all.glands[first].preferred = is_first;
  }
  if (found) return;
  if (!typed) {
    return warn("your profile puts " + name + " first, and none of these lists is named so");
  }
  throw InputError(make_fault(ErrorCode::unknown_name, "no gland list has this name", "--supplier",
                              name, paths.empty() ? "" : joined(paths, " or "),
                              "give the lists with --glands, each supplier's by itself"));
}

void Runtime::warn_of(const gland::GlandList& list, const tables::Standards& standards) const {
  for (const std::string& warning : list.warnings) warn(warning);
  for (const std::string& absurd : fit::absurdities(list.glands, standards)) warn(absurd);
}

std::string Runtime::profile_path() const {
  if (!common.profile.empty()) return common.profile;
  std::error_code error;
  const bool there = environment.profile && std::filesystem::exists(*environment.profile, error);
  return there ? *environment.profile : std::string();
}

io::Profile Runtime::profile() const {
  const std::string path = profile_path();
  return path.empty() ? io::Profile{} : io::load_profile(path);
}

namespace {

/// Those of the adaptors `M25:M20; M32:M25` that have a side which suits the entry. One in the van
/// must neither ask about an entry that nobody gave nor contradict another one.
std::string that_suit(const std::string& adaptors, const std::optional<std::string>& entry) {
  const auto thread = entry ? entry::parse_thread(*entry) : std::nullopt;
  std::string suiting;
  if (!thread) return suiting;
  for (std::string_view list = adaptors; !list.empty();) {
    const std::size_t length = std::min(list.find(';'), list.size());
    const std::string_view adaptor = trimmed(list.substr(0, length));
    std::string_view rest = adaptor;
    for (int side = 0; side < 2; ++side) {
      const std::size_t end = std::min(rest.find(':'), rest.size());
      if (entry::parse_thread(rest.substr(0, end)) == thread) {
        suiting += (suiting.empty() ? "" : ";") + std::string(adaptor);
        break;
      }
      rest.remove_prefix(std::min(end + 1, rest.size()));
    }
    list.remove_prefix(std::min(length + 1, list.size()));
  }
  return suiting;
}

}  // namespace

bool Runtime::decides_supplier(const io::Profile& remembered) const {
  if (!common.supplier.empty() || !remembered.supplier) return false;
  const std::vector<std::string> paths = list_paths();
  return paths.size() > 1 && std::any_of(paths.begin(), paths.end(), [&](const auto& path) {
           return is_supplier(path, *remembered.supplier);
         });
}

std::vector<Assumption> Runtime::remember(job::JobInput& in, Choices& choices) const {
  const std::string path = profile_path();
  if (path.empty()) return {};
  const io::Profile remembered = io::load_profile(path);
  std::vector<Assumption> decided;
  const auto decide = [&](std::string_view key, const std::string& value) {
    decided.push_back({std::string(key), value, std::string(fit::k_of_profile)});
  };
  if (common.glands.empty() && !environment.glands && remembered.glands) {
    decide("glands", *remembered.glands);
  }
  const auto choose = [&](const char* key, std::string& word,
                          const std::optional<std::string>& value) {
    if (!word.empty() || !value) return;
    word = *value;
    decide(key, word);
  };
  if (decides_supplier(remembered)) decide("supplier", *remembered.supplier);
  choose("prefer", choices.prefer, remembered.prefer);
  choose("units", choices.units, remembered.units);
  for (const std::string_view key : io::profile_fields()) {
    const job::Field& field = job::field_named(key);
    auto value = job::text_of(remembered.end, field);
    if (!value || job::text_of(in, field)) continue;
    if (key == "adaptor") value = that_suit(*value, in.entry);
    if (value->empty()) continue;
    // An adaptor is one thing: its figures go with it alone.
    if (key.starts_with("adaptor_") && in.adaptor != remembered.end.adaptor) continue;
    const auto faults = job::set_from_text(in, field, *value, path);
    if (!faults.empty()) throw InputError(faults);
    decide(key, *value);
  }
  say_decided(decided);
  return decided;
}

void Runtime::say_decided(const std::vector<Assumption>& decided) const {
  std::string line;
  for (const Assumption& each : decided) {
    line += (line.empty() ? "" : ", ") + each.fact + " " + each.taken;
  }
  if (!line.empty()) warn("your profile decides: " + line);
}

std::vector<Assumption> Runtime::remember_for_schedule(Choices& choices,
                                                       schedule::Format& format) const {
  const std::string path = profile_path();
  if (path.empty()) return {};
  const io::Profile remembered = io::load_profile(path);
  std::vector<Assumption> decided;
  const auto decide = [&](std::string_view key, const std::string& value) {
    decided.push_back({std::string(key), value, {}});
  };
  if (common.glands.empty() && !environment.glands && remembered.glands) {
    decide("glands", *remembered.glands);
  }
  if (decides_supplier(remembered)) decide("supplier", *remembered.supplier);
  if (choices.prefer.empty() && remembered.prefer) {
    choices.prefer = *remembered.prefer;
    decide("prefer", choices.prefer);
  }
  // Of a whole schedule nobody knows which adaptor its entries have.
  for (const std::string_view key : {"step_mm", "mpe_mm", "zero_mm", "rules", "slack_mm"}) {
    const auto value = io::text_in_profile(remembered, key);
    const bool given = std::any_of(format.defaults.begin(), format.defaults.end(),
                                   [&](const auto& each) { return each.column == key; });
    if (!value || given) continue;
    decide(key, *value);
    // A default is written as the schedule's own cells are.
    std::string cell = *value;
    if (format.decimal == ',') std::replace(cell.begin(), cell.end(), '.', ',');
    format.defaults.push_back({std::string(key), std::move(cell)});
  }
  say_decided(decided);
  return decided;
}

std::string on_paper(const std::vector<Assumption>& decided) {
  std::string text;
  for (const Assumption& each : decided) {
    // Where a list lies and which unit is shown as well move no mark.
    if (each.fact == "glands" || each.fact == "units") continue;
    std::string fact = each.fact;
    const bool length = fact.ends_with("_mm");
    if (length) fact.resize(fact.size() - 3);
    std::replace(fact.begin(), fact.end(), '_', ' ');
    text += (text.empty() ? "" : ", ") + fact + " " + each.taken + (length ? " mm" : "");
  }
  return text;
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
                    "Gland list (CSV), any number of times; else the environment's "
                    "CUTBACK_GLANDS, else an invented one")
        ->type_name("FILE")
        ->allow_extra_args(false)
        ->group("Common");
    command
        .add_option(
            "--supplier", common.supplier,
            "Of several lists the one whose glands come first among equals: its file's name")
        ->type_name("NAME")
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
      .add_option("--profile", common.profile,
                  "What is remembered (cutback profile); else the one in your configuration folder")
      ->type_name("FILE")
      ->group("Common");
  command
      .add_option("--data", common.data,
                  "Folder with tables of published values to use in place of the built-in ones")
      ->type_name("DIR")
      ->group("Common");
}

}  // namespace cutback::cli

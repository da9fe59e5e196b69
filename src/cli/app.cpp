#include "cli/app.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <array>
#include <memory>
#include <new>
#include <nlohmann/json.hpp>
#include <sstream>
#include <string_view>
#include <utility>
#include <vector>

#include "cli/command_ask.hpp"
#include "cli/command_cable.hpp"
#include "cli/command_cards.hpp"
#include "cli/command_earth.hpp"
#include "cli/command_fit.hpp"
#include "cli/command_glands.hpp"
#include "cli/command_kit.hpp"
#include "cli/command_made.hpp"
#include "cli/command_profile.hpp"
#include "cli/command_readings.hpp"
#include "cli/command_rules.hpp"
#include "cli/command_schedule.hpp"
#include "cli/command_sheet.hpp"
#include "cli/exit_code.hpp"
#include "cli/file_clash.hpp"
#include "cli/terminal.hpp"
#include "cli/wrong_file.hpp"
#include "cutback/error.hpp"
#include "cutback/hidden.hpp"
#include "cutback/nearest.hpp"
#include "cutback/text.hpp"

namespace cutback::cli {
namespace {

constexpr const char* k_footer =
    "Exit status: 0 done and everything fits; 1 done, and something does not fit;\n"
    "2 the command line or a file's content is wrong; 3 a file cannot be read or\n"
    "written; 4 a bug. Certificates, makers' instructions, local codes and a\n"
    "competent person come before anything that this program says.";

/// Names of the options or of the commands of `app`, for "did you mean".
std::vector<std::string> names_of(const CLI::App& app, bool options) {
  std::vector<std::string> names;
  if (options) {
    for (const CLI::Option* option : app.get_options()) {
      for (const std::string& name : option->get_lnames()) names.push_back("--" + name);
    }
  } else {
    for (const CLI::App* command : app.get_subcommands({})) names.push_back(command->get_name());
  }
  return names;
}

/// `--wa` begins --wall and --washer. One name that begins so, or that the others lengthen, is the
/// one that is meant.
std::string beginning_hint(const std::string& word, const std::vector<std::string>& names) {
  constexpr std::size_t k_least = 4;  // two hyphens and two letters
  constexpr std::size_t k_named = 4;
  if (word.size() < k_least) return {};
  std::vector<std::string> found;
  for (const std::string& name : names) {
    if (name.starts_with(word)) found.push_back(name);
  }
  std::sort(found.begin(), found.end(), [](const std::string& a, const std::string& b) {
    return std::pair(a.size(), a) < std::pair(b.size(), b);
  });
  if (found.empty()) return {};
  const bool one = std::all_of(found.begin(), found.end(), [&](const std::string& name) {
    return name.starts_with(found.front());
  });
  if (one) return "did you mean \"" + found.front() + "\"?";
  const bool many = found.size() > k_named;
  if (many) found.resize(k_named);
  return "it begins " + joined(found, ", ") + (many ? " and more" : "") + ";";
}

std::string suggestion(const CLI::App& app, const std::string& word) {
  const bool option = word.starts_with("-");
  const std::vector<std::string> names = names_of(app, option);
  const std::vector<std::string_view> views(names.begin(), names.end());
  const std::string given = word.substr(0, word.find('='));
  std::string hint = beginning_hint(given, names);
  if (hint.empty()) hint = did_you_mean(given, views);
  const std::string help =
      app.get_parent() != nullptr ? "cutback " + app.get_name() + " --help" : "cutback --help";
  return hint.empty() ? "see " + help : hint + " see " + help;
}

/// Words that no option or argument took, one fault for each slip: of an unknown command what
/// follows is its own, of an unknown option the word behind it is its value.
void check_left_over(const CLI::App& app, std::vector<Fault>& faults) {
  const auto is_option = [](const std::string& word) {
    return word.starts_with("-") && word.size() > 1;
  };
  const bool top = app.get_parent() == nullptr;
  const std::vector<std::string> left = app.remaining();
  const auto add = [&](const char* what, const std::string& where, const std::string& word) {
    faults.push_back(
        make_fault(ErrorCode::unknown_name, what, where, "", "", suggestion(app, word)));
  };
  for (std::size_t i = 0; i < left.size(); ++i) {
    if (is_option(left[i])) {
      add("unknown option", left[i], left[i]);
      if (i + 1 < left.size() && !is_option(left[i + 1])) ++i;
      continue;
    }
    if (top) {
      add("unknown command", left[i], left[i]);
      return;
    }
    std::string words = left[i];
    while (i + 1 < left.size() && !is_option(left[i + 1])) words += " " + left[++i];
    add("unexpected word", words, words);
  }
  for (const CLI::App* command : app.get_subcommands()) check_left_over(*command, faults);
}

/// The files that the command line names, and those of the environment.
std::vector<NamedFile> named_files(const CLI::App& app, const Environment& environment) {
  constexpr std::array k_written{"--output", "--takeoff", "--exceptions",   "--xlsx",
                                 "--append", "--changes", "--save-columns", "--new"};
  std::vector<NamedFile> files;
  for (const CLI::App* command : app.get_subcommands()) {
    for (const CLI::Option* option : command->get_options()) {
      const std::string name = option->get_name();
      if (name == "--data") {
        for (const std::string& path : option->results())
          files.push_back({name, path, false, true});
      }
      if (option->get_type_name() != "FILE" && name != "FILE") continue;
      const bool written = std::find(k_written.begin(), k_written.end(), name) != k_written.end();
      for (const std::string& path : option->results()) files.push_back({name, path, written});
      // A job that was begun is saved in its place.
      if (name == "--save" && !files.empty() && files.back().by == name) {
        files.back().written = true;
        files.back().goes_on = "job";
      }
    }
  }
  if (environment.glands) files.push_back({"CUTBACK_GLANDS", *environment.glands, false});
  if (environment.data) files.push_back({"CUTBACK_DATA", *environment.data, false, true});
  if (environment.profile) files.push_back({"your profile", *environment.profile, false});
  return files;
}

/// Help as CLI11 sets it, its option lines broken at 80 columns and its blank lines single.
std::string narrowed(const std::string& help) {
  constexpr std::size_t k_columns = 80;
  constexpr std::size_t k_indent = 30;  // where CLI11 begins the descriptions
  std::string out;
  std::istringstream lines(help);
  bool blank = false;
  for (std::string line; std::getline(lines, line);) {
    if (line.empty() && blank) continue;
    blank = line.empty();
    while (line.size() >= k_columns && line.starts_with("  ")) {
      const std::size_t cut = line.rfind(' ', k_columns - 1);
      if (cut == std::string::npos || cut <= k_indent) break;
      out += line.substr(0, cut) + "\n";
      line = std::string(k_indent, ' ') + line.substr(cut + 1);
    }
    out += line + "\n";
  }
  return out;
}

/// Each command in one line, so that all of them stand on one screen.
constexpr std::pair<std::string_view, std::string_view> k_overview[] = {
    {"ask", "A cable in hand: question by question to the answer and the sheet"},
    {"fit", "Which gland fits one measured cable, and why the others do not"},
    {"sheet", "The termination sheet of one end, with every cut mark"},
    {"cards", "Strip-length cards as PDF, for jobs or a whole schedule"},
    {"schedule", "A gland for every end of a cable schedule, and what to order"},
    {"kit", "The fewest different glands that serve a schedule"},
    {"cable", "A cable's layers and diameters, from its construction"},
    {"glands", "Your own gland list: begun (--new), checked, converted, drawn"},
    {"earth", "Is the armour of a cable enough as its protective conductor?"},
    {"readings", "What a set of readings says about a drum"},
    {"made", "The register of measured and finished ends"},
    {"profile", "What is remembered: gland lists, supplier, caliper, rules, slack"},
    {"rules", "The published tables that are built in, each with its source"},
};

/// The whole program's help.
std::string overview(const CLI::App& app) {
  std::string text = app.get_description() + "\n\nUsage: cutback COMMAND [OPTIONS]\nCommands:\n";
  for (const CLI::App* command : app.get_subcommands({})) {
    const auto* const row =
        std::find_if(std::begin(k_overview), std::end(k_overview),
                     [&](const auto& each) { return each.first == command->get_name(); });
    if (row == std::end(k_overview)) throw InternalError("no line for " + command->get_name());
    std::string line = "  " + command->get_name();
    line.resize(12, ' ');
    text += line.append(row->second) + "\n";
  }
  return text +
         "\n  -h, --help  Print this help, or that of a command\n  --version   Print the "
         "version\n\n" +
         app.get_footer() + "\n";
}

/// The example and the options that most jobs need.
std::string brief_help(const CLI::App& command, const Brief& brief) {
  const auto formatter = std::dynamic_pointer_cast<CLI::Formatter>(command.get_formatter());
  if (formatter == nullptr) throw InternalError("the help has no form");
  std::string text = brief.example + "\n\n" + command.get_description() + "\n\n" +
                     "Usage: cutback " + command.get_name() + " " + brief.usage + "\n\n";
  for (const std::string& name : brief.options) {
    text += formatter->make_option(command.get_option(name), false);
  }
  return text + "\nEvery option: cutback " + command.get_name() + " --help-all\n\n" + k_footer +
         "\n";
}

/// What `-h`, `--help` and `--help-all` print.
std::string help_text(const CLI::App& app, const Context& context, bool all) {
  const auto commands = app.get_subcommands();
  if (commands.empty()) return overview(app);
  const CLI::App& command = *commands.front();
  const auto brief = context.briefs.find(command.get_name());
  if (all || brief == context.briefs.end()) return narrowed(commands.front()->help("cutback"));
  return narrowed(brief_help(command, brief->second));
}

/// A value longer than this is a pasted file, not a typing error.
std::string shortened(const std::string& text) {
  constexpr std::size_t k_longest = 240;
  if (text.size() <= k_longest) return text;
  std::size_t end = k_longest;
  while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) --end;
  return text.substr(0, end) + "...";
}

void report(const Error& error, const Context& context, std::ostream& err, std::size_t columns) {
  if (!context.common.json) {
    for (const Fault& fault : error.faults()) {
      const std::string line = std::string("cutback: error[") + to_string(fault.code) +
                               "]: " + without_controls(to_line(fault));
      err << folded(line, columns) << '\n';
    }
    return;
  }
  auto faults = nlohmann::ordered_json::array();
  for (const Fault& fault : error.faults()) {
    nlohmann::ordered_json item;
    item["code"] = to_string(fault.code);
    item["what"] = fault.what;
    item["where"] = shortened(fault.where);
    item["given"] = shortened(fault.given);
    item["allowed"] = fault.allowed;
    item["hint"] = fault.hint;
    faults.push_back(item);
  }
  nlohmann::ordered_json result;
  result["cutback"] = CUTBACK_VERSION;
  result["format"] = 1;
  result["errors"] = faults;
  err << harmless_json(result.dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace))
      << '\n';
}

/// Takes no memory itself.
void report_no_memory(const Context& context, std::ostream& err) {
  constexpr const char* k_what = "the memory of this machine is not enough";
  constexpr const char* k_hint = "end other programs, or give it fewer rows at a time";
  if (!context.common.json) {
    err << "cutback: error[out-of-memory]: " << k_what << "; " << k_hint << '\n';
    return;
  }
  err << "{\n  \"cutback\": \"" CUTBACK_VERSION "\",\n  \"format\": 1,\n  \"errors\": [\n    {\n"
      << "      \"code\": \"out-of-memory\",\n      \"what\": \"" << k_what
      << "\",\n      \"where\": \"\",\n      \"given\": \"\",\n      \"allowed\": \"\",\n"
      << "      \"hint\": \"" << k_hint << "\"\n    }\n  ]\n}\n";
}

}  // namespace

void build_command_line(CLI::App& app, Context& context) {
  app.name("cutback");
  app.description(
      "Which cable gland fits this wire-armoured cable, and where is each layer cut?\n"
      "Begin with: cutback ask, or cutback fit --help");
  app.set_version_flag("--version", "cutback " CUTBACK_VERSION, "Print the version");
  app.set_help_flag("-h,--help", "Print this help");
  app.set_help_all_flag("--help-all", "Print every option");
  app.footer(
      "Certificates, makers' instructions, local codes and a competent person come\n"
      "before anything that this program says.");
  app.allow_extras();
  add_ask(app, context);
  add_fit(app, context);
  add_sheet(app, context);
  add_cards(app, context);
  add_schedule(app, context);
  add_kit(app, context);
  add_cable(app, context);
  add_glands(app, context);
  add_earth(app, context);
  add_readings(app, context);
  add_made(app, context);
  add_profile(app, context);
  add_rules(app, context);
  app.get_option("--help-all")->group("");  // a group without a name is not listed
  for (CLI::App* command : app.get_subcommands({})) {
    command->allow_extras();
    command->get_option("--help-all")->group("");
    command->footer(command->get_footer() + std::string("\n\n") + k_footer);
  }
}

namespace {

/// `cutback help fit` asks for what `cutback fit --help` does.
std::vector<const char*> with_help(std::span<const char* const> arguments) {
  std::vector<const char*> words(arguments.begin(), arguments.end());
  if (words.size() < 2 || std::string_view(words[1]) != "help") return words;
  words.erase(words.begin() + 1);
  words.push_back("--help");
  return words;
}

/// The action; what is wrong with a file of another kind is that it is of another kind.
int run_command(const Command& command, Runtime& runtime, std::string_view name,
                const std::vector<NamedFile>& files) {
  try {
    return command.run(runtime);
  } catch (const InputError&) {
    if (auto fault = wrong_file(name, files)) throw InputError(*std::move(fault));
    throw;
  }
}

int run_checked(std::span<const char* const> given, Context& context, std::ostream& out,
                std::ostream& err, const Environment& environment) {
  if (environment.check_build) environment.check_build();  // before anything else
  CLI::App app;
  build_command_line(app, context);
  const std::vector<const char*> arguments = with_help(given);
  try {
    app.parse(static_cast<int>(arguments.size()), arguments.data());
  } catch (const CLI::CallForHelp&) {
    std::vector<Fault> unknown;
    check_left_over(app, unknown);
    if (!unknown.empty() && app.get_subcommands().empty()) throw InputError(std::move(unknown));
    out << help_text(app, context, false);
    flush(out);
    return k_exit_fits;
  } catch (const CLI::CallForAllHelp&) {
    out << help_text(app, context, true);
    flush(out);
    return k_exit_fits;
  } catch (const CLI::Success& success) {
    const int status = app.exit(success, out, err) == 0 ? k_exit_fits : k_exit_bug;
    flush(out);
    return status;
  } catch (const CLI::ArgumentMismatch& error) {
    const std::string words = error.what();
    // "--new: 1 required FILE missing"
    if (const std::size_t at = words.find(" required "); at != std::string::npos) {
      const std::vector<std::string_view> rest = split_words(std::string_view(words).substr(at));
      throw InputError(make_fault(ErrorCode::bad_syntax, "a value must stand behind it",
                                  words.substr(0, words.find(':')), "",
                                  std::string(rest.size() > 1 ? rest[1] : ""), "see --help"));
    }
    throw InputError(make_fault(ErrorCode::bad_syntax, "an option takes one value, once",
                                words.substr(0, words.find(':')), "", "", "see --help"));
  } catch (const CLI::ParseError& error) {
    throw InputError(
        make_fault(ErrorCode::bad_syntax, error.what(), "command line", "", "", "see --help"));
  }
  std::vector<Fault> faults;
  check_left_over(app, faults);
  const std::vector<NamedFile> files = named_files(app, environment);
  for (Fault& fault : file_clashes(files)) {
    faults.push_back(std::move(fault));
  }
  if (!faults.empty()) throw InputError(std::move(faults));
  const std::string& colour = context.common.colour;
  if (colour != "auto" && colour != "always" && colour != "never") {
    throw InputError(Fault{.code = ErrorCode::bad_value,
                           .what = "not a choice",
                           .where = "--colour",
                           .given = colour,
                           .allowed = "auto, always or never",
                           .hint = {}});
  }
  const Command& command = context.command;
  if (!command.run) {
    out << overview(app);
    flush(out);
    return k_exit_fits;
  }
  if (environment.extras == nullptr && command.needs_extras && command.needs_extras()) {
    environment.become_full();  // nothing has been written, and of files only looked at
    throw InternalError("the full program was not started");
  }
  io::FileSet results;
  OwnTables tables;
  Runtime runtime{out, err, results, tables, environment, context.common, files};
  const int status =
      run_command(command, runtime, app.get_subcommands().front()->get_name(), files);
  runtime.finish();
  return status;
}

}  // namespace

int run(std::span<const char* const> arguments, std::ostream& out, std::ostream& err,
        const Environment& environment) noexcept {
  Context context;
  try {
    const int status = run_checked(arguments, context, out, err, environment);
    if (environment.close_out && !environment.close_out()) throw cannot_print();
    return status;
  } catch (const InputError& error) {
    report(error, context, err, environment.err_columns);
    return k_exit_bad_input;
  } catch (const FileError& error) {
    report(error, context, err, environment.err_columns);
    return k_exit_bad_file;
  } catch (const Error& error) {
    report(error, context, err, environment.err_columns);
    return k_exit_bug;
  } catch (const std::bad_alloc&) {
    report_no_memory(context, err);
    return k_exit_bad_file;
  } catch (const std::exception& error) {
    report(InternalError(error.what()), context, err, environment.err_columns);
    return k_exit_bug;
  }
}

}  // namespace cutback::cli

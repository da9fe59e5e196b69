#include "cli/command_ask.hpp"

#include <unistd.h>
#include <CLI/CLI.hpp>
#include <algorithm>
#include <array>
#include <csignal>
#include <filesystem>
#include <memory>

#include "cli/date_option.hpp"
#include "cli/exit_code.hpp"
#include "cli/job_options.hpp"
#include "cli/runtime.hpp"
#include "cli/talk.hpp"
#include "cutback/ask/ask.hpp"
#include "cutback/error.hpp"
#include "cutback/io/files.hpp"
#include "cutback/io/job_file.hpp"
#include "cutback/io/made_file.hpp"
#include "cutback/job/field_text.hpp"
#include "cutback/job/job.hpp"
#include "cutback/print/print.hpp"
#include "cutback/sheet/sheet.hpp"
#include "cutback/text.hpp"
#include "run/require_sheath.hpp"

namespace cutback::cli {
namespace {

constexpr const char* k_description =
    "Led from the caliper to the answer: one question a line, each with its unit, an\n"
    "example and what is usual. ? is not known, < goes back, Ctrl-C saves and stops.\n"
    "Not at a terminal it reads the same answers from a pipe.";

constexpr const char* k_example =
    "Example: a new end; the same cable later, from where it was left:\n"
    "  cutback ask --save P-201.json\n"
    "  cutback ask P-201.json";

struct AskOptions {
  std::string file;
  std::string save;
  std::string prefer;
};

/// Ctrl-C while no editor holds the terminal: the line that is being read ends.
class StopsReading {
 public:
  StopsReading() {
    struct sigaction action {};
    action.sa_handler = [](int) {};  // without SA_RESTART the read returns
    ::sigaction(SIGINT, &action, &before_);
  }
  StopsReading(const StopsReading&) = delete;
  StopsReading& operator=(const StopsReading&) = delete;
  ~StopsReading() { ::sigaction(SIGINT, &before_, nullptr); }

 private:
  struct sigaction before_ {};
};

/// Words of a command line as a shell takes them.
std::string shell_words(const std::vector<std::string>& words) {
  std::string line = "cutback";
  for (const std::string& word : words) {
    const bool plain = !word.empty() && word.find_first_not_of(
                                            "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"
                                            "0123456789+-.,:/=_") == std::string::npos;
    line += ' ';
    if (plain) {
      line += word;
      continue;
    }
    line += '\'';
    for (const char c : word) line += c == '\'' ? std::string("'\\''") : std::string(1, c);
    line += '\'';
  }
  return line;
}

/// One run of the command.
class Dialogue {
 public:
  Dialogue(const AskOptions& options, Runtime& runtime)
      : options_(options),
        runtime_(runtime),
        standards_(runtime.standards()),
        list_(runtime.glands(standards_)),
        talk_(runtime) {
    std::vector<Fault> faults;
    if (!options.file.empty()) state_.start = io::load_job(options.file);
    Choices choices{.prefer = options.prefer, .units = {}};
    remembered_ = runtime.remember(state_.start, choices);
    word_ = choices.prefer;
    prefer_ = parse_prefer(word_, faults);
    inches_ = parse_units(choices.units, faults);
    if (!faults.empty()) throw InputError(std::move(faults));
    check_start();
  }

  int run() {
    const StopsReading stops;
    talk_.say("One question a line. ? not known, < back, Ctrl-C saves and stops.");
    for (;;) {
      if (!ask_all()) return stopped();
      answer();
      if (!after()) return exit_;
    }
  }

 private:
  ask::Facts facts() const { return {standards_, list_.glands}; }

  /// A job that cannot be true cannot be gone on with.
  void check_start() const {
    const job::Job job = job::resolve(state_.start, standards_, job::Unstated::measured);
    static_cast<void>(fit::ask(job, standards_, ask::asking()));
  }

  /// @return false where the input ended before the summary was confirmed
  bool ask_all() {
    for (bool refused = false;;) {
      const auto prompt = ask::next(state_, facts());
      if (!prompt) return true;
      put(*prompt, refused);
      const auto line = talk_.hear();
      if (!line) return false;
      ask::Step step = ask::give(state_, facts(), *line);
      refused = step.refused;
      for (const std::string& says : step.says) talk_.say((step.refused ? "! " : "  ") + says, 2);
      state_ = std::move(step.state);
    }
  }

  /// @param again  its last answer was refused: the question alone stands
  void put(const ask::Prompt& prompt, bool again) {
    if (again) return talk_.say(prompt.asks + " " + prompt.form, 2);
    talk_.say("");
    if (prompt.key.empty()) {
      talk_.say("SUMMARY");
      std::size_t number = 0;
      for (const ask::Told& told : ask::summary(state_)) {
        talk_.say((number < 9 ? " " : "") + std::to_string(number + 1) + "  " +
                      std::string(job::field_named(told.key).help) + ": " + told.text,
                  4);
        ++number;
      }
    }
    talk_.say(prompt.asks, 2);
    if (!prompt.drawing.empty()) talk_.show(prompt.drawing);
    if (!prompt.running.empty()) talk_.say("  " + prompt.running, 2);
    std::string hint = "  " + prompt.form;
    if (!prompt.usual.empty()) hint += "; usual: " + prompt.usual;
    if (prompt.key.empty()) return talk_.say(hint, 2);
    talk_.say(hint, 2);
    talk_.say("  ? " + prompt.not_known, 2);
  }

  [[nodiscard]] print::Style style() const {
    print::Style style;
    style.colour = runtime_.colour();
    style.inches = inches_;
    return style;
  }

  /// The screen of `fit`, the command that repeats it, and the file.
  void answer() {
    const job::JobInput input = ask::job_of(state_);
    job::Job job = job::resolve(input, standards_, job::Unstated::measured);
    job.assumed.insert(job.assumed.end(), remembered_.begin(), remembered_.end());
    run::require_sheath(job, "the sheath");
    const fit::Question question = fit::ask(job, standards_, ask::asking());
    const auto ranked = fit::fit_all(question, list_.glands, prefer_);
    exit_ =
        !ranked.empty() && ranked.front().verdict == Verdict::fits ? k_exit_fits : k_exit_no_fit;
    if (runtime_.common.json) {
      runtime_.emit(print::fit_json(question, ranked));
    } else if (!runtime_.common.output.empty()) {
      runtime_.emit(print::fit_text(question, ranked, list_.name, {}));
    } else {
      talk_.say("");
      talk_.show(print::fit_text(question, ranked, list_.name, style()));
    }
    std::vector<std::string> words = ask::command_of(state_);
    if (!word_.empty()) words.insert(words.end(), {"--prefer", word_});
    for (const std::string& path : runtime_.common.glands) {
      words.insert(words.end(), {"--glands", path});
    }
    talk_.say("");
    talk_.say("The same again:");
    talk_.copy(shell_words(words));
    if (!options_.save.empty()) save(options_.save);
  }

  /// @return true where another end is asked for
  bool after() {
    for (;;) {
      talk_.say("");
      talk_.say("Enter: done; s: the sheet; o: the other end of this cable; w FILE: save the job");
      talk_.say("m FILE: into the register of finished ends");
      const auto line = talk_.hear();
      const std::string_view word = line ? trimmed(*line) : std::string_view{};
      if (word.empty()) return false;
      if (word == "s") {
        if (!sheet()) return false;
      } else if (word == "o") {
        state_ = ask::other_end(state_);
        talk_.say("The same cable at its other end: measure it there.");
        return true;
      } else if (word.starts_with("w ")) {
        save(std::string(trimmed(word.substr(2))));
      } else if (word.starts_with("m ")) {
        if (!enter(std::string(trimmed(word.substr(2))))) return false;
      } else {
        talk_.say("! Enter, s, o, or w or m with the name of a file");
      }
    }
  }

  /// What only the sheet needs, and the sheet. @return false at the end of input
  bool sheet() {
    job::JobInput input = ask::job_of(state_);
    for (const char* key : {"reach_mm", "strip_mm"}) {
      const job::Field& field = job::field_named(key);
      while (!job::text_of(input, field)) {
        talk_.say(std::string(field.help) + ", in mm; Enter: not known");
        const auto line = talk_.hear();
        if (!line) return false;
        if (trimmed(*line).empty()) break;
        for (const Fault& fault : job::set_from_text(input, field, *line, "")) {
          talk_.say("! " + to_line(fault));
        }
      }
    }
    state_.start.reach_mm = input.reach_mm;
    state_.start.strip_mm = input.strip_mm;
    const job::Job job = job::resolve(input, standards_, job::Unstated::measured);
    const fit::Question question = fit::ask(job, standards_, ask::asking());
    const auto ranked = fit::fit_all(question, list_.glands, prefer_);
    const sheet::Sheet made =
        sheet::make_sheet(question, sheet::choose(job, ranked, ""), list_.name);
    talk_.say("");
    talk_.show(print::sheet_text(made, style()));
    if (made.fit && made.fit->gland->armour != cable::ArmourKind::none &&
        !made.fit->gland->armour_stop_mm) {
      talk_.say(
          "Its armour stop is not in the list. Measured once on the gland in hand it is kept: "
          "cutback glands FILE --measure " +
          made.fit->gland->part);
    }
    return true;
  }

  /// A line of the register: what was measured, and the gland where it is finished.
  /// @return false at the end of input
  bool enter(const std::string& path) {
    const job::JobInput input = ask::job_of(state_);
    io::MadeRow row;
    row.set("tag", input.tag.value_or(""));
    row.set("end", input.end.value_or(""));
    row.set("made_at", today(runtime_));
    const auto put = [&](const char* column, const std::optional<measure::Readings>& readings) {
      if (readings) row.set(column, readings->text);
    };
    put("sheath_od_mm", input.sheath_od_mm);
    put("bedding_mm", input.bedding_mm);
    put("armour_mm", input.armour_mm);
    constexpr std::array<std::pair<const char*, const char*>, 6> k_asked{{
        {"tag", "Tag of the cable"},
        {"end", "Which end"},
        {"part", "Gland that it was finished with; Enter: measured, not finished"},
        {"batch", "Batch of the gland; Enter: not known"},
        {"torque_nm", "Torque of the body, in N m; Enter: not known"},
        {"by", "Who made it; Enter: not said"},
    }};
    for (const auto& [column, asks] : k_asked) {
      const std::string_view name(column);
      if (!row.cell(name).empty()) continue;
      const bool of_a_gland = name == "batch" || name == "torque_nm";
      if (of_a_gland && row.cell("part").empty()) continue;
      for (;;) {
        talk_.say(asks);
        const auto line = talk_.hear();
        if (!line) return false;
        row.set(name, std::string(trimmed(*line)));
        std::vector<Fault> faults = io::faults_of(row);
        std::erase_if(faults, [&](const Fault& fault) { return fault.where != name; });
        if (faults.empty()) break;
        talk_.say("! " + to_line(faults.front()));
      }
    }
    try {
      if (const auto remark = io::append_made(path, row)) talk_.say("! " + *remark);
      talk_.say("Written into " + path + ": cutback made " + path + " shows it.");
    } catch (const Error& error) {
      talk_.say("! " + std::string(error.what()));
    }
    return true;
  }

  /// A job file that `sheet` and `ask` read: what was typed was measured.
  void save(const std::string& path) {
    job::JobInput input = ask::job_of(state_);
    if (!input.evidence) input.evidence = measure::Evidence::measured;
    io::write_file(path, io::write_job(input, 2) + "\n");
    talk_.say("Saved in " + path + ": cutback ask " + path + ", or cutback sheet " + path);
  }

  /// Nothing that was told is lost.
  int stopped() {
    if (state_.answers.empty()) return k_exit_no_fit;
    std::string path = options_.save.empty() ? options_.file : options_.save;
    if (path.empty() || path == "-") {
      path = "cutback-ask.json";
      std::error_code error;
      for (int i = 2; std::filesystem::exists(path, error); ++i) {
        path = "cutback-ask-" + std::to_string(i) + ".json";
      }
    }
    talk_.say("Stopped before the end.");
    save(path);
    return k_exit_no_fit;
  }

  const AskOptions& options_;
  Runtime& runtime_;
  tables::Standards standards_;
  gland::GlandList list_;
  Talk talk_;
  std::string word_;  ///< for prefer_, as given or remembered
  std::vector<Assumption> remembered_;
  fit::Prefer prefer_ = fit::Prefer::price;
  bool inches_ = false;
  ask::State state_;
  int exit_ = k_exit_no_fit;
};

}  // namespace

void add_ask(CLI::App& app, Context& context) {
  const auto options = std::make_shared<AskOptions>();
  CLI::App* command = app.add_subcommand("ask", k_description);
  command->footer(k_example);
  command->add_option("job", options->file, "Job file (JSON) to go on with")->type_name("FILE");
  command
      ->add_option("--save", options->save,
                   "Save the job there, to go on with or for cutback sheet")
      ->type_name("FILE")
      ->group("Results");
  add_prefer(*command, options->prefer);
  add_common(*command, context.common, Reads::glands);
  command->callback([options, &context] {
    context.command.run = [options](Runtime& runtime) { return Dialogue(*options, runtime).run(); };
    // Lines are edited by a library that only the full program has.
    context.command.needs_extras = [] { return ::isatty(0) == 1 && ::isatty(1) == 1; };
  });
}

}  // namespace cutback::cli

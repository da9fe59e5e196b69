#include "cli/command_ask.hpp"

#include <unistd.h>
#include <CLI/CLI.hpp>
#include <algorithm>
#include <filesystem>
#include <memory>

#include "cli/ask_register.hpp"
#include "cli/exit_code.hpp"
#include "cli/job_options.hpp"
#include "cli/runtime.hpp"
#include "cli/talk.hpp"
#include "cutback/ask/ask.hpp"
#include "cutback/error.hpp"
#include "cutback/io/files.hpp"
#include "cutback/io/job_file.hpp"
#include "cutback/job/field_text.hpp"
#include "cutback/job/job.hpp"
#include "cutback/print/pages.hpp"
#include "cutback/print/print.hpp"
#include "cutback/sheet/sheet.hpp"
#include "cutback/text.hpp"
#include "cutback/written/written.hpp"

namespace cutback::cli {
namespace {

constexpr const char* k_description =
    "Led from the caliper to the answer: one question per line, each with its unit,\n"
    "an example and what is usual. ? is not known, < goes back, Ctrl-C saves and\n"
    "stops. A job file that it takes up is kept up to date. Without a terminal it\n"
    "reads the same answers from a pipe.";

constexpr const char* k_example =
    "Example: a new end; the same cable later, from where it was left:\n"
    "  cutback ask --save P-201.json\n"
    "  cutback ask P-201.json";

struct AskOptions {
  std::string file;
  std::string save;
  std::string prefer;
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

/// The first line of a screen with those that are moved in below it, three at most.
std::string head_of(const std::string& screen) {
  constexpr int k_most = 3;
  std::size_t end = screen.find('\n');
  for (int lines = 1; lines < k_most && end + 1 < screen.size() && screen[end + 1] == ' ';
       ++lines) {
    end = std::min(screen.find('\n', end + 1), screen.size());
  }
  return screen.substr(0, end);
}

/// The first name of this form that no file has: job.json, job-2.json, job-3.json.
std::string free_name(const std::filesystem::path& wanted) {
  std::filesystem::path path = wanted;
  std::error_code error;
  for (int i = 2; std::filesystem::exists(path, error); ++i) {
    path = wanted.parent_path() /
           (wanted.stem().string() + "-" + std::to_string(i) + wanted.extension().string());
  }
  return path.string();
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
    check_save();
    Choices choices{.prefer = options.prefer, .units = {}};
    remembered_ = runtime.remember(state_.start, choices);
    word_ = choices.prefer;
    prefer_ = parse_prefer(word_, faults);
    inches_ = parse_units(choices.units, faults);
    if (!faults.empty()) throw InputError(std::move(faults));
    check_start();
    if (keep_ == options.file) kept_ = job_text();
  }

  int run() {
    talk_.say("One question per line. ? not known, < back, Ctrl-C saves and stops.");
    if (runtime_.list_paths().empty()) {
      talk_.say(
          "The glands are invented: cutback glands --new stock.csv asks for those that you have.");
    }
    if (!options_.file.empty() && !ask::summary(state_).empty()) {
      talk_.say("");
      talk_.say("FROM " + options_.file);
      say_told(false);
    }
    for (;;) {
      if (!ask_all()) return stopped();
      if (!has_sheath()) {
        talk_.say("! Nothing is proven without the sheath: measure it, and take the job up again.");
        return stopped();
      }
      answer();
      switch (after()) {
        case Then::other_end:
        case Then::summary:
          break;
        case Then::ended:  // at a terminal nobody said that it is done
          if (talk_.rows() > 0 && keep_.empty()) save(free_name(k_fallback));
          return exit_;
        case Then::done:
          return exit_;
      }
    }
  }

 private:
  enum class Then { done, ended, other_end, summary };
  static constexpr const char* k_fallback = "cutback-ask.json";
  static constexpr const char* k_menu =
      "Enter: done; <: summary; s: sheet; o: other end; w FILE: save; m FILE: register";

  ask::Facts facts() const { return {standards_, list_.glands}; }

  /// A job is kept where --save says, else in the file that it came from. No other file is written
  /// over.
  void check_save() {
    keep_ = options_.save.empty() && options_.file != "-" ? options_.file : options_.save;
    std::error_code error;
    const auto folder = std::filesystem::path(keep_).parent_path();
    if (!folder.empty() && !std::filesystem::is_directory(folder, error)) {
      throw InputError(make_fault(ErrorCode::bad_value, "there is no such folder", "--save", keep_,
                                  "a file in a folder that is there"));
    }
    if (options_.save.empty() || options_.save == options_.file ||
        !std::filesystem::exists(options_.save, error)) {
      return;
    }
    throw InputError(make_fault(ErrorCode::contradiction, "the file is there already", "--save",
                                options_.save, "the name of a new file",
                                "cutback ask " + options_.save + " goes on with it"));
  }

  /// A job that cannot be true cannot be gone on with.
  void check_start() const {
    const job::Job job = job::resolve(state_.start, standards_, job::Unstated::measured);
    static_cast<void>(fit::ask(job, standards_, ask::asking()));
  }

  [[nodiscard]] bool has_sheath() const {
    return job::resolve(ask::job_of(state_), standards_, job::Unstated::measured)
        .cable.sheath_od.has_value();
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

  void say_told(bool numbered) {
    std::size_t number = 0;
    for (const ask::Told& told : ask::summary(state_)) {
      ++number;
      const std::string mark = (number < 10 ? " " : "") + std::to_string(number);
      talk_.say((numbered ? mark + "  " : "  ") + told.name + ": " + told.text, 4);
    }
  }

  /// @param again  its last answer was refused: the question alone stands
  void put(const ask::Prompt& prompt, bool again) {
    if (again) return talk_.say(prompt.asks + " " + prompt.form, 2);
    talk_.say("");
    if (prompt.key.empty()) {
      talk_.say("SUMMARY");
      say_told(true);
    }
    talk_.say(prompt.asks, 2);
    if (!prompt.drawing.empty()) talk_.show(prompt.drawing);
    if (!prompt.running.empty()) talk_.say("  " + prompt.running, 2);
    std::string hint = "  " + prompt.form;
    if (!prompt.usual.empty()) hint += "; usual: " + prompt.usual;
    talk_.say(hint, 2);
    if (prompt.key.empty()) return;
    talk_.say("  ? " + prompt.not_known, 2);
    if (!prompt.now.empty()) talk_.say("  now " + prompt.now + "; an empty line keeps it", 2);
  }

  [[nodiscard]] print::Style style() const {
    print::Style style;
    style.colour = runtime_.colour();
    style.inches = inches_;
    return style;
  }

  /// The command that repeats the answer, the file, and last, so that it stands on the screen, the
  /// screen of `fit`.
  void answer() {
    const job::JobInput input = ask::job_of(state_);
    job::Job job = job::resolve(input, standards_, job::Unstated::measured);
    job.assumed.insert(job.assumed.end(), remembered_.begin(), remembered_.end());
    const fit::Question question = fit::ask(job, standards_, ask::asking());
    ranked_ = fit::fit_all(question, list_.glands, prefer_);
    exit_ =
        !ranked_.empty() && ranked_.front().verdict == Verdict::fits ? k_exit_fits : k_exit_no_fit;
    std::vector<std::string> words = ask::command_of(state_);
    if (!word_.empty()) words.insert(words.end(), {"--prefer", word_});
    for (const std::string& path : runtime_.common.glands) {
      words.insert(words.end(), {"--glands", path});
    }
    if (!runtime_.common.supplier.empty()) {
      words.insert(words.end(), {"--supplier", runtime_.common.supplier});
    }
    talk_.say("");
    talk_.say("The same again:");
    talk_.copy(shell_words(words));
    keep();
    talk_.say("");
    if (runtime_.common.json) {
      runtime_.emit(print::fit_json(question, ranked_));
    } else if (!runtime_.common.output.empty()) {
      runtime_.emit(print::fit_text(question, ranked_, list_.name, {}));
    } else {
      show_answer(question);
    }
  }

  /// On one screen with the line of what comes next; where it takes more, its beginning stands
  /// there once more.
  void show_answer(const fit::Question& question) {
    print::Style set = style();
    constexpr std::size_t k_least_lines = 12;
    const std::size_t taken = talk_.lines_of(k_menu) + 2;  // a blank line, and what is typed
    const std::size_t room = std::max(talk_.rows(), taken) - taken;
    if (talk_.rows() > 0) {
      set.columns = talk_.columns();
      set.lines = std::clamp(room, k_least_lines, set.lines);
    }
    const std::string text = print::fit_text(question, ranked_, list_.name, set);
    talk_.show(text);
    if (talk_.rows() == 0 || talk_.lines_of(text) <= room) return;
    talk_.say("");
    talk_.show(head_of(text));
  }

  Then after() {
    bool warned = false;
    for (;;) {
      talk_.say("");
      talk_.say(k_menu);
      const auto line = talk_.hear();
      if (!line) return Then::ended;
      std::string word(trimmed(*line));
      // The key is a letter in either case, by itself or with a name behind it.
      if (word.size() == 1 || (word.size() > 1 && word[1] == ' ')) word[0] = small_letter(word[0]);
      std::string file(word.size() > 2 ? trimmed(std::string_view(word).substr(2))
                                       : std::string_view{});
      if (word == "w") file = keep_.empty() ? free_name(k_fallback) : keep_;
      if (word.empty()) {
        if (talk_.rows() == 0 || !keep_.empty() || warned) return Then::done;
        talk_.say("! The job is in no file: w FILE saves it, Enter once more leaves it.");
        warned = true;
      } else if (word == "<" || word == "back") {
        state_.confirmed = false;
        return Then::summary;
      } else if (word == "s" || word.starts_with("s ")) {
        if (!sheet(file)) return Then::ended;
      } else if (word == "o") {
        state_ = ask::other_end(state_);
        talk_.say("The same cable at its other end: measure it there.");
        if (!keep_.empty()) keep_ = free_name(keep_);
        kept_.clear();
        return Then::other_end;
      } else if (word == "w" || word.starts_with("w ")) {
        const auto may = may_write(file, keep_, "w");
        if (!may) return Then::ended;
        if (*may) save(file);
      } else if (word.starts_with("m ")) {
        if (clashes(file, "m")) continue;
        job::JobInput input = ask::job_of(state_);
        const bool goes_on = enter_into_register(file, input, ranked_, list_, talk_, runtime_);
        // The job is called as its row is, so that the two are found together.
        state_.start.tag = input.tag;
        state_.start.end = input.end;
        keep();
        if (!goes_on) return Then::ended;
      } else {
        talk_.say("! Enter, <, s, o, or w or m with the name of a file");
      }
    }
  }

  /// Whether it would be written over something that is read or written here: said, where it would.
  bool clashes(const std::string& path, const std::string& by) {
    std::vector<NamedFile> files{{by, path, true}};
    for (NamedFile each : runtime_.named) {
      each.written = false;  // what is written elsewhere must stay as well
      files.push_back(std::move(each));
    }
    for (const std::string& list : runtime_.list_paths()) {
      files.push_back({"the gland list", list, false});
    }
    files.push_back({"the job that is kept", keep_, false});
    const std::vector<Fault> faults = file_clashes(files);
    if (!faults.empty()) talk_.say("! " + to_line(faults.front()));
    return !faults.empty();
  }

  /// Whether a file may be written. @param own  may be written over unasked
  /// @param by  the key that names it
  /// @return nothing at the end of input
  std::optional<bool> may_write(const std::string& path, const std::string& own,
                                const std::string& by) {
    std::error_code error;
    if (path == own) return true;
    if (clashes(path, by)) return false;
    if (!std::filesystem::exists(path, error)) return true;
    talk_.say("! " + path + " is there already. y: write over it; Enter: leave it");
    const auto line = talk_.hear();
    if (!line) return std::nullopt;
    return trimmed(*line) == "y";
  }

  /// What only the sheet needs. @return false at the end of input
  bool ask_tails(job::JobInput& input) {
    struct Tail {
      const char* key;
      const char* asks;
      bool none = false;  ///< an empty line is 0
    };
    for (const Tail& tail : {Tail{"reach_mm", "Way from the inside face to the terminals"},
                             Tail{"strip_mm", "Insulation stripped for the terminal"},
                             Tail{"slack_mm", "Spare length of every core", true}}) {
      const job::Field& field = job::field_named(tail.key);
      if (field.key == "reach_mm" && !input.core_list.empty()) continue;
      while (!job::text_of(input, field)) {
        talk_.say(std::string(tail.asks) + ", in mm; Enter: " + (tail.none ? "none" : "not known"));
        const auto line = talk_.hear();
        if (!line) return false;
        std::string text = written::take(written::asked_of(field), *line, "").text;
        if (trimmed(text).empty() && !tail.none) break;
        if (trimmed(text).empty()) text = "0";
        for (Fault& fault : job::set_from_text(input, field, text, "")) {
          talk_.say("! " + to_line(fault));
        }
      }
    }
    return true;
  }

  /// The sheet, screen by screen or into a file. @return false at the end of input
  bool sheet(const std::string& path) {
    job::JobInput input = ask::job_of(state_);
    if (!ask_tails(input)) return false;
    state_.start.reach_mm = input.reach_mm;
    state_.start.strip_mm = input.strip_mm;
    state_.start.slack_mm = input.slack_mm;
    job::Job job = job::resolve(input, standards_, job::Unstated::measured);
    job.assumed.insert(job.assumed.end(), remembered_.begin(), remembered_.end());
    const fit::Question question = fit::ask(job, standards_, ask::asking());
    const auto ranked = fit::fit_all(question, list_.glands, prefer_);
    const sheet::Sheet made =
        sheet::make_sheet(question, sheet::choose(job, ranked, ""), list_.name);
    keep();
    talk_.say("");
    if (!path.empty()) return write_sheet(made, path);
    if (!show_pages(made)) return false;
    if (made.fit && made.fit->gland->armour != cable::ArmourKind::none &&
        !made.fit->gland->armour_stop_mm) {
      const std::vector<std::string> lists = runtime_.list_paths();
      std::vector<std::string> words{"glands"};
      words.push_back(lists.empty() ? "stock.csv" : lists.front());
      words.insert(words.end(), {"--measure", made.fit->gland->part});
      talk_.say(
          "Its armour stop is not in the list. Measured once on the gland in hand it is kept: " +
          shell_words(words));
    }
    return true;
  }

  /// Any other word was no name of a file: `?`, `no`, `help`.
  static bool is_sheet_name(std::string_view word) {
    return word.ends_with(".pdf") || word.ends_with(".txt");
  }

  /// Through a pipe all of it; at a terminal one screen after the other, until it is enough.
  /// @return false at the end of input
  bool show_pages(const sheet::Sheet& made) {
    const std::string text = print::sheet_text(made, style());
    if (talk_.rows() == 0) {
      talk_.show(text);
      return true;
    }
    constexpr const char* k_more =
        "Enter: more; q: enough; or a file to write it to (.txt or .pdf)";
    const std::size_t room = talk_.rows() - talk_.lines_of(k_more) - 1;
    for (std::string_view rest = text; !rest.empty();) {
      std::size_t used = 0;
      while (!rest.empty()) {
        const std::string_view line = rest.substr(0, std::min(rest.find('\n'), rest.size()));
        const std::size_t lines = std::max<std::size_t>(talk_.lines_of(line), 1);
        if (used > 0 && used + lines > room) break;
        talk_.say(line);
        used += lines;
        rest.remove_prefix(std::min(line.size() + 1, rest.size()));
      }
      if (rest.empty()) break;
      std::string word;
      do {
        talk_.say(k_more);
        const auto heard = talk_.hear();
        if (!heard) return false;
        word = trimmed(*heard);
      } while (!word.empty() && word != "q" && !is_sheet_name(word));
      if (word == "q") break;
      if (!word.empty()) return write_sheet(made, word);
    }
    return true;
  }

  /// @return false at the end of input
  bool write_sheet(const sheet::Sheet& made, const std::string& path) {
    const bool pages = path.ends_with(".pdf");
    if (!is_sheet_name(path)) {
      talk_.say("! a sheet goes into a file whose name ends in .pdf or .txt");
      return true;
    }
    if (pages && runtime_.environment.extras == nullptr) {
      talk_.say("! Pages are not drawn from a pipe: cutback sheet JOB --pdf --output " + path);
      return true;
    }
    const auto may = may_write(path, "", "s");
    if (!may || !*may) return may.has_value();
    job::JobInput input = sheet::with_gland(ask::job_of(state_), made);
    if (!input.evidence) input.evidence = measure::Evidence::measured;
    const print::Card card{.tag = made.job->tag,
                           .end = made.job->end,
                           .sheet = &made,
                           .why = {},
                           .remedy = {},
                           .qr_text = io::write_job(input, -1)};
    print::Style set = style();
    set.colour = false;
    try {
      io::write_file(path, pages ? runtime_.extras().sheet_pdf(
                                       card, {.program = runtime_.program(), .dated = {}})
                                 : print::sheet_text(made, set));
      talk_.say("Written: " + path);
    } catch (const FileError& error) {
      talk_.say("! " + std::string(error.what()));
    }
    return true;
  }

  /// A job file that `sheet` and `ask` read: what was typed was measured.
  [[nodiscard]] std::string job_text() const {
    job::JobInput input = ask::job_to_keep(state_);
    if (!input.evidence) input.evidence = measure::Evidence::measured;
    return io::write_job(input, 2) + "\n";
  }

  /// Into the file that the job is kept in, where there is one and something is new.
  void keep() {
    if (!keep_.empty() && job_text() != kept_) save(keep_);
  }

  /// From here on the job is kept there.
  /// @return false where it cannot be written, which is said
  bool save(const std::string& path) {
    std::string text = job_text();
    try {
      io::write_file(path, text);
    } catch (const FileError& error) {
      talk_.say("! " + std::string(error.what()));
      return false;
    }
    keep_ = path;
    kept_ = std::move(text);
    const std::string on = shell_words({"ask", path});
    const std::string sheet = shell_words({"sheet", path});
    if (path.find(' ') == std::string::npos) {
      talk_.say("Saved in " + path + ": " + on + ", or " + sheet);
    } else {  // a name in quotes stays on one line
      talk_.say("Saved in " + path + ":");
      talk_.say("  " + on);
      talk_.say("  " + sheet);
    }
    return true;
  }

  /// Nothing that was told is lost.
  int stopped() {
    if (state_.answers.empty() && state_.before.empty()) return k_exit_no_fit;
    talk_.say("Stopped before the end.");
    if (keep_.empty() || !save(keep_)) save(free_name(k_fallback));
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
  std::vector<fit::GlandFit> ranked_;  ///< of the last answer
  std::string keep_;                   ///< the file that the job is kept in; empty: none
  std::string kept_;                   ///< what stands in it
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
                   "Save the job in this new file, to go on with or for cutback sheet")
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

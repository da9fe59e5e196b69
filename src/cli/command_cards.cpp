#include "cli/command_cards.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <array>
#include <deque>
#include <memory>
#include <set>
#include <thread>

#include "cli/date_option.hpp"
#include "cli/exit_code.hpp"
#include "cli/job_options.hpp"
#include "cli/progress.hpp"
#include "cli/runtime.hpp"
#include "cli/schedule_options.hpp"
#include "cutback/error.hpp"
#include "cutback/io/files.hpp"
#include "cutback/io/job_file.hpp"
#include "cutback/io/made_file.hpp"
#include "cutback/nearest.hpp"
#include "cutback/number.hpp"
#include "cutback/print/cards.hpp"
#include "cutback/print/paper.hpp"
#include "cutback/print/schedule.hpp"
#include "run/cards_run.hpp"
#include "run/content_hash.hpp"
#include "run/place_asked.hpp"

namespace cutback::cli {
namespace {

constexpr const char* k_description =
    "A strip-length card for every end of jobs and cable schedules, as PDF: what the\n"
    "cable must read, the marks and depths, the tails, what is written in, and along\n"
    "the paper's edge the marks at true size to lay the cable beside. Print at 100 %\n"
    "and measure the check bars before use.";

constexpr const char* k_example =
    "Example: two jobs on A5, and a schedule as two cards on a page of A4:\n"
    "  cutback cards pump.json switch.json --output cards.pdf\n"
    "  cutback cards cables.csv --paper A4 --sort tag --output cards.pdf\n"
    "An end without a gland, or one that cannot be used, has a card that says why.";

struct CardsOptions {
  FormatOptions format;
  std::vector<std::string> files;
  std::string paper = "A5";
  std::string per_page;
  std::vector<std::string> only;
  std::string sort = "given";
  std::string by = "end";
  std::string results;
  std::string made;
  std::string prefer;
  std::string units;
  bool dated = false;
};

/// What was typed, understood.
struct Typed {
  TypedFormat format;
  print::Paper paper;
  fit::Prefer prefer = fit::Prefer::price;
  run::CardOrder order = run::CardOrder::given;
  run::CardBy by = run::CardBy::end;
  bool inches = false;
  std::string decided;  ///< by a profile, in words
};

print::Paper paper_of(const CardsOptions& options, std::vector<Fault>& faults) {
  constexpr int k_usual = 0;
  constexpr int k_none = -1;
  const auto count = parse_number(options.per_page);
  const auto cards = [&] {
    if (options.per_page.empty()) return k_usual;
    for (const int possible : {1, 2, 4}) {
      if (count && *count == possible) return possible;
    }
    return k_none;
  }();
  if (const auto paper = print::paper_of(options.paper, cards)) return *paper;
  const bool named = print::paper_of(options.paper, k_usual).has_value();
  if (!named) {
    constexpr std::array<std::string_view, 4> k_names{"A4", "A5", "A6", "Letter"};
    faults.push_back({.code = ErrorCode::bad_value,
                      .what = "not a paper",
                      .where = "--paper",
                      .given = options.paper,
                      .allowed = "A4, A5, A6 or Letter",
                      .hint = did_you_mean(options.paper, k_names)});
  } else {
    faults.push_back(
        {.code = ErrorCode::bad_value,
         .what = "not a number of cards for a page of this paper",
         .where = "--per-page",
         .given = options.per_page,
         .allowed = cards == k_none ? "1, 2 or 4" : "1 on A5 and A6; 1, 2 or 4 on A4 and Letter",
         .hint = {}});
  }
  return {};
}

Typed understand(const CardsOptions& options, const Runtime& runtime) {
  std::vector<Fault> faults;
  Typed typed;
  typed.format = understand(options.format, faults);
  Choices choices{.prefer = options.prefer, .units = options.units};
  typed.decided = on_paper(runtime.remember_for_schedule(choices, typed.format.format));
  typed.prefer = parse_prefer(choices.prefer, faults);
  typed.inches = parse_units(choices.units, faults);
  typed.paper = paper_of(options, faults);
  constexpr std::array<std::string_view, 4> k_orders{"given", "tag", "end", "gland"};
  const auto order = std::find(k_orders.begin(), k_orders.end(), options.sort);
  if (order == k_orders.end()) {
    faults.push_back({.code = ErrorCode::bad_value,
                      .what = "not an order of the cards",
                      .where = "--sort",
                      .given = options.sort,
                      .allowed = "given, tag, end or gland",
                      .hint = did_you_mean(options.sort, k_orders)});
  } else {
    typed.order = static_cast<run::CardOrder>(order - k_orders.begin());
  }
  constexpr std::array<std::string_view, 2> k_kinds{"end", "type"};
  const auto by = std::find(k_kinds.begin(), k_kinds.end(), options.by);
  if (by == k_kinds.end()) {
    faults.push_back({.code = ErrorCode::bad_value,
                      .what = "not what a card is for",
                      .where = "--by",
                      .given = options.by,
                      .allowed = "end or type",
                      .hint = did_you_mean(options.by, k_kinds)});
  } else {
    typed.by = static_cast<run::CardBy>(by - k_kinds.begin());
  }
  if (!options.results.empty() && options.files.size() != 1) {
    faults.push_back({.code = ErrorCode::contradiction,
                      .what = "results belong to one schedule",
                      .where = "--results",
                      .given = std::to_string(options.files.size()) + " files",
                      .allowed = {},
                      .hint = "give the schedule that they were made from"});
  }
  if (runtime.common.json && runtime.common.output.empty()) {
    faults.push_back({.code = ErrorCode::contradiction,
                      .what = "the cards and what they come to cannot both go to stdout",
                      .where = "--json",
                      .given = {},
                      .allowed = {},
                      .hint = "give --output FILE for the cards"});
  }
  if (!faults.empty()) throw InputError(std::move(faults));
  return typed;
}

/// A job begins with a brace; anything else is a schedule.
bool is_job(std::string_view text) {
  const std::size_t at = text.find_first_not_of(" \t\r\n\xEF\xBB\xBF");
  return at != std::string_view::npos && text[at] == '{';
}

/// Where the pages go: the file is there when the first card is, and not before.
class Printer {
 public:
  Printer(const Runtime& runtime, const print::Paper& paper, print::PageNote note, unsigned threads)
      : runtime_(runtime), paper_(paper), note_(std::move(note)), threads_(threads) {}

  void add(print::Card card) {
    if (!cards_) open();
    cards_->add(std::move(card));
  }
  void add_place(const print::PlacePage& place) {
    if (!cards_) open();
    cards_->add_place(place);
  }

  [[nodiscard]] bool is_empty() const { return cards_ == nullptr; }

  print::CardCount finish() {
    const print::CardCount count = cards_->finish();
    return count;
  }

 private:
  void open() {
    if (!runtime_.common.output.empty()) {
      file_ = &runtime_.files.add(runtime_.common.output);
    }
    const auto write = [this](std::string_view bytes) {
      if (file_ != nullptr) {
        file_->append(bytes);
      } else {
        runtime_.out << bytes;
      }
    };
    cards_ = runtime_.extras().new_card_printer(paper_, note_, write, threads_);
  }

  const Runtime& runtime_;
  print::Paper paper_;
  print::PageNote note_;
  unsigned threads_;
  io::FileWriter* file_ = nullptr;  ///< null: stdout
  std::unique_ptr<print::CardPrinter> cards_;
};

[[noreturn]] void nothing_to_print(const std::vector<run::MissingTag>& missing) {
  std::string given;
  std::string hint;
  for (const auto& [tag, nearest] : missing) {
    given += (given.empty() ? "" : ", ") + tag;
    if (!nearest.empty()) hint += (hint.empty() ? "did you mean \"" : ", \"") + nearest + "\"";
  }
  throw InputError(Fault{.code = ErrorCode::unknown_name,
                         .what = "no end has such a tag",
                         .where = "--only",
                         .given = given,
                         .allowed = "tags as the files have them",
                         .hint = hint.empty() ? hint : hint + "?"});
}

/// What a register says of what is printed, and its rows that no schedule has.
struct Made {
  std::optional<io::MadeFile> file;
  std::deque<run::MadeSchedule> schedules;  ///< kept as long as their ends are decided
  std::set<std::size_t> of_jobs;            ///< rows of ends that have files of their own

  [[nodiscard]] std::vector<run::NotFound> not_found() const {
    std::vector<run::NotFound> rows;
    if (schedules.empty()) return rows;
    for (const run::NotFound& row : schedules.front().not_found) {
      const bool nowhere =
          of_jobs.count(row.line) == 0 &&
          std::all_of(schedules.begin(), schedules.end(), [&](const run::MadeSchedule& each) {
            return std::any_of(each.not_found.begin(), each.not_found.end(),
                               [&](const run::NotFound& one) { return one.line == row.line; });
          });
      if (nowhere) rows.push_back(row);
    }
    return rows;
  }
};

/// Inputs are kept as long as their rows are used.
using Inputs = std::deque<std::deque<run::ScheduleInput>>;

/// What the cards say that they are from: the file's name and a hash of what it holds.
/// @param whole  its text, where it is no workbook
std::string source_of(const std::string& path, const std::optional<io::WholeFile>& whole) {
  if (whole) return run::source_name(path, whole->text());
  return run::source_name(path, io::WholeFile(path).text());
}

void add_file(const std::string& path, const CardsOptions& options, Typed& typed,
              const tables::Standards& standards, const gland::GlandList& list, Runtime& runtime,
              Inputs& inputs, Made& made, run::CardsRun& run) {
  // Read once: it is looked at twice, and has its hash on every card.
  auto whole = run::take_text(path);
  if (whole && is_job(whole->text())) {
    if (!options.results.empty()) {
      throw InputError(Fault{.code = ErrorCode::contradiction,
                             .what = "results belong to a schedule",
                             .where = "--results",
                             .given = path + " is a job",
                             .allowed = {},
                             .hint = "leave --results out"});
    }
    const job::JobInput input = io::read_job(whole->text(), path);
    run::MadeJob known;
    if (made.file) {
      known =
          run::made_of(*made.file, options.made, input.tag.value_or(""), input.end.value_or(""));
      if (!known.says.empty()) runtime.warn(known.says);
      made.of_jobs.insert(known.lines.begin(), known.lines.end());
    }
    run.add_job(path, input, source_of(path, whole), known.end ? &*known.end : nullptr);
    return;
  }
  const std::string source = source_of(path, whole);
  auto& input = inputs.emplace_back();
  input.push_back({path, std::move(whole)});
  run::Schedule schedule = open_schedule(input, options.format, typed.format, standards, runtime);
  ReaderNotes notes(runtime);
  report_headings(schedule, options.format, notes, runtime);
  std::optional<run::ChosenParts> chosen;
  if (!options.results.empty()) {
    chosen.emplace(options.results, list, "write them with cutback schedule FILE --output RESULTS");
  }
  const bool place = asks_place(
      schedule, input,
      [&] { return open_schedule(input, options.format, typed.format, standards, runtime); },
      notes);
  const schedule::MadeEnds* ends = nullptr;
  if (made.file) {
    ends = &made.schedules
                .emplace_back(run::match_made(
                    *made.file, options.made,
                    open_schedule(input, options.format, typed.format, standards, runtime)))
                .ends;
  }
  run.add_schedule(std::move(schedule), {place, ends}, chosen ? &*chosen : nullptr, source);
}

int run_cards(const CardsOptions& options, Runtime& runtime) {
  Typed typed = understand(options, runtime);
  runtime.require_no_terminal("cards");
  const tables::Standards standards = runtime.standards();
  const gland::GlandList list = runtime.glands(standards);
  const fit::Selector glands(list.glands, typed.prefer);
  const unsigned threads = std::max(1U, std::thread::hardware_concurrency());
  Printer printer(
      runtime, typed.paper,
      {.program = runtime.program(), .dated = options.dated ? utc_date(runtime) : std::string()},
      threads);
  Progress progress(runtime.err, "cards");
  const bool shows = runtime.environment.err_is_terminal && !runtime.common.quiet;
  std::size_t printed = 0;
  std::optional<double> taken;
  Inputs inputs;
  Made made;
  if (!options.made.empty()) {
    made.file = io::load_made(options.made);
    for (const std::string& warning : made.file->warnings) runtime.warn(warning);
  }
  run::CardsRun run(
      {.standards = &standards,
       .list = &list,
       .glands = &glands,
       .only = {options.only.begin(), options.only.end()},
       .order = typed.order,
       .by = typed.by,
       .decided = typed.decided,
       .print =
           [&](print::Card card) {
             card.inches = typed.inches;
             printer.add(std::move(card));
             ++printed;
             if (shows) progress.show(printed, taken);
           },
       .print_place = [&](const print::PlacePage& place) { printer.add_place(place); },
       .warn = [&](const std::string& text) { runtime.warn(text); },
       .progress = [&](double part) { taken = part; },
       .threads = threads});
  for (const std::string& file : options.files) {
    add_file(file, options, typed, standards, list, runtime, inputs, made, run);
  }
  for (const run::NotFound& row : made.not_found()) runtime.warn(row.says);
  run.finish();
  progress.clear();
  if (printer.is_empty() && run.made() > 0) {
    throw InputError(make_fault(ErrorCode::missing,
                                "every end is finished: no type is left to make", "--by", "type",
                                "", "cutback made says what was made"));
  }
  if (printer.is_empty()) nothing_to_print(run.not_found());
  const print::CardCount count = printer.finish();
  const std::string other_cuts = run.other_cuts();
  if (!other_cuts.empty()) runtime.warn(other_cuts);
  for (const auto& [tag, nearest] : run.not_found()) {
    runtime.warn("no end has the tag " + tag +
                 (nearest.empty() ? "" : "; did you mean \"" + nearest + "\"?"));
  }
  if (!runtime.common.quiet) {
    runtime.err << print::defaults_summary(typed.format.format.defaults, run.defaults());
  }
  if (run.made() > 0) {
    runtime.warn(std::to_string(run.made()) +
                 " finished ends have no card: a card of a type is for what is still to be made");
  }
  const print::CardsReport report{.count = count, .cut = run.fitting(), .fitting = run.proven()};
  if (runtime.common.json) {
    runtime.out << with_json(print::cards_json(report), runtime.tables);
  }
  runtime.finish();
  if (!runtime.common.quiet) runtime.err << print::cards_summary(report);
  // A card of a type is ordered and read by; that of an end is cut by.
  const std::size_t good = typed.by == run::CardBy::type ? run.proven() : run.fitting();
  const bool all = good == count.ends && run.not_found().empty();
  return all ? k_exit_fits : k_exit_no_fit;
}

}  // namespace

void add_cards(CLI::App& app, Context& context) {
  const auto options = std::make_shared<CardsOptions>();
  CLI::App* command = app.add_subcommand("cards", k_description);
  command->footer(k_example);
  command
      ->add_option("files", options->files,
                   "Job files (JSON) and cable schedules (CSV or .xlsx); - is standard input")
      ->type_name("FILE")
      ->required();
  const auto pages = [&](CLI::Option* option) { option->group("Pages"); };
  pages(command->add_option("--paper", options->paper, "A4, A5, A6 or Letter (default A5)")
            ->type_name("NAME"));
  pages(command
            ->add_option("--per-page", options->per_page,
                         "Cards on a page of A4 or Letter: 1, 2 or 4 (default 2)")
            ->type_name("N"));
  pages(command->add_flag("--dated", options->dated,
                          "Print today's date on the pages, or that of SOURCE_DATE_EPOCH"));
  command
      ->add_option("--only", options->only,
                   "The ends of the cable with this tag alone; any number of times")
      ->type_name("TAG")
      ->allow_extra_args(false)
      ->group("Order");
  command
      ->add_option(
          "--sort", options->sort,
          "Order of the cards: given, tag, end (by place, each with a page of what it needs) "
          "or gland (default given)")
      ->type_name("WORD")
      ->group("Order");
  command
      ->add_option(
          "--by", options->by,
          "A card for every end, or for every type of gland, entry and cable with the list "
          "of its ends: end or type (default end)")
      ->type_name("WORD")
      ->group("Order");
  add_prefer(*command, options->prefer);
  add_units(*command, options->units);
  command
      ->add_option(
          "--results", options->results,
          "Glands as the results of this schedule (CSV) say; the marks are worked out anew")
      ->type_name("FILE")
      ->group("Order");
  add_made_option(*command, options->made);
  add_format(*command, options->format);
  add_common(*command, context.common, Reads::glands);
  command->callback([options, &context] {
    context.command.run = [options](Runtime& runtime) { return run_cards(*options, runtime); };
    context.command.needs_extras = [] { return true; };
  });
}

}  // namespace cutback::cli

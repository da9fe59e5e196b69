#include "cli/command_schedule.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <array>
#include <cmath>
#include <filesystem>
#include <map>
#include <memory>
#include <thread>

#include "cli/appended_columns.hpp"
#include "cli/date_option.hpp"
#include "cli/exit_code.hpp"
#include "cli/job_options.hpp"
#include "cli/progress.hpp"
#include "cli/runtime.hpp"
#include "cli/schedule_options.hpp"
#include "cutback/error.hpp"
#include "cutback/io/accessory_list.hpp"
#include "cutback/io/exception_lines.hpp"
#include "cutback/io/files.hpp"
#include "cutback/io/schedule_results.hpp"
#include "cutback/nearest.hpp"
#include "cutback/number.hpp"
#include "cutback/print/schedule.hpp"
#include "cutback/text.hpp"
#include "run/collect_ends.hpp"
#include "run/place_asked.hpp"
#include "run/schedule_notes.hpp"
#include "run/schedule_run.hpp"
#include "run/schedule_stock.hpp"
#include "run/wide_results.hpp"

namespace cutback::cli {
namespace {

constexpr const char* k_description =
    "A gland for every end of a cable schedule (CSV or workbook), with margins and\n"
    "cut marks, a take-off to order from and a list of what needs a person. Columns\n"
    "are the keys of a job file (--list-columns), with from_ and to_ before what\n"
    "differs between the ends.";

constexpr const char* k_example =
    "Example: a schedule with headings of its own, five per cent spare:\n"
    "  cutback schedule cables.csv --glands glands.csv --output results.csv \\\n"
    "    --column tag=\"Cable No\" --column sheath_od_mm=\"O/D (mm)\" \\\n"
    "    --takeoff takeoff.csv --spare 5% --exceptions exceptions.csv\n"
    "A figure without a stated evidence is a datasheet's; several readings\n"
    "(14.9+15.1) are measured. A row that cannot be used is reported with its line,\n"
    "and the others go on.";

// 2000-01-01: that of a workbook where none is given, so that its bytes are the same always.
constexpr std::int64_t k_any_day_unix_s = 946684800;

struct ScheduleOptions {
  FormatOptions format;
  std::string prefer;
  bool list_columns = false;
  bool use_stock = false;
  bool wide = false;
  std::string append;
  std::string takeoff;
  std::string spare = "0";
  std::string currency;
  std::string accessories;
  std::string by;
  std::string against;
  std::string made;
  std::string changes;
  std::string revision;
  bool dated = false;
  std::string exceptions;
  std::string xlsx;
  std::string threads = "0";
};

/// What was typed, understood.
struct Typed {
  TypedFormat format;
  double spare_percent = 0.0;
  schedule::GroupBy by = schedule::GroupBy::nothing;
  Choices choices;
  fit::Prefer prefer = fit::Prefer::price;
  unsigned threads = 0;
};

Typed understand(const ScheduleOptions& options, const Runtime& runtime) {
  std::vector<Fault> faults;
  Typed typed;
  typed.format = understand(options.format, faults);
  typed.choices.prefer = options.prefer;
  // Stock is shared out by price, whatever is remembered.
  if (options.use_stock && options.prefer.empty()) typed.choices.prefer = "price";
  runtime.remember_for_schedule(typed.choices, typed.format.format);
  typed.prefer = parse_prefer(typed.choices.prefer, faults);
  if (options.use_stock && typed.prefer != fit::Prefer::price) {
    faults.push_back(make_fault(ErrorCode::contradiction, "stock is shared out by price",
                                "--prefer", options.prefer, "price, or no --use-stock"));
  }
  const auto threads = parse_number(options.threads);
  if (!threads || *threads < 0.0 || *threads > 256.0 || *threads != std::floor(*threads)) {
    faults.push_back(make_fault(ErrorCode::bad_number, "not a number of threads", "--threads",
                                options.threads, "0 to 256; 0 is one per core"));
  } else {
    const unsigned cores = std::max(1U, std::thread::hardware_concurrency());
    typed.threads = *threads == 0.0 ? cores : static_cast<unsigned>(*threads);
  }
  if (options.by == "area_name") {
    typed.by = schedule::GroupBy::area_name;
  } else if (options.by == "drawing") {
    typed.by = schedule::GroupBy::drawing;
  } else if (!options.by.empty()) {
    constexpr std::array<std::string_view, 2> k_words{"area_name", "drawing"};
    faults.push_back(make_fault(ErrorCode::bad_value, "nothing to group the take-off by", "--by",
                                options.by, "area_name or drawing",
                                did_you_mean(options.by, k_words)));
  }
  if (!options.against.empty() && options.use_stock) {
    faults.push_back(make_fault(ErrorCode::contradiction,
                                "revisions are compared without a limit of stock", "--against",
                                options.against, "", "leave --use-stock out"));
  }
  if (!options.changes.empty() && options.against.empty()) {
    faults.push_back(make_fault(ErrorCode::missing, "changes are those from another revision",
                                "--changes", options.changes, "",
                                "name the earlier schedule with --against FILE"));
  }
  std::string_view spare = options.spare;
  if (spare.ends_with('%')) spare.remove_suffix(1);
  const auto percent = parse_number(spare);
  if (!percent || *percent < 0.0 || *percent > 100.0) {
    faults.push_back(make_fault(ErrorCode::bad_number, "not a share of spare parts", "--spare",
                                options.spare, "0 to 100 %"));
  } else if (*percent > 0.0 && *percent < 1.0 && spare.size() == options.spare.size()) {
    // 0.05 may be the 5 % of a spreadsheet.
    faults.push_back(make_fault(
        ErrorCode::bad_value, "a share under 1 can be meant in two ways", "--spare", options.spare,
        "a percentage with its sign",
        "say --spare " + plain(*percent * 100.0, 6) + "% or --spare " + plain(*percent, 6) + "%"));
  } else {
    typed.spare_percent = *percent;
  }
  if (!faults.empty()) throw InputError(std::move(faults));
  return typed;
}

void check_groups(const run::Schedule& opened, schedule::GroupBy by) {
  if (by == schedule::GroupBy::nothing) return;
  const bool drawing = by == schedule::GroupBy::drawing;
  for (const run::ScheduleTable& table : opened.tables) {
    const schedule::Layout& layout = table.file->layout();
    if ((drawing ? layout.drawing : layout.area_name) != schedule::Layout::k_none) return;
  }
  const std::string column = drawing ? "drawing" : "area_name";
  throw InputError(make_fault(ErrorCode::missing, "the schedule has no column " + column, "--by",
                              column, "",
                              "name the heading with --column " + column + "=\"Their heading\""));
}

void check_stock(const gland::GlandList& list) {
  const bool stated =
      std::any_of(list.glands.begin(), list.glands.end(),
                  [](const gland::Gland& gland) { return gland.stock.has_value(); });
  if (stated) return;
  throw InputError(Fault{.code = ErrorCode::missing,
                         .what = "no gland has a stock",
                         .where = list.name,
                         .given = "--use-stock",
                         .allowed = {},
                         .hint = "fill in the column stock, or leave --use-stock out"});
}

/// What is to be said of the rows once all are read.
void note_rows(const run::ScheduleResult& result, const run::Schedule& schedule,
               ReaderNotes& notes) {
  report_skipped(schedule, result.skipped, notes);
  report_words(result.taken, notes);
  for (std::size_t i = 0; i < result.places.size(); ++i) {
    const auto& places = result.places[i];
    if (places.count == 0) continue;
    notes.add(run::told_plain_text(schedule.tables[i].name, places.first, places.count));
  }
  for (const std::string& text : result.twice) notes.add(text);
  if (result.twice_count > result.twice.size()) {
    notes.add("and " + std::to_string(result.twice_count - result.twice.size()) +
              " more tags that stand twice");
  }
  if (result.many_count > 0) {
    notes.add("rows that stand for very many cables: " + joined(result.many, "; ") +
              (result.many_count > result.many.size()
                   ? "; and " + std::to_string(result.many_count - result.many.size()) + " more"
                   : std::string()) +
              "; look whether the figure is a length");
  }
  if (!result.all_compared) {
    notes.add("too many rows to look for tags that stand twice in all of them");
  }
}

/// Groups whose names differ by case or spaces alone are ordered apart, each with packs and spares
/// of its own.
void note_near_groups(const schedule::Tally& tally, ReaderNotes& notes) {
  std::map<std::string, std::string> seen;
  for (const auto& [group, counts] : tally.parts) {
    const auto [at, fresh] = seen.try_emplace(schedule::plain_heading(group), group);
    if (fresh) continue;
    notes.add("--by: \"" + at->second + "\" and \"" + group +
              "\" differ by case or spaces alone, and are ordered as two groups");
  }
}

run::ScheduleResult decide_all(const run::Schedule& schedule, run::ScheduleRun run, bool wide,
                               ReaderNotes& notes, Runtime& runtime) {
  if (!runtime.common.output.empty()) {
    io::FileWriter& writer = runtime.files.add(runtime.common.output);
    run.write = [&writer](std::string_view text) { writer.append(text); };
  } else {
    const bool terminal = runtime.environment.out_is_terminal;
    run.write = [&runtime, terminal](std::string_view text) {
      if (terminal) {
        runtime.out << without_controls(text);
      } else {
        runtime.out << text;
      }
    };
  }
  std::optional<run::WideResults> wide_rows;
  if (wide) {
    const auto& tables = schedule.tables;
    wide_rows.emplace(std::any_of(tables.begin(), tables.end(),
                                  [](const auto& table) { return table.file->layout().two_ends; }));
    run.write(wide_rows->head());
    run.write = [&wide_rows, write = run.write](std::string_view text) {
      write(wide_rows->rows(text));
    };
  }
  Progress progress(runtime.err, "rows");
  if (runtime.environment.err_is_terminal && !runtime.common.quiet) {
    run.progress = [&](std::size_t rows, std::optional<double> part) { progress.show(rows, part); };
  }
  if (run.json && runtime.tables.is_used()) {
    run.write = [&runtime, write = std::move(run.write)](std::string_view text) {
      write(with_json(text, runtime.tables));
    };
  }
  if (!run.json && !wide) run.write(io::schedule_csv_head());
  run::ScheduleResult result = run::run_schedule(files_of(schedule), run);
  progress.clear();
  note_rows(result, schedule, notes);
  note_near_groups(result.tally, notes);
  if (run.json && !notes.lines().empty()) run.write(print::notes_json(notes.lines()));
  return result;
}

void report(const run::ScheduleResult& result, const std::string& file,
            const gland::GlandList& list, const Runtime& runtime) {
  // A table of results has no place for it.
  if (runtime.tables.is_used()) runtime.err << "cutback: " << words_of(runtime.tables) << '\n';
  if (runtime.common.quiet) return;
  runtime.err << print::schedule_summary(result.tally, file, list.glands.size(), list.name);
}

/// How the take-off is made; says which accessories the list of them has that none is.
schedule::TakeoffTerms terms_of(const ScheduleOptions& options, const Typed& typed,
                                const GlandLists& lists, const Runtime& runtime) {
  schedule::TakeoffTerms terms{.spare_percent = typed.spare_percent,
                               .currency = options.currency,
                               .accessories = {},
                               .supplier = {}};
  const run::Suppliers suppliers(lists.all.glands, lists.ends);
  terms.supplier = [suppliers](const gland::Gland& gland) {
    return std::string(suppliers.of(&gland));
  };
  if (options.accessories.empty()) return terms;
  terms.accessories = io::load_accessory_list(options.accessories);
  for (const schedule::AccessoryPrice& each : terms.accessories) {
    const auto& glands = lists.all.glands;
    const bool gland = std::any_of(glands.begin(), glands.end(),
                                   [&](const gland::Gland& one) { return one.part == each.name; });
    if (gland && (each.price || each.stock)) {
      runtime.warn(options.accessories + ": " + each.name +
                   " is a gland: its price and stock are those of the gland list");
    } else if (!gland && !schedule::is_accessory(each.name)) {
      runtime.warn(options.accessories + ": " + each.name +
                   " is no part of a take-off: locknut, sealing washer, serrated washer, earth "
                   "tag, adaptor, shroud and compound are, and the glands of the list");
    }
  }
  return terms;
}

/// A schedule and its earlier revision, decided alike.
struct Revisions {
  run::CollectedEnds before;
  run::CollectedEnds after;
  std::vector<schedule::EndChange> changes;  ///< borrow from both
};

Revisions compare(const ScheduleOptions& options, Typed& typed, const schedule::Settings& settings,
                  const run::Schedule& opened, const tables::Standards& standards,
                  const Runtime& runtime) {
  const std::array<std::string, 1> old{options.against};
  const auto inputs = schedule_inputs(old, true);
  const auto open = [&] {
    return open_schedule(inputs, options.format, typed.format, standards, runtime);
  };
  schedule::Settings before = settings;
  before.asking.place = run::ask_place(open(), open).asked;
  const run::Schedule earlier = open();
  Revisions revisions;
  revisions.before = run::collect_ends(files_of(earlier), before, typed.by);
  revisions.after = run::collect_ends(files_of(opened), settings, typed.by);
  revisions.changes = schedule::changes_between(revisions.before.ends, revisions.after.ends);
  return revisions;
}

/// What the notes of the workbook say of this run.
std::vector<std::string> about_run(const ScheduleOptions& options, const std::string& prefer,
                                   double spare_percent, const schedule::Tally& tally,
                                   const Runtime& runtime) {
  std::vector<std::string> lines;
  if (!options.revision.empty()) lines.push_back("Revision: " + options.revision + ".");
  if (options.dated) lines.push_back("Made at " + utc_date(runtime) + ".");
  std::string given =
      "prefer " + (prefer.empty() ? "price" : prefer) + ", spare " + plain(spare_percent, 6) + "%";
  const auto say = [&](const char* name, const std::string& value) {
    if (!value.empty()) given += std::string(", ") + name + " " + value;
  };
  const auto file = [](const std::string& name) {
    return std::filesystem::path(name).filename().string();
  };
  say("currency", options.currency);
  say("by", options.by);
  say("types", file(options.format.types));
  say("accessories", file(options.accessories));
  say("against", file(options.against));
  say("made", file(options.made));
  say("evidence", options.format.evidence);
  if (options.use_stock) given += ", use-stock";
  if (!options.format.ends.empty()) given += ", ends " + options.format.ends;
  lines.push_back("Options: " + given + ".");
  if (const std::string ends = print::ends_not_told(tally); !ends.empty()) {
    lines.push_back("Ends: " + ends + ".");
  }
  const auto of = [&](Verdict verdict) {
    return std::to_string(tally.by_verdict[static_cast<std::size_t>(verdict)]);
  };
  lines.push_back("Counts: " + std::to_string(tally.rows) + " rows, " + std::to_string(tally.ends) +
                  " ends; fits " + of(Verdict::fits) + ", marginal-inside " +
                  of(Verdict::marginal_inside) + ", not-known " + of(Verdict::not_known) +
                  ", marginal-outside " + of(Verdict::marginal_outside) + ", no-fit " +
                  of(Verdict::no_fit) + ", no-stock " + std::to_string(tally.out_of_stock) +
                  ", unusable " + std::to_string(tally.unusable) + ".");
  return lines;
}

bool needs_extras(const ScheduleOptions& options) {
  if (options.list_columns) return false;
  if (!options.against.empty() && run::is_workbook(options.against)) return true;
  return !options.xlsx.empty() || options.use_stock || any_workbook(options.format);
}

void check_append(const ScheduleOptions& options) {
  if (options.append.empty()) return;
  const auto& files = options.format.files;
  if (files.size() == 1 && run::is_workbook(files.front())) return;
  throw InputError(make_fault(ErrorCode::contradiction, "results are appended to one workbook",
                              "--append", options.append, "a schedule that is one .xlsx file",
                              "for other files take --wide"));
}

void check_wide(const ScheduleOptions& options, const Runtime& runtime) {
  if (!options.wide || !runtime.common.json) return;
  throw InputError(make_fault(ErrorCode::contradiction, "JSON has one object per end", "--wide",
                              "--json", "", "leave one of them out"));
}

int run_command(const ScheduleOptions& options, Runtime& runtime) {
  check_wide(options, runtime);
  check_append(options);
  if (options.list_columns) {
    runtime.emit(runtime.common.json
                     ? print::columns_json()
                     : print::columns_text(print::Style{.colour = runtime.colour()}));
    return k_exit_fits;
  }
  Typed typed = understand(options, runtime);
  const std::int64_t created_unix_s =
      options.xlsx.empty() ? 0 : source_date_unix_s(runtime).value_or(k_any_day_unix_s);
  const tables::Standards standards = runtime.standards();
  const std::string path = names_of(options.format.files);
  const auto inputs = schedule_inputs(
      options.format.files, options.use_stock || !options.against.empty() || !options.made.empty());
  const auto open = [&] {
    return open_schedule(inputs, options.format, typed.format, standards, runtime);
  };
  const run::Schedule opened = open();
  const GlandLists lists = runtime.gland_lists(standards);
  const gland::GlandList& list = lists.all;
  schedule::TakeoffTerms terms = terms_of(options, typed, lists, runtime);
  ReaderNotes notes(runtime);
  report_headings(opened, options.format, notes, runtime);
  const fit::Selector glands(list.glands, typed.prefer);
  const bool place = asks_place(opened, inputs, open, notes, true);
  check_groups(opened, typed.by);
  std::optional<run::MadeSchedule> made;
  if (!options.made.empty()) {
    made = load_made(options.made, open(), runtime);
    for (const auto& row : made->not_found) runtime.warn(row.says);
  }
  run::ScheduleRun run{.settings = {.standards = &standards,
                                    .glands = &glands,
                                    .asking = {.purpose = fit::Purpose::schedule, .place = place},
                                    .made = made ? &made->ends : nullptr},
                       .supplies = nullptr,
                       .defaults = typed.format.format.defaults,
                       .suppliers = {list.glands, lists.ends},
                       .by = typed.by,
                       .json = runtime.common.json,
                       .threads = typed.threads,
                       .write = {},
                       .write_csv = {},
                       .write_exception = {},
                       .progress = {}};
  std::optional<run::SharedStock> stock;
  if (options.use_stock) {
    check_stock(list);
    const run::Schedule first = open();
    stock = run::share_stock(files_of(first), run.settings, run.threads,
                             runtime.extras().cheapest_plan);
    run.supplies = &stock->supplies;
  }
  // Opened before the work begins: what cannot be written is known at once.
  const auto new_file = [&](const std::string& name) {
    return name.empty() ? nullptr : &runtime.files.add(name);
  };
  io::FileWriter* const takeoff_file = new_file(options.takeoff);
  io::FileWriter* const exceptions_file = new_file(options.exceptions);
  io::FileWriter* const changes_file = new_file(options.changes);
  io::FileWriter* const xlsx_file = new_file(options.xlsx);
  io::FileWriter* const append_file = new_file(options.append);
  const auto workbook = xlsx_file == nullptr ? nullptr
                                             : runtime.extras().new_workbook(
                                                   *xlsx_file, created_unix_s,
                                                   schedule::decimals_of(list.glands, terms));
  std::optional<AppendedColumns> appended;
  if (!options.append.empty()) appended.emplace(opened);
  if (workbook || appended) {
    run.write_csv = [&](std::string_view csv) {
      if (workbook) workbook->add_results(csv);
      if (appended) appended->add(csv);
    };
  }
  io::ExceptionLines exceptions;
  if (workbook || !options.exceptions.empty()) {
    run.write_exception = [&](const std::string& group, std::string_view line) {
      exceptions.add(group, line);
    };
  }
  const run::ScheduleResult result = decide_all(opened, run, options.wide, notes, runtime);
  schedule::Takeoff takeoff = schedule::takeoff(result.tally, list.glands, terms);
  std::optional<Revisions> revisions;
  if (!options.against.empty()) {
    revisions = compare(options, typed, run.settings, open(), standards, runtime);
    schedule::compare_takeoff(takeoff,
                              schedule::takeoff(revisions->before.tally, list.glands, terms));
    if (changes_file != nullptr) changes_file->append(io::changes_csv(revisions->changes));
  }
  if (takeoff_file != nullptr) takeoff_file->append(io::takeoff_csv(takeoff));
  if (exceptions_file != nullptr) {
    exceptions_file->append(io::exceptions_csv_head());
    exceptions.each([&](std::string_view lines) { exceptions_file->append(lines); });
    exceptions_file->append(io::reading_notes_csv(notes.lines()));
  }
  if (workbook) {
    auto lines = run::schedule_notes(
        path, list.name,
        print::defaults_summary(typed.format.format.defaults, result.tally.defaults),
        about_run(options, typed.choices.prefer, typed.spare_percent, result.tally, runtime),
        notes.lines());
    if (runtime.tables.is_used()) lines.push_back(words_of(runtime.tables));
    workbook->finish(result.tally, takeoff, exceptions,
                     revisions ? io::changes_csv(revisions->changes) : std::string(), lines);
  }
  if (appended) {
    runtime.extras().append_to_workbook(path, *append_file, appended->sheets());
  }
  runtime.finish();
  notes.say();
  report(result, path, list, runtime);
  if (!runtime.common.quiet && typed.spare_percent > 0.0) {
    runtime.err << "Spare             " << plain(typed.spare_percent, 6)
                << " % of each part in the take-off, rounded up\n";
  }
  if (!runtime.common.quiet) {
    runtime.err << print::defaults_summary(typed.format.format.defaults, result.tally.defaults);
  }
  if (revisions && !runtime.common.quiet) {
    runtime.err << print::changes_summary(options.against, revisions->changes, takeoff);
  }
  if (stock && !runtime.common.quiet) {
    runtime.err << print::stock_summary(stock->wanted, stock->share, options.currency);
  }
  return result.tally.exceptions == 0 ? k_exit_fits : k_exit_no_fit;
}

void add_own_options(CLI::App& command, ScheduleOptions& options) {
  CLI::Option* const file = add_schedule_files(command, options.format);
  add_format(command, options.format);
  command
      .add_flag("--list-columns", options.list_columns,
                "Print the columns that a schedule may have, and nothing else")
      ->each([file](const std::string&) { file->required(false); })
      ->group("Schedule");
  add_made_option(command, options.made);
  add_prefer(command, options.prefer);
  command
      .add_flag("--use-stock", options.use_stock,
                "The stock of the gland list is a limit: shared out so that the most ends get a "
                "gland, and among those shares at the least cost")
      ->group("Order");
  command
      .add_flag("--wide", options.wide, "The results with one row per cable, its ends side by side")
      ->group("Results");
  command
      .add_option("--takeoff", options.takeoff,
                  "Write the take-off (CSV): what to order for it all")
      ->type_name("FILE")
      ->group("Results");
  command
      .add_option("--spare", options.spare,
                  "Spare parts in the take-off, rounded up for each part (default 0%)")
      ->type_name("PERCENT")
      ->group("Results");
  // The same in the plural, as it is said too.
  command.add_option("--spares", options.spare, "As --spare")->type_name("PERCENT")->group("");
  command
      .add_option("--accessories", options.accessories,
                  "What locknuts, washers, tags, adaptors, shrouds and compound cost, and in what "
                  "packs parts are sold (CSV: name,thread,part,price,stock,pack,min_order)")
      ->type_name("FILE")
      ->group("Results");
  add_currency(command, options.currency);
  command
      .add_option(
          "--against", options.against,
          "An earlier revision of the schedule: what was added, removed and changed, whether "
          "the gland was, and the difference of the take-off")
      ->type_name("FILE")
      ->group("Results");
  command
      .add_option("--changes", options.changes,
                  "Write what is not as in that revision (CSV), one row per end")
      ->type_name("FILE")
      ->group("Results");
  command
      .add_option("--by", options.by,
                  "Group the take-off by the column area_name or drawing; each group is ordered by "
                  "itself")
      ->type_name("WORD")
      ->group("Results");
  command
      .add_option("--exceptions", options.exceptions,
                  "Write the ends that need a person (CSV), grouped by what they lack")
      ->type_name("FILE")
      ->group("Results");
  command
      .add_option("--xlsx", options.xlsx,
                  "Write results, take-off and exceptions as sheets of one workbook (.xlsx)")
      ->type_name("FILE")
      ->group("Results");
  command
      .add_option("--revision", options.revision,
                  "Revision of the schedule, for the workbook's notes")
      ->type_name("LABEL")
      ->group("Results");
  command
      .add_flag("--dated", options.dated,
                "Put the time into the workbook's notes, or that of SOURCE_DATE_EPOCH")
      ->group("Results");
  command
      .add_option("--append", options.append,
                  "Write a copy of the schedule's workbook with the results as columns behind its "
                  "own; everything else stays as it is")
      ->type_name("FILE")
      ->group("Results");
  command
      .add_option("--threads", options.threads,
                  "Threads to work on (default: one per core); the results are the same")
      ->type_name("N")
      ->group("Common");
}

}  // namespace

void add_schedule(CLI::App& app, Context& context) {
  const auto options = std::make_shared<ScheduleOptions>();
  CLI::App* command = app.add_subcommand("schedule", k_description);
  command->footer(k_example);
  add_own_options(*command, *options);
  add_common(*command, context.common, Reads::glands);
  command->callback([options, &context] {
    context.command.run = [options](Runtime& runtime) { return run_command(*options, runtime); };
    context.command.needs_extras = [options] { return needs_extras(*options); };
  });
}

}  // namespace cutback::cli

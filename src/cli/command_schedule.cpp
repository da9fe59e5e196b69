#include "cli/command_schedule.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cmath>
#include <memory>
#include <thread>

#include "cli/date_option.hpp"
#include "cli/exit_code.hpp"
#include "cli/job_options.hpp"
#include "cli/progress.hpp"
#include "cli/runtime.hpp"
#include "cli/schedule_options.hpp"
#include "cutback/error.hpp"
#include "cutback/io/exception_lines.hpp"
#include "cutback/io/files.hpp"
#include "cutback/io/schedule_results.hpp"
#include "cutback/number.hpp"
#include "cutback/print/schedule.hpp"
#include "cutback/text.hpp"
#include "run/place_asked.hpp"
#include "run/schedule_notes.hpp"
#include "run/schedule_run.hpp"
#include "run/schedule_stock.hpp"

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
  std::string prefer = "price";
  bool list_columns = false;
  bool use_stock = false;
  std::string takeoff;
  std::string spare = "0";
  std::string exceptions;
  std::string xlsx;
  std::string threads = "0";
};

/// What was typed, understood.
struct Typed {
  TypedFormat format;
  double spare_percent = 0.0;
  fit::Prefer prefer = fit::Prefer::price;
  unsigned threads = 0;
};

Typed understand(const ScheduleOptions& options) {
  std::vector<Fault> faults;
  Typed typed;
  typed.format = understand(options.format, faults);
  typed.prefer = parse_prefer(options.prefer, faults);
  if (options.use_stock && typed.prefer != fit::Prefer::price) {
    faults.push_back(make_fault(ErrorCode::contradiction, "stock is shared out by price",
                                "--prefer", options.prefer, "price, or no --use-stock"));
  }
  const auto threads = parse_number(options.threads);
  if (!threads || *threads < 0.0 || *threads > 256.0 || *threads != std::floor(*threads)) {
    faults.push_back(make_fault(ErrorCode::bad_number, "not a number of threads", "--threads",
                                options.threads, "0 to 256; 0 is one a core"));
  } else {
    const unsigned cores = std::max(1U, std::thread::hardware_concurrency());
    typed.threads = *threads == 0.0 ? cores : static_cast<unsigned>(*threads);
  }
  std::string_view spare = options.spare;
  if (spare.ends_with('%')) spare.remove_suffix(1);
  const auto percent = parse_number(spare);
  if (!percent || *percent < 0.0 || *percent > 100.0) {
    faults.push_back(make_fault(ErrorCode::bad_number, "not a share of spare parts", "--spare",
                                options.spare, "0 to 100 %"));
  } else {
    typed.spare_percent = *percent;
  }
  if (!faults.empty()) throw InputError(std::move(faults));
  return typed;
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

run::ScheduleResult decide_all(const run::Schedule& schedule, run::ScheduleRun run,
                               Runtime& runtime) {
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
  Progress progress(runtime.err, "rows");
  if (runtime.environment.err_is_terminal && !runtime.common.quiet) {
    run.progress = [&](std::size_t rows, std::optional<double> part) { progress.show(rows, part); };
  }
  if (run.json && runtime.tables.is_used()) {
    run.write = [&runtime, write = std::move(run.write)](std::string_view text) {
      write(with_json(text, runtime.tables));
    };
  }
  if (!run.json) run.write(io::schedule_csv_head());
  run::ScheduleResult result = run::run_schedule(files_of(schedule), run);
  progress.clear();
  return result;
}

void report(const run::ScheduleResult& result, const run::Schedule& schedule,
            const std::string& file, const gland::GlandList& list, const Runtime& runtime) {
  report_skipped(schedule, result.skipped, runtime);
  for (const std::string& text : result.twice) runtime.warn(text);
  if (result.twice_count > result.twice.size()) {
    runtime.warn("and " + std::to_string(result.twice_count - result.twice.size()) +
                 " more tags that stand twice");
  }
  if (!result.all_compared) {
    runtime.warn("too many rows to look for tags that stand twice in all of them");
  }
  // A table of results has no place for it.
  if (runtime.tables.is_used()) runtime.err << "cutback: " << words_of(runtime.tables) << '\n';
  if (runtime.common.quiet) return;
  runtime.err << print::schedule_summary(result.tally, file, list.glands.size(), list.name);
}

bool needs_extras(const ScheduleOptions& options) {
  if (options.list_columns) return false;
  return !options.xlsx.empty() || options.use_stock || any_workbook(options.format);
}

int run_command(const ScheduleOptions& options, Runtime& runtime) {
  if (options.list_columns) {
    runtime.emit(runtime.common.json
                     ? print::columns_json()
                     : print::columns_text(print::Style{.colour = runtime.colour()}));
    return k_exit_fits;
  }
  Typed typed = understand(options);
  const std::int64_t created_unix_s =
      options.xlsx.empty() ? 0 : source_date_unix_s(runtime).value_or(k_any_day_unix_s);
  const tables::Standards standards = runtime.standards();
  const std::string path = names_of(options.format.files);
  const auto inputs = schedule_inputs(options.format.files, options.use_stock);
  const auto open = [&] {
    return open_schedule(inputs, options.format, typed.format, standards, runtime);
  };
  const run::Schedule opened = open();
  const gland::GlandList list = runtime.glands(standards);
  report_headings(opened, options.format, runtime);
  const fit::Selector glands(list.glands, typed.prefer);
  const bool place =
      run::has_place_column(opened) && (!can_open_again(inputs) || run::speaks_of_place(open()));
  run::ScheduleRun run{.settings = {.standards = &standards,
                                    .glands = &glands,
                                    .asking = {.purpose = fit::Purpose::schedule, .place = place}},
                       .supplies = nullptr,
                       .defaults = typed.format.format.defaults,
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
  io::FileWriter* const xlsx_file = new_file(options.xlsx);
  const auto workbook =
      xlsx_file == nullptr ? nullptr : runtime.extras().new_workbook(*xlsx_file, created_unix_s);
  if (workbook) run.write_csv = [&](std::string_view csv) { workbook->add_results(csv); };
  io::ExceptionLines exceptions;
  if (workbook || !options.exceptions.empty()) {
    run.write_exception = [&](const std::string& group, std::string_view line) {
      exceptions.add(group, line);
    };
  }
  const run::ScheduleResult result = decide_all(opened, run, runtime);
  const auto takeoff = schedule::takeoff(result.tally, list.glands, typed.spare_percent);
  if (takeoff_file != nullptr) takeoff_file->append(io::takeoff_csv(takeoff));
  if (exceptions_file != nullptr) {
    exceptions_file->append(io::exceptions_csv_head());
    exceptions.each([&](std::string_view lines) { exceptions_file->append(lines); });
  }
  if (workbook) {
    auto notes = run::schedule_notes(
        path, list.name,
        print::defaults_summary(typed.format.format.defaults, result.tally.defaults));
    if (runtime.tables.is_used()) notes.push_back(words_of(runtime.tables));
    workbook->finish(takeoff, exceptions, notes);
  }
  runtime.finish();
  report(result, opened, path, list, runtime);
  if (!runtime.common.quiet) {
    runtime.err << print::defaults_summary(typed.format.format.defaults, result.tally.defaults);
  }
  if (stock && !runtime.common.quiet) {
    runtime.err << print::stock_summary(stock->wanted, stock->share);
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
  add_prefer(command, options.prefer);
  command
      .add_flag("--use-stock", options.use_stock,
                "The stock of the gland list is a limit: shared out so that the most ends get a "
                "gland, and among those shares at the least cost")
      ->group("Order");
  command
      .add_option("--takeoff", options.takeoff,
                  "Write the take-off (CSV): what to order for it all")
      ->type_name("FILE")
      ->group("Results");
  command.add_option("--spare", options.spare, "Spare parts in the take-off (default 0%)")
      ->type_name("PERCENT")
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
      .add_option("--threads", options.threads,
                  "Threads to work on (default: one a core); the results are the same")
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

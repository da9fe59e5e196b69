#include "cli/command_kit.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <array>
#include <chrono>
#include <memory>
#include <thread>

#include "cli/exit_code.hpp"
#include "cli/runtime.hpp"
#include "cli/schedule_options.hpp"
#include "cutback/io/files.hpp"
#include "cutback/nearest.hpp"
#include "cutback/number.hpp"
#include "cutback/print/kit.hpp"
#include "cutback/print/schedule.hpp"
#include "cutback/schedule/kit.hpp"
#include "run/place_asked.hpp"
#include "run/schedule_groups.hpp"

namespace cutback::cli {
namespace {

constexpr const char* k_description =
    "The fewest different glands that serve every end of a cable schedule, or the\n"
    "cheapest set of one of each, and what each further part buys.";

constexpr const char* k_example =
    "Example: which parts must the van carry for this site?\n"
    "  cutback kit cables.csv --glands glands.csv\n"
    "The answer is exact (integer programming) unless the time limit ends the\n"
    "search: then the bound and the gap are said. The price of a kit is that of one\n"
    "of each part; a part without a price counts as the dearest of the list.";

struct KitOptions {
  FormatOptions format;
  std::string by = "parts";
  std::string time_limit = "10";
  std::string currency;
};

struct Typed {
  TypedFormat format;
  schedule::KitBy by = schedule::KitBy::parts;
  double time_limit_s = 0.0;
};

Typed understand(const KitOptions& options) {
  std::vector<Fault> faults;
  Typed typed;
  typed.format = understand(options.format, faults);
  if (options.by == "price") {
    typed.by = schedule::KitBy::price;
  } else if (options.by != "parts") {
    constexpr std::array<std::string_view, 2> k_words{"parts", "price"};
    faults.push_back({.code = ErrorCode::bad_value,
                      .what = "not a choice",
                      .where = "--by",
                      .given = options.by,
                      .allowed = "parts or price",
                      .hint = did_you_mean(options.by, k_words)});
  }
  const auto seconds = parse_number(options.time_limit);
  if (!seconds || *seconds < 0.0 || *seconds > 86400.0) {
    faults.push_back({.code = ErrorCode::bad_number,
                      .what = "not a time limit",
                      .where = "--time-limit",
                      .given = options.time_limit,
                      .allowed = "0 to 86400 s",
                      .hint = "0 takes what is found without a search"});
  } else {
    typed.time_limit_s = *seconds;
  }
  if (!faults.empty()) throw InputError(std::move(faults));
  return typed;
}

void check_prices(const gland::GlandList& list) {
  const bool priced =
      std::any_of(list.glands.begin(), list.glands.end(),
                  [](const gland::Gland& gland) { return gland.price.has_value(); });
  if (priced) return;
  throw InputError(Fault{.code = ErrorCode::missing,
                         .what = "no gland has a price",
                         .where = list.name,
                         .given = "--by price",
                         .allowed = {},
                         .hint = "fill in the column price, or use --by parts"});
}

/// The solver, for as long as the time limit allows in all.
class TimedSolver {
 public:
  TimedSolver(const Extras& extras, double seconds)
      : extras_(extras), end_(Clock::now() + std::chrono::duration<double>(seconds)) {}

  schedule::ProgramResult operator()(const schedule::Program& program) const {
    const double left = std::chrono::duration<double>(end_ - Clock::now()).count();
    const double seconds = left * program.time_share;
    constexpr double k_least = 0.002;
    if (seconds < k_least) {
      return {.x = {}, .bound = -schedule::Program::k_no_limit, .proven = false};
    }
    return extras_.solve_program(program, seconds);
  }

 private:
  using Clock = std::chrono::steady_clock;
  const Extras& extras_;
  std::chrono::time_point<Clock, std::chrono::duration<double>> end_;
};

int run_kit(const KitOptions& options, Runtime& runtime) {
  Typed typed = understand(options);
  const tables::Standards standards = runtime.standards();
  const auto inputs = schedule_inputs(options.format.files, false);
  const auto open = [&] {
    return open_schedule(inputs, options.format, typed.format, standards, runtime);
  };
  const run::Schedule schedule = open();
  const gland::GlandList list = runtime.glands(standards);
  if (typed.by == schedule::KitBy::price) check_prices(list);
  ReaderNotes notes(runtime);
  report_headings(schedule, options.format, notes, runtime);
  const fit::Selector glands(list.glands, fit::Prefer::price);
  const unsigned cores = std::max(1U, std::thread::hardware_concurrency());
  const bool place = asks_place(schedule, inputs, open, notes);
  run::GroupedSchedule grouped =
      run::group_schedule(files_of(schedule),
                          {.standards = &standards,
                           .glands = &glands,
                           .asking = {.purpose = fit::Purpose::schedule, .place = place}},
                          cores, run::Keep::not_served);
  report_skipped(schedule, grouped.skipped, notes);
  report_words(grouped.taken, notes);
  if (!runtime.common.quiet) {
    runtime.err << print::defaults_summary(typed.format.format.defaults, grouped.defaults);
  }
  const int decimals = schedule::decimals_of(list.glands);
  schedule::Wanted wanted{.parts = schedule::parts_of(list.glands, decimals),
                          .decimals = decimals,
                          .groups = std::move(grouped.groups)};
  if (grouped.not_served.ends > 0) {
    wanted.groups.push_back(
        {.ends = static_cast<std::int64_t>(grouped.not_served.ends), .parts = {}});
  }
  const schedule::Kit kit =
      schedule::choose_kit(wanted, typed.by, TimedSolver(runtime.extras(), typed.time_limit_s));
  const print::KitReport report{.file = names_of(options.format.files),
                                .list = &list,
                                .wanted = &wanted,
                                .kit = &kit,
                                .by = typed.by,
                                .currency = options.currency,
                                .not_served = &grouped.not_served,
                                .rows = grouped.rows,
                                .time_limit_s = typed.time_limit_s};
  runtime.emit(runtime.common.json
                   ? print::kit_json(report)
                   : print::kit_text(report, print::Style{.colour = runtime.colour()}));
  return kit.not_served == 0 && kit.proven ? k_exit_fits : k_exit_no_fit;
}

}  // namespace

void add_kit(CLI::App& app, Context& context) {
  const auto options = std::make_shared<KitOptions>();
  CLI::App* command = app.add_subcommand("kit", k_description);
  command->footer(k_example);
  add_schedule_files(*command, options->format);
  add_format(*command, options->format);
  command
      ->add_option("--by", options->by,
                   "What is least: parts, their number, or price, that of one of each "
                   "(default parts)")
      ->type_name("WORD")
      ->group("Order");
  command
      ->add_option("--time-limit", options->time_limit,
                   "Seconds to search for the least kit and its curve (default 10)")
      ->type_name("SECONDS")
      ->group("Order");
  add_currency(*command, options->currency);
  add_common(*command, context.common, Reads::glands);
  command->callback([options, &context] {
    context.command.run = [options](Runtime& runtime) { return run_kit(*options, runtime); };
    context.command.needs_extras = [] { return true; };
  });
}

}  // namespace cutback::cli

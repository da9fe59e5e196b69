#include "cli/command_made.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cmath>
#include <iterator>
#include <map>
#include <memory>
#include <set>

#include "cli/date_option.hpp"
#include "cli/exit_code.hpp"
#include "cli/job_options.hpp"
#include "cli/made_report.hpp"
#include "cli/runtime.hpp"
#include "cli/schedule_options.hpp"
#include "cutback/compare.hpp"
#include "cutback/error.hpp"
#include "cutback/io/csv.hpp"
#include "cutback/io/files.hpp"
#include "cutback/io/gland_list.hpp"
#include "cutback/io/made_file.hpp"
#include "cutback/job/job.hpp"
#include "cutback/nearest.hpp"
#include "cutback/number.hpp"
#include "cutback/text.hpp"
#include "run/made_account.hpp"
#include "run/natural_order.hpp"
#include "run/place_asked.hpp"

namespace cutback::cli {
namespace {

constexpr const char* k_description =
    "The register of finished ends (CSV): add a row, or see what is made, what of a\n"
    "schedule is outstanding, what has another gland than planned, and which readings\n"
    "lie outside what their gland takes.";

constexpr const char* k_example =
    "Example: an end is finished; then what is still to do of a schedule, by place:\n"
    "  cutback made made.csv --tag P-201 --end from --part ARM-16-M20 --by JB\n"
    "  cutback made made.csv --schedule cables.csv --glands glands.csv\n"
    "The same register measures a schedule: cutback cards cables.csv --made made.csv";

/// An option for each column of the register.
struct ColumnOption {
  const char* name;
  std::string_view column;
  const char* type;
  const char* help;
};
constexpr ColumnOption k_options[] = {
    {"--tag", "tag", "TEXT", "Tag of the cable; with it a row is added"},
    {"--end", "end", "TEXT", "Which end"},
    {"--made-at", "made_at", "DAY", "Day, as YYYY-MM-DD (default today)"},
    {"--by", "by", "TEXT", "Who made it"},
    {"--part", "part", "PART", "Gland; without it the row is a measurement alone"},
    {"--batch", "batch", "TEXT", "Batch of the gland"},
    {"--od", "sheath_od_mm", "READINGS", "Sheath as measured"},
    {"--bedding", "bedding_mm", "READINGS", "Bedding as measured"},
    {"--wire", "armour_mm", "READINGS", "One armour wire as measured"},
    {"--drum", "drum", "TEXT", "Drum that the cable came from"},
    {"--torque", "torque_nm", "N m", "Torque of the body"},
    {"--armour-ohm", "armour_ohm", "ohm", "Resistance of the armour, end to end"},
    {"--insulation-mohm", "insulation_mohm", "Mohm", "Insulation resistance"},
    {"--test-v", "test_v", "V", "Voltage of that test"},
    {"--remark", "remark", "TEXT", "Anything else"},
};

struct MadeOptions {
  std::string file;
  std::string results;
  FormatOptions format;  ///< of the schedule
  std::string prefer;
  std::map<std::string, std::string> values;  ///< by column
};

using EndsOfRows = std::map<std::size_t, std::string>;

/// Every end that is planned, and the rows of the register that are of none.
struct Plan {
  std::vector<Planned> ends;
  std::vector<run::NotFound> not_found;
  EndsOfRows names;  ///< MadeSchedule::ends_of_rows
};

std::vector<Planned> read_results(const std::string& path) {
  const io::WholeFile file(path);
  io::CsvReader reader(file.text(), path);
  io::CsvRecord record;
  std::vector<Planned> list;
  std::map<std::string_view, std::size_t> places;
  if (reader.next(record)) {
    for (std::size_t i = 0; i < record.fields.size(); ++i) {
      for (const std::string_view name : {"tag", "end", "part", "verdict"}) {
        if (record.fields[i] == name) places[name] = i;
      }
    }
  }
  if (places.size() != 4) {
    throw InputError(make_fault(ErrorCode::missing, "these are no results of a schedule", path, "",
                                "a CSV with the columns tag, end, verdict and part",
                                "write them with cutback schedule SCHEDULE --output RESULTS"));
  }
  while (reader.next(record)) {
    const auto cell = [&](std::string_view name) {
      const std::size_t at = places.at(name);
      return at < record.fields.size() ? std::string(record.fields[at]) : std::string();
    };
    list.push_back({{cell("tag"), cell("end")}, cell("part"), {}, {}, {}});
  }
  return list;
}

/// The row that counts of each end: the last one, and of measurements before it what it lacks.
/// @param names  what a schedule calls the ends, where there is one
std::map<End, io::MadeRow> last_rows(const io::MadeFile& file, const EndsOfRows& names = {}) {
  std::map<End, io::MadeRow> ends;
  for (const io::MadeRow& row : file.rows) {
    const auto name = names.find(row.line);
    const End end{row.cell("tag"), name != names.end() ? name->second : row.cell("end")};
    const auto found = ends.find(end);
    // A measurement after the end was finished does not undo it.
    const bool finished = found != ends.end() && !found->second.cell("part").empty();
    if (finished && row.cell("part").empty()) continue;
    const auto at = ends.insert_or_assign(end, row).first;
    at->second.set("end", end.second);
  }
  return ends;
}

Plan plan_by_results(const std::string& path, const std::map<End, io::MadeRow>& rows) {
  Plan plan{.ends = read_results(path), .not_found = {}, .names = {}};
  const auto bare = [](const End& end) {
    return End{small_letters(end.first), small_letters(end.second)};
  };
  std::map<End, const io::MadeRow*> made;
  for (const auto& [end, row] : rows) made[bare(end)] = &row;
  std::set<End> known;
  for (Planned& each : plan.ends) {
    known.insert(bare(each.end));
    const auto found = made.find(bare(each.end));
    if (found != made.end()) each.made = found->second->cell("part");
  }
  for (const auto& [end, row] : rows) {
    if (!known.contains(bare(end))) {
      plan.not_found.push_back({row.line, name_of(end)});
    }
  }
  return plan;
}

Plan plan_by_schedule(const MadeOptions& options, const io::MadeFile& file,
                      const Runtime& runtime) {
  std::vector<Fault> faults;
  TypedFormat typed = understand(options.format, faults);
  Choices choices{.prefer = options.prefer, .units = {}};
  runtime.remember_for_schedule(choices, typed.format);
  const fit::Prefer prefer = parse_prefer(choices.prefer, faults);
  if (!faults.empty()) throw InputError(std::move(faults));
  const tables::Standards standards = runtime.standards();
  const auto inputs = schedule_inputs(options.format.files, true);
  const auto open = [&] {
    return open_schedule(inputs, options.format, typed, standards, runtime);
  };
  const run::Schedule opened = open();
  const gland::GlandList list = runtime.glands(standards);
  ReaderNotes notes(runtime);
  report_headings(opened, options.format, notes, runtime);
  const fit::Selector glands(list.glands, prefer);
  const bool place = asks_place(opened, inputs, open, notes);
  const run::MadeSchedule made = run::match_made(file, options.file, open());
  Plan plan{.ends = {}, .not_found = made.not_found, .names = made.ends_of_rows};
  for (run::AccountedEnd& end :
       run::account_of(opened,
                       {.standards = &standards,
                       .glands = &glands,
                       .asking = {.purpose = fit::Purpose::schedule, .place = place}},
                       made.ends)) {
    plan.ends.push_back({{end.tag, end.end}, end.part, end.place, end.made, end.outside});
  }
  return plan;
}

Account account_of(const std::map<End, io::MadeRow>& rows, const std::optional<Plan>& plan) {
  Account account;
  for (const auto& [end, row] : rows) {
    (row.cell("part").empty() ? account.measured : account.finished).push_back(row);
  }
  if (!plan) return account;
  account.planned = true;
  account.not_found = plan->not_found;
  for (const Planned& each : plan->ends) {
    if (each.made.empty()) {
      account.outstanding.push_back(each);
    } else if (each.made != each.part) {
      account.other_gland.push_back(each);
    }
    if (!each.outside.empty()) account.outside.push_back(each);
  }
  std::stable_sort(
      account.outstanding.begin(), account.outstanding.end(),
      [](const Planned& a, const Planned& b) { return run::natural_less(a.place, b.place); });
  return account;
}

/// A gland that stands in no list of the user's own was perhaps never bought, or is a slip.
void warn_of_part(const std::string& part, const Runtime& runtime) {
  if (part.empty() || runtime.list_paths().empty()) return;
  const gland::GlandList list = runtime.glands(runtime.standards());
  std::vector<std::string_view> parts;
  for (const gland::Gland& gland : list.glands) parts.push_back(gland.part);
  if (std::find(parts.begin(), parts.end(), part) != parts.end()) return;
  const std::string near = did_you_mean(part, parts);
  runtime.warn(part + " is not in " + list.name + "; the row stands as it was given" +
               (near.empty() ? "" : ": " + near));
}

/// What the test figures of a finished end must not be: insulation and its voltage by the table of
/// circuits up to 500 V, the torque by the gland's own. A circuit of extra-low voltage (SELV, PELV)
/// is tested at 250 V, and must come to half of the insulation.
std::vector<std::string> tests_of(const io::MadeRow& row, const gland::GlandList& list,
                                  const tables::Standards& standards) {
  constexpr double k_low_v = 250.0;
  constexpr double k_torque_apart = 0.2;  // of the gland's own: common practice, no source
  std::vector<std::string> says;
  const auto figure = [&](std::string_view column) {
    std::string_view text = row.cell(column);
    if (text.starts_with('>')) text = trimmed(text.substr(1));
    return parse_number(text);
  };
  const tables::Table& table = standards.table("insulation_resistance");
  const double test_v = table.number(0, "test_v");
  const auto volts = figure("test_v");
  const bool low = volts && at_most(*volts, k_low_v) && at_least(*volts, k_low_v);
  if (volts && !low && !at_least(*volts, test_v)) {
    says.push_back("tested at " + plain(*volts) + " V, must be " + plain(test_v) + " V or more");
  }
  const double least = table.number(0, "least_mohm") * (low ? 0.5 : 1.0);
  const auto insulation = figure("insulation_mohm");
  if (insulation && !at_least(*insulation, least)) {
    says.push_back("insulation " + plain(*insulation) + " Mohm, must be at least " + plain(least) +
                   " Mohm");
  }
  const auto torque = figure("torque_nm");
  const auto gland = std::find_if(list.glands.begin(), list.glands.end(),
                                  [&](const auto& each) { return each.part == row.cell("part"); });
  if (torque && gland != list.glands.end() && gland->torque_nm &&
      !at_most(std::abs(*torque - *gland->torque_nm), k_torque_apart * *gland->torque_nm)) {
    says.push_back("torque " + plain(*torque) + " Nm, " + gland->part + " takes " +
                   plain(*gland->torque_nm) + " Nm");
  }
  return says;
}

void put_tests(const Runtime& runtime, Account& account) {
  if (account.finished.empty()) return;
  const tables::Standards standards = runtime.standards();
  gland::GlandList list;  // what is wrong with it is said where it decides
  for (const std::string& path : runtime.list_paths()) {
    gland::GlandList one = io::load_gland_list(path);
    std::move(one.glands.begin(), one.glands.end(), std::back_inserter(list.glands));
  }
  for (const io::MadeRow& row : account.finished) {
    auto says = tests_of(row, list, standards);
    if (says.empty()) continue;
    account.tests.push_back({{row.cell("tag"), row.cell("end")}, std::move(says)});
  }
}

/// Readings of one end that cannot be true together are refused before they stand in the register.
void check_readings(const io::MadeRow& row, const Runtime& runtime) {
  job::JobInput in;
  const auto put = [&](std::string_view column, std::optional<measure::Readings>& readings) {
    if (!row.cell(column).empty()) readings = measure::Readings(row.cell(column), column);
  };
  put("sheath_od_mm", in.sheath_od_mm);
  put("bedding_mm", in.bedding_mm);
  put("armour_mm", in.armour_mm);
  if (!in.sheath_od_mm && !in.bedding_mm && !in.armour_mm) return;
  const tables::Standards standards = runtime.standards();
  const job::Job job = job::resolve(in, standards, job::Unstated::measured);
  if (job.cable.contradiction) {
    runtime.warn("look: " + job.cable.contradiction->says +
                 ". Repeat: " + job.cable.contradiction->repeat);
  }
}

void append(const MadeOptions& options, const Runtime& runtime) {
  io::MadeRow row;
  for (const auto& [column, value] : options.values) row.set(column, value);
  if (row.cell("made_at").empty()) row.set("made_at", today(runtime));
  runtime.say_taken(io::take_units(row));
  std::vector<Fault> faults = io::faults_of(row);
  for (Fault& fault : faults) {
    for (const ColumnOption& option : k_options) {
      const std::string place = fault.where.substr(0, fault.where.find(','));
      if (place == option.column) fault.where = option.name + fault.where.substr(place.size());
    }
  }
  if (!faults.empty()) throw InputError(std::move(faults));
  check_readings(row, runtime);
  warn_of_part(row.cell("part"), runtime);
  for (const std::string& remark : io::append_made(options.file, row)) runtime.warn(remark);
  if (row.cell("made_at").substr(0, tomorrow(runtime).size()) > tomorrow(runtime)) {
    runtime.warn("made_at " + row.cell("made_at") + " is a day to come");
  }
}

int run_made(const MadeOptions& options, Runtime& runtime) {
  if (!options.results.empty() && !options.format.files.empty()) {
    throw InputError(make_fault(ErrorCode::contradiction, "what is planned is given twice",
                                "--schedule", "--results", "", "leave one of them out"));
  }
  if (!options.values.empty()) append(options, runtime);
  const io::MadeFile file = io::load_made(options.file);
  for (const std::string& warning : file.warnings) runtime.warn(warning);
  std::optional<Plan> plan;
  if (!options.results.empty()) plan = plan_by_results(options.results, last_rows(file));
  if (!options.format.files.empty()) plan = plan_by_schedule(options, file, runtime);
  Account account = account_of(last_rows(file, plan ? plan->names : EndsOfRows{}), plan);
  put_tests(runtime, account);
  runtime.emit(runtime.common.json ? made_json(account, file) : made_text(account));
  const bool done = account.outstanding.empty() && account.other_gland.empty() &&
                    account.outside.empty() && account.tests.empty();
  return done ? k_exit_fits : k_exit_no_fit;
}

}  // namespace

void add_made(CLI::App& app, Context& context) {
  const auto options = std::make_shared<MadeOptions>();
  CLI::App* command = app.add_subcommand("made", k_description);
  command->footer(k_example);
  command->add_option("register", options->file, "Register of finished ends (CSV)")
      ->type_name("FILE")
      ->required();
  command
      ->add_option("--results", options->results,
                   "Results of cutback schedule (CSV), to say what is outstanding")
      ->type_name("FILE")
      ->group("Schedule");
  command
      ->add_option("--schedule", options->format.files,
                   "Cable schedule (CSV or .xlsx), to say what is outstanding; any number of times")
      ->type_name("FILE")
      ->allow_extra_args(false)
      ->group("Schedule");
  add_format(*command, options->format);
  add_prefer(*command, options->prefer);
  for (const ColumnOption& option : k_options) {
    command
        ->add_option_function<std::string>(
            option.name,
            [options, column = std::string(option.column)](const std::string& text) {
              options->values[column] = text;
            },
            option.help)
        ->type_name(option.type)
        ->group("Row");
  }
  add_common(*command, context.common, Reads::glands);
  command->callback([options, &context] {
    context.command.run = [options](Runtime& runtime) { return run_made(*options, runtime); };
    context.command.needs_extras = [options] { return any_workbook(options->format); };
  });
}

}  // namespace cutback::cli

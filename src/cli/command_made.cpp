#include "cli/command_made.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <map>
#include <memory>
#include <nlohmann/json.hpp>

#include "cli/date_option.hpp"
#include "cli/exit_code.hpp"
#include "cli/runtime.hpp"
#include "cutback/error.hpp"
#include "cutback/io/csv.hpp"
#include "cutback/io/files.hpp"
#include "cutback/io/made_file.hpp"

namespace cutback::cli {
namespace {

constexpr const char* k_description =
    "The register of finished ends (CSV): put a row behind the others, or look what\n"
    "is made, what is outstanding of a schedule, and what has another gland.";

constexpr const char* k_example =
    "Example: an end is finished; then what is still to do of a schedule's results:\n"
    "  cutback made made.csv --tag P-201 --end motor --part ARM-16-M20 --by JB\n"
    "  cutback made made.csv --results results.csv";

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
  std::map<std::string, std::string> values;  ///< by column
};

using End = std::pair<std::string, std::string>;  ///< tag and end

/// An end of the results of `cutback schedule`.
struct Planned {
  End end;
  std::string part;
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
    list.push_back({{cell("tag"), cell("end")}, cell("part")});
  }
  return list;
}

/// The row that counts of each end: the last one, and of measurements before it what it lacks.
std::map<End, io::MadeRow> last_rows(const io::MadeFile& file) {
  std::map<End, io::MadeRow> ends;
  for (const io::MadeRow& row : file.rows) {
    const End end{row.cell("tag"), row.cell("end")};
    const auto found = ends.find(end);
    // A measurement after the end was finished does not undo it.
    const bool finished = found != ends.end() && !found->second.cell("part").empty();
    if (finished && row.cell("part").empty()) continue;
    ends.insert_or_assign(end, row);
  }
  return ends;
}

/// What the register comes to beside the results of a schedule.
struct Account {
  std::vector<io::MadeRow> finished;
  std::vector<io::MadeRow> measured;  ///< and not finished
  std::vector<Planned> outstanding;
  std::vector<std::pair<Planned, io::MadeRow>> other_gland;
  std::vector<io::MadeRow> not_planned;
};

Account account_of(const io::MadeFile& file, const std::vector<Planned>* planned) {
  Account account;
  const std::map<End, io::MadeRow> ends = last_rows(file);
  for (const auto& [end, row] : ends) {
    (row.cell("part").empty() ? account.measured : account.finished).push_back(row);
  }
  if (planned == nullptr) return account;
  std::map<End, bool> known;
  for (const Planned& each : *planned) {
    known[each.end] = true;
    const auto found = ends.find(each.end);
    if (found == ends.end() || found->second.cell("part").empty()) {
      account.outstanding.push_back(each);
    } else if (found->second.cell("part") != each.part) {
      account.other_gland.emplace_back(each, found->second);
    }
  }
  for (const io::MadeRow& row : account.finished) {
    if (!known.contains({row.cell("tag"), row.cell("end")})) account.not_planned.push_back(row);
  }
  return account;
}

std::string name_of(const End& end) { return end.first + ", " + end.second; }
std::string name_of(const io::MadeRow& row) { return name_of({row.cell("tag"), row.cell("end")}); }

std::string as_text(const Account& account, bool planned) {
  std::string text;
  const auto part = [&](const char* heading, std::size_t count) {
    text += std::string(text.empty() ? "" : "\n") + heading + ": " + std::to_string(count) + "\n";
  };
  part("FINISHED", account.finished.size());
  for (const io::MadeRow& row : account.finished) {
    text += "  " + name_of(row) + "  " + row.cell("part") + "  " + row.cell("made_at") + "  " +
            row.cell("by") + "\n";
  }
  if (!account.measured.empty()) {
    part("MEASURED, NOT FINISHED", account.measured.size());
    for (const io::MadeRow& row : account.measured) text += "  " + name_of(row) + "\n";
  }
  if (!planned) return text;
  part("OUTSTANDING", account.outstanding.size());
  for (const Planned& each : account.outstanding) {
    text +=
        "  " + name_of(each.end) + "  " + (each.part.empty() ? "no gland yet" : each.part) + "\n";
  }
  part("MADE WITH ANOTHER GLAND", account.other_gland.size());
  for (const auto& [each, row] : account.other_gland) {
    text += "  " + name_of(each.end) + "  " + row.cell("part") + ", the schedule has " +
            (each.part.empty() ? "none" : each.part) + "\n";
  }
  if (!account.not_planned.empty()) {
    part("NOT IN THE SCHEDULE", account.not_planned.size());
    for (const io::MadeRow& row : account.not_planned) text += "  " + name_of(row) + "\n";
  }
  return text;
}

std::string as_json(const Account& account, bool planned) {
  using Json = nlohmann::ordered_json;
  Json result;
  result["cutback"] = CUTBACK_VERSION;
  result["format"] = 1;
  const auto rows = [](const std::vector<io::MadeRow>& list) {
    Json array = Json::array();
    for (const io::MadeRow& row : list) {
      Json item = Json::object();
      for (const std::string_view column : io::made_columns()) {
        if (!row.cell(column).empty()) item[std::string(column)] = row.cell(column);
      }
      array.push_back(std::move(item));
    }
    return array;
  };
  result["finished"] = rows(account.finished);
  result["measured"] = rows(account.measured);
  if (planned) {
    Json outstanding = Json::array();
    for (const Planned& each : account.outstanding) {
      outstanding.push_back(
          {{"tag", each.end.first}, {"end", each.end.second}, {"part", each.part}});
    }
    Json other = Json::array();
    for (const auto& [each, row] : account.other_gland) {
      other.push_back({{"tag", each.end.first},
                       {"end", each.end.second},
                       {"part", row.cell("part")},
                       {"planned", each.part}});
    }
    result["outstanding"] = std::move(outstanding);
    result["other_gland"] = std::move(other);
    result["not_planned"] = rows(account.not_planned);
  }
  return result.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

/// `20260331120000Z` as 2026-03-31.
std::string today(const Runtime& runtime) {
  const std::string stamp = utc_date(runtime);
  const std::size_t at = stamp.find_first_of("0123456789");
  return stamp.substr(at, 4) + "-" + stamp.substr(at + 4, 2) + "-" + stamp.substr(at + 6, 2);
}

void append(const MadeOptions& options, const Runtime& runtime) {
  io::MadeRow row;
  for (const auto& [column, value] : options.values) row.set(column, value);
  if (row.cell("made_at").empty()) row.set("made_at", today(runtime));
  std::vector<Fault> faults = io::faults_of(row);
  for (Fault& fault : faults) {
    for (const ColumnOption& option : k_options) {
      const std::string place = fault.where.substr(0, fault.where.find(','));
      if (place == option.column) fault.where = option.name + fault.where.substr(place.size());
    }
  }
  if (!faults.empty()) throw InputError(std::move(faults));
  if (const auto remark = io::append_made(options.file, row)) runtime.warn(*remark);
}

int run_made(const MadeOptions& options, Runtime& runtime) {
  if (!options.values.empty()) append(options, runtime);
  const io::MadeFile file = io::load_made(options.file);
  for (const std::string& warning : file.warnings) runtime.warn(warning);
  const bool planned = !options.results.empty();
  const std::vector<Planned> results =
      planned ? read_results(options.results) : std::vector<Planned>{};
  const Account account = account_of(file, planned ? &results : nullptr);
  runtime.emit(runtime.common.json ? as_json(account, planned) : as_text(account, planned));
  const bool done = account.outstanding.empty() && account.other_gland.empty();
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
  add_common(*command, context.common, Reads::no_glands);
  command->callback([options, &context] {
    context.command.run = [options](Runtime& runtime) { return run_made(*options, runtime); };
  });
}

}  // namespace cutback::cli

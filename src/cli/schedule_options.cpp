#include "cli/schedule_options.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cmath>
#include <filesystem>

#include "cutback/io/csv.hpp"
#include "cutback/io/files.hpp"
#include "cutback/job/field_text.hpp"
#include "cutback/number.hpp"
#include "cutback/schedule/defaults.hpp"
#include "cutback/text.hpp"
#include "run/place_asked.hpp"

namespace cutback::cli {
namespace {

constexpr const char* k_columns_head = "column,heading";
constexpr const char* k_ignored = "ignore";  // stands where the column does

/// Reads what --save-columns wrote.
void read_columns(const std::string& path, schedule::Format& format) {
  const io::WholeFile file(path, bounds::k_columns_bytes);
  io::CsvReader reader(file.text(), path);
  io::CsvRecord record;
  FaultList faults;
  for (bool first = true; reader.next(record); first = false) {
    const std::string where = path + ", line " + std::to_string(record.line);
    if (record.fields.size() != 2) {
      faults.add(make_fault(ErrorCode::bad_syntax, "not a column and its heading", where,
                            std::to_string(record.fields.size()) + " cells",
                            "two cells, such as sheath_od_mm,O/D (mm)", ""));
      continue;
    }
    const std::string column(trimmed(record.fields[0]));
    const std::string heading(trimmed(record.fields[1]));
    if (first && column + "," + heading == k_columns_head) continue;
    if (column == k_ignored) {
      format.ignored.push_back(heading);
    } else {
      format.headings.emplace_back(column, heading);
    }
  }
  faults.raise(path);
}

void take_defaults(const std::vector<std::string>& given, schedule::Format& format,
                   std::vector<Fault>& faults) {
  for (const std::string& text : given) {
    const std::size_t equals = text.find('=');
    const std::string column(trimmed(std::string_view(text).substr(0, equals)));
    const std::string value(equals == std::string::npos
                                ? std::string_view()
                                : trimmed(std::string_view(text).substr(equals + 1)));
    if (column.empty() || value.empty()) {
      faults.push_back(make_fault(ErrorCode::bad_syntax, "not a column and its value", "--default",
                                  text, "column=value, such as zone=none or from_wall_mm=3"));
      continue;
    }
    format.defaults.push_back({column, value});
  }
  for (Fault& fault : check_defaults(format)) faults.push_back(std::move(fault));
}

void take_words(const std::vector<std::string>& given, schedule::Format& format,
                std::vector<Fault>& faults) {
  for (const std::string& text : given) {
    const std::size_t equals = text.rfind('=');
    const std::string_view word = trimmed(std::string_view(text).substr(0, equals));
    const std::string_view value = equals == std::string::npos
                                       ? std::string_view()
                                       : trimmed(std::string_view(text).substr(equals + 1));
    if (word.empty() || value.empty()) {
      faults.push_back(make_fault(ErrorCode::bad_syntax, "not a word and its value", "--word", text,
                                  "word=value, such as \"Safe area\"=none"));
      continue;
    }
    format.words.push_back({std::string(word), std::string(value)});
  }
}

void save_columns(const run::Schedule& schedule, const FormatOptions& options,
                  const Runtime& runtime) {
  std::string text = std::string(k_columns_head) + "\n";
  std::vector<std::string> lines;
  const auto add = [&](const std::string& column, const std::string& heading) {
    const std::string line = io::csv_field(column) + "," + io::csv_field(heading) + "\n";
    if (std::find(lines.begin(), lines.end(), line) != lines.end()) return;
    lines.push_back(line);
    text += line;
  };
  for (const run::ScheduleTable& table : schedule.tables) {
    for (const schedule::Mapped& each : table.file->layout().mapping) {
      add(each.column, each.heading);
    }
  }
  for (const std::string& heading : options.ignored) add(k_ignored, heading);
  runtime.files.add(options.save_columns).append(text);
}

/// `tag = Cable No; from = From; ...` in lines of 80 columns.
std::string matches_text(const schedule::Layout& layout) {
  constexpr std::size_t k_width = 80;
  std::string text;
  std::string line = " ";
  for (const auto& [heading, column] : layout.matches) {
    std::string item = " " + column + " = " + heading + ";";
    if (line.size() + item.size() > k_width && line.size() > 1) {
      text += line + "\n";
      line = " ";
    }
    line += item;
  }
  line.pop_back();
  return text + line;
}

}  // namespace

CLI::Option* add_schedule_files(CLI::App& command, FormatOptions& options) {
  return command
      .add_option("schedule", options.files, "Cable schedules (CSV or .xlsx), one or several")
      ->type_name("FILE")
      ->required();
}

void add_format(CLI::App& command, FormatOptions& options) {
  command
      .add_option("--column", options.columns,
                  "A heading of the schedule's own, or its column's letter: OURS=THEIRS or OURS=H; "
                  "any number of times")
      ->type_name("OURS=THEIRS")
      ->allow_extra_args(false)
      ->group("Schedule");
  command
      .add_option("--columns", options.columns_file,
                  "The same from a file (CSV: column,heading) that --save-columns wrote")
      ->type_name("FILE")
      ->group("Schedule");
  command
      .add_option("--save-columns", options.save_columns,
                  "Write which heading is which column, for --columns next time")
      ->type_name("FILE")
      ->group("Schedule");
  command
      .add_option("--ignore", options.ignored,
                  "A heading that is not to be read, or its letter; any number of times")
      ->type_name("HEADING")
      ->allow_extra_args(false)
      ->group("Schedule");
  command
      .add_option("--blank", options.blanks,
                  "A word that means \"not given\", besides TBC, TBA, TBD, N/A, - and ?; any "
                  "number of times")
      ->type_name("WORD")
      ->allow_extra_args(false)
      ->group("Schedule");
  command
      .add_option("--default", options.defaults,
                  "What blank cells of a column are taken for, as if they said so, also of a "
                  "column that the schedule does not have; any number of times")
      ->type_name("COLUMN=VALUE")
      ->allow_extra_args(false)
      ->group("Schedule");
  command
      .add_option(
          "--word", options.words,
          "A word of the schedule's own and the value that it stands for in any cell that is "
          "read, for example \"Safe area\"=none; any number of times")
      ->type_name("WORD=VALUE")
      ->allow_extra_args(false)
      ->group("Schedule");
  command
      .add_option("--types", options.types,
                  "Types of cable (CSV or .xlsx): what a row's column type names, for what the row "
                  "leaves blank")
      ->type_name("FILE")
      ->group("Schedule");
  command.add_option("--decimal", options.decimal, "Decimal mark in the cells: . or , (default .)")
      ->type_name("MARK")
      ->group("Schedule");
  command
      .add_option("--evidence", options.evidence,
                  "Of figures in rows that state none: measured, datasheet or estimated "
                  "(default: one figure is a datasheet's, several readings are measured)")
      ->type_name("WORD")
      ->group("Schedule");
  command
      .add_option("--header-row", options.header_row,
                  "Line or row of the headings (default: found in the first 30)")
      ->type_name("N")
      ->group("Schedule");
  command
      .add_option(
          "--ends", options.ends,
          "Ends per row where no heading tells from and to: 2 where a row is a whole cable, "
          "1 where it is one end")
      ->type_name("N")
      ->group("Schedule");
  command
      .add_option("--sheet", options.sheets,
                  "Sheet of the workbook to read; any number of times (default: all that are not "
                  "hidden and have the headings)")
      ->type_name("NAME")
      ->allow_extra_args(false)
      ->group("Schedule");
}

void add_currency(CLI::App& command, std::string& label) {
  command
      .add_option("--currency", label,
                  "What the prices of the lists are in, for the results: EUR, USD ...")
      ->type_name("LABEL")
      ->group("Results");
}

void add_made_option(CLI::App& command, std::string& file) {
  command
      .add_option("--made", file,
                  "Register of finished ends (CSV): what was measured counts in place of the "
                  "figures given, and finished ends go by the gland that they have")
      ->type_name("FILE")
      ->group("Schedule");
}

run::MadeSchedule load_made(const std::string& path, const run::Schedule& schedule,
                            const Runtime& runtime) {
  const io::MadeFile file = io::load_made(path);
  for (const std::string& warning : file.warnings) runtime.warn(warning);
  return run::match_made(file, path, schedule);
}

TypedFormat understand(const FormatOptions& options, std::vector<Fault>& faults) {
  TypedFormat typed;
  typed.format.ignored = options.ignored;
  typed.format.blanks = options.blanks;
  if (!options.columns_file.empty()) read_columns(options.columns_file, typed.format);
  std::size_t given = 0;
  for (const std::string& column : options.columns) {
    const std::size_t equals = column.find('=');
    if (equals == std::string::npos || equals == 0 || equals + 1 == column.size()) {
      faults.push_back(make_fault(ErrorCode::bad_syntax, "not a column and its heading", "--column",
                                  column, "own=heading, such as sheath_od_mm=\"O/D (mm)\""));
      continue;
    }
    const std::string own = column.substr(0, equals);
    // What is typed comes before what a file says.
    auto& known = typed.format.headings;
    known.erase(std::remove_if(known.begin(), known.end() - static_cast<std::ptrdiff_t>(given),
                               [&](const auto& each) { return each.first == own; }),
                known.end() - static_cast<std::ptrdiff_t>(given));
    known.emplace_back(own, column.substr(equals + 1));
    ++given;
  }
  if (options.decimal != "." && options.decimal != ",") {
    faults.push_back(make_fault(ErrorCode::bad_value, "not a decimal mark", "--decimal",
                                options.decimal, ". or ,"));
  } else {
    typed.format.decimal = options.decimal.front();
  }
  take_words(options.words, typed.format, faults);
  take_defaults(options.defaults, typed.format, faults);
  if (!options.evidence.empty()) {
    job::JobInput input;
    for (Fault& fault :
         set_from_text(input, job::field_named("evidence"), options.evidence, "--evidence")) {
      faults.push_back(std::move(fault));
    }
    typed.format.evidence = input.evidence;
  }
  if (options.ends == "1" || options.ends == "2") {
    typed.format.ends = options.ends == "1" ? 1 : 2;
  } else if (!options.ends.empty()) {
    faults.push_back(
        make_fault(ErrorCode::bad_value, "not a number of ends", "--ends", options.ends, "1 or 2"));
  }
  if (options.header_row.empty()) return typed;
  const auto row = parse_number(options.header_row);
  if (!row || *row < 1.0 || *row > 1e6 || *row != std::floor(*row)) {
    faults.push_back(make_fault(ErrorCode::bad_number, "not a line of the file", "--header-row",
                                options.header_row, "a whole number from 1"));
  } else {
    typed.header_row = static_cast<std::size_t>(*row);
  }
  return typed;
}

bool any_workbook(const FormatOptions& options) {
  return std::any_of(options.files.begin(), options.files.end(), run::is_workbook) ||
         (!options.types.empty() && run::is_workbook(options.types));
}

bool can_open_again(const std::deque<run::ScheduleInput>& inputs) {
  return std::all_of(inputs.begin(), inputs.end(), [](const run::ScheduleInput& input) {
    std::error_code none;  // what cannot be looked at is no ordinary file
    return input.pipe || std::filesystem::is_regular_file(input.path, none);
  });
}

std::deque<run::ScheduleInput> schedule_inputs(std::span<const std::string> files, bool twice) {
  std::deque<run::ScheduleInput> inputs;
  for (const std::string& path : files) {
    std::error_code none;  // what cannot be looked at is no ordinary file
    const bool take = twice || std::filesystem::is_regular_file(path, none);
    inputs.push_back({path, take ? run::take_text(path) : std::nullopt});
  }
  return inputs;
}

run::Schedule open_schedule(const std::deque<run::ScheduleInput>& inputs,
                            const FormatOptions& options, TypedFormat& typed,
                            const tables::Standards& standards, const Runtime& runtime) {
  typed.usual = schedule::usual_headings(standards);
  typed.format.usual = &typed.usual;
  run::Opening opening{.open_workbook = nullptr,
                       .sheets = options.sheets,
                       .sheets_option = "--sheet",
                       .format = typed.format,
                       .header_row = typed.header_row,
                       .check_first = runtime.common.output.empty()};
  const bool workbook = std::any_of(inputs.begin(), inputs.end(), [](const auto& input) {
    return !input.pipe && run::is_workbook(input.path);
  });
  const bool types_workbook = !options.types.empty() && run::is_workbook(options.types);
  if (workbook || types_workbook) opening.open_workbook = runtime.extras().open_workbook;
  if (!options.types.empty() && !typed.types.types) {
    typed.types = run::load_types(options.types, opening);
    for (const std::string& warning : typed.types.warnings) runtime.warn(warning);
  }
  opening.format.types = typed.types.types.get();
  run::Schedule schedule = run::open_schedule(inputs, opening);
  schedule.places_of_types = typed.types.places;
  return schedule;
}

namespace {

/// Whether the same is to be said of the headings of two tables.
bool is_told_alike(const schedule::Layout& a, const schedule::Layout& b) {
  const auto without_place = [](const schedule::Layout& layout, const std::string& warning) {
    return warning.starts_with(layout.where) ? warning.substr(layout.where.size()) : warning;
  };
  return a.matches == b.matches && !(a.matches.empty() && a.warnings.empty()) &&
         std::equal(a.warnings.begin(), a.warnings.end(), b.warnings.begin(), b.warnings.end(),
                    [&](const std::string& one, const std::string& other) {
                      return without_place(a, one) == without_place(b, other);
                    });
}

}  // namespace

void ReaderNotes::say() {
  for (; said_ < lines_.size(); ++said_) runtime_.warn(lines_[said_]);
}

void report_headings(const run::Schedule& schedule, const FormatOptions& options,
                     ReaderNotes& notes, const Runtime& runtime) {
  const schedule::Layout* last = nullptr;
  std::vector<std::string> alike;  // tables whose headings are those of the last that was told
  const auto tell_alike = [&] {
    if (!alike.empty()) {
      notes.add(
          alike.front() +
          (alike.size() > 1 ? " and " + std::to_string(alike.size() - 1) + " more sheets" : "") +
          ": headings as above");
    }
    alike.clear();
  };
  for (const run::ScheduleTable& table : schedule.tables) {
    const schedule::Layout& layout = table.file->layout();
    if (last != nullptr && table.notes.empty() && is_told_alike(*last, layout)) {
      alike.push_back(layout.where);
      continue;
    }
    tell_alike();
    for (const std::string& note : table.notes) notes.add(table.name + ": " + note);
    for (const std::string& warning : layout.warnings) notes.add(warning);
    if (!layout.matches.empty()) {
      notes.add(layout.where + ": headings taken as the trade usually means them:\n" +
                matches_text(layout));
    }
    last = &layout;
  }
  tell_alike();
  for (const std::string& sheet : schedule.not_read) notes.add("not read: " + sheet);
  notes.say();
  if (!options.save_columns.empty()) save_columns(schedule, options, runtime);
}

void report_skipped(const run::Schedule& schedule, std::span<const schedule::SkippedRows> skipped,
                    ReaderNotes& notes) {
  for (std::size_t i = 0; i < skipped.size(); ++i) {
    const run::ScheduleTable& table = schedule.tables[i];
    const std::string text = skipped[i].text(table.rows->row_word());
    if (!text.empty()) notes.add(table.name + ": skipped " + text);
    const std::string answered = skipped[i].answered_text(table.rows->row_word());
    if (!answered.empty()) notes.add(table.name + ": answered, and to be looked at: " + answered);
  }
}

void report_words(const std::set<std::string>& taken, ReaderNotes& notes) {
  constexpr std::size_t k_most = 30;
  if (taken.empty()) return;
  std::string text;
  std::size_t count = 0;
  for (const std::string& each : taken) {
    if (++count > k_most) break;
    text += (text.empty() ? "" : "; ") + each;
  }
  if (taken.size() > k_most) text += "; and " + std::to_string(taken.size() - k_most) + " more";
  notes.add("words of cells taken: " + text);
}

bool asks_place(const run::Schedule& opened, const std::deque<run::ScheduleInput>& inputs,
                const std::function<run::Schedule()>& again, ReaderNotes& notes, bool rows_noted) {
  const bool can_again = can_open_again(inputs);
  const run::PlaceAsked place =
      run::ask_place(opened, can_again ? again : std::function<run::Schedule()>(), rows_noted);
  for (const std::string& because : place.because) notes.add(because);
  notes.say();
  if (!place.asked && !can_again) {
    for (const run::ScheduleTable& table : opened.tables) table.file->look_for_places();
  }
  return place.asked;
}

std::vector<io::ScheduleFile*> files_of(const run::Schedule& schedule) {
  std::vector<io::ScheduleFile*> files;
  for (const run::ScheduleTable& table : schedule.tables) files.push_back(table.file.get());
  return files;
}

std::string names_of(std::span<const std::string> files) {
  if (files.size() == 1) return files.front();
  return files.front() + " and " + std::to_string(files.size() - 1) + " more";
}

}  // namespace cutback::cli

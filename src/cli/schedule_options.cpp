#include "cli/schedule_options.hpp"

#include <CLI/CLI.hpp>
#include <cmath>

#include "cutback/job/field_text.hpp"
#include "cutback/number.hpp"
#include "run/open_schedule.hpp"

namespace cutback::cli {
CLI::Option* add_schedule_file(CLI::App& command, FormatOptions& options) {
  return command.add_option("schedule", options.file, "Cable schedule (CSV or .xlsx)")
      ->type_name("FILE")
      ->required();
}

void add_format(CLI::App& command, FormatOptions& options) {
  command
      .add_option("--column", options.columns,
                  "A heading of the schedule's own: OURS=THEIRS; any number of times")
      ->type_name("OURS=THEIRS")
      ->allow_extra_args(false)
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
      .add_option("--sheet", options.sheet,
                  "Sheet of the workbook to read (default: the first that is not hidden)")
      ->type_name("NAME")
      ->group("Schedule");
}

TypedFormat understand(const FormatOptions& options, std::vector<Fault>& faults) {
  TypedFormat typed;
  for (const std::string& column : options.columns) {
    const std::size_t equals = column.find('=');
    if (equals == std::string::npos || equals == 0 || equals + 1 == column.size()) {
      faults.push_back(make_fault(ErrorCode::bad_syntax, "not a column and its heading", "--column",
                                  column, "own=heading, such as sheath_od_mm=\"O/D (mm)\""));
      continue;
    }
    typed.format.headings.emplace_back(column.substr(0, equals), column.substr(equals + 1));
  }
  if (options.decimal != "." && options.decimal != ",") {
    faults.push_back(make_fault(ErrorCode::bad_value, "not a decimal mark", "--decimal",
                                options.decimal, ". or ,"));
  } else {
    typed.format.decimal = options.decimal.front();
  }
  if (!options.evidence.empty()) {
    job::JobInput input;
    for (Fault& fault :
         set_from_text(input, job::field_named("evidence"), options.evidence, "--evidence")) {
      faults.push_back(std::move(fault));
    }
    typed.format.evidence = input.evidence;
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

std::unique_ptr<io::RowSource> open_schedule(const std::string& path, const FormatOptions& options,
                                             const TypedFormat& typed, const Runtime& runtime,
                                             const io::MappedFile* pipe) {
  const bool workbook = run::is_workbook(path);
  if (!workbook && !options.sheet.empty()) {
    throw InputError(Fault{.code = ErrorCode::contradiction,
                           .what = "the file is no workbook (.xlsx) and has no sheets",
                           .where = "--sheet",
                           .given = options.sheet + " of " + path,
                           .allowed = {},
                           .hint = "leave --sheet out"});
  }
  return run::open_schedule(path,
                            {.open_workbook = workbook ? runtime.extras().open_workbook : nullptr,
                             .sheet = options.sheet,
                             .decimal = typed.format.decimal,
                             .check_first = runtime.common.output.empty(),
                             .pipe = pipe});
}

}  // namespace cutback::cli

#include "cli/command_glands.hpp"

#include <unistd.h>
#include <CLI/CLI.hpp>
#include <algorithm>
#include <memory>

#include "cli/exit_code.hpp"
#include "cli/glands_new.hpp"
#include "cli/job_options.hpp"
#include "cli/runtime.hpp"
#include "cutback/error.hpp"
#include "cutback/fit/cover_map.hpp"
#include "cutback/gland/coverage.hpp"
#include "cutback/io/gland_convert.hpp"
#include "cutback/io/gland_list.hpp"
#include "cutback/job/field_text.hpp"
#include "cutback/nearest.hpp"
#include "cutback/print/cover.hpp"
#include "cutback/print/glands.hpp"
#include "cutback/text.hpp"
#include "run/open_schedule.hpp"
#include "run/table_rows.hpp"

namespace cutback::cli {
namespace {

constexpr const char* k_description =
    "Check a gland list (CSV), and show which sheaths its outer seals take and which\n"
    "none takes. Every fault of the list is named with line, column, value and what\n"
    "is allowed. Without a file: the list in use (CUTBACK_GLANDS, else the built-in\n"
    "invented one). Also: a list begun, another table converted, what a list covers,\n"
    "one gland drawn, and what its maker does not print measured once.";

constexpr const char* k_example =
    "Example: a list of your own; another table made into one; what it covers:\n"
    "  cutback glands --new stock.csv\n"
    "  cutback glands --convert theirs.xlsx --column part=\"Order code\" \\\n"
    "    --column outer_mm=\"Cable OD\" --default armour=wire --output stock.csv\n"
    "  cutback glands stock.csv --covers --wire 0.9 --entry M20\n"
    "  cutback glands stock.csv --measure ARM-16-M20";

struct GlandsOptions {
  std::string path;
  std::string new_list;
  std::string convert;
  std::vector<std::string> columns;
  std::vector<std::string> values;
  std::string sheet;
  std::string decimal = ".";
  std::string part;
  std::string measure;
  bool covers = false;
  bool svg = false;
  bool all = false;
  JobOptions job;
};

gland::GlandList list_of(const GlandsOptions& options, const Runtime& runtime,
                         const tables::Standards& standards) {
  if (options.path.empty()) return runtime.glands(standards);
  gland::GlandList list = io::load_gland_list(options.path);
  runtime.warn_of(list, standards);
  return list;
}

/// `OURS=THEIRS` as a pair. @param example  for the message
std::vector<std::pair<std::string, std::string>> pairs(const std::vector<std::string>& words,
                                                       const char* option, const char* example,
                                                       std::vector<Fault>& faults) {
  std::vector<std::pair<std::string, std::string>> list;
  for (const std::string& word : words) {
    const std::size_t equals = word.find('=');
    if (equals == std::string::npos || equals == 0 || equals + 1 == word.size()) {
      faults.push_back(make_fault(ErrorCode::bad_syntax, "not a column and what stands for it",
                                  option, word, example));
      continue;
    }
    list.emplace_back(word.substr(0, equals), word.substr(equals + 1));
  }
  return list;
}

int run_convert(const GlandsOptions& options, const Runtime& runtime) {
  std::vector<Fault> faults;
  io::ConvertTerms terms;
  terms.headings =
      pairs(options.columns, "--column", "ours=theirs, such as outer_mm=\"Cable OD (mm)\"", faults);
  terms.values = pairs(options.values, "--default", "column=value, such as armour=wire", faults);
  if (options.decimal != "." && options.decimal != ",") {
    faults.push_back(make_fault(ErrorCode::bad_value, "not a decimal mark", "--decimal",
                                options.decimal, ". or ,"));
  } else {
    terms.decimal = options.decimal.front();
  }
  if (!faults.empty()) throw InputError(std::move(faults));
  const bool workbook = run::is_workbook(options.convert);
  const run::TableRows table = run::read_table(options.convert, options.sheet, terms.decimal,
                                               workbook ? runtime.extras().open_workbook : nullptr);
  for (const std::string& note : table.notes) runtime.warn(options.convert + ": " + note);
  const io::Converted list = io::convert_glands(table.rows, options.convert, table.row_word, terms);
  runtime.warn(options.convert + ": " + joined(list.taken, "; "));
  if (!list.unread.empty()) {
    runtime.warn(options.convert + ": headings that are not taken: " + joined(list.unread, "; ") +
                 "; say --column OURS=THEIRS where one is a column of a gland list");
  }
  for (const std::string& row : list.left_out) runtime.warn("left out: " + row);
  for (const std::string& row : list.unpriced) runtime.warn(row);
  if (list.without_inner > 0) {
    runtime.warn(std::to_string(list.without_inner) + " of " + std::to_string(list.glands) +
                 " glands have no figures for a seal on the bedding, and count as glands without "
                 "one: look whether that is so");
  }
  runtime.emit_as_it_is(list.text);
  runtime.warn(std::to_string(list.glands) + (list.glands == 1 ? " gland" : " glands") +
               " taken, " + std::to_string(list.left_out.size()) +
               " rows left out; look at the list before it is used");
  return list.left_out.empty() && list.unpriced.empty() ? k_exit_fits : k_exit_no_fit;
}

/// What is asked of the glands, in words.
std::string asked_words(const job::JobInput& input) {
  std::string text;
  for (const job::Field& field : job::fields()) {
    if (field.key == "sheath_od_mm" || field.key == "bedding_mm") continue;
    const auto value = job::text_of(input, field);
    if (!value) continue;
    text += (text.empty() ? "" : ", ") +
            (field.key == "armour_mm" ? "wire" : std::string(field.key)) + " " + *value;
  }
  return text;
}

int run_covers(const GlandsOptions& options, const Runtime& runtime) {
  job::JobInput input;
  std::vector<std::string> taken;
  std::vector<Fault> faults = options.job.fill(input, taken);
  runtime.say_taken(taken);
  if (options.svg && runtime.common.json) {
    faults.push_back(make_fault(ErrorCode::contradiction, "one kind of result at a time", "--svg",
                                "--json", "", "leave one of them out"));
  }
  const bool armoured = input.armour.value_or(cable::ArmourKind::wire) != cable::ArmourKind::none;
  if (armoured && !input.armour_mm) {
    faults.push_back(make_fault(ErrorCode::missing, "which wire is it?", "--wire", "",
                                "the diameter of one armour wire, such as 0.9",
                                "--armour none for cables without armour"));
  }
  if (!faults.empty()) throw InputError(std::move(faults));
  const tables::Standards standards = runtime.standards();
  const gland::GlandList list = list_of(options, runtime, standards);
  const fit::Selector glands(list.glands, fit::Prefer::price);
  constexpr std::size_t k_finer = 2;  // on paper
  const std::size_t finer = options.svg ? k_finer : 1;
  const fit::CoverMap map = fit::cover_map(input, glands, standards, finer * print::k_cover_columns,
                                           finer * print::k_cover_rows);
  double wire_mm = 0.0;
  if (armoured) wire_mm = input.armour_mm->places.front().readings_mm.front();
  const std::vector<fit::CoverGap> gaps = fit::gaps_of(map, wire_mm);
  const print::CoverTitle title{
      .list = list.name, .glands = list.glands.size(), .asked = asked_words(input)};
  print::Style style;
  style.colour = runtime.colour();
  style.all = options.all;
  if (options.svg) {
    runtime.emit_as_it_is(print::cover_svg(map, gaps, title));
  } else {
    runtime.emit(runtime.common.json ? print::cover_json(map, gaps, title)
                                     : print::cover_text(map, gaps, title, style));
  }
  return gaps.empty() ? k_exit_fits : k_exit_no_fit;
}

const gland::Gland& find_part(const gland::GlandList& list, const std::string& part,
                              const char* option) {
  std::vector<std::string_view> parts;
  for (const gland::Gland& gland : list.glands) {
    if (gland.part == part) return gland;
    parts.push_back(gland.part);
  }
  throw InputError(make_fault(ErrorCode::unknown_name, "this gland is not in the list", option,
                              part, "", did_you_mean(part, parts)));
}

int run_measure(const GlandsOptions& options, const Runtime& runtime) {
  std::string path = options.path;
  // Of several lists the one that has the gland; where none has, the first says so.
  for (const std::string& list : path.empty() ? runtime.list_paths() : std::vector<std::string>{}) {
    const gland::GlandList read = io::load_gland_list(list);
    const bool has = std::any_of(read.glands.begin(), read.glands.end(),
                                 [&](const auto& gland) { return gland.part == options.measure; });
    if (has || path.empty()) path = list;
    if (has) break;
  }
  if (path.empty()) {
    throw InputError(make_fault(
        ErrorCode::missing, "the built-in list is invented: it keeps nothing of a gland in hand",
        "--measure", options.measure, "a list of your own", "cutback glands FILE --measure PART"));
  }
  return measure_gland(path, options.measure, runtime);
}

/// Several things at a time are none.
void check_one(const GlandsOptions& options) {
  std::string given;
  int count = 0;
  const auto add = [&](bool asked, const char* name) {
    if (!asked) return;
    ++count;
    given += (given.empty() ? "" : " ") + std::string(name);
  };
  add(!options.new_list.empty(), "--new");
  add(!options.convert.empty(), "--convert");
  add(options.covers, "--covers");
  add(!options.part.empty(), "--part");
  add(!options.measure.empty(), "--measure");
  if (count > 1) {
    throw InputError(make_fault(ErrorCode::contradiction, "one thing at a time", "command line",
                                given, "", "give one of them"));
  }
  const bool own_file = !options.new_list.empty() || !options.convert.empty();
  if (own_file && !options.path.empty()) {
    throw InputError(make_fault(ErrorCode::contradiction, "a second file", "command line",
                                options.path, "",
                                "leave it out; a name with a space in it stands in quotes"));
  }
}

int run_glands(const GlandsOptions& options, const Runtime& runtime) {
  check_one(options);
  if (!options.new_list.empty()) return new_gland_list(options.new_list, runtime);
  if (!options.convert.empty()) return run_convert(options, runtime);
  if (!options.measure.empty()) return run_measure(options, runtime);
  if (options.covers) return run_covers(options, runtime);
  const tables::Standards standards = runtime.standards();
  const gland::GlandList list = list_of(options, runtime, standards);
  const print::Style style{.colour = runtime.colour()};
  if (!options.part.empty()) {
    const gland::Gland& gland = find_part(list, options.part, "--part");
    runtime.emit(runtime.common.json ? print::gland_part_json(gland)
                                     : print::gland_part_text(gland, style));
    return k_exit_fits;
  }
  const gland::Coverage coverage = gland::coverage(list.glands);
  runtime.emit(runtime.common.json ? print::glands_json(list, coverage)
                                   : print::glands_text(list, coverage, style));
  return k_exit_fits;
}

}  // namespace

void add_glands(CLI::App& app, Context& context) {
  const auto options = std::make_shared<GlandsOptions>();
  CLI::App* command = app.add_subcommand("glands", k_description);
  command->footer(k_example);
  context.briefs["glands"] = {k_example,
                              "[OPTIONS] [FILE]",
                              {"--new", "--convert", "--column", "--default", "--covers", "--wire",
                               "--entry", "--svg", "--part", "--measure"}};
  command->add_option("FILE", options->path, "The gland list; its columns are in data/README.md");
  const auto file = [](CLI::Option* option, const char* group) {
    option->type_name("FILE")->group(group);
  };
  file(command->add_option("--new", options->new_list,
                           "Begin a list, or go on with one: the figures off one packet after "
                           "another, else a template to fill in"),
       "A list of your own");
  command
      ->add_option("--measure", options->measure,
                   "Measure once, on the gland in hand, what its maker does not print, and keep it "
                   "in the list")
      ->type_name("PART")
      ->group("A list of your own");
  file(command->add_option("--convert", options->convert,
                           "Another table of glands (CSV or .xlsx) made into a list, to --output"),
       "Another table");
  command
      ->add_option("--column", options->columns,
                   "A heading of that table: OURS=THEIRS; outer_mm, inner_mm and armour_mm for a "
                   "range in one cell (11-16); any number of times")
      ->type_name("OURS=THEIRS")
      ->allow_extra_args(false)
      ->group("Another table");
  command
      ->add_option("--default", options->values,
                   "What its blank cells are, also of a column that it does not have: armour=wire; "
                   "any number of times")
      ->type_name("COLUMN=VALUE")
      ->allow_extra_args(false)
      ->group("Another table");
  command->add_option("--sheet", options->sheet, "Sheet of the workbook to read")
      ->type_name("NAME")
      ->group("Another table");
  command->add_option("--decimal", options->decimal, "Its decimal mark: . or , (default .)")
      ->type_name("MARK")
      ->group("Another table");
  command
      ->add_flag("--covers", options->covers,
                 "Which pairs of sheath and bedding no, one or more glands serve, and the gaps")
      ->group("What it covers");
  command->add_flag("--svg", options->svg, "The same as a drawing (SVG)")->group("What it covers");
  command->add_flag("--all", options->all, "Name every gap")->group("What it covers");
  options->job.add_keys(*command, {"armour_mm", "armour", "cores", "supply", "armour_material",
                                   "entry", "hole", "wall_mm", "material", "protection", "zone",
                                   "level", "gas_group", "dust_group", "ip"});
  command->add_option("--part", options->part, "One gland, drawn to scale")
      ->type_name("PART")
      ->group("One gland");
  add_common(*command, context.common, Reads::no_glands);
  command->callback([options, &context] {
    context.command.run = [options](Runtime& runtime) { return run_glands(*options, runtime); };
    context.command.needs_extras = [options] {
      if (!options->convert.empty()) return run::is_workbook(options->convert);
      const bool talks = !options->new_list.empty() || !options->measure.empty();
      return talks && ::isatty(0) == 1 && ::isatty(1) == 1;
    };
  });
}

}  // namespace cutback::cli

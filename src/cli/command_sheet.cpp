#include "cli/command_sheet.hpp"

#include <CLI/CLI.hpp>
#include <memory>

#include "cli/date_option.hpp"
#include "cli/exit_code.hpp"
#include "cli/job_options.hpp"
#include "cli/runtime.hpp"
#include "cutback/error.hpp"
#include "cutback/io/files.hpp"
#include "cutback/io/job_file.hpp"
#include "cutback/job/job.hpp"
#include "cutback/print/pages.hpp"
#include "cutback/print/print.hpp"
#include "cutback/sheet/sheet.hpp"
#include "run/content_hash.hpp"
#include "run/require_sheath.hpp"

namespace cutback::cli {
namespace {

constexpr const char* k_description =
    "The termination sheet of one end: the gland and why it, cut marks, depths,\n"
    "tails, steps and cautions. From a job file (JSON), from options, or from both:\n"
    "options come first.";

constexpr const char* k_example =
    "Example: a job file, and the same from options alone:\n"
    "  cutback sheet job.json\n"
    "  cutback sheet --od 14.9+15.1 --bedding 9.9+10.1 --wire 0.9 --entry M20 \\\n"
    "    --hole clearance --wall 2.5 --reach 180 --strip 10";

struct SheetOptions {
  JobOptions job;
  std::string file;
  std::string gland;
  std::string prefer;
  std::string units;
  bool pdf = false;
  bool svg = false;
  bool qr_text = false;
  bool dated = false;
};

job::JobInput read_input(const SheetOptions& options, const Runtime& runtime,
                         std::vector<Fault>& faults) {
  job::JobInput input;
  if (!options.file.empty()) input = io::load_job(options.file);
  std::vector<std::string> taken;
  faults = options.job.fill(input, taken);
  runtime.say_taken(taken);
  return input;
}

/// One kind of result at a time, and a date on pages alone.
void check_results(const SheetOptions& options, const Runtime& runtime,
                   std::vector<Fault>& faults) {
  std::string given;
  int kinds = 0;
  const auto count = [&](bool asked, const char* option) {
    if (!asked) return;
    ++kinds;
    given += (given.empty() ? "" : " ") + std::string(option);
  };
  count(runtime.common.json, "--json");
  count(options.pdf, "--pdf");
  count(options.svg, "--svg");
  count(options.qr_text, "--qr-text");
  const auto contradiction = [&](const char* what, const std::string& where, const char* hint) {
    faults.push_back({.code = ErrorCode::contradiction,
                      .what = what,
                      .where = where,
                      .given = given,
                      .allowed = {},
                      .hint = hint});
  };
  if (kinds > 1) contradiction("one kind of result at a time", "command line", "give one of them");
  if (options.dated && !options.pdf) {
    contradiction("only a page carries a date", "--dated", "add --pdf, or leave it out");
  }
}

/// On the command line everything is measured; from a file one figure would be a datasheet's.
std::string code_text(job::JobInput input, const sheet::Sheet& sheet, job::Unstated unstated) {
  if (unstated == job::Unstated::measured && !input.evidence) {
    input.evidence = measure::Evidence::measured;
  }
  return io::write_job(sheet::with_gland(std::move(input), sheet), -1);
}

job::Unstated unstated_of(const SheetOptions& options) {
  return options.file.empty() ? job::Unstated::measured : job::Unstated::by_notation;
}

/// The sheet in the form that is asked for.
/// What the pages say that they are from; nothing where it cannot be read twice.
std::string source_of(const std::string& path) {
  if (path.empty() || path == "-") return {};
  return run::source_name(path, io::WholeFile(path).text());
}

std::string result_of(const sheet::Sheet& sheet, const job::JobInput& input,
                      const SheetOptions& options, bool inches,
                      const std::vector<Assumption>& remembered, const Runtime& runtime) {
  if (options.pdf) {
    const print::Card card{.tag = sheet.job->tag,
                           .end = sheet.job->end,
                           .sheet = &sheet,
                           .why = {},
                           .remedy = {},
                           .qr_text = code_text(input, sheet, unstated_of(options)),
                           .inches = inches,
                           .decided = on_paper(remembered),
                           .schedule = source_of(options.file)};
    return runtime.extras().sheet_pdf(
        card,
        {.program = runtime.program(), .dated = options.dated ? utc_date(runtime) : std::string()});
  }
  if (options.svg) return runtime.extras().sheet_svg(sheet);
  print::Style style;
  style.colour = runtime.colour();
  style.inches = inches;
  return runtime.common.json ? print::sheet_json(sheet) : print::sheet_text(sheet, style);
}

int run_sheet(const SheetOptions& options, Runtime& runtime) {
  std::vector<Fault> faults;
  check_results(options, runtime, faults);
  if (!faults.empty()) throw InputError(std::move(faults));
  if (options.pdf) runtime.require_no_terminal("--pdf");
  job::JobInput input = read_input(options, runtime, faults);
  Choices choices{.prefer = options.prefer, .units = options.units};
  const std::vector<Assumption> remembered = runtime.remember(input, choices);
  const fit::Prefer prefer = parse_prefer(choices.prefer, faults);
  const bool inches = parse_units(choices.units, faults);
  if (!faults.empty()) throw InputError(std::move(faults));
  const tables::Standards standards = runtime.standards();
  const job::Unstated unstated = unstated_of(options);
  job::Job job = job::resolve(input, standards, unstated);
  job.assumed.insert(job.assumed.end(), remembered.begin(), remembered.end());
  run::require_sheath(job, options.file.empty() ? "--od" : options.file + ": cable.sheath_od_mm");
  const gland::GlandList list = runtime.glands(standards);
  const fit::Question question = fit::ask(job, standards, {.purpose = fit::Purpose::sheet});
  const auto ranked = fit::fit_all(question, list.glands, prefer);
  const std::string gland = options.gland.empty() ? input.gland.value_or("") : options.gland;
  const sheet::Sheet sheet =
      sheet::make_sheet(question, sheet::choose(job, ranked, gland), list.name);
  if (options.qr_text) {
    runtime.emit_as_it_is(code_text(input, sheet, unstated) + "\n");
    return k_exit_fits;
  }
  const std::string result = result_of(sheet, input, options, inches, remembered, runtime);
  if (options.pdf || options.svg) {
    runtime.emit_as_it_is(result);
    if (options.svg && runtime.tables.is_used()) runtime.warn(words_of(runtime.tables));
  } else {
    runtime.emit(result);
  }
  return sheet.state == sheet::State::cut ? k_exit_fits : k_exit_no_fit;
}

}  // namespace

void add_sheet(CLI::App& app, Context& context) {
  const auto options = std::make_shared<SheetOptions>();
  CLI::App* command = app.add_subcommand("sheet", k_description);
  command->footer(k_example);
  context.briefs["sheet"] = {k_example,
                             "[OPTIONS] [job]",
                             {"--od", "--bedding", "--wire", "--entry", "--hole", "--wall",
                              "--reach", "--strip", "--gland", "--pdf"}};
  command->add_option("job", options->file, "Job file (JSON); - is standard input")
      ->type_name("FILE");
  command
      ->add_option("--gland", options->gland, "Make off this gland of the list, by its part code")
      ->type_name("PART")
      ->group("Order");
  add_prefer(*command, options->prefer);
  add_units(*command, options->units);
  command->add_flag("--pdf", options->pdf, "The sheet as pages (PDF, A4), its drawing at true size")
      ->group("Results");
  command->add_flag("--svg", options->svg, "The strip drawing with its marks (SVG), at true size")
      ->group("Results");
  command
      ->add_flag("--qr-text", options->qr_text,
                 "The job as the code on a card holds it: one line of JSON that sheet reads")
      ->group("Results");
  command
      ->add_flag("--dated", options->dated,
                 "Print today's date on the pages, or that of SOURCE_DATE_EPOCH")
      ->group("Results");
  options->job.add(*command, {"cable", "entry", "area", "tails", "fault", ""});
  add_common(*command, context.common, Reads::glands);
  command->callback([options, &context] {
    context.command.run = [options](Runtime& runtime) { return run_sheet(*options, runtime); };
    context.command.needs_extras = [options] { return options->pdf || options->svg; };
  });
}

}  // namespace cutback::cli

#include "cli/command_sheet.hpp"

#include <CLI/CLI.hpp>
#include <memory>

#include "cli/exit_code.hpp"
#include "cli/job_options.hpp"
#include "cli/runtime.hpp"
#include "cutback/error.hpp"
#include "cutback/io/job_file.hpp"
#include "cutback/job/job.hpp"
#include "cutback/print/print.hpp"
#include "cutback/sheet/sheet.hpp"

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
  std::string prefer = "price";
};

job::JobInput read_input(const SheetOptions& options, std::vector<Fault>& faults) {
  job::JobInput input;
  if (!options.file.empty()) input = io::load_job(options.file);
  faults = options.job.fill(input);
  return input;
}

int run_sheet(const SheetOptions& options, Runtime& runtime) {
  std::vector<Fault> faults;
  const job::JobInput input = read_input(options, faults);
  const fit::Prefer prefer = parse_prefer(options.prefer, faults);
  if (!faults.empty()) throw InputError(std::move(faults));
  const tables::Standards standards = runtime.standards();
  const job::Unstated unstated =
      options.file.empty() ? job::Unstated::measured : job::Unstated::by_notation;
  const job::Job job = job::resolve(input, standards, unstated);
  require_sheath(job, options.file.empty() ? "--od" : options.file + ": cable.sheath_od_mm");
  const gland::GlandList list = runtime.glands();
  const fit::Question question = fit::ask(job, standards);
  const auto ranked = fit::fit_all(question, list.glands, prefer);
  const sheet::Sheet sheet = sheet::make_sheet(question, ranked, options.gland, list.name);
  const print::Style style{.colour = runtime.colour(), .all = false};
  runtime.emit(runtime.common.json ? print::sheet_json(sheet) : print::sheet_text(sheet, style));
  const bool armour = !sheet.earth || sheet.earth->armour >= Verdict::not_known;
  const bool fits = armour && sheet.fit && sheet.fit->verdict == Verdict::fits;
  return fits ? k_exit_fits : k_exit_no_fit;
}

}  // namespace

void add_sheet(CLI::App& app, Context& context) {
  const auto options = std::make_shared<SheetOptions>();
  CLI::App* command = app.add_subcommand("sheet", k_description);
  command->footer(k_example);
  command->add_option("job", options->file, "Job file (JSON)")->type_name("FILE");
  command
      ->add_option("--gland", options->gland, "Make off this gland of the list, by its part code")
      ->type_name("PART")
      ->group("Order");
  command
      ->add_option("--prefer", options->prefer,
                   "Order of the glands that fit: price, margin or stock (default price)")
      ->type_name("WORD")
      ->group("Order");
  options->job.add(*command, {"cable", "entry", "area", "tails", "fault", ""});
  add_common(*command, context.common, Reads::glands);
  command->callback([options, &context] {
    context.action = [options](Runtime& runtime) { return run_sheet(*options, runtime); };
  });
}

}  // namespace cutback::cli

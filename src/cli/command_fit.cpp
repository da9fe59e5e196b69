#include "cli/command_fit.hpp"

#include <CLI/CLI.hpp>
#include <memory>

#include "cli/exit_code.hpp"
#include "cli/job_options.hpp"
#include "cli/runtime.hpp"
#include "cutback/error.hpp"
#include "cutback/job/job.hpp"
#include "cutback/print/print.hpp"

namespace cutback::cli {
namespace {

constexpr const char* k_description =
    "Check one cable against the gland list: what fits, best first, and why the rest\n"
    "does not. Readings: 14.9+15.1 is one place measured twice at right angles; a\n"
    "comma begins the next place; inches as 0.59in.";

constexpr const char* k_example =
    "Example: the caliper showed 14.9 and 15.1 on the sheath, 9.9 and 10.1 on the\n"
    "bedding, 0.9 on a wire, and the box has an M20 clearance hole:\n"
    "  cutback fit --od 14.9+15.1 --bedding 9.9+10.1 --wire 0.9 \\\n"
    "    --entry M20 --hole clearance";

struct FitOptions {
  JobOptions job;
  std::string prefer = "price";
  bool all = false;
};

int run_fit(const FitOptions& options, Runtime& runtime) {
  job::JobInput input;
  std::vector<Fault> faults = options.job.fill(input);
  const fit::Prefer prefer = parse_prefer(options.prefer, faults);
  if (!faults.empty()) throw InputError(std::move(faults));
  const tables::Standards standards = runtime.standards();
  const job::Job job = job::resolve(input, standards, job::Unstated::measured);
  require_sheath(job, "--od");
  const gland::GlandList list = runtime.glands();
  const fit::Question question = fit::ask(job, standards);
  const auto ranked = fit::fit_all(question, list.glands, prefer);
  const print::Style style{.colour = runtime.colour(), .all = options.all};
  runtime.emit(runtime.common.json ? print::fit_json(question, ranked)
                                   : print::fit_text(question, ranked, list.name, style));
  const bool fits = !ranked.empty() && ranked.front().verdict == Verdict::fits;
  return fits ? k_exit_fits : k_exit_no_fit;
}

}  // namespace

void add_fit(CLI::App& app, Context& context) {
  const auto options = std::make_shared<FitOptions>();
  CLI::App* command = app.add_subcommand("fit", k_description);
  command->footer(k_example);
  options->job.add(*command, {"cable", "entry", "area", "fault", ""});
  command
      ->add_option("--prefer", options->prefer,
                   "Order of the glands that fit: price, margin or stock (default price)")
      ->type_name("WORD")
      ->group("Order");
  command->add_flag("--all", options->all, "Show every gland with its reason")->group("Order");
  add_common(*command, context.common, Reads::glands);
  command->callback([options, &context] {
    context.action = [options](Runtime& runtime) { return run_fit(*options, runtime); };
  });
}

}  // namespace cutback::cli

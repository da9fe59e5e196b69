#include "cli/command_fit.hpp"

#include <CLI/CLI.hpp>
#include <memory>

#include "cli/exit_code.hpp"
#include "cli/job_options.hpp"
#include "cli/runtime.hpp"
#include "cutback/ask/ask.hpp"
#include "cutback/error.hpp"
#include "cutback/io/drum_file.hpp"
#include "cutback/job/job.hpp"
#include "cutback/measure/drums.hpp"
#include "cutback/print/print.hpp"
#include "run/require_sheath.hpp"

namespace cutback::cli {
namespace {

constexpr const char* k_description =
    "Check one cable against the gland list: what fits, best first, and why the rest\n"
    "does not. Readings: 14.9+15.1 is one place measured twice at right angles; a\n"
    "comma begins the next place; inches as 0.59in.";

constexpr const char* k_example =
    "Example: the caliper showed 14.9 and 15.1 on the sheath, 9.9 and 10.1 on the\n"
    "bedding, 0.9 on a wire; the box has an M20 clearance hole in a wall of 2.5 mm:\n"
    "  cutback fit --od 14.9+15.1 --bedding 9.9+10.1 --wire 0.9 \\\n"
    "    --entry M20 --hole clearance --wall 2.5";

struct FitOptions {
  JobOptions job;
  std::string readings;
  std::string drum;
  bool unmeasured = false;
  bool ask_all = false;
  std::string prefer;
  std::string units;
  bool all = false;
  bool why = false;
  bool sources = false;
};

/// The sheath of one drum of a file of readings, or of a drum that was not measured.
std::optional<measure::Estimate> read_sheath(const FitOptions& options, const job::JobInput& input,
                                             const tables::Standards& standards) {
  if (options.readings.empty()) return std::nullopt;
  measure::DrumsInput in;
  in.drums = io::load_drums(options.readings);
  in.caliper.step_mm = input.step_mm.value_or(job::k_caliper_step_mm);
  in.caliper.mpe_mm = input.mpe_mm;
  in.caliper.zero_mm = input.zero_mm.value_or(0.0);
  in.declared_ovality_mm = input.ovality_mm;
  in.unmeasured = options.unmeasured;
  const measure::DrumsResult result = measure::analyse_drums(in, standards.caliper_limits);
  if (options.unmeasured) return result.estimate;
  std::string names;
  for (const measure::DrumResult& drum : result.drums) {
    if (drum.name == options.drum) return drum.estimate;
    names += (names.empty() ? "" : ", ") + drum.name;
  }
  if (options.drum.empty() && result.drums.size() == 1) return result.drums.front().estimate;
  const bool missing = options.drum.empty();
  throw InputError(Fault{.code = missing ? ErrorCode::missing : ErrorCode::unknown_name,
                         .what = missing ? "which drum of the file?" : "no drum has this name",
                         .where = "--drum",
                         .given = options.drum,
                         .allowed = names,
                         .hint = "or --unmeasured for a drum like these that was not measured"});
}

int run_fit(const FitOptions& options, Runtime& runtime) {
  job::JobInput input;
  std::vector<std::string> taken;
  std::vector<Fault> faults = options.job.fill(input, taken);
  runtime.say_taken(taken);
  Choices choices{.prefer = options.prefer, .units = options.units};
  const std::vector<Assumption> remembered = runtime.remember(input, choices);
  const fit::Prefer prefer = parse_prefer(choices.prefer, faults);
  const bool inches = parse_units(choices.units, faults);
  if (!faults.empty()) throw InputError(std::move(faults));
  const tables::Standards standards = runtime.standards();
  job::Job job = job::resolve(input, standards, job::Unstated::measured,
                              read_sheath(options, input, standards));
  job.assumed.insert(job.assumed.end(), remembered.begin(), remembered.end());
  run::require_sheath(job, "--od");
  const gland::GlandList list = runtime.glands(standards);
  const fit::Question question = fit::ask(
      job, standards, options.ask_all ? ask::asking() : fit::Asking{.purpose = fit::Purpose::fit});
  const auto ranked = fit::fit_all(question, list.glands, prefer);
  const print::Style style{.colour = runtime.colour(),
                           .all = options.all,
                           .why = options.why,
                           .sources = options.sources,
                           .inches = inches};
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
  context.briefs["fit"] = {k_example,
                           "[OPTIONS]",
                           {"--od", "--bedding", "--wire", "--entry", "--hole", "--wall", "--ip",
                            "--zone", "--protection", "--glands"}};
  options->job.add(*command, {"cable", "entry", "area", "fault", ""});
  command
      ->add_option("--readings", options->readings,
                   "Readings of the sheath on a drum (CSV drum,place,value_mm) in place of --od")
      ->type_name("FILE")
      ->group("Drum");
  command->add_option("--drum", options->drum, "Which drum of the file")
      ->type_name("NAME")
      ->group("Drum");
  command
      ->add_flag("--unmeasured", options->unmeasured,
                 "A drum like these that was not measured itself")
      ->group("Drum");
  add_prefer(*command, options->prefer);
  add_units(*command, options->units);
  command
      ->add_flag("--ask-all", options->ask_all,
                 "Ask of entry, joint, place and earth also where nothing of them is given")
      ->group("Order");
  command->add_flag("--why", options->why, "Show every check of the first gland")->group("Order");
  command->add_flag("--all", options->all, "Show every gland with its reason")->group("Order");
  command->add_flag("--sources", options->sources, "Show where each check comes from")
      ->group("Order");
  add_common(*command, context.common, Reads::glands);
  command->callback([options, &context] {
    context.command.run = [options](Runtime& runtime) { return run_fit(*options, runtime); };
  });
}

}  // namespace cutback::cli

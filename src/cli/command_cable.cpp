#include "cli/command_cable.hpp"

#include <CLI/CLI.hpp>
#include <memory>

#include "cli/exit_code.hpp"
#include "cli/job_options.hpp"
#include "cli/runtime.hpp"
#include "cutback/error.hpp"
#include "cutback/job/construction.hpp"
#include "cutback/print/cable.hpp"

namespace cutback::cli {
namespace {

constexpr const char* k_description =
    "Work out a cable's layers and diameters from its construction. The diameters\n"
    "are estimates with a stated error: they show an implausible reading and never\n"
    "pass a gland by themselves.";

constexpr const char* k_example =
    "Example: three cores of 4 mm2, and three of 16 mm2 with an earth core of 6 mm2:\n"
    "  cutback cable --cores 3 --csa 4\n"
    "  cutback cable --cores 3 --csa 16 --earth-csa 6 --insulation pvc";

void need(const std::optional<double>& value, const char* option, const char* what,
          const char* form, std::vector<Fault>& faults) {
  if (value) return;
  faults.push_back({.code = ErrorCode::missing,
                    .what = what,
                    .where = option,
                    .given = {},
                    .allowed = form,
                    .hint = {}});
}

/// The faults with the option that was typed in place of the key.
InputError with_options(const InputError& error) {
  std::vector<Fault> faults = error.faults();
  for (Fault& fault : faults) {
    for (const job::Field& field : job::fields()) {
      if (field.key == fault.where && !field.option.empty()) fault.where = field.option;
    }
  }
  return InputError(std::move(faults));
}

int run_cable(const JobOptions& options, Runtime& runtime) {
  job::JobInput input;
  std::vector<std::string> taken;
  std::vector<Fault> faults = options.fill(input, taken);
  runtime.say_taken(taken);
  if (!faults.empty()) throw InputError(std::move(faults));
  need(input.cores, "--cores", "the number of cores is needed", "1 to 61", faults);
  need(input.csa_mm2, "--csa", "the cross-section of a core is needed", "a standard size in mm2",
       faults);
  if (!faults.empty()) throw InputError(std::move(faults));
  const tables::Standards standards = runtime.standards();
  try {
    const cable::Construction cable = cable::construct(*job::construction_input(input), standards);
    const print::Style style{.colour = runtime.colour()};
    runtime.emit(runtime.common.json ? print::cable_json(cable) : print::cable_text(cable, style));
  } catch (const InputError& error) {
    throw with_options(error);
  }
  return k_exit_fits;
}

}  // namespace

void add_cable(CLI::App& app, Context& context) {
  const auto options = std::make_shared<JobOptions>();
  CLI::App* command = app.add_subcommand("cable", k_description);
  command->footer(k_example);
  options->add_keys(*command, {"cores", "csa_mm2", "earth_csa_mm2", "insulation", "voltage",
                               "conductor", "armour", "pattern"});
  add_common(*command, context.common, Reads::no_glands);
  command->callback([options, &context] {
    context.command.run = [options](Runtime& runtime) { return run_cable(*options, runtime); };
  });
}

}  // namespace cutback::cli

#include "cli/command_readings.hpp"

#include <CLI/CLI.hpp>
#include <array>
#include <memory>

#include "cli/exit_code.hpp"
#include "cli/number_option.hpp"
#include "cli/runtime.hpp"
#include "cutback/error.hpp"
#include "cutback/io/drum_file.hpp"
#include "cutback/measure/drums.hpp"
#include "cutback/print/readings.hpp"

namespace cutback::cli {
namespace {

constexpr const char* k_description =
    "What a set of readings says about a drum: the diameter at a place not measured\n"
    "yet, whether it lies in a seal's range, and how many more places would settle\n"
    "it. FILE is CSV with the columns drum, place and value_mm, one reading a row;\n"
    "rows with the same drum and place are one place. A register of finished ends\n"
    "serves as well: the sheath of every row that names its drum.";

constexpr const char* k_example =
    "Example: will the rest of these drums suit a seal for 11 to 16 mm?\n"
    "  cutback readings drums.csv --step 0.02 --low 11 --high 16";

/// What was typed; an empty text was not given.
struct ReadingsOptions {
  std::string file, step, mpe, zero, along, between, ovality, low, high, confidence;
  bool unmeasured = false;
};

struct NumberOption {
  const char* name;
  std::string ReadingsOptions::*text;
  const char* type;
  const char* group;
  NumberLimits limits;
  const char* help;
};

constexpr NumberLimits k_diameter{0, measure::k_largest_diameter_mm, "mm"};

constexpr std::array<NumberOption, 9> k_numbers{{
    {"--low", &ReadingsOptions::low, "mm", "Range", k_diameter, "Smallest diameter that will do"},
    {"--high", &ReadingsOptions::high, "mm", "Range", k_diameter, "Largest diameter that will do"},
    {"--step",
     &ReadingsOptions::step,
     "mm",
     "Caliper",
     {0, 1, "mm"},
     "Step of the vernier or display (default 0.05)"},
    {"--mpe",
     &ReadingsOptions::mpe,
     "mm",
     "Caliper",
     {0, 5, "mm"},
     "Permissible error, plus or minus (default by step, DIN 862)"},
    {"--zero",
     &ReadingsOptions::zero,
     "mm",
     "Caliper",
     {-5, 5, "mm"},
     "Reading with the jaws closed; it is subtracted"},
    {"--along",
     &ReadingsOptions::along,
     "mm",
     "Drums",
     {0, 50, "mm"},
     "How far a drum may vary about its own mean, plus or minus, where no drum has two places"},
    {"--between",
     &ReadingsOptions::between,
     "mm",
     "Drums",
     {0, 50, "mm"},
     "How far the mean of a drum may lie from the mean of all, plus or minus, where one drum was "
     "measured and --unmeasured asks for another"},
    {"--ovality",
     &ReadingsOptions::ovality,
     "mm",
     "Drums",
     {0, 50, "mm"},
     "Largest less smallest diameter, where it is known"},
    {"--confidence",
     &ReadingsOptions::confidence,
     "RATIO",
     "Drums",
     {0.5, 0.9999, "as a ratio"},
     "How often the interval is to hold (default 0.95)"},
}};

measure::DrumsInput read_input(const ReadingsOptions& options) {
  std::vector<Fault> faults;
  const auto number = [&](std::string ReadingsOptions::*text) {
    for (const NumberOption& option : k_numbers) {
      if (option.text == text) {
        return read_number(options.*text, option.name, option.limits, faults);
      }
    }
    throw InternalError("an option without limits");
  };
  measure::DrumsInput in;
  in.range = {number(&ReadingsOptions::low), number(&ReadingsOptions::high)};
  in.caliper.step_mm = number(&ReadingsOptions::step).value_or(in.caliper.step_mm);
  in.caliper.mpe_mm = number(&ReadingsOptions::mpe);
  in.caliper.zero_mm = number(&ReadingsOptions::zero).value_or(0.0);
  in.along_mm = number(&ReadingsOptions::along);
  in.between_mm = number(&ReadingsOptions::between);
  in.declared_ovality_mm = number(&ReadingsOptions::ovality);
  in.level_ratio = number(&ReadingsOptions::confidence).value_or(in.level_ratio);
  in.unmeasured = options.unmeasured;
  if (options.file.empty()) {
    faults.push_back({.code = ErrorCode::missing,
                      .what = "a file with readings is needed",
                      .where = "FILE",
                      .given = {},
                      .allowed = "CSV with the columns drum, place and value_mm",
                      .hint = {}});
  }
  if (!faults.empty()) throw InputError(std::move(faults));
  in.drums = io::load_drums(options.file);
  return in;
}

int run_readings(const ReadingsOptions& options, Runtime& runtime) {
  const measure::DrumsInput in = read_input(options);
  const tables::Standards standards = runtime.standards();
  const measure::DrumsResult result = measure::analyse_drums(in, standards.caliper_limits);
  const print::Style style{.colour = runtime.colour()};
  std::string error_source = standards.table("caliper_limits").source();
  if (!measure::coarse_step_note(in.caliper, standards.caliper_limits).empty()) {
    error_source =
        "the step itself, for no published row is so coarse (common practice, no source)";
  }
  runtime.emit(runtime.common.json ? print::readings_json(in, result)
                                   : print::readings_text(in, result, error_source, style));
  const Verdict verdict = result.judgement.verdict;
  // Without a range nothing was asked that could fail.
  return verdict == Verdict::fits || verdict == Verdict::not_known ? k_exit_fits : k_exit_no_fit;
}

}  // namespace

void add_readings(CLI::App& app, Context& context) {
  const auto options = std::make_shared<ReadingsOptions>();
  CLI::App* command = app.add_subcommand("readings", k_description);
  command->footer(k_example);
  command->add_option("FILE", options->file, "The readings");
  for (const NumberOption& option : k_numbers) {
    command->add_option(option.name, (*options).*option.text, option.help)
        ->type_name(option.type)
        ->group(option.group);
  }
  command
      ->add_flag("--unmeasured", options->unmeasured,
                 "Ask about a drum that was not measured, from those that were")
      ->group("Drums");
  add_common(*command, context.common, Reads::no_glands);
  command->callback([options, &context] {
    context.command.run = [options](Runtime& runtime) { return run_readings(*options, runtime); };
  });
}

}  // namespace cutback::cli

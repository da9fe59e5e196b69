#include "cli/command_earth.hpp"

#include <CLI/CLI.hpp>

#include <array>
#include <cmath>
#include <memory>
#include <optional>
#include <span>
#include <vector>

#include "cli/exit_code.hpp"
#include "cli/job_options.hpp"
#include "cli/number_option.hpp"
#include "cli/runtime.hpp"
#include "cutback/earth/armour_earth.hpp"
#include "cutback/error.hpp"
#include "cutback/job/job.hpp"
#include "cutback/nearest.hpp"
#include "cutback/number.hpp"
#include "cutback/print/earth.hpp"

namespace cutback::cli {
namespace {

constexpr const char* k_description =
    "Is the armour of a cable enough as its protective conductor? By calculation,\n"
    "by table, and against the gland's declared rating; and what resistance it has.";

constexpr const char* k_example =
    "Example: 2-core 10 mm2 XLPE cable with 26 mm2 of armour, 2.555 kA cleared in\n"
    "0.1 s, gland rated 4 kA for 1 s:\n"
    "  cutback earth --area 26 --insulation xlpe --csa 10 --fault-ka 2.555 \\\n"
    "      --time 0.1 --gland-ka 4";

/// What was typed: the cable and the fault as for every other command, and what is asked here
/// alone. An empty text was not given.
struct EarthOptions {
  JobOptions job;
  std::string area, wires, line_k, let_through, gland_ka, lay, hot, start, end, insulation,
      conductor_material;
};

/// An option that takes a number, and its closed limits.
struct NumberOption {
  const char* name;
  std::string EarthOptions::*text;
  const char* unit;
  const char* group;
  double min;
  double max;
  const char* help;
};

constexpr std::array<NumberOption, 9> k_numbers{{
    {"--area", &EarthOptions::area, "mm2", "Armour", 0.1, 10000, "Gross area of the armour"},
    {"--wires", &EarthOptions::wires, "N", "Armour", 1, 1000, "Armour wires, counted; with --wire"},
    {"--start", &EarthOptions::start, "degC", "Armour", -50, 400,
     "Its temperature when the fault begins, in place of the table's; with --final"},
    {"--final", &EarthOptions::end, "degC", "Armour", 0, 1000,
     "Temperature that the cable allows it after the fault"},
    {"--lay", &EarthOptions::lay, "RATIO", "Armour", 1, 1.5,
     "Length of a wire over that of the cable (default 1.074, from memory)"},
    {"--hot", &EarthOptions::hot, "degC", "Armour", -50, 250,
     "Its temperature in service (default: the one that its k is for)"},
    {"--line-k", &EarthOptions::line_k, "K", "Line conductor", 10, 300,
     "Its k, where it is not the one of the insulation"},
    {"--let-through", &EarthOptions::let_through, "A2s", "Earth fault", 1, 1e12,
     "Let-through energy of the device, for less than 0.1 s"},
    {"--gland-ka", &EarthOptions::gland_ka, "kA", "Earth fault", 0.01, 1000,
     "Rating that the gland's papers declare for 1 s"},
}};

constexpr std::array<std::string_view, 6> k_insulations{"pvc", "pvc90",    "xlpe",
                                                        "epr", "rubber60", "rubber85"};
constexpr std::array<std::string_view, 2> k_line_materials{"copper", "aluminium"};

/// A copper or aluminium conductor; nothing else carries a line.
std::optional<earth::Material> parse_line_material(std::string_view word) {
  const auto material = earth::parse_material(word);
  const bool usable = material == earth::Material::copper || material == earth::Material::aluminium;
  return usable ? material : std::nullopt;
}

/// Reads the numbers and words, and collects what is wrong with them.
class Reader {
 public:
  Reader(const EarthOptions& options, const Runtime& runtime) : options_(options) {
    std::vector<std::string> taken;
    add(options.job.fill(input, taken));
    runtime.say_taken(taken);
  }

  std::optional<double> number(const char* name) {
    for (const NumberOption& option : k_numbers) {
      if (std::string_view(option.name) == name) return read(option);
    }
    throw InternalError(std::string("no option ") + name);
  }

  template <class Value>
  std::optional<Value> word(const char* name, const std::string& text,
                            std::optional<Value> (*parse)(std::string_view),
                            std::span<const std::string_view> words, const char* allowed) {
    if (text.empty()) return std::nullopt;
    const std::optional<Value> value = parse(text);
    if (!value) {
      fault(ErrorCode::bad_value, "not a choice", name, text, allowed, did_you_mean(text, words));
    }
    return value;
  }

  void fault(ErrorCode code, std::string what, const char* where, std::string given,
             std::string allowed, std::string hint = {}) {
    faults_.push_back({.code = code,
                       .what = std::move(what),
                       .where = where,
                       .given = std::move(given),
                       .allowed = std::move(allowed),
                       .hint = std::move(hint)});
  }
  void add(const std::vector<Fault>& more) {
    faults_.insert(faults_.end(), more.begin(), more.end());
  }

  void finish() {
    if (!faults_.empty()) throw InputError(std::move(faults_));
  }

  job::JobInput input;  ///< what is asked as for every other command

 private:
  std::optional<double> read(const NumberOption& option) {
    return read_number(options_.*option.text, option.name, {option.min, option.max, option.unit},
                       faults_);
  }

  const EarthOptions& options_;
  std::vector<Fault> faults_;
};

/// What is given twice, or without what goes with it.
void check_area(Reader& reader, const std::optional<double>& area,
                const std::optional<double>& wires) {
  const job::JobInput& in = reader.input;
  if (area && (wires || in.armour_mm || in.bedding_mm)) {
    reader.fault(ErrorCode::contradiction, "the area is given twice",
                 wires          ? "--area and --wires"
                 : in.armour_mm ? "--area and --wire"
                                : "--area and --bedding",
                 {}, "one of them");
  }
  const bool constructed = in.cores && in.csa_mm2;
  if (wires && !in.armour_mm) {
    reader.fault(ErrorCode::missing, "the wires are counted, but how thick one is, is not given",
                 "--wire", {}, "a diameter in mm");
  }
  if (in.armour_mm && !area && !wires && !in.bedding_mm && !constructed) {
    reader.fault(ErrorCode::missing, "a wire alone gives no area", "--wires", {},
                 "the number of wires, the bedding's diameter, or --cores and --csa");
  }
  if (in.bedding_mm && !area && !wires && !in.armour_mm && !constructed) {
    reader.fault(ErrorCode::missing, "a bedding alone gives no area", "--wire", {},
                 "the diameter of a wire, or --cores and --csa");
  }
  if (wires && *wires != std::floor(*wires)) {
    reader.fault(ErrorCode::bad_number, "not a whole number", "--wires", plain(*wires),
                 "the number of wires");
  }
}

/// What nothing can be said of.
void check_asked(Reader& reader, const std::optional<double>& area,
                 const std::optional<double>& let_through) {
  const job::JobInput& in = reader.input;
  if (area || in.armour_mm || in.bedding_mm || in.csa_mm2 || in.current_ka || in.time_s ||
      in.loop_ohm || let_through) {
    return;
  }
  reader.fault(ErrorCode::missing, "nothing to work with", "--area", {},
               "the armour's area, its counted wires, a line conductor or a fault",
               "for example --wires 34 --wire 1.25");
}

earth::EarthInput read_input(const EarthOptions& options, const Runtime& runtime,
                             const tables::Standards& standards) {
  Reader reader(options, runtime);
  const auto insulation = reader.word("--insulation", options.insulation, earth::parse_insulation,
                                      k_insulations, "pvc, pvc90, xlpe, epr, rubber60 or rubber85");
  if (insulation) {
    const bool pvc =
        *insulation == earth::Insulation::pvc || *insulation == earth::Insulation::pvc90;
    reader.input.insulation = pvc ? cable::Insulation::pvc : cable::Insulation::xlpe;
  }
  const auto line = reader.word("--conductor-material", options.conductor_material,
                                parse_line_material, k_line_materials, "copper or aluminium");
  const auto area = reader.number("--area");
  const auto wires = reader.number("--wires");
  const auto start = reader.number("--start");
  const auto end = reader.number("--final");
  const auto line_k = reader.number("--line-k");
  const auto let_through = reader.number("--let-through");
  const auto gland_ka = reader.number("--gland-ka");
  const auto lay = reader.number("--lay");
  const auto hot = reader.number("--hot");
  check_area(reader, area, wires);
  reader.finish();
  check_asked(reader, area, let_through);
  reader.finish();
  const job::Job job = job::resolve(reader.input, standards, job::Unstated::measured);
  earth::EarthInput in = job::armour_earth_input(job, standards);
  if (area) in.armour = earth::ArmourArea{.area_mm2 = *area, .origin = "as given"};
  if (wires) in.armour = earth::counted_area(static_cast<int>(*wires), job.cable);
  if (insulation) in.insulation = insulation;
  if (line) in.line_material = *line;
  in.start_degc = start;
  in.final_degc = end;
  in.line_k = line_k;
  in.fault.let_through_a2s = let_through;
  in.gland_ka = gland_ka;
  in.lay_ratio = lay;
  in.hot_degc = hot;
  return in;
}

print::EarthAsked asked_of(const earth::EarthInput& in) {
  return {.fault = earth::is_asked(in.fault),
          .line = in.line_mm2.has_value(),
          .gland = in.gland_ka.has_value(),
          .resistance = in.length_m.has_value()};
}

/// All that was asked is known and enough.
bool is_enough(const print::EarthAsked& asked, const earth::EarthResult& result) {
  const bool armour = !(asked.fault || asked.line) || result.armour == Verdict::fits;
  const bool gland = !asked.gland || result.gland.verdict == Verdict::fits;
  const bool resistance = !asked.resistance || result.resistance.verdict == Verdict::fits;
  return armour && gland && resistance;
}

int run_earth(const EarthOptions& options, Runtime& runtime) {
  const tables::Standards standards = runtime.standards();
  const earth::EarthInput in = read_input(options, runtime, standards);
  const earth::EarthResult result = earth::check_armour_earth(in, standards);
  const print::EarthAsked asked = asked_of(in);
  runtime.emit(runtime.common.json
                   ? print::earth_json(result, asked)
                   : print::earth_text(result, asked, {.colour = runtime.colour(), .all = false}));
  return is_enough(asked, result) ? k_exit_fits : k_exit_no_fit;
}

}  // namespace

void add_earth(CLI::App& app, Context& context) {
  const auto options = std::make_shared<EarthOptions>();
  CLI::App* command = app.add_subcommand("earth", k_description);
  command->footer(k_example);
  options->job.add_keys(
      *command, {"bedding_mm", "armour_mm", "cores", "csa_mm2", "length_m", "armour_material"});
  options->job.add(*command, {"fault"});
  for (const NumberOption& option : k_numbers) {
    command->add_option(option.name, (*options).*option.text, option.help)
        ->type_name(option.unit)
        ->group(option.group);
  }
  command
      ->add_option("--insulation", options->insulation,
                   "Of the cable: pvc, pvc90, xlpe, epr, rubber60 or rubber85")
      ->type_name("WORD")
      ->group("Armour");
  command
      ->add_option("--conductor-material", options->conductor_material,
                   "copper or aluminium (default copper)")
      ->type_name("WORD")
      ->group("Line conductor");
  add_common(*command, context.common, Reads::no_glands);
  command->callback([options, &context] {
    context.command.run = [options](Runtime& runtime) { return run_earth(*options, runtime); };
  });
}

}  // namespace cutback::cli

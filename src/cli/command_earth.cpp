#include "cli/command_earth.hpp"

#include <CLI/CLI.hpp>

#include <array>
#include <cmath>
#include <memory>
#include <optional>
#include <span>
#include <vector>

#include "cli/exit_code.hpp"
#include "cli/number_option.hpp"
#include "cli/runtime.hpp"
#include "cutback/cable/armour.hpp"
#include "cutback/earth/armour_earth.hpp"
#include "cutback/error.hpp"
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

/// What was typed; an empty text was not given.
struct EarthOptions {
  std::string area, wires, wire, cores, csa, line_k, fault_ka, time, let_through, gland_ka, length,
      lay, hot, loop, start, end, insulation, armour_material, conductor_material;
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

constexpr std::array<NumberOption, 16> k_numbers{{
    {"--area", &EarthOptions::area, "mm2", "Armour", 0.1, 10000, "Gross area of the armour"},
    {"--wires", &EarthOptions::wires, "N", "Armour", 1, 1000, "Armour wires, counted; with --wire"},
    {"--wire", &EarthOptions::wire, "mm", "Armour", 0.1, 10, "Diameter of one armour wire"},
    {"--cores", &EarthOptions::cores, "N", "Armour", 1, 61,
     "Cores, where the armour is to be worked out from the construction; with --csa"},
    {"--start", &EarthOptions::start, "degC", "Armour", -50, 400,
     "Its temperature when the fault begins, in place of the table's; with --final"},
    {"--final", &EarthOptions::end, "degC", "Armour", 0, 1000,
     "Temperature that the cable allows it after the fault"},
    {"--csa", &EarthOptions::csa, "mm2", "Line conductor", 0.1, 2000, "Its cross-section"},
    {"--line-k", &EarthOptions::line_k, "K", "Line conductor", 10, 300,
     "Its k, where it is not the one of the insulation"},
    {"--fault-ka", &EarthOptions::fault_ka, "kA", "Earth fault", 0.001, 1000, "Current"},
    {"--time", &EarthOptions::time, "s", "Earth fault", 0.001, 60,
     "Time until the protection clears it"},
    {"--let-through", &EarthOptions::let_through, "A2s", "Earth fault", 1, 1e12,
     "Let-through energy of the device, for less than 0.1 s"},
    {"--gland-ka", &EarthOptions::gland_ka, "kA", "Earth fault", 0.01, 1000,
     "Rating that the gland's papers declare for 1 s"},
    {"--loop", &EarthOptions::loop, "ohm", "Earth fault", 0.0001, 10000,
     "Impedance of the whole earth-fault loop; with --length"},
    {"--length", &EarthOptions::length, "m", "Resistance", 0.1, 100000, "Length of the cable"},
    {"--lay", &EarthOptions::lay, "RATIO", "Resistance", 1, 1.5,
     "Length of a wire over that of the cable (default 1.048, from memory)"},
    {"--hot", &EarthOptions::hot, "degC", "Resistance", -50, 250,
     "Temperature of the armour in service (default 60)"},
}};

/// Reads the numbers and words, and collects what is wrong with them.
class Reader {
 public:
  explicit Reader(const EarthOptions& options) : options_(options) {}

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
             std::string allowed, std::string hint) {
    faults_.push_back({.code = code,
                       .what = std::move(what),
                       .where = where,
                       .given = std::move(given),
                       .allowed = std::move(allowed),
                       .hint = std::move(hint)});
  }

  void finish() {
    if (!faults_.empty()) throw InputError(std::move(faults_));
  }

 private:
  std::optional<double> read(const NumberOption& option) {
    return read_number(options_.*option.text, option.name, {option.min, option.max, option.unit},
                       faults_);
  }

  const EarthOptions& options_;
  std::vector<Fault> faults_;
};

constexpr std::array<std::string_view, 6> k_insulations{"pvc", "pvc90",    "xlpe",
                                                        "epr", "rubber60", "rubber85"};
constexpr std::array<std::string_view, 4> k_materials{"copper", "aluminium", "steel", "lead"};
constexpr std::array<std::string_view, 2> k_line_materials{"copper", "aluminium"};

/// A copper or aluminium conductor; nothing else carries a line.
std::optional<earth::Material> parse_line_material(std::string_view word) {
  const auto material = earth::parse_material(word);
  const bool usable = material == earth::Material::copper || material == earth::Material::aluminium;
  return usable ? material : std::nullopt;
}

void read_words(const EarthOptions& options, Reader& reader, earth::EarthInput& in) {
  in.insulation = reader.word("--insulation", options.insulation, earth::parse_insulation,
                              k_insulations, "pvc, pvc90, xlpe, epr, rubber60 or rubber85");
  const auto armour =
      reader.word("--armour-material", options.armour_material, earth::parse_material, k_materials,
                  "steel, aluminium, copper or lead");
  in.armour_material = armour.value_or(earth::Material::steel);
  const auto line = reader.word("--conductor-material", options.conductor_material,
                                parse_line_material, k_line_materials, "copper or aluminium");
  in.line_material = line.value_or(earth::Material::copper);
}

/// The armour of a wire-armoured cable of these cores, where they are given.
std::optional<earth::ArmourArea> constructed(Reader& reader, const earth::EarthInput& in,
                                             const tables::Standards& standards) {
  const auto cores = reader.number("--cores");
  const auto csa = reader.number("--csa");
  if (!cores || !csa) return std::nullopt;
  if (*cores != std::floor(*cores)) {
    reader.fault(ErrorCode::bad_number, "not a whole number", "--cores", plain(*cores),
                 "the number of cores", {});
    return std::nullopt;
  }
  cable::ConstructionInput input;
  input.cores = static_cast<int>(*cores);
  input.csa_mm2 = *csa;
  const bool pvc =
      in.insulation == earth::Insulation::pvc || in.insulation == earth::Insulation::pvc90;
  input.insulation = pvc ? cable::Insulation::pvc : cable::Insulation::xlpe;
  return earth::constructed_area(cable::construct(input, standards));
}

/// The area as given, or from counted wires, or from the construction. A wire in a standard band
/// counts with its nominal.
std::optional<earth::ArmourArea> read_area(Reader& reader, const earth::EarthInput& in,
                                           const tables::Standards& standards) {
  const auto area = reader.number("--area");
  const auto wires = reader.number("--wires");
  const auto wire = reader.number("--wire");
  if (area && (wires || wire)) {
    reader.fault(ErrorCode::contradiction, "the area is given twice", "--area and --wires", {},
                 "one of them", {});
    return std::nullopt;
  }
  if (area) return earth::ArmourArea{*area, "as given", 0.0};
  if (wires.has_value() != wire.has_value()) {
    reader.fault(ErrorCode::missing, "--wires and --wire go together", wires ? "--wire" : "--wires",
                 {}, wires ? "a diameter in mm" : "the number of wires", {});
    return std::nullopt;
  }
  if (!wires) return constructed(reader, in, standards);
  if (*wires != std::floor(*wires)) {
    reader.fault(ErrorCode::bad_number, "not a whole number", "--wires", plain(*wires),
                 "the number of wires", {});
    return std::nullopt;
  }
  const auto band = cable::wire_band(standards.wire_bands, *wire);
  return earth::counted_area(static_cast<int>(*wires), band ? band->nominal_mm : *wire);
}

earth::EarthInput read_input(const EarthOptions& options, const tables::Standards& standards) {
  Reader reader(options);
  earth::EarthInput in;
  read_words(options, reader, in);
  in.armour = read_area(reader, in, standards);
  in.start_degc = reader.number("--start");
  in.final_degc = reader.number("--final");
  in.line_mm2 = reader.number("--csa");
  in.line_k = reader.number("--line-k");
  in.fault = {reader.number("--fault-ka"), reader.number("--time"), reader.number("--let-through")};
  in.gland_ka = reader.number("--gland-ka");
  in.length_m = reader.number("--length");
  in.lay_ratio = reader.number("--lay").value_or(in.lay_ratio);
  in.hot_degc = reader.number("--hot").value_or(in.hot_degc);
  in.loop_ohm = reader.number("--loop");
  if (in.loop_ohm && options.length.empty()) {
    reader.fault(ErrorCode::missing, "--loop needs the length of the cable", "--length", {},
                 "a length in m", {});
  }
  reader.finish();
  if (!in.armour && !in.line_mm2 && !in.fault.current_ka && !in.fault.let_through_a2s) {
    reader.fault(ErrorCode::missing, "nothing to work with", "--area", {},
                 "the armour's area, its counted wires, a line conductor or a fault",
                 "for example --wires 34 --wire 1.25");
    reader.finish();
  }
  return in;
}

print::EarthAsked asked_of(const earth::EarthInput& in) {
  const bool fault = in.fault.current_ka || in.fault.time_s || in.fault.let_through_a2s;
  return {.fault = fault,
          .line = in.line_mm2.has_value(),
          .gland = in.gland_ka.has_value(),
          .resistance = in.length_m.has_value()};
}

int run_earth(const EarthOptions& options, Runtime& runtime) {
  const tables::Standards standards = runtime.standards();
  const earth::EarthInput in = read_input(options, standards);
  const earth::EarthResult result = earth::check_armour_earth(in, standards);
  const print::EarthAsked asked = asked_of(in);
  runtime.emit(runtime.common.json
                   ? print::earth_json(result, asked)
                   : print::earth_text(result, asked, {.colour = runtime.colour(), .all = false}));
  const bool armour = !(asked.fault || asked.line) || result.armour == Verdict::fits;
  const bool gland = !asked.gland || result.gland.verdict == Verdict::fits;
  return armour && gland ? k_exit_fits : k_exit_no_fit;
}

}  // namespace

void add_earth(CLI::App& app, Context& context) {
  const auto options = std::make_shared<EarthOptions>();
  CLI::App* command = app.add_subcommand("earth", k_description);
  command->footer(k_example);
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
      ->add_option("--armour-material", options->armour_material,
                   "steel, aluminium, copper or lead (default steel)")
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

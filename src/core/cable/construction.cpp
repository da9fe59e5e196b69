#include "cutback/cable/construction.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <cmath>

#include "core/cable/construction_input.hpp"
#include "core/cable/lookup.hpp"
#include "cutback/cable/fictitious.hpp"

namespace cutback::cable {
namespace {

using detail::row_of;
using detail::row_up_to;
using tables::Standards;
using tables::Table;

// Untested constructions: the stated error grows by half (our choice, no source).
constexpr double k_untested_factor = 1.5;

std::string mm(double value) { return plain(value, 2); }

/// The result while it is being made, with each source named once.
struct Build {
  const Standards& standards;
  Construction out;
  std::vector<CoreSize> cores;
  tables::Status insulation = tables::Status::checked;  ///< the weakest of its cores

  const Table& use(std::string_view id) {
    const Table& table = standards.table(id);
    name(table.source());
    return table;
  }
  void name(const std::string& source) {
    auto& sources = out.sources;
    if (std::find(sources.begin(), sources.end(), source) == sources.end())
      sources.push_back(source);
  }
  void step(std::string text) { out.steps.push_back(std::move(text)); }
  void steps(const std::vector<std::string>& more) {
    out.steps.insert(out.steps.end(), more.begin(), more.end());
  }
  void caution(std::string text) { out.cautions.push_back(std::move(text)); }
  [[nodiscard]] bool single() const { return cores.size() == 1; }
  [[nodiscard]] bool unequal() const {
    return out.in.earth_csa_mm2 && *out.in.earth_csa_mm2 != out.in.csa_mm2;
  }
};

double insulation_of(Build& build, double csa_mm2) {
  const ConstructionInput& in = build.out.in;
  const auto found = insulation_thickness(build.standards, *in.insulation, in.voltage, in.pattern,
                                          in.cores, csa_mm2);
  if (!found) {
    throw InputError(Fault{.code = ErrorCode::bad_value,
                           .what = "no table row for this insulation",
                           .where = "csa_mm2",
                           .given = plain(csa_mm2),
                           .allowed = {},
                           .hint = "give another insulation, voltage or size"});
  }
  build.name(found->source);
  build.insulation = std::max(build.insulation, found->status);
  build.step(fmt::format("insulation of {} mm2, {}: {} mm ({})", plain(csa_mm2),
                         to_string(*in.insulation), mm(found->thickness_mm), found->source));
  return found->thickness_mm;
}

void make_cores(Build& build) {
  const ConstructionInput& in = build.out.in;
  const double insulation = insulation_of(build, in.csa_mm2);
  build.out.layers.insulation_mm = insulation;
  build.cores.assign(static_cast<std::size_t>(in.cores), CoreSize{in.csa_mm2, insulation});
  if (in.earth_csa_mm2) {
    const double earth = build.unequal() ? insulation_of(build, *in.earth_csa_mm2) : insulation;
    build.cores.push_back({*in.earth_csa_mm2, earth});
  }
}

/// The fictitious cores, with a line for each size.
std::vector<double> fictitious_cores(Build& build) {
  std::vector<double> cores_mm;
  for (const CoreSize& core : build.cores) {
    const bool first_of_size = cores_mm.empty() || core.csa_mm2 != build.cores.front().csa_mm2;
    cores_mm.push_back(fictitious_core_mm(build.standards, core));
    if (!first_of_size) continue;
    build.step(fmt::format(
        "fictitious core, {} mm2: {} + 2 x {} = {} mm (as IEC 60502-1 Table A.1)",
        plain(core.csa_mm2), fixed(fictitious_conductor_mm(build.standards, core.csa_mm2), 1),
        mm(core.insulation_mm), fixed(cores_mm.back(), 1)));
  }
  const bool sectors = detail::is_sectoral(build.standards, build.out.in.csa_mm2);
  build.use(sectors ? "sectoral_conductors" : "fictitious_conductors");
  return cores_mm;
}

/// `3.7` or `(3 x 3.7 + 3.2) / 4`.
std::string mean_words(const std::vector<double>& cores_mm) {
  if (cores_mm.front() == cores_mm.back()) return fixed(cores_mm.front(), 1);
  return fmt::format("({} x {} + {}) / {}", cores_mm.size() - 1, fixed(cores_mm.front(), 1),
                     fixed(cores_mm.back(), 1), cores_mm.size());
}

void british_layers(Build& build) {
  constexpr double k_three_cores = 2.15;  // 2.16 misses 2 of the 13 printed three-core rows
  const std::vector<double> cores_mm = fictitious_cores(build);
  const int count = static_cast<int>(cores_mm.size());
  const double k = count == 3 ? k_three_cores : assembly_coefficient(build.standards, count);
  const double laid_up = fictitious_laid_up_mm(cores_mm, k);
  build.out.fictitious_laid_up_mm = laid_up;
  build.use("assembly_coefficients");
  if (!build.single()) {
    build.step(
        fmt::format("fictitious, over the laid-up cores: {} x {} = {} mm (as IEC 60502-1 A.2.2)",
                    fixed(k, 2), mean_words(cores_mm), fixed(laid_up, 1)));
  }
  const Table& table = build.use("british_layers");
  const std::size_t row = row_up_to(table, "laid_up_max_mm", laid_up);
  Layers& layers = build.out.layers;
  layers.bedding_mm = table.number(row, "bedding_mm");
  layers.armour_mm = table.number(row, "wire_mm");
  const double under = laid_up + 2.0 * layers.bedding_mm + 2.0 * *layers.armour_mm;
  layers.oversheath_mm =
      oversheath_thickness_mm(build.standards, "british", under, true, build.single());
  build.use("oversheath_rules");
  build.step(fmt::format("at {} mm: bedding {} mm, armour wire {} mm (British-pattern layers)",
                         fixed(laid_up, 1), mm(layers.bedding_mm), mm(*layers.armour_mm)));
  build.step(fmt::format("oversheath: 0.028 x ({} + 2 x {} + 2 x {}) + 1.1 = {} mm",
                         fixed(laid_up, 1), mm(layers.bedding_mm), mm(*layers.armour_mm),
                         fixed(layers.oversheath_mm, 1)));
  build.caution(
      "the British-pattern layer rule is a reconstruction that matches the printed rows of "
      "HD 604 S1/A1, not a clause that was read");
  if (table.text(row, "status") != to_string(tables::Status::derived)) {
    build.caution("no printed row has laid-up cores this thick: bedding and wire are from memory");
  }
}

void iec_layers(Build& build) {
  const ConstructionInput& in = build.out.in;
  fictitious_cores(build);
  const Fictitious fictitious =
      fictitious_diameters({.cores = build.cores, .armour = in.armour}, build.standards);
  build.out.fictitious_laid_up_mm = fictitious.laid_up_mm;
  build.steps(fictitious.steps);
  build.use("assembly_coefficients");
  const Table& covering = build.use("iec_inner_covering");
  const std::size_t row = row_up_to(covering, "laid_up_max_mm", fictitious.laid_up_mm);
  Layers& layers = build.out.layers;
  layers.armour_mm = fictitious.armour_mm;
  layers.oversheath_mm = fictitious.oversheath_mm;
  if (in.armour != ArmourKind::none) {
    layers.bedding_mm = covering.number(row, "extruded_mm");
  } else if (!build.single()) {
    layers.bedding_mm = covering.number(row, "fictitious_mm");
    build.caution(
        "inner covering of an unarmoured cable: lapped, approximate thickness from memory; it "
        "may be left out where the laid-up cores are round enough");
  }
  build.use("oversheath_rules");
  if (in.armour == ArmourKind::wire) build.use("iec_armour_wire");
  if (in.armour == ArmourKind::strip) build.use("iec_armour_strip");
  if (in.armour == ArmourKind::tape) {
    build.use("iec_armour_tape");
    build.use("iec_tape_bedding");
    build.caution("the additional bedding under tape armour is from memory");
  }
  build.step(
      fmt::format("inner covering: {} mm; oversheath: 0.035 x {} + 1.0, not under the least "
                  "for its place = {} mm",
                  mm(layers.bedding_mm), fixed(fictitious.under_oversheath_mm, 1),
                  fixed(layers.oversheath_mm, 1)));
}

void add_row(Build& build, std::string name, std::optional<double> thickness_mm,
             std::optional<double> diameter_mm) {
  build.out.section.push_back({std::move(name), thickness_mm, diameter_mm});
}

/// Diameters as made, from the cores outward, and the list of the cross-section.
void make_diameters(Build& build) {
  Construction& out = build.out;
  const Layers& layers = out.layers;
  const LaidUp laid_up = laid_up_as_made(build.cores, *out.in.conductor, build.standards);
  build.steps(laid_up.steps);
  if (build.single()) {
    out.core_mm = laid_up.diameter_mm;
  } else {
    out.core_mm = laid_up.core_mm;
  }
  if (*out.in.conductor != Conductor::solid) build.use("conductors");
  build.use("cable_model");
  add_row(build, fmt::format("conductor, {}", to_string(*out.in.conductor)), std::nullopt,
          laid_up.conductor_mm);
  add_row(build, fmt::format("insulation, {}", to_string(*out.in.insulation)), layers.insulation_mm,
          build.single() ? laid_up.diameter_mm : laid_up.core_mm);
  if (!build.single()) add_row(build, "laid-up cores", std::nullopt, laid_up.diameter_mm);
  out.bedding_diameter_mm = laid_up.diameter_mm + 2.0 * layers.bedding_mm;
  if (layers.bedding_mm > 0.0) {
    add_row(build, "bedding", layers.bedding_mm, out.bedding_diameter_mm);
    build.step(fmt::format("bedding diameter: {} + 2 x {} = {} mm", fixed(laid_up.diameter_mm, 2),
                           mm(layers.bedding_mm), fixed(out.bedding_diameter_mm, 2)));
  }
  double over_armour = out.bedding_diameter_mm;
  if (layers.armour_mm) {
    const int times = out.in.armour == ArmourKind::tape ? 4 : 2;
    over_armour += times * *layers.armour_mm;
    add_row(build, fmt::format("armour, {}", to_string(out.in.armour)), layers.armour_mm,
            over_armour);
    build.step(fmt::format("over the armour: {} + {} x {} = {} mm",
                           fixed(out.bedding_diameter_mm, 2), times, mm(*layers.armour_mm),
                           fixed(over_armour, 2)));
  }
  out.sheath_od_mm = over_armour + 2.0 * layers.oversheath_mm;
  add_row(build, "oversheath", layers.oversheath_mm, out.sheath_od_mm);
  build.step(fmt::format("sheath OD: {} + 2 x {} = {} mm", fixed(over_armour, 2),
                         fixed(layers.oversheath_mm, 1), fixed(out.sheath_od_mm, 2)));
}

void make_armour(Build& build) {
  Construction& out = build.out;
  if (out.in.armour == ArmourKind::none) return;
  out.armour_material = build.single() && out.in.armour == ArmourKind::wire ? "aluminium" : "steel";
  if (build.single()) {
    build.caution(
        "single core on AC: no steel armour. Wires are aluminium (HD 604 S1/A1), and steel "
        "must not surround one core alone (BS 7671 521.5.1)");
  }
  if (out.in.armour != ArmourKind::wire) return;
  const ArmourLayer layer =
      armour_layer(build.standards, out.bedding_diameter_mm, *out.layers.armour_mm);
  const Table& lay = build.use("armour_lay");
  out.wires = layer.wires;
  out.armour_area_mm2 = layer.area_mm2;
  build.step(fmt::format(
      "armour wires: {} of the circle, lay {} x pitch diameter: {} wires of {} mm, {} mm2",
      plain(lay.number(0, "coverage")), plain(lay.number(0, "lay_ratio")), layer.wires,
      mm(*out.layers.armour_mm), fixed(layer.area_mm2, 1)));
}

/// Whether a family of printed rows bears on the diameter of this construction.
bool is_tested(const Build& build) {
  const ConstructionInput& in = build.out.in;
  return in.pattern == Pattern::british && !build.unequal() &&
         build.insulation == tables::Status::checked &&
         (*in.conductor != Conductor::solid || build.single());
}

/// Whether the printed rows include cables of this number of cores at this voltage.
bool has_printed_rows(const Build& build) {
  const bool high = build.out.in.voltage == Voltage::kv_1_9_3_3;
  return build.single() || build.cores.size() == (high ? 3U : 2U);
}

void remaining_cautions(Build& build, bool tested) {
  if (build.insulation == tables::Status::from_memory) {
    build.caution("an insulation thickness is from memory: no table with this size was read");
  }
  if (build.insulation == tables::Status::derived) {
    build.caution("an insulation thickness is inferred from printed armour areas and resistances");
  }
  if (build.unequal() && !(build.out.in.cores == 3)) {
    build.caution(
        "unequal cores: the mean of the core diameters extends the standard's form for four "
        "cores of which one is reduced");
  }
  if (build.out.in.voltage == Voltage::kv_1_9_3_3) {
    build.caution("1.9/3.3 kV: the printed tables are inferred to be PVC-insulated");
  }
  if (!tested) {
    build.caution(
        "no printed row of this construction was at hand: the stated error is half as large again");
  } else if (!has_printed_rows(build)) {
    build.caution(
        "no printed row with this number of cores at this voltage was at hand: the geometry "
        "carries over from the printed ones");
  }
  build.caution("estimated from the construction: measure before cutting");
}

}  // namespace

std::optional<InsulationThickness> insulation_thickness(const Standards& standards,
                                                        Insulation insulation, Voltage voltage,
                                                        Pattern pattern, int cores,
                                                        double csa_mm2) {
  const bool high = voltage == Voltage::kv_1_9_3_3;
  if (insulation == Insulation::pvc && !high && pattern == Pattern::british) {
    const Table& small = standards.table("insulation_pvc_british");
    for (std::size_t r = 0; r < small.rows.size(); ++r) {
      if (std::abs(small.number(r, "csa_mm2") - csa_mm2) < 1e-9 &&
          at_least(cores, small.number(r, "cores_min"))) {
        return InsulationThickness{small.number(r, "thickness_mm"), small.status, small.source()};
      }
    }
  }
  std::vector<std::string_view> ids;
  if (high) {
    if (insulation == Insulation::pvc) ids = {"insulation_3k3"};
  } else if (insulation == Insulation::pvc) {
    ids = {"insulation_pvc"};
  } else if (pattern == Pattern::british) {
    ids = {"insulation_xlpe_british", "insulation_xlpe"};
  } else {
    ids = {"insulation_xlpe"};
  }
  for (const std::string_view id : ids) {
    const Table& table = standards.table(id);
    if (const auto row = row_of(table, "csa_mm2", csa_mm2)) {
      return InsulationThickness{table.number(*row, "thickness_mm"), tables::Status::checked,
                                 table.source()};
    }
  }
  const Table& sectors = standards.table("sectoral_conductors");
  if (const auto row = row_of(sectors, "csa_mm2", csa_mm2)) {
    return InsulationThickness{sectors.number(*row, "insulation_mm"), tables::Status::checked,
                               sectors.source()};
  }
  const Table& memory = standards.table("insulation_memory");
  for (std::size_t r = 0; r < memory.rows.size(); ++r) {
    if (memory.text(r, "insulation") == to_string(insulation) &&
        memory.text(r, "voltage_kv") == to_string(voltage) &&
        std::abs(memory.number(r, "csa_mm2") - csa_mm2) < 1e-9) {
      return InsulationThickness{memory.number(r, "thickness_mm"), memory.status,
                                 memory.source() + ", from memory"};
    }
  }
  return std::nullopt;
}

double od_error_mm(double sheath_od_mm, bool tested) {
  const double error = at_most(sheath_od_mm, 25.0) ? 1.5 : std::max(2.0, 0.05 * sheath_od_mm);
  return tested ? error : k_untested_factor * error;
}

double bedding_error_mm(double bedding_mm, bool tested) {
  const double error = std::max(1.0, 0.05 * bedding_mm);
  return tested ? error : k_untested_factor * error;
}

Construction construct(const ConstructionInput& in, const Standards& standards) {
  Build build{standards, {}, {}, tables::Status::checked};
  build.out.in = detail::resolve(in, standards);
  make_cores(build);
  if (build.out.in.pattern == Pattern::british) {
    british_layers(build);
  } else {
    iec_layers(build);
  }
  make_diameters(build);
  make_armour(build);
  const bool tested = is_tested(build);
  build.out.expanded_mm = od_error_mm(build.out.sheath_od_mm, tested);
  build.out.bedding_expanded_mm = bedding_error_mm(build.out.bedding_diameter_mm, tested);
  remaining_cautions(build, tested);
  return std::move(build.out);
}

double armour_area_error(const Construction& construction) {
  constexpr double k_first_close_mm2 = 10.0;
  constexpr double k_first_shaped_mm2 = 25.0;
  constexpr int k_most_shaped_cores = 4;
  const ConstructionInput& in = construction.in;
  const bool usually_shaped =
      in.cores > 1 && in.cores <= k_most_shaped_cores && at_least(in.csa_mm2, k_first_shaped_mm2);
  if (usually_shaped && in.conductor == Conductor::circular) return 0.20;
  return at_least(in.csa_mm2, k_first_close_mm2) ? 0.06 : 0.10;
}

}  // namespace cutback::cable

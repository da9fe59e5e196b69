#include "cutback/cable/fictitious.hpp"

#include <fmt/format.h>
#include <numeric>

#include "core/cable/lookup.hpp"

namespace cutback::cable {
namespace {

using detail::row_of;
using detail::row_up_to;
using tables::Standards;
using tables::Table;

double rounded(double value_mm) { return round_half_up(value_mm, k_fictitious_step_mm); }

std::string mm(double value) { return fixed(value, 1); }

InputError no_rule(const std::string& what, const std::string& given, const std::string& allowed) {
  return InputError(Fault{.code = ErrorCode::bad_value,
                          .what = what,
                          .where = "armour",
                          .given = given,
                          .allowed = allowed,
                          .hint = {}});
}

/// Thickness of the armour, and what it adds to the diameter as a multiple of it.
struct Armour {
  double thickness_mm;
  int times;
  std::string_view words;
};

Armour choose_armour(const Standards& standards, ArmourKind kind, double under_mm) {
  if (kind == ArmourKind::wire) {
    const Table& table = standards.table("iec_armour_wire");
    return {table.number(row_up_to(table, "under_armour_max_mm", under_mm), "wire_mm"), 2, "wire"};
  }
  if (kind == ArmourKind::tape) {
    const Table& table = standards.table("iec_armour_tape");
    return {table.number(row_up_to(table, "under_armour_max_mm", under_mm), "tape_mm"), 4,
            "two tapes"};
  }
  if (kind == ArmourKind::braid) {
    throw no_rule("no published rule gives the layers of a braided cable", "braid",
                  "wire, tape, strip or none");
  }
  const Table& table = standards.table("iec_armour_strip");
  if (at_most(under_mm, table.number(0, "under_armour_min_mm"))) {
    throw no_rule("flat wire is not used where the fictitious diameter under the armour is " +
                      plain(table.number(0, "under_armour_min_mm")) + " mm or less",
                  "strip, " + mm(under_mm) + " mm under it", "wire");
  }
  return {table.number(0, "strip_mm"), 2, "flat wire"};
}

}  // namespace

double fictitious_conductor_mm(const Standards& standards, double csa_mm2) {
  for (const char* id : {"fictitious_conductors", "sectoral_conductors"}) {
    const Table& table = standards.table(id);
    if (const auto row = row_of(table, "csa_mm2", csa_mm2))
      return table.number(*row, "diameter_mm");
  }
  throw detail::unknown_size(standards.table("fictitious_conductors"), csa_mm2);
}

double fictitious_core_mm(const Standards& standards, const CoreSize& core) {
  return rounded(fictitious_conductor_mm(standards, core.csa_mm2) + 2.0 * core.insulation_mm);
}

double assembly_coefficient(const Standards& standards, int cores, bool one_layer) {
  if (one_layer) {
    const Table& table = standards.table("assembly_one_layer");
    if (const auto row = row_of(table, "cores", cores)) return table.number(*row, "k");
    throw InputError(Fault{.code = ErrorCode::out_of_range,
                           .what = "no assembly coefficient for so many cores in one layer",
                           .where = "cores",
                           .given = std::to_string(cores),
                           .allowed = detail::listed(table, "cores"),
                           .hint = {}});
  }
  const Table& table = standards.table("assembly_coefficients");
  for (std::size_t r = 0; r < table.rows.size(); ++r) {
    if (within(cores, table.number(r, "cores_min"), table.number(r, "cores_max"))) {
      return table.number(r, "k");
    }
  }
  throw InputError(Fault{.code = ErrorCode::out_of_range,
                         .what = "no assembly coefficient for so many cores",
                         .where = "cores",
                         .given = std::to_string(cores),
                         .allowed = "1 to 61",
                         .hint = {}});
}

double fictitious_laid_up_mm(std::span<const double> cores_mm, double k) {
  const double sum = std::accumulate(cores_mm.begin(), cores_mm.end(), 0.0);
  return rounded(k * sum / static_cast<double>(cores_mm.size()));
}

double inner_covering_increase_mm(const Standards& standards, double laid_up_mm) {
  const Table& table = standards.table("iec_inner_covering");
  return 2.0 * table.number(row_up_to(table, "laid_up_max_mm", laid_up_mm), "fictitious_mm");
}

double concentric_increase_mm(const Standards& standards, double csa_mm2) {
  const Table& table = standards.table("iec_concentric");
  const double largest = table.number(table.rows.size() - 1, "csa_mm2");
  if (!(csa_mm2 > 0.0) || !at_most(csa_mm2, largest)) {
    throw InputError(Fault{.code = ErrorCode::out_of_range,
                           .what = "no increase for a concentric conductor of this size",
                           .where = "concentric_csa_mm2",
                           .given = plain(csa_mm2),
                           .allowed = "above 0, up to " + plain(largest) + " mm2",
                           .hint = {}});
  }
  return table.number(row_up_to(table, "csa_mm2", csa_mm2), "increase_mm");
}

double tape_bedding_increase_mm(const Standards& standards, double under_bedding_mm) {
  const Table& table = standards.table("iec_tape_bedding");
  return table.number(row_up_to(table, "under_bedding_max_mm", under_bedding_mm), "increase_mm");
}

double oversheath_thickness_mm(const Standards& standards, std::string_view pattern,
                               double under_mm, bool armoured, bool single_core) {
  const Table& table = standards.table("oversheath_rules");
  for (std::size_t r = 0; r < table.rows.size(); ++r) {
    if (table.text(r, "pattern") != pattern) continue;
    const char* least = armoured      ? "least_armoured_mm"
                        : single_core ? "least_single_mm"
                                      : "least_multi_mm";
    const double by_rule =
        rounded(table.number(r, "slope") * under_mm + table.number(r, "constant_mm"));
    return std::max(by_rule, detail::number_or_empty(table, r, least).value_or(0.0));
  }
  throw InternalError("no oversheath rule for pattern " + std::string(pattern));
}

Fictitious fictitious_diameters(const FictitiousInput& in, const Standards& standards) {
  Fictitious out;
  std::vector<double> cores_mm;
  for (const CoreSize& core : in.cores) cores_mm.push_back(fictitious_core_mm(standards, core));
  const int count = static_cast<int>(cores_mm.size());
  const double k = assembly_coefficient(standards, count, in.one_layer);
  out.laid_up_mm = fictitious_laid_up_mm(cores_mm, k);
  out.steps.push_back(fmt::format(
      "fictitious, over the laid-up cores: {} x {} = {} mm", fixed(k, 2),
      plain(std::accumulate(cores_mm.begin(), cores_mm.end(), 0.0) / count), mm(out.laid_up_mm)));
  double diameter = out.laid_up_mm;
  const auto add = [&](std::string_view what, double increase) {
    const double before = diameter;
    diameter = rounded(diameter + increase);
    out.steps.push_back(fmt::format("fictitious, over {}: {} + {} = {} mm", what, mm(before),
                                    mm(increase), mm(diameter)));
  };
  if (count > 1 || in.armour != ArmourKind::none) {
    add("the inner covering", inner_covering_increase_mm(standards, out.laid_up_mm));
  }
  if (in.concentric_csa_mm2) {
    add("the concentric conductor", concentric_increase_mm(standards, *in.concentric_csa_mm2));
  }
  if (in.armour == ArmourKind::tape) {
    add("the additional bedding (from memory)", tape_bedding_increase_mm(standards, diameter));
  }
  out.under_armour_mm = diameter;
  if (in.armour != ArmourKind::none) {
    const Armour armour = choose_armour(standards, in.armour, diameter);
    out.armour_mm = armour.thickness_mm;
    const double before = diameter;
    diameter = rounded(diameter + armour.times * armour.thickness_mm);
    out.steps.push_back(fmt::format("fictitious, over the armour ({}): {} + {} x {} = {} mm",
                                    armour.words, mm(before), armour.times,
                                    plain(armour.thickness_mm), mm(diameter)));
  }
  out.under_oversheath_mm = diameter;
  out.oversheath_mm = oversheath_thickness_mm(standards, "iec", diameter,
                                              in.armour != ArmourKind::none, count == 1);
  out.sheath_od_mm = rounded(diameter + 2.0 * out.oversheath_mm);
  return out;
}

}  // namespace cutback::cable

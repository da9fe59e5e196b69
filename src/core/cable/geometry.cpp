#include "cutback/cable/geometry.hpp"

#include <fmt/format.h>
#include <cmath>
#include <numbers>

#include "core/cable/lookup.hpp"

namespace cutback::cable {
namespace {

using tables::Standards;
using tables::Table;

constexpr double k_pi = std::numbers::pi;
constexpr double k_largest_rod_mm2 = 300.0;  // above it a solid conductor is four sectors

double constant(const Standards& standards, std::string_view name) {
  const Table& table = standards.table("cable_model");
  for (std::size_t r = 0; r < table.rows.size(); ++r) {
    if (table.text(r, "name") == name) return table.number(r, "value");
  }
  throw InternalError("the cable model has no constant " + std::string(name));
}

std::size_t conductor_row(const Standards& standards, double csa_mm2) {
  const Table& table = standards.table("conductors");
  const auto row = detail::row_of(table, "csa_mm2", csa_mm2);
  if (!row) throw detail::unknown_size(table, csa_mm2);
  return *row;
}

double circle_diameter_mm(double area_mm2) { return std::sqrt(4.0 * area_mm2 / k_pi); }

/// Wires across a bundle of 1 + 6 + 12 + ... wires.
int wires_across(int wires) {
  int across = 1;
  for (int held = 1; held < wires; across += 2) held += 3 * (across + 1);
  return across;
}

double mean_of(const std::vector<CoreSize>& cores, const auto& value) {
  double sum = 0.0;
  for (const CoreSize& core : cores) sum += value(core);
  return sum / static_cast<double>(cores.size());
}

/// Area inside one of n sectors of a circle, `insulation_mm` inside of every face.
double sector_profile_mm2(double outer_radius_mm, int cores, double insulation_mm) {
  const double t = insulation_mm;
  const double r = outer_radius_mm - t;
  const double half = k_pi / cores;
  if (r <= t / std::sin(half)) return 0.0;
  const double apex = t * t / std::tan(half);
  return r * r * (half - std::asin(t / r)) - t * std::sqrt(r * r - t * t) + apex;
}

LaidUp shaped_cores(const std::vector<CoreSize>& cores, const Standards& standards) {
  const int count = static_cast<int>(cores.size());
  const double over = 1.0 + constant(standards, "insulation_over_ratio");
  const double fill = constant(standards, count == 2 ? "fill_two_cores" : "fill_more_cores");
  const double area = mean_of(
      cores, [&](const CoreSize& core) { return conductor_area_mm2(standards, core.csa_mm2); });
  const double t = over * mean_of(cores, [](const CoreSize& core) { return core.insulation_mm; });
  LaidUp out;
  out.diameter_mm = sector_circle_mm(area / fill, count, t);
  out.steps.push_back(fmt::format("copper in one conductor, from its resistance: {} / R20 = {} mm2",
                                  plain(constant(standards, "specific_ohm_mm2_per_km")),
                                  fixed(area, 1)));
  out.steps.push_back(fmt::format(
      "as made, over the laid-up cores: circle of {} sectors, {} mm of insulation on every face, "
      "{} / {} = {} mm2 inside each = {} mm",
      count, fixed(t, 2), fixed(area, 1), plain(fill), fixed(area / fill, 1),
      fixed(out.diameter_mm, 2)));
  return out;
}

}  // namespace

double conductor_area_mm2(const Standards& standards, double csa_mm2) {
  const double r20 =
      standards.table("conductors").number(conductor_row(standards, csa_mm2), "r20_ohm_per_km");
  return constant(standards, "specific_ohm_mm2_per_km") / r20;
}

double stranded_diameter_mm(const Standards& standards, double csa_mm2) {
  const Table& table = standards.table("conductors");
  const double wires = table.number(conductor_row(standards, csa_mm2), "wires");
  return wires_across(static_cast<int>(wires)) *
         circle_diameter_mm(conductor_area_mm2(standards, csa_mm2) / wires);
}

double sector_circle_mm(double profile_mm2, int cores, double insulation_mm) {
  double low = insulation_mm;
  double high = insulation_mm + 1.0;
  while (sector_profile_mm2(high, cores, insulation_mm) < profile_mm2) high *= 2.0;
  constexpr int k_halvings = 60;  // far below a nanometre
  for (int i = 0; i < k_halvings; ++i) {
    const double middle = (low + high) / 2.0;
    (sector_profile_mm2(middle, cores, insulation_mm) < profile_mm2 ? low : high) = middle;
  }
  return 2.0 * high;
}

LaidUp laid_up_as_made(const std::vector<CoreSize>& cores, Conductor conductor,
                       const Standards& standards) {
  if (conductor == Conductor::shaped) return shaped_cores(cores, standards);
  const int count = static_cast<int>(cores.size());
  const CoreSize& first = cores.front();
  const bool solid = conductor == Conductor::solid;
  // One rod has no lay, and its insulation has no seams to bridge: printed rows need no allowance.
  const bool one_rod = solid && count == 1 && at_most(first.csa_mm2, k_largest_rod_mm2);
  const double over = one_rod ? 0.0 : constant(standards, "insulation_over_ratio");
  const double slack = one_rod ? 0.0 : constant(standards, "slack_mm");
  const auto conductor_mm = [&](const CoreSize& core) {
    return solid ? circle_diameter_mm(core.csa_mm2) : stranded_diameter_mm(standards, core.csa_mm2);
  };
  const auto core_mm = [&](const CoreSize& core) {
    return conductor_mm(core) + 2.0 * core.insulation_mm * (1.0 + over);
  };
  const double k = assembly_coefficient(standards, count);
  const double mean = mean_of(cores, core_mm);
  LaidUp out;
  out.conductor_mm = conductor_mm(first);
  out.core_mm = core_mm(first);
  out.diameter_mm = k * mean + slack;
  if (solid) {
    out.steps.push_back(fmt::format("solid conductor: sqrt(4 x {} / pi) = {} mm",
                                    plain(first.csa_mm2), fixed(*out.conductor_mm, 2)));
  } else {
    const Table& table = standards.table("conductors");
    const double wires = table.number(conductor_row(standards, first.csa_mm2), "wires");
    const double area = conductor_area_mm2(standards, first.csa_mm2);
    out.steps.push_back(fmt::format(
        "stranded conductor: {} mm2 of copper for its resistance, {} wires, {} across: {} mm",
        fixed(area, 2), plain(wires), wires_across(static_cast<int>(wires)),
        fixed(*out.conductor_mm, 2)));
  }
  out.steps.push_back(fmt::format("core as made: {} + 2 x {} x {} = {} mm",
                                  fixed(*out.conductor_mm, 2), plain(first.insulation_mm),
                                  plain(1.0 + over), fixed(*out.core_mm, 2)));
  out.steps.push_back(fmt::format("as made, over the laid-up cores: {} x {} + {} = {} mm",
                                  fixed(k, 2), fixed(mean, 2), plain(slack),
                                  fixed(out.diameter_mm, 2)));
  return out;
}

ArmourLayer armour_layer(const Standards& standards, double under_mm, double wire_mm) {
  const Table& table = standards.table("armour_lay");
  const double lay_cosine = std::cos(std::atan(k_pi / table.number(0, "lay_ratio")));
  const double pitch_mm = under_mm + wire_mm;
  const double wires =
      std::floor(table.number(0, "coverage") * k_pi * pitch_mm * lay_cosine / wire_mm);
  return {static_cast<int>(wires), wires * k_pi * wire_mm * wire_mm / 4.0};
}

}  // namespace cutback::cable

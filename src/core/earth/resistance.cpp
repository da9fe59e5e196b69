#include "cutback/earth/resistance.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace cutback::earth {
namespace {

constexpr double k_reference_degc = 20.0;
constexpr double k_m_per_km = 1000.0;
constexpr double k_mm_per_m = 1000.0;
constexpr double k_mohm_per_ohm = 1000.0;

double constant(const tables::Standards& standards, std::string_view name) {
  const tables::Table& table = standards.table("armour_resistance");
  return table.number(table.row("name", name), "value");
}

/// The thinnest wire of a nominal size over its nominal area; of no standard size, the least of
/// all sizes.
double thin_ratio(const tables::Standards& standards, const std::optional<double>& wire_mm) {
  double least = 1.0;
  for (const cable::WireBand& band : standards.wire_bands) {
    const double ratio = band.min_mm / band.nominal_mm;
    if (wire_mm && *wire_mm == band.nominal_mm) return ratio * ratio;
    least = std::min(least, ratio * ratio);
  }
  return least;
}

}  // namespace

LargestResistance largest_resistance(const ArmourConductor& armour,
                                     const tables::Standards& standards) {
  LargestResistance out;
  const double turn = std::numbers::pi / constant(standards, "shortest_lay_ratio");
  out.lay_ratio = armour.lay_ratio.value_or(std::sqrt(1.0 + turn * turn));
  out.thin_ratio = thin_ratio(standards, armour.wire_mm);
  out.ohm_per_km = metal(standards, armour.material).resistivity_ohm_mm * out.lay_ratio *
                   k_mm_per_m * k_m_per_km / (armour.area_mm2 * out.thin_ratio);
  return out;
}

double at_temperature(double at_20_degc, const Metal& metal, double degc) {
  return at_20_degc * (metal.beta_degc + degc) / (metal.beta_degc + k_reference_degc);
}

double loop_impedance_ohm(double line_ohm, double armour_ohm, double length_m,
                          const tables::Standards& standards) {
  const double resistance = line_ohm + constant(standards, "armour_factor") * armour_ohm;
  const double reactance = constant(standards, "reactance_mohm_per_m") / k_mohm_per_ohm * length_m;
  return std::hypot(resistance, reactance);
}

}  // namespace cutback::earth

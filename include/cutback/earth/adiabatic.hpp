#pragma once
// How much fault current a conductor stands: the factor k and the adiabatic equation.

#include <optional>
#include <string>
#include <string_view>

#include "cutback/tables/standards.hpp"

namespace cutback::earth {

enum class Material { copper, aluminium, steel, lead };

[[nodiscard]] constexpr std::string_view to_string(Material material) {
  switch (material) {
    case Material::copper:
      return "copper";
    case Material::aluminium:
      return "aluminium";
    case Material::steel:
      return "steel";
    case Material::lead:
      return "lead";
  }
  return "";
}

/// Insulation of the cable by the temperature that it allows. The words are those of the tables.
enum class Insulation {
  pvc,       ///< 70 degC thermoplastic
  pvc90,     ///< 90 degC thermoplastic
  xlpe,      ///< 90 degC thermosetting (XLPE, EPR)
  rubber60,  ///< 60 degC rubber
  rubber85,  ///< 85 degC rubber
};

[[nodiscard]] constexpr std::string_view to_string(Insulation insulation) {
  switch (insulation) {
    case Insulation::pvc:
      return "pvc";
    case Insulation::pvc90:
      return "pvc90";
    case Insulation::xlpe:
      return "xlpe";
    case Insulation::rubber60:
      return "rubber60";
    case Insulation::rubber85:
      return "rubber85";
  }
  return "";
}

/// What the conductor is: each has its own table of k.
enum class Use { line, separate, core, armour, conduit };

[[nodiscard]] constexpr std::string_view to_string(Use use) {
  switch (use) {
    case Use::line:
      return "line";
    case Use::separate:
      return "separate";
    case Use::core:
      return "core";
    case Use::armour:
      return "armour";
    case Use::conduit:
      return "conduit";
  }
  return "";
}

/// Reads `copper`, `aluminium`, `steel`, `lead`. @return nothing for any other word
[[nodiscard]] std::optional<Material> parse_material(std::string_view word);

/// Reads `pvc`, `pvc90`, `xlpe`, `rubber60`, `rubber85`, and `epr` (as `xlpe`: both are 90 degC
/// thermosetting). @return nothing for any other word
[[nodiscard]] std::optional<Insulation> parse_insulation(std::string_view word);

/// Constants of a metal (IEC 60364-5-54:2011 Annex A).
struct Metal {
  double beta_degc;           ///< reciprocal of the temperature coefficient at 0 degC, less sign
  double heat_j_per_k_mm3;    ///< volumetric heat capacity at 20 degC
  double resistivity_ohm_mm;  ///< at 20 degC
};

[[nodiscard]] Metal metal(const tables::Standards& standards, Material material);

/// Factor k [A s^0.5 / mm2] for a rise from `start_degc` to `final_degc`, unrounded (IEC
/// 60364-5-54:2011 Annex A): sqrt(heat (beta + 20)/resistivity ln((beta + final)/(beta + start))).
/// @throws InputError unless -beta < start < final, both finite
[[nodiscard]] double k_from_constants(const Metal& metal, double start_degc, double final_degc);

/// A factor k and where it comes from.
struct KValue {
  double k = 0.0;
  std::string says;  ///< for instance "k 46 for steel armour with xlpe insulation"
  std::string source;
  tables::Status status = tables::Status::checked;
  std::optional<double> start_degc = {};  ///< temperature from which the rise is counted
  std::optional<double> final_degc = {};  ///< and up to which
};

/// The tabulated k where there is one (BS 7671 tables 43.1, 54.2 to 54.5). Where a row gives only
/// the temperatures, the constants give it, rounded down to a whole number: the stricter side.
/// @param area_mm2  of the conductor: over 300 mm2 thermoplastic insulation has a lower k
/// @return nothing when the tables have no such row
[[nodiscard]] std::optional<KValue> k_value(const tables::Standards& standards, Use use,
                                            Material material, Insulation insulation,
                                            double area_mm2);

/// Shortest and longest time for which I^2 t and the adiabatic equation hold [s] (BS 7671 543.1.3,
/// from memory). Below, the energy that the device lets through counts; above, heat flows off.
inline constexpr double k_shortest_time_s = 0.1;
inline constexpr double k_longest_time_s = 5.0;

/// Least area [mm2] for an energy I^2 t [A2 s]: sqrt(I^2 t) / k (IEC 60364-5-54:2011 543.1.2).
[[nodiscard]] double adiabatic_area_mm2(double energy_a2s, double k);

/// Current [kA] that an area stands for a time > 0 s: k A / sqrt(t) (the same equation).
[[nodiscard]] double withstand_ka(double area_mm2, double k, double time_s);

/// Time [s] for which an area stands a current > 0 kA: (k A / I)^2. Over 5 s it means "5 s".
[[nodiscard]] double longest_time_s(double area_mm2, double k, double current_ka);

/// Least area [mm2] by the size of the line conductor (BS 7671 table 54.7), k1/k2 included.
/// @param line_mm2  > 0  @param k1  of the line conductor  @param k2  of the protective conductor
[[nodiscard]] double minimum_by_table_mm2(const tables::Table& minimum, double line_mm2, double k1,
                                          double k2);

}  // namespace cutback::earth

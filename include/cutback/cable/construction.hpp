#pragma once
// A cable's layers and diameters from its construction.

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/cable/armour.hpp"
#include "cutback/cable/geometry.hpp"
#include "cutback/tables/standards.hpp"

namespace cutback::cable {

enum class Insulation { xlpe, pvc };
enum class Voltage { kv_0_6_1, kv_1_9_3_3 };
/// Whose rules choose the layers: IEC 60502-1, or the British-pattern tables of HD 604.
enum class Pattern { british, iec };

/// In the order in which a user is told of them.
[[nodiscard]] constexpr auto all_values(Insulation) {
  using enum Insulation;
  return std::array{xlpe, pvc};
}

/// In the order in which a user is told of them.
[[nodiscard]] constexpr auto all_values(Voltage) {
  using enum Voltage;
  return std::array{kv_0_6_1, kv_1_9_3_3};
}

/// In the order in which a user is told of them.
[[nodiscard]] constexpr auto all_values(Pattern) {
  using enum Pattern;
  return std::array{british, iec};
}

[[nodiscard]] constexpr std::string_view to_string(Insulation insulation) {
  switch (insulation) {
    case Insulation::xlpe:
      return "xlpe";
    case Insulation::pvc:
      return "pvc";
  }
  return "";
}

[[nodiscard]] constexpr std::string_view to_string(Voltage voltage) {
  switch (voltage) {
    case Voltage::kv_0_6_1:
      return "0.6/1";
    case Voltage::kv_1_9_3_3:
      return "1.9/3.3";
  }
  return "";
}

[[nodiscard]] constexpr std::string_view to_string(Pattern pattern) {
  switch (pattern) {
    case Pattern::british:
      return "british";
    case Pattern::iec:
      return "iec";
  }
  return "";
}

struct ConstructionInput {
  int cores = 0;                         ///< 1 to 61, without the earth core
  double csa_mm2 = 0.0;                  ///< a standard size
  std::optional<double> earth_csa_mm2;   ///< an additional core of this size
  std::optional<Insulation> insulation;  ///< absent: XLPE at 0.6/1 kV, PVC at 1.9/3.3 kV
  Voltage voltage = Voltage::kv_0_6_1;
  /// Absent: shaped for 2 to 4 equal cores from 25 mm2 (50 mm2 at 1.9/3.3 kV), solid for the sizes
  /// that are made of four solid sectors, else circular.
  std::optional<Conductor> conductor;
  ArmourKind armour = ArmourKind::wire;
  Pattern pattern = Pattern::british;
};

/// Nominal thicknesses [mm]; `armour_mm` is a wire's diameter or the thickness of one tape or
/// strip.
struct Layers {
  double insulation_mm = 0.0;
  double bedding_mm = 0.0;
  std::optional<double> armour_mm;
  double oversheath_mm = 0.0;
};

/// One line of the cross-section, from the conductor outward; a shaped conductor has no diameter.
struct SectionRow {
  std::string name;
  std::optional<double> thickness_mm;
  std::optional<double> diameter_mm;
};

/// What the cable should be. Diameters unrounded; `expanded` figures are the model's stated error.
struct Construction {
  ConstructionInput in;  ///< with every default filled in
  Layers layers;
  std::optional<double> core_mm;  ///< over the insulation of one core; absent for a shaped one
  double fictitious_laid_up_mm = 0.0;
  double bedding_diameter_mm = 0.0;
  double bedding_expanded_mm = 0.0;
  double sheath_od_mm = 0.0;
  double expanded_mm = 0.0;
  std::optional<int> wires;
  std::optional<double> armour_area_mm2;  ///< gross; off by at most armour_area_error()
  std::string armour_material;            ///< `steel`, `aluminium`, or empty
  std::vector<SectionRow> section;
  std::vector<std::string> steps;
  std::vector<std::string> cautions;
  std::vector<std::string> sources;
};

/// By how much the armour area may be off, as a ratio: 6 % from 10 mm2, 10 % below, so that every
/// printed area lies within. 20 % for circular conductors where shaped ones are usual: the printed
/// areas are those of the shaped.
[[nodiscard]] double armour_area_error(const Construction& construction);

/// Works out layers and diameters. Layers follow the pattern's rules from the fictitious diameters;
/// diameters follow the model of geometry.hpp.
/// @throws InputError with every independent fault: a size, number of cores or combination that no
/// rule or table row covers, each with what is allowed
[[nodiscard]] Construction construct(const ConstructionInput& in,
                                     const tables::Standards& standards);

/// The model's stated error [mm] on a sheath OD: 1.5 mm up to 25 mm, above that 2 mm or 5 %,
/// whichever is more; half as much again for a construction of which no family of printed rows was
/// tested. It is stated, not computed: a cable as made may differ from its table.
[[nodiscard]] double od_error_mm(double sheath_od_mm, bool tested);

/// The same on a bedding diameter: 1 mm or 5 %, whichever is more.
[[nodiscard]] double bedding_error_mm(double bedding_mm, bool tested);

/// Nominal insulation thickness, and how far it can be trusted.
struct InsulationThickness {
  double thickness_mm = 0.0;
  tables::Status status = tables::Status::checked;
  std::string source;
};

/// The insulation of one core; nothing when no table has a row.
/// @param cores  of the cable: small PVC cores are thinner in auxiliary cables
[[nodiscard]] std::optional<InsulationThickness> insulation_thickness(
    const tables::Standards& standards, Insulation insulation, Voltage voltage, Pattern pattern,
    int cores, double csa_mm2);

}  // namespace cutback::cable

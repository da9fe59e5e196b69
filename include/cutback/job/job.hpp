#pragma once
// One end, understood: what a JobInput means.

#include <optional>
#include <string>

#include "cutback/area/area.hpp"
#include "cutback/cable/cable.hpp"
#include "cutback/entry/entry.hpp"
#include "cutback/job/input.hpp"
#include "cutback/strip/tails.hpp"
#include "cutback/tables/standards.hpp"

namespace cutback::job {

/// An earth fault: current [kA], clearing time [s], loop impedance [ohm].
struct EarthFault {
  std::optional<double> current_ka;
  std::optional<double> time_s;
  std::optional<double> loop_ohm;
};

struct Job {
  std::string name;
  std::string tag;
  std::string end;
  cable::Cable cable;
  entry::Entry entry;
  area::Area area;
  strip::Tails tails;
  std::optional<double> armour_stop_mm;  ///< measured on the gland in hand
  EarthFault fault;
};

/// Allowances on datasheet figures (common practice, no source: as-built cable differs from the
/// book by one or two millimetres).
inline constexpr double k_od_allow_mm = 2.0;
inline constexpr double k_bedding_allow_mm = 1.0;
inline constexpr double k_wire_allow_mm = 0.05;
/// Smallest step of a caliper that is assumed when none is given.
inline constexpr double k_caliper_step_mm = 0.05;

/// What a figure without a stated evidence is taken for.
enum class Unstated {
  measured,    ///< on the command line: it is what the caliper showed
  by_notation  ///< in a file: several readings are measured, one figure is from a datasheet
};

/// Works out the diameters with their spread and checks that the values can be true together.
/// @throws InputError with every fault: limits, words, readings, bedding larger than the sheath, a
/// wire that does not fit between them
[[nodiscard]] Job resolve(const JobInput& in, const tables::Standards& standards,
                          Unstated unstated);

}  // namespace cutback::job

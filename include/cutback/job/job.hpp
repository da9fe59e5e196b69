#pragma once
// One end, understood: what a JobInput means.

#include <optional>
#include <string>
#include <vector>

#include "cutback/area/area.hpp"
#include "cutback/assumption.hpp"
#include "cutback/cable/cable.hpp"
#include "cutback/cable/construction.hpp"
#include "cutback/earth/armour_earth.hpp"
#include "cutback/entry/entry.hpp"
#include "cutback/error.hpp"
#include "cutback/job/input.hpp"
#include "cutback/strip/tails.hpp"
#include "cutback/tables/standards.hpp"

namespace cutback::job {

/// What is asked of an end although nothing is told of it: somebody was asked and did not know, or
/// other ends of the same list tell it.
struct Asked {
  bool joint = false;
  bool place = false;
  bool earth = false;
  bool fault = false;
};

struct Job {
  std::string name;
  std::string tag;
  std::string end;
  cable::Cable cable;
  /// What the cable should be, where cores and size are known and a published rule covers them.
  std::optional<cable::Construction> construction;
  entry::Entry entry;
  area::Area area;
  strip::Tails tails;
  measure::Caliper caliper;              ///< what is and will be measured with
  std::vector<Assumption> assumed;       ///< of caliper, allowances and kind of armour
  std::optional<double> armour_stop_mm;  ///< measured on the gland in hand
  earth::EarthFault fault;
  Asked asked;
  std::optional<double> compound_pack_cm3;      ///< what one pack of compound fills
  std::optional<cable::Insulation> insulation;  ///< as given: a construction fills one in
};

/// The armour as protective conductor, as far as the job tells; no gland's rating. What is not
/// given falls to the stricter side: steel, but for the wires of a single core, and the insulation
/// with the lowest k.
[[nodiscard]] earth::EarthInput armour_earth_input(const Job& job,
                                                   const tables::Standards& standards);

/// Allowances on datasheet figures (common practice, no source: as-built cable differs from the
/// book by one or two millimetres).
using cable::k_bedding_allow_mm;
using cable::k_od_allow_mm;
inline constexpr double k_wire_allow_mm = 0.05;
/// Smallest step of a caliper that is assumed when none is given.
inline constexpr double k_caliper_step_mm = 0.05;

/// What a figure without a stated evidence is taken for.
enum class Unstated {
  measured,    ///< on the command line: it is what the caliper showed
  by_notation  ///< in a file: several readings are measured, one figure is from a datasheet
};

/// Works out the diameters with their spread, estimates those that are missing from the others or
/// from the construction, and checks that the values can be true together.
/// @param sheath_od  of a drum that was analysed elsewhere, in place of readings of its own
/// @throws InputError with every fault: limits, words, readings, bedding larger than the sheath, a
/// wire that does not fit between them
[[nodiscard]] Job resolve(const JobInput& in, const tables::Standards& standards, Unstated unstated,
                          const std::optional<measure::Estimate>& sheath_od = {});

/// What a job is made from but for the three diameters of its cable, for the many ends that differ
/// in nothing else. resolve() is make_frame, estimate for each diameter that is given, and complete.
struct Frame {
  JobInput in;
  Unstated unstated = Unstated::measured;
  std::vector<std::string> notes;  ///< warnings that every such cable has
  std::vector<Fault> faults;       ///< what is wrong besides the diameters
};

/// @param job  gets all but the diameters
[[nodiscard]] Frame make_frame(JobInput in, const tables::Standards& standards, Unstated unstated,
                               Job& job);

enum class Layer { sheath, bedding, wire };

/// One diameter from its readings, with the evidence, caliper and allowances of the frame. Two
/// single figures of one frame and layer that are not measured differ in their value_mm and nothing
/// else.
/// @throws InputError
[[nodiscard]] measure::Estimate estimate(const Frame& frame, Layer layer,
                                         const measure::Readings& readings,
                                         const tables::Standards& standards);

/// Puts the routes to the terminals into a job, and the armour stop.
/// @return what is wrong with them
[[nodiscard]] std::vector<Fault> put_tails(const JobInput& in, Job& job);

/// Finishes a job of this frame whose diameters have been put in as far as they are given: the
/// wire's nominal size, the remarks, the diameters that are missing.
/// @return what cannot be true of the diameters together; `where` is the key of the field
[[nodiscard]] std::vector<Fault> complete(const Frame& frame, const tables::Standards& standards,
                                          Job& job);

/// Names the places of faults as the user wrote them: options, or paths in a file.
void name_places(std::vector<Fault>& faults, Unstated unstated);

}  // namespace cutback::job

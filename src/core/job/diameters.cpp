#include <algorithm>

#include "core/job/resolve.hpp"
#include "cutback/cable/plausibility.hpp"
#include "cutback/compare.hpp"
#include "cutback/number.hpp"

namespace cutback::job {
namespace {

using cable::ArmourKind;
using detail::Faults;
using measure::Estimate;
using measure::Evidence;
using measure::Place;

/// What one layer's figure needs to become an estimate.
struct Diameter {
  std::string_view key;
  std::optional<double> given_mm;  ///< the allowance as it is given
  double usual_mm;                 ///< what it is taken for where none is stated
  measure::Section section;

  [[nodiscard]] double allowance_mm() const {
    return detail::stated_allowance(given_mm).value_or(usual_mm);
  }
};

Diameter diameter_of(const JobInput& in, Layer layer) {
  switch (layer) {
    case Layer::sheath:
      return {"sheath_od_mm", in.od_allow_mm, k_od_allow_mm, measure::Section::oval};
    case Layer::bedding:
      return {"bedding_mm", in.bedding_allow_mm, k_bedding_allow_mm, measure::Section::oval};
    case Layer::wire:
      break;
  }
  return {"armour_mm", in.armour_allow_mm, k_wire_allow_mm, measure::Section::round};
}

/// What is to be said of an allowance that no cable keeps; empty where there is nothing.
std::string doubt_of(const Diameter& diameter) {
  if (!diameter.given_mm) return {};
  if (*diameter.given_mm <= 0.0) {
    return "a tolerance of 0 is taken as not stated, and +/- " + plain(diameter.usual_mm) +
           " mm counts";
  }
  constexpr double k_least_mm = 0.2;  // common practice, no source
  const bool oval = diameter.section == measure::Section::oval;
  if (!oval || at_most(k_least_mm, *diameter.given_mm)) return {};
  return "a tolerance of " + plain(*diameter.given_mm) +
         " mm is less than cables are made to: look whether it is one";
}

Evidence evidence_of(const JobInput& in, const std::vector<Place>& places, Unstated unstated) {
  if (in.evidence) return *in.evidence;
  if (unstated == Unstated::measured) return Evidence::measured;
  const bool several = places.size() > 1 || places.front().readings_mm.size() > 1;
  return several ? Evidence::measured : Evidence::datasheet;
}

Estimate estimate_of(const JobInput& in, Layer layer, const measure::Readings& readings,
                     const tables::Standards& standards, Unstated unstated) {
  const Diameter diameter = diameter_of(in, layer);
  const std::string where = "cable." + std::string(diameter.key);
  const std::vector<Place>& places = readings.places;
  const Evidence evidence = evidence_of(in, places, unstated);
  if (evidence == Evidence::measured) {
    measure::Caliper caliper = detail::caliper_of(in);
    const bool coarser = !in.step_mm && readings.scale_mm.value_or(0.0) > caliper.step_mm;
    if (coarser) caliper.step_mm = *readings.scale_mm;
    Estimate estimate = measure::measure_here(
        {.places = places,
         .caliper = caliper,
         .section = diameter.section,
         .declared_ovality_mm =
             diameter.section == measure::Section::oval ? in.ovality_mm : std::nullopt},
        standards.caliper_limits);
    if (coarser) {
      estimate.warnings.push_back("written as " + readings.text + ": taken as read to " +
                                  plain(caliper.step_mm, 2) +
                                  " mm; write every decimal, or give the caliper's step");
    }
    return estimate;
  }
  if (places.size() > 1 || places.front().readings_mm.size() > 1) {
    throw InputError(Fault{
        .code = ErrorCode::contradiction,
        .what = "several readings are not one " + std::string(to_string(evidence)) + " figure",
        .where = where,
        .given = readings.text,
        .allowed = "one figure",
        .hint = "set evidence to measured"});
  }
  const double value = places.front().readings_mm.front();
  const double allowance_mm = diameter.allowance_mm();
  Estimate estimate = evidence == Evidence::datasheet
                          ? measure::from_datasheet(value, allowance_mm)
                          : measure::from_model(value, allowance_mm, "an estimate given as such");
  std::string doubt = doubt_of(diameter);
  if (!doubt.empty()) estimate.warnings.push_back(std::move(doubt));
  return estimate;
}

std::string mm(double value) { return plain(value, 3) + " mm"; }

/// What no cable can have: layers that do not fit inside one another.
void check_layers(const cable::Cable& cable, Faults& faults) {
  if (!cable.sheath_od || !cable.bedding) return;
  const double od = cable.sheath_od->value_mm;
  const double bedding = cable.bedding->value_mm;
  const auto given = [&] { return "sheath " + mm(od) + ", bedding " + mm(bedding); };
  if (bedding >= od) {
    faults.add(ErrorCode::contradiction, "the bedding is not smaller than the sheath",
               "cable.bedding_mm", given(), "bedding under " + mm(od),
               "look whether the two were exchanged, and measure again");
    return;
  }
  const auto sheath = cable::sheath_thickness_mm(cable);
  if (cable.armour != ArmourKind::none && sheath && *sheath <= 0.0) {
    const double room = (od - bedding) / 2.0 / cable::armour_layers(cable.armour);
    faults.add(ErrorCode::contradiction, "the wire does not fit between bedding and sheath",
               "cable.armour_mm", given() + ", wire " + mm(cable.wire->value_mm),
               "a wire under " + mm(room) + ", so that some sheath is left over it",
               "measure the three again");
  }
}

/// A wire that would leave nothing inside the sheath, whatever the bedding.
void check_wire_alone(const cable::Cable& cable, const cable::Construction* construction,
                      const tables::Standards& standards, Faults& faults) {
  if (!cable.wire || !cable.sheath_od || cable.bedding || cable.armour == ArmourKind::none) return;
  const double od = cable.sheath_od->value_mm;
  const double sheath = std::max(
      0.0, cable::least_at_a_point_mm(*cable::nominal_sheath_mm(cable, construction, standards)));
  const double room = (od / 2.0 - sheath) / cable::armour_layers(cable.armour);
  if (cable.wire->value_mm < room) return;
  faults.add(ErrorCode::contradiction, "the wire leaves nothing inside the sheath",
             "cable.armour_mm", "sheath " + mm(od) + ", wire " + mm(cable.wire->value_mm),
             "a wire under " + plain(round_down(room, 0.01), 2) + " mm",
             "measure the two again: one wire, not a strand of them");
}

void take_warnings(const std::optional<Estimate>& estimate, const char* name,
                   std::vector<std::string>& warnings) {
  if (!estimate) return;
  for (const std::string& warning : estimate->warnings) {
    warnings.push_back(std::string(name) + ": " + warning);
  }
}

/// Diameters that were not given, from the others or else from the construction.
void estimate_missing(cable::Cable& cable, const std::optional<cable::Construction>& construction,
                      const tables::Standards& standards) {
  const cable::Pattern pattern = construction ? construction->in.pattern : cable::Pattern::british;
  if (!cable.wire && construction && construction->layers.armour_mm &&
      cable.armour == ArmourKind::wire) {
    cable.wire = measure::from_model(*construction->layers.armour_mm, 0.0,
                                     "armour wire of the construction");
    cable.wire_nominal = cable::standard_size(standards.wire_bands, *cable.wire);
  }
  if (!cable.sheath_od) {
    cable.sheath_od = cable::od_from_bedding(cable, pattern, standards);
    if (!cable.sheath_od && construction)
      cable.sheath_od = cable::sheath_od_estimate(*construction);
  }
  if (!cable.bedding && cable.armour != ArmourKind::none) {
    cable.bedding = cable::bedding_from_od(cable, pattern, standards);
    if (!cable.bedding && construction) cable.bedding = cable::bedding_estimate(*construction);
  }
}

}  // namespace

measure::Caliper detail::caliper_of(const JobInput& in) {
  return {.step_mm = in.step_mm.value_or(k_caliper_step_mm),
          .mpe_mm = in.mpe_mm,
          .zero_mm = in.zero_mm.value_or(0.0)};
}

Estimate estimate(const Frame& frame, Layer layer, const measure::Readings& readings,
                  const tables::Standards& standards) {
  return estimate_of(frame.in, layer, readings, standards, frame.unstated);
}

std::vector<Fault> complete(const Frame& frame, const tables::Standards& standards, Job& job) {
  Faults faults;
  cable::Cable& cable = job.cable;
  cable.wire_nominal.reset();
  if (cable.armour == ArmourKind::none && cable.wire) {
    faults.add(ErrorCode::contradiction, "an unarmoured cable has no armour wire",
               "cable.armour_mm",
               frame.in.armour_mm ? frame.in.armour_mm->text : mm(cable.wire->value_mm), "",
               "leave the wire out, or say which armour it is");
  }
  if (cable.armour == ArmourKind::wire && cable.wire) {
    cable.wire_nominal = cable::standard_size(standards.wire_bands, *cable.wire);
  }
  cable.warnings.clear();
  take_warnings(cable.sheath_od, "sheath", cable.warnings);
  take_warnings(cable.bedding, "bedding", cable.warnings);
  take_warnings(cable.wire, "wire", cable.warnings);
  cable.warnings.insert(cable.warnings.end(), frame.notes.begin(), frame.notes.end());
  const cable::Construction* construction = job.construction ? &*job.construction : nullptr;
  check_layers(cable, faults);
  check_wire_alone(cable, construction, standards, faults);
  cable.contradiction.reset();
  for (cable::Remark& remark : cable::implausible_readings(cable, construction, standards)) {
    if (remark.contradiction && !cable.contradiction) {
      cable.contradiction = std::move(remark);  // said where the layers are checked
      continue;
    }
    cable.warnings.push_back(remark.says + ". Repeat: " + remark.repeat + " (" + remark.source +
                             ")");
  }
  estimate_missing(cable, job.construction, standards);
  return faults.take();
}

}  // namespace cutback::job

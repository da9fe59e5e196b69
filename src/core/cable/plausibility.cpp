#include "cutback/cable/plausibility.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/cable/lookup.hpp"
#include "cutback/cable/fictitious.hpp"

namespace cutback::cable {
namespace {

using measure::Estimate;

constexpr const char* k_point_source =
    "HD 604 S1/A1 (bedding: nominal less 20 % and 0.2 mm at a point); the same for an oversheath "
    "over "
    "armour is from memory";
constexpr const char* k_model_source = "cable diameter model, fitted to HD 604 S1/A1";
constexpr const char* k_wire_source = "HD 604 S1/A1, armour wire tolerances";

std::string text_of(double value_mm, double expanded_mm) {
  return fixed(value_mm, 1) + " +/- " + fixed(expanded_mm, 1) + " mm";
}

bool armoured_with_wire(const Cable& cable) { return cable.armour == ArmourKind::wire; }

const OversheathRule& oversheath_rule(const Standards& standards, Pattern pattern) {
  for (const OversheathRule& rule : standards.oversheath_rules) {
    if (rule.pattern == to_string(pattern)) return rule;
  }
  throw InternalError("no oversheath rule for pattern " + std::string(to_string(pattern)));
}

/// Nominal oversheath for a sheath OD: the rule t = slope (OD - 2 t) + constant, solved for t.
double oversheath_for_od(const OversheathRule& rule, double od_mm) {
  const double t = (rule.slope * od_mm + rule.constant_mm) / (1.0 + 2.0 * rule.slope);
  return std::max(rule.least_mm, round_half_up(t, k_fictitious_step_mm));
}

/// How much a sheath may differ, on the diameter: a fifth of it and 0.2 mm, half the least
/// allowance at a point on each side. No printed row lies further out.
double sheath_spread_mm(double sheath_mm) { return 0.2 * sheath_mm + 0.2; }

void check_sheath(const Cable& cable, const Construction* construction, const Standards& standards,
                  std::vector<Remark>& remarks) {
  const auto sheath = sheath_thickness(cable);
  const auto nominal = nominal_sheath_mm(cable, construction, standards);
  if (!sheath || !nominal) return;
  const double least = least_at_a_point_mm(*nominal);
  const std::string leaves =
      "the readings leave a sheath of " + text_of(sheath->value_mm, sheath->expanded_mm);
  if (!at_least(sheath->value_mm, least)) {
    remarks.push_back({fmt::format("{}; {} mm nominal is at least {} mm at a point", leaves,
                                   fixed(*nominal, 1), fixed(least, 2)),
                       "sheath OD, bedding and wire", k_point_source, true});
  } else if (!at_most(sheath->value_mm, most_likely_mm(*nominal))) {
    remarks.push_back(
        {fmt::format("{}, more than twice the nominal {} mm", leaves, fixed(*nominal, 1)),
         "bedding, sheath OD and wire", "common practice, no source", construction != nullptr});
  }
}

void check_no_room(const Cable& cable, std::vector<Remark>& remarks) {
  if (!cable.sheath_od || !cable.bedding) return;
  if (at_most(cable.sheath_od->value_mm, cable.bedding->value_mm)) {
    remarks.push_back(
        {fmt::format("the sheath OD {} mm is not larger than the bedding {} mm",
                     fixed(cable.sheath_od->value_mm, 1), fixed(cable.bedding->value_mm, 1)),
         "sheath OD and bedding: they may have changed places", "arithmetic", true});
  }
}

/// Figures in inches among millimetres.
void check_inches(const Cable& cable, std::vector<Remark>& remarks) {
  constexpr double k_mm_per_inch = 25.4;
  constexpr double k_too_thin = 0.1;  // of the sheath OD; common practice, no source
  if (!cable.sheath_od || !cable.bedding) return;
  const double bedding = cable.bedding->value_mm;
  const double sheath = cable.sheath_od->value_mm;
  if (at_least(bedding, k_too_thin * sheath) || at_least(bedding * k_mm_per_inch, sheath)) return;
  remarks.push_back({fmt::format("a bedding of {0} mm under a sheath of {1} mm: inches, perhaps? "
                                 "Write {0}in",
                                 plain(bedding, 2), plain(sheath, 1)),
                     "bedding", "arithmetic", true});
}

/// A cable that is stated to be circular, and readings that say otherwise.
void check_circular(const Cable& cable, std::vector<Remark>& remarks) {
  constexpr double k_round_ratio = 0.05;
  if (!cable.circular.value_or(false)) return;
  const auto check = [&](const char* what, const std::optional<Estimate>& of) {
    if (!of || of->readings_mm.empty()) return;
    const auto [least, most] = std::minmax_element(of->readings_mm.begin(), of->readings_mm.end());
    if (at_most(*most - *least, k_round_ratio * of->value_mm)) return;
    remarks.push_back(
        {fmt::format("the cable is stated to be circular, and the {} reads {} to {} mm", what,
                     fixed(*least, 1), fixed(*most, 1)),
         fmt::format("{}, twice at right angles at one place, or do not state that the "
                     "cable is circular",
                     what),
         "5 %: common practice, no source", true});
  };
  check("bedding", cable.bedding);
  check("sheath", cable.sheath_od);
}

/// @param book_mm  by how much a cable as made may differ from its datasheet
void check_against(std::string_view what, const std::optional<Estimate>& reading, double value_mm,
                   double expanded_mm, double book_mm, std::vector<Remark>& remarks) {
  if (!reading) return;
  const double may_differ =
      expanded_mm + (reading->evidence == measure::Evidence::measured ? 0.0 : book_mm);
  if (at_most(std::abs(reading->value_mm - value_mm), may_differ)) return;
  remarks.push_back({fmt::format("{} {} does not agree with the construction's {}", what,
                                 text_of(reading->value_mm, reading->expanded_mm),
                                 text_of(value_mm, expanded_mm)),
                     fmt::format("{}, and check cores, size and pattern", what), k_model_source,
                     true});
}

/// The least that a core takes up [mm2], whatever its shape: a conductor with the least insulation
/// of a power cable round it.
double least_core_mm2(double csa_mm2) {
  // A size stands for a resistance, so that there may be less metal (IEC 60228).
  constexpr double k_least_metal = 0.9;
  constexpr double k_power_csa_mm2 = 1.5;
  // IEC 60502-1, from memory: 0.7 mm nominal, at a point a tenth and 0.1 mm less.
  const double insulation_mm = at_least(csa_mm2, k_power_csa_mm2) ? 0.5 : 0.0;
  const double conductor_mm2 = k_least_metal * csa_mm2;
  return conductor_mm2 + insulation_mm * 2.0 * std::sqrt(std::numbers::pi * conductor_mm2) +
         std::numbers::pi * insulation_mm * insulation_mm;
}

/// Cores of which no table tells the diameter, against the room that there is for them.
void check_cores(const Cable& cable, std::vector<Remark>& remarks) {
  const auto least = least_round_cores_mm(cable);
  const auto& round = cable.bedding ? cable.bedding : cable.sheath_od;
  if (!least || !round || at_most(*least, round->high_mm())) return;
  const char* const what = cable.bedding ? "bedding" : "sheath";
  remarks.push_back(
      {fmt::format("{} {} of {} mm2 go into no {} under {} mm, and it reads {} mm", *cable.cores,
                   *cable.cores == 1 ? "core" : "cores", plain(*cable.csa_mm2, 2), what,
                   fixed(round_down(*least, 0.1), 1), fixed(round->value_mm, 1)),
       fmt::format("{}, and check cores and size", what), "arithmetic", true});
}

void check_wire(const Cable& cable, const Construction* construction,
                std::vector<Remark>& remarks) {
  if (!cable.wire || !armoured_with_wire(cable)) return;
  if (!cable.wire_nominal) {
    remarks.push_back({fmt::format("{} mm is not a standard wire: look twice at an imported cable",
                                   fixed(cable.wire->value_mm, 2)),
                       "wire: strip one, wipe it clean of zinc dust and bitumen", k_wire_source});
  }
  if (construction == nullptr || !construction->layers.armour_mm) return;
  if (construction->in.armour != ArmourKind::wire) return;
  const double built = *construction->layers.armour_mm;
  const double size = *wire_size_mm(cable);
  if (cable.wire_nominal
          ? std::abs(size - built) < k_epsilon_mm
          : at_most(std::abs(cable.wire->value_mm - built), cable.wire->expanded_mm)) {
    return;
  }
  remarks.push_back(
      {fmt::format("wire {} mm; the construction has {} mm", plain(size), plain(built)),
       "wire, and check cores, size and pattern: the same cores can carry another armour",
       k_model_source});
}

/// Both directions share what must be known: one diameter, and the wire.
bool can_estimate(const Cable& cable, const std::optional<Estimate>& diameter) {
  return diameter.has_value() && cable.wire.has_value() && armoured_with_wire(cable);
}

Estimate joined(double value_mm, double sheath_mm, const Estimate& diameter, const Cable& cable,
                std::string source) {
  const double spread =
      std::hypot(sheath_spread_mm(sheath_mm), diameter.expanded_mm, 2.0 * wire_spread_mm(cable));
  return measure::from_model(value_mm, spread, std::move(source));
}

}  // namespace

double least_at_a_point_mm(double nominal_mm) { return nominal_mm - (0.2 * nominal_mm + 0.2); }

std::optional<double> least_round_cores_mm(const Cable& cable) {
  if (!cable.cores || !cable.csa_mm2) return std::nullopt;
  return std::sqrt(4.0 / std::numbers::pi * *cable.cores * least_core_mm2(*cable.csa_mm2));
}

double most_likely_mm(double nominal_mm) { return 2.0 * nominal_mm; }

std::optional<double> nominal_sheath_mm(const Cable& cable, const Construction* construction,
                                        const Standards& standards) {
  if (construction != nullptr) return construction->layers.oversheath_mm;
  if (!cable.sheath_od) return std::nullopt;
  return oversheath_for_od(oversheath_rule(standards, Pattern::british), cable.sheath_od->value_mm);
}

Estimate sheath_od_estimate(const Construction& construction) {
  return measure::from_model(construction.sheath_od_mm, construction.expanded_mm, k_model_source);
}

Estimate bedding_estimate(const Construction& construction) {
  return measure::from_model(construction.bedding_diameter_mm, construction.bedding_expanded_mm,
                             k_model_source);
}

std::optional<Estimate> bedding_from_od(const Cable& cable, Pattern pattern,
                                        const Standards& standards) {
  if (!can_estimate(cable, cable.sheath_od)) return std::nullopt;
  const double od = cable.sheath_od->value_mm;
  const double sheath = oversheath_for_od(oversheath_rule(standards, pattern), od);
  const double wire = *wire_size_mm(cable);
  const double bedding = od - 2.0 * (wire + sheath);
  if (at_most(bedding, 0.0)) return std::nullopt;
  return joined(bedding, sheath, *cable.sheath_od, cable,
                fmt::format("sheath OD {} less 2 x (wire {} + sheath {})", fixed(od, 1),
                            plain(wire), fixed(sheath, 1)));
}

std::optional<Estimate> od_from_bedding(const Cable& cable, Pattern pattern,
                                        const Standards& standards) {
  if (!can_estimate(cable, cable.bedding)) return std::nullopt;
  const double wire = *wire_size_mm(cable);
  const double over_armour = cable.bedding->value_mm + 2.0 * wire;
  const double sheath =
      oversheath_thickness_mm(standards, to_string(pattern), over_armour, true, false);
  return joined(over_armour + 2.0 * sheath, sheath, *cable.bedding, cable,
                fmt::format("bedding {} and 2 x (wire {} + sheath {})",
                            fixed(cable.bedding->value_mm, 1), plain(wire), fixed(sheath, 1)));
}

std::vector<Remark> implausible_readings(const Cable& cable, const Construction* construction,
                                         const Standards& standards) {
  std::vector<Remark> remarks;
  check_no_room(cable, remarks);
  check_inches(cable, remarks);
  if (remarks.empty() && cable.armour != ArmourKind::none)
    check_sheath(cable, construction, standards, remarks);
  if (construction != nullptr) {
    check_against("sheath OD", cable.sheath_od, construction->sheath_od_mm,
                  construction->expanded_mm, k_od_allow_mm, remarks);
    check_against("bedding", cable.bedding, construction->bedding_diameter_mm,
                  construction->bedding_expanded_mm, k_bedding_allow_mm, remarks);
  } else {
    check_cores(cable, remarks);
  }
  check_circular(cable, remarks);
  check_wire(cable, construction, remarks);
  return remarks;
}

}  // namespace cutback::cable

#include "core/fit/checks.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <array>

#include "cutback/cable/plausibility.hpp"
#include "cutback/compare.hpp"
#include "cutback/fit/absurd.hpp"
#include "cutback/number.hpp"

namespace cutback::fit::detail {
namespace {

using cable::ArmourKind;
using measure::Estimate;
using measure::Evidence;
using measure::Range;

constexpr const char* k_interval_rule =
    "interval D +/- U inside the gland's range (JCGM 106:2012 clause 8, guard band U)";

std::string range_text(const Range& range) {
  if (range.low_mm && range.high_mm) {
    return plain(*range.low_mm) + " to " + plain(*range.high_mm) + " mm";
  }
  if (range.high_mm) return "up to " + plain(*range.high_mm) + " mm";
  if (range.low_mm) return "from " + plain(*range.low_mm) + " mm";
  return "an unstated range";
}

std::string verdict_words(const measure::Judgement& judgement) {
  switch (judgement.verdict) {
    case Verdict::fits:
      return "inside by " + fixed(round_down(judgement.margin_mm, 0.01), 2) + " mm";
    case Verdict::marginal_inside:
      return "inside, but not proven";
    case Verdict::marginal_outside:
      return "outside, but only just";
    case Verdict::no_fit:
      return "outside";
    case Verdict::not_known:
      return "not known";
  }
  return {};
}

/// A range that states no limit proves nothing.
Against compared(Diameter diameter, const Range& range) {
  if (!range.low_mm && !range.high_mm) return {.verdict = Verdict::not_known};
  return {.range = range, .diameter = diameter};
}

bool cannot_be(Figure figure, const Case& at) {
  return is_absurd(figure, at.gland, *at.question.standards);
}

constexpr Against k_not_known{.verdict = Verdict::not_known};

/// How a check of a diameter speaks of it.
struct Naming {
  Diameter diameter;
  const char* subject;
  const char* object;
  const char* not_given;
};

constexpr Lack::Where k_at_the_end = Lack::Where::at_the_end;

Lack lack_of(Diameter diameter) {
  switch (diameter) {
    case Diameter::sheath:
      return {"sheath", "sheath_od_mm", k_at_the_end};
    case Diameter::bedding:
      return {"bedding", "bedding_mm", k_at_the_end};
    case Diameter::wire:
      break;
  }
  return {"wire", "armour_mm", k_at_the_end};
}

/// An estimate that lies inside wants nothing but a caliper.
bool wants_measuring(const Estimate& estimate, Verdict verdict) {
  return verdict == Verdict::marginal_inside && estimate.evidence == Evidence::estimated;
}

/// What would settle a diameter that is near a limit.
std::string how_to_settle(const Estimate& estimate) {
  if (estimate.evidence != Evidence::measured) return " measured, it may be outside";
  if (estimate.caps.empty()) return " again, it is near a limit";
  return " " + std::string(estimate.caps.front().wanted);
}

/// Puts the range and words to a diameter that is compared with it.
Check check_diameter(CheckName name, const Case& at, const Against& against, const Range& range,
                     const Naming& naming) {
  const Compared diameter(at.cable(), naming.diameter);
  const Finding finding = finding_of(against, at.cable());
  Check check{.name = name,
              .verdict = finding.verdict,
              .margin_mm = finding.margin_mm,
              .counts_for_margin = finding.counts_for_margin};
  check.low = range.low_mm;
  check.high = range.high_mm;
  if (!diameter.known()) {
    check.says = naming.not_given;
    check.source = k_interval_rule;
    check.lacks = {lack_of(naming.diameter)};
    return check;
  }
  const Estimate& estimate = diameter.estimate();
  if (wants_measuring(estimate, check.verdict)) {
    check.lacks = {lack_of(naming.diameter)};
  } else if (check.verdict == Verdict::marginal_inside ||
             check.verdict == Verdict::marginal_outside) {
    check.lacks = {{naming.subject + how_to_settle(estimate), "", Lack::Where::elsewhere}};
  }
  const measure::Judgement judgement = measure::judge(estimate, range);
  check.value = estimate.value_mm;
  check.probability = judgement.probability;
  check.says = fmt::format("{} {}, {} {}: {}", naming.subject, measure::with_spread(estimate),
                           naming.object, range_text(range), verdict_words(judgement));
  for (const std::string& reason : judgement.reasons) check.says += "; " + reason;
  if (estimate.evidence != Evidence::measured) check.says += "; measure before cutting";
  check.source = std::string(k_interval_rule) + "; " + estimate.source;
  return check;
}

constexpr const char* k_no_bedding =
    "the bedding diameter is not given: measure it under the armour";

Check check_nominal_wire(const cable::Cable& cable, const Range& clamp) {
  const double size = cable.wire_nominal->nominal_mm;
  const Finding finding = Compared(cable, Diameter::wire).in(clamp);
  const bool fits = finding.verdict == Verdict::fits;
  Check check{.name = CheckName::armour,
              .verdict = finding.verdict,
              .margin_mm = finding.margin_mm,
              .counts_for_margin = finding.counts_for_margin};
  if (wants_measuring(*cable.wire, check.verdict)) check.lacks = {lack_of(Diameter::wire)};
  check.value = size;
  check.low = clamp.low_mm;
  check.high = clamp.high_mm;
  check.probability = fits ? 1.0 : 0.0;
  check.says = fmt::format("wire {} mm is nominal {} mm, clamp takes {}: {}",
                           fixed(cable.wire->value_mm, 2), plain(size), range_text(clamp),
                           finding.verdict >= Verdict::marginal_inside ? "grips" : "does not grip");
  for (const measure::Cap& cap : cable.wire->caps) check.says += "; " + cap.reason;
  if (cable.wire->evidence != Evidence::measured) check.says += "; measure before cutting";
  check.source = std::string("nominal size by its band (") +
                 (cable.wire_nominal->iec ? "IEC 60502-1, its 5 % from memory"
                                          : "CENELEC HD 604 S1/A1, armour wire tolerances") +
                 ") against the gland's range of nominal sizes";
  return check;
}

std::string armour_kinds_text(ArmourKind cable, ArmourKind gland) {
  const std::string of_gland(to_string(gland));
  const std::string of_cable(to_string(cable));
  if (cable == gland) return "neither the cable nor the gland has armour parts";
  if (gland == ArmourKind::none) {
    return "the gland has no armour clamp, the cable has " + of_cable + " armour";
  }
  if (cable == ArmourKind::none) {
    return "the gland clamps " + of_gland + " armour, the cable has none";
  }
  return "the gland clamps " + of_gland + " armour, the cable has " + of_cable;
}

bool is_estimated(const std::optional<Estimate>& diameter) {
  return diameter && diameter->evidence == Evidence::estimated;
}

/// Whether one of them comes from the others or from the construction, so that it proves nothing.
bool leans_on_an_estimate(const cable::Cable& cable) {
  return is_estimated(cable.sheath_od) || is_estimated(cable.bedding) || is_estimated(cable.wire);
}

/// Those of the three diameters that nobody gave, or gave as an estimate.
std::vector<Lack> unmeasured_layers(const cable::Cable& cable) {
  std::vector<Lack> lacks;
  const auto add = [&](Diameter diameter, const std::optional<Estimate>& estimate) {
    if (!estimate || is_estimated(estimate)) lacks.push_back(lack_of(diameter));
  };
  add(Diameter::sheath, cable.sheath_od);
  add(Diameter::bedding, cable.bedding);
  add(Diameter::wire, cable.wire);
  return lacks;
}

std::string names_of(const std::vector<Lack>& lacks) {
  std::string names;
  for (const Lack& lack : lacks) names += (names.empty() ? "" : " and ") + lack.fact;
  return names;
}

}  // namespace

Check check_absurd(CheckName name, Figure figure, const Case& at) {
  return {.name = name,
          .verdict = Verdict::not_known,
          .lacks = {{"a figure of the gland list that can be", "", Lack::Where::elsewhere}},
          .says = "the list has a figure that cannot be: " +
                  why_absurd(figure, at.gland, *at.question.standards),
          .source = "the gland list"};
}

std::optional<Against> against_outer_seal(const Case& at) {
  if (cannot_be(Figure::outer_seal, at)) return k_not_known;
  return compared(Diameter::sheath, at.gland.outer);
}

std::optional<Check> check_outer_seal(const Case& at, GlandFit& /*fit*/) {
  if (cannot_be(Figure::outer_seal, at)) {
    return check_absurd(CheckName::outer_seal, Figure::outer_seal, at);
  }
  return check_diameter(
      CheckName::outer_seal, at, *against_outer_seal(at), at.gland.outer,
      {Diameter::sheath, "sheath", "outer seal", "the sheath diameter is not given"});
}

std::optional<Against> against_inner_seal(const Case& at) {
  if (!at.gland.inner || at.barrier || at.cable().armour == ArmourKind::none) return std::nullopt;
  if (cannot_be(Figure::inner_seal, at)) return k_not_known;
  return compared(Diameter::bedding, *at.gland.inner);
}

std::optional<Check> check_inner_seal(const Case& at, GlandFit& /*fit*/) {
  const auto against = against_inner_seal(at);
  if (!against) return std::nullopt;
  if (cannot_be(Figure::inner_seal, at)) {
    return check_absurd(CheckName::inner_seal, Figure::inner_seal, at);
  }
  return check_diameter(CheckName::inner_seal, at, *against, *at.gland.inner,
                        {Diameter::bedding, "bedding", "inner seal", k_no_bedding});
}

/// What passes the armour cone: its bore, else what the inner seal takes at most, for it lies in
/// the same bore. Where that seal is checked as well, its check says all.
std::optional<Against> against_bore(const Case& at) {
  const gland::Gland& gland = at.gland;
  if (at.cable().armour == ArmourKind::none || gland.armour == ArmourKind::none) {
    return std::nullopt;
  }
  if (cannot_be(Figure::bore, at)) return k_not_known;
  if (gland.bore_mm) {
    return compared(Diameter::bedding, {.low_mm = std::nullopt, .high_mm = gland.bore_mm});
  }
  if (!gland.inner) return k_not_known;
  if (!at.barrier) return std::nullopt;
  return compared(Diameter::bedding, {.low_mm = std::nullopt, .high_mm = gland.inner->high_mm});
}

std::optional<Check> check_bore(const Case& at, GlandFit& /*fit*/) {
  const auto against = against_bore(at);
  if (!against) return std::nullopt;
  if (cannot_be(Figure::bore, at)) return check_absurd(CheckName::bore, Figure::bore, at);
  if (!against->range) {
    return Check{.name = CheckName::bore,
                 .verdict = against->verdict,
                 .lacks = {{"bore of the gland", "bore_mm", Lack::Where::elsewhere}},
                 .says =
                     "the gland has no inner seal, and what its armour cone lets through is "
                     "not stated (bore_mm)",
                 .source = "the gland list"};
  }
  return check_diameter(CheckName::bore, at, *against, *against->range,
                        {Diameter::bedding, "bedding",
                         at.gland.bore_mm ? "bore of the armour cone"
                                          : "bore of the armour cone, taken from the inner seal,",
                         k_no_bedding});
}

std::optional<Against> against_armour(const Case& at) {
  const ArmourKind kind = at.cable().armour;
  if (kind != at.gland.armour) return Against{.verdict = Verdict::no_fit};
  if (kind == ArmourKind::none) return Against{};
  if (cannot_be(Figure::clamp, at) || cannot_be(Figure::exposed_armour, at)) return k_not_known;
  return compared(Diameter::wire, at.gland.armour_clamp);
}

std::optional<Check> check_armour(const Case& at, GlandFit& /*fit*/) {
  const cable::Cable& cable = at.cable();
  const Against against = *against_armour(at);
  if (cable.armour != at.gland.armour || cable.armour == ArmourKind::none) {
    return Check{.name = CheckName::armour,
                 .verdict = against.verdict,
                 .says = armour_kinds_text(cable.armour, at.gland.armour),
                 .source = "kind of armour against the gland list"};
  }
  for (const Figure figure : {Figure::clamp, Figure::exposed_armour}) {
    if (cannot_be(figure, at)) return check_absurd(CheckName::armour, figure, at);
  }
  if (cable.wire && cable.wire_nominal && against.range) {
    return check_nominal_wire(cable, *against.range);
  }
  Check check =
      check_diameter(CheckName::armour, at, against, at.gland.armour_clamp,
                     {Diameter::wire, "wire", "clamp",
                      "the armour wire is not given: measure one wire, cleaned of zinc lumps"});
  if (cable.wire && cable.armour == ArmourKind::wire && !cable.wire_nominal) {
    check.says += "; not a standard wire: look twice, it may be an imported cable";
  }
  return check;
}

std::optional<Verdict> build_up_alone(const Question& question) {
  const cable::Cable& cable = question.job->cable;
  if (cable.armour == ArmourKind::none) return std::nullopt;
  if (!cable::sheath_thickness_mm(cable)) return Verdict::not_known;
  return cable.contradiction || leans_on_an_estimate(cable) ? Verdict::marginal_inside
                                                            : Verdict::fits;
}

std::optional<Check> check_build_up(const Case& at, GlandFit& /*fit*/) {
  const auto verdict = build_up_alone(at.question);
  if (!verdict) return std::nullopt;
  const cable::Cable& cable = at.cable();
  Check check{.name = CheckName::build_up, .verdict = *verdict};
  check.source = "layers add up: OD = bedding + 2 (armour + sheath)";
  const auto sheath = cable::sheath_thickness(cable);
  check.lacks = unmeasured_layers(cable);
  if (!sheath) {
    check.says = "whether the layers add up is not known: " + names_of(check.lacks) + " not given";
    return check;
  }
  const auto& construction = at.question.job->construction;
  const auto nominal = cable::nominal_sheath_mm(cable, construction ? &*construction : nullptr,
                                                *at.question.standards);
  check.value = sheath->value_mm;
  check.low = cable::least_at_a_point_mm(*nominal);
  check.high = cable::most_likely_mm(*nominal);
  check.margin_mm = std::min(*check.value - *check.low, *check.high - *check.value);
  const int layers = cable::armour_layers(cable.armour);
  check.says = fmt::format("sheath ({} - {})/2 - {}{} = {} mm", plain(cable.sheath_od->value_mm),
                           plain(cable.bedding->value_mm), layers == 1 ? "" : "2 x ",
                           plain(*cable::wire_size_mm(cable)), fixed(*check.value, 2));
  if (cable.contradiction) {
    check.says +=
        fmt::format(": {}. Repeat: {}", cable.contradiction->says, cable.contradiction->repeat);
    check.source += "; " + cable.contradiction->source;
    // Readings are there; which of them is wrong is for a person to find.
    check.lacks = {{cable.contradiction->repeat + " again", "", Lack::Where::elsewhere}};
  } else if (leans_on_an_estimate(cable)) {
    check.says += ", with an estimate among the three: measure before cutting";
  }
  return check;
}

std::vector<Lack> settled_by(const Check& passage, const cable::Cable& cable) {
  const bool near =
      passage.verdict == Verdict::marginal_inside || passage.verdict == Verdict::marginal_outside;
  const bool bare = cable.armour == ArmourKind::none;
  const std::optional<Estimate>& estimate = bare ? cable.sheath_od : cable.bedding;
  if (!near || !estimate) return {};
  const std::string name = bare ? "sheath" : "bedding";
  return {{name + how_to_settle(*estimate), "", Lack::Where::elsewhere}};
}

}  // namespace cutback::fit::detail

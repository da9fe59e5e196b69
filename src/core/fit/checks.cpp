#include "core/fit/checks.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <array>

#include "cutback/cable/plausibility.hpp"
#include "cutback/compare.hpp"
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

/// How a check of a diameter speaks of it.
struct Naming {
  Diameter diameter;
  const char* subject;
  const char* object;
  const char* not_given;
};

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
    return check;
  }
  const Estimate& estimate = diameter.estimate();
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
  check.value = size;
  check.low = clamp.low_mm;
  check.high = clamp.high_mm;
  check.probability = fits ? 1.0 : 0.0;
  check.says =
      fmt::format("wire {} mm is nominal {} mm, clamp takes {}: {}", fixed(cable.wire->value_mm, 2),
                  plain(size), range_text(clamp), fits ? "grips" : "does not grip");
  if (cable.wire->evidence != Evidence::measured) check.says += "; measure before cutting";
  check.source =
      "nominal size by its band (CENELEC HD 604 S1/A1, armour wire tolerances) "
      "against the gland's range of nominal sizes";
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

/// The sheath that the three readings leave. Lengths in mm.
struct BuildUp {
  Verdict verdict = Verdict::fits;
  double sheath_mm = 0.0;
  double low_mm = 0.0;
  std::optional<double> high_mm;  ///< where the construction is known
  double margin_mm = 0.0;
  bool proven = false;  ///< some sheath is left whatever the spread
};

std::optional<BuildUp> find_build_up(const cable::Cable& cable,
                                     const std::optional<cable::Construction>& construction) {
  const auto sheath = cable::sheath_thickness_mm(cable);
  if (!sheath || cable.armour == ArmourKind::none) return std::nullopt;
  const bool measured = cable.sheath_od->evidence == Evidence::measured &&
                        cable.bedding->evidence == Evidence::measured;
  // Figures that are not measured belong together; their allowances are not independent readings.
  const double spread = measured ? cable::sheath_thickness(cable)->expanded_mm : 0.0;
  BuildUp found{.sheath_mm = *sheath, .high_mm = std::nullopt, .margin_mm = *sheath - spread};
  found.proven = *sheath > 0.0 && found.margin_mm > 0.0;
  if (!found.proven) {
    found.verdict = *sheath <= 0.0 ? Verdict::no_fit : Verdict::marginal_inside;
  } else if (construction) {
    const double nominal = construction->layers.oversheath_mm;
    found.low_mm = cable::least_at_a_point_mm(nominal);
    found.high_mm = cable::most_likely_mm(nominal);
    found.margin_mm =
        std::min(*sheath - spread - found.low_mm, *found.high_mm - (*sheath + spread));
    if (!at_least(found.margin_mm, 0.0)) found.verdict = Verdict::marginal_inside;
  }
  return found;
}

void say_build_up(const cable::Cable& cable, const cable::Construction* construction, bool proven,
                  Check& check) {
  check.says = fmt::format("sheath thickness ({} - {})/2 - {} = {} mm",
                           plain(cable.sheath_od->value_mm), plain(cable.bedding->value_mm),
                           plain(*cable::wire_size_mm(cable)), fixed(*check.value, 2));
  check.source = "layers add up: OD = bedding + 2 (wire + sheath); spread by JCGM 100:2008 5.1.2";
  if (!proven) {
    check.says += ": the readings leave no proven sheath, measure the three again";
  } else if (construction == nullptr) {
    check.says += ": a thickness that can be";
  } else {
    check.says += fmt::format(
        "; the construction has {} mm, so {} to {} mm can be: {}",
        plain(construction->layers.oversheath_mm), fixed(*check.low, 2), fixed(*check.high, 2),
        check.verdict == Verdict::fits ? "the readings agree" : "take the readings again");
    check.source +=
        "; least at a point: nominal less 20 % and 0.2 mm (HD 604 S1/A1; for an oversheath "
        "from memory); twice the nominal: common practice, no source";
  }
}

}  // namespace

std::optional<Against> against_outer_seal(const Case& at) {
  return compared(Diameter::sheath, at.gland.outer);
}

std::optional<Check> check_outer_seal(const Case& at, GlandFit& /*fit*/) {
  return check_diameter(
      CheckName::outer_seal, at, *against_outer_seal(at), at.gland.outer,
      {Diameter::sheath, "sheath", "outer seal", "the sheath diameter is not given"});
}

std::optional<Against> against_inner_seal(const Case& at) {
  if (!at.gland.inner || at.barrier || at.cable().armour == ArmourKind::none) return std::nullopt;
  return compared(Diameter::bedding, *at.gland.inner);
}

std::optional<Check> check_inner_seal(const Case& at, GlandFit& /*fit*/) {
  const auto against = against_inner_seal(at);
  if (!against) return std::nullopt;
  return check_diameter(CheckName::inner_seal, at, *against, *at.gland.inner,
                        {Diameter::bedding, "bedding", "inner seal", k_no_bedding});
}

std::optional<Against> against_bore(const Case& at) {
  if (!at.gland.bore_mm || at.cable().armour == ArmourKind::none) return std::nullopt;
  return compared(Diameter::bedding, {.low_mm = std::nullopt, .high_mm = at.gland.bore_mm});
}

std::optional<Check> check_bore(const Case& at, GlandFit& /*fit*/) {
  const auto against = against_bore(at);
  if (!against) return std::nullopt;
  return check_diameter(CheckName::bore, at, *against, *against->range,
                        {Diameter::bedding, "bedding", "bore of the armour cone", k_no_bedding});
}

std::optional<Against> against_armour(const Case& at) {
  const ArmourKind kind = at.cable().armour;
  if (kind != at.gland.armour) return Against{.verdict = Verdict::no_fit};
  if (kind == ArmourKind::none) return Against{};
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
  const auto found = find_build_up(question.job->cable, question.job->construction);
  return found ? std::optional(found->verdict) : std::nullopt;
}

std::optional<Check> check_build_up(const Case& at, GlandFit& /*fit*/) {
  const auto& construction = at.question.job->construction;
  const auto found = find_build_up(at.cable(), construction);
  if (!found) return std::nullopt;
  Check check{.name = CheckName::build_up,
              .verdict = found->verdict,
              .value = found->sheath_mm,
              .low = found->low_mm,
              .high = found->high_mm,
              .margin_mm = found->margin_mm};
  say_build_up(at.cable(), construction ? &*construction : nullptr, found->proven, check);
  return check;
}

}  // namespace cutback::fit::detail

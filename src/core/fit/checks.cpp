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

std::string joined(const std::vector<std::string>& parts) {
  std::string text;
  for (const std::string& part : parts) text += "; " + part;
  return text;
}

Finding find_diameter(CheckName name, const std::optional<Estimate>& estimate, const Range& range) {
  if (!estimate) return {.name = name, .margin_mm = std::nullopt};
  const measure::Outcome outcome = measure::outcome_of(*estimate, range);
  return {.name = name,
          .verdict = outcome.verdict,
          .margin_mm = outcome.margin_mm,
          .counts_for_margin = true};
}

Finding find_nominal_wire(double size_mm, const Range& clamp) {
  const double margin = std::min(size_mm - clamp.low_mm.value_or(0.0),
                                 clamp.high_mm.value_or(measure::k_largest_diameter_mm) - size_mm);
  const bool fits = at_least(margin, 0.0);
  return {.name = CheckName::armour,
          .verdict = fits ? Verdict::fits : Verdict::no_fit,
          .margin_mm = margin,
          // A nominal size is on the list or it is not: being at its end is no risk.
          .counts_for_margin = !fits};
}

/// What the bedding must lie in for the inner seal, where it is asked about.
std::optional<Range> inner_range(const cable::Cable& cable, const gland::Gland& gland,
                                 bool barrier) {
  if (barrier || cable.armour == ArmourKind::none) return std::nullopt;
  return gland.inner;
}

/// The same for the bore.
std::optional<Range> bore_range(const cable::Cable& cable, const gland::Gland& gland) {
  if (!gland.bore_mm || cable.armour == ArmourKind::none) return std::nullopt;
  return Range{.low_mm = std::nullopt, .high_mm = gland.bore_mm};
}

Check check_of(const Finding& finding) {
  return {.name = finding.name,
          .verdict = finding.verdict,
          .margin_mm = finding.margin_mm,
          .counts_for_margin = finding.counts_for_margin};
}

/// Puts the range and words to a diameter that is compared with it.
Check check_diameter(const Finding& finding, const std::optional<Estimate>& estimate,
                     const Range& range, const char* subject, const char* object,
                     const char* not_given) {
  Check check = check_of(finding);
  check.low = range.low_mm;
  check.high = range.high_mm;
  if (!estimate) {
    check.says = not_given;
    check.source = k_interval_rule;
    return check;
  }
  const measure::Judgement judgement = measure::judge(*estimate, range);
  check.value = estimate->value_mm;
  check.probability = judgement.probability;
  check.says = fmt::format("{} {}, {} {}: {}", subject, measure::with_spread(*estimate), object,
                           range_text(range), verdict_words(judgement));
  check.says += joined(judgement.reasons);
  if (estimate->evidence != Evidence::measured) check.says += "; measure before cutting";
  check.source = std::string(k_interval_rule) + "; " + estimate->source;
  return check;
}

constexpr const char* k_no_bedding =
    "the bedding diameter is not given: measure it under the armour";

Check check_nominal_wire(const Finding& finding, const cable::Cable& cable, const Range& clamp) {
  const double size = cable.wire_nominal->nominal_mm;
  const bool fits = finding.verdict == Verdict::fits;
  Check check = check_of(finding);
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

Finding find_outer_seal(const cable::Cable& cable, const gland::Gland& gland) {
  return find_diameter(CheckName::outer_seal, cable.sheath_od, gland.outer);
}

std::optional<Finding> find_inner_seal(const cable::Cable& cable, const gland::Gland& gland,
                                       bool barrier) {
  const auto range = inner_range(cable, gland, barrier);
  if (!range) return std::nullopt;
  return find_diameter(CheckName::inner_seal, cable.bedding, *range);
}

std::optional<Finding> find_bore(const cable::Cable& cable, const gland::Gland& gland) {
  const auto range = bore_range(cable, gland);
  if (!range) return std::nullopt;
  return find_diameter(CheckName::bore, cable.bedding, *range);
}

Finding find_armour(const cable::Cable& cable, const gland::Gland& gland) {
  if (cable.armour != gland.armour || cable.armour == ArmourKind::none) {
    return {.name = CheckName::armour,
            .verdict = cable.armour == gland.armour ? Verdict::fits : Verdict::no_fit,
            .margin_mm = std::nullopt};
  }
  if (cable.wire && cable.wire_nominal) {
    return find_nominal_wire(cable.wire_nominal->nominal_mm, gland.armour_clamp);
  }
  return find_diameter(CheckName::armour, cable.wire, gland.armour_clamp);
}

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

Check check_outer_seal(const cable::Cable& cable, const gland::Gland& gland) {
  return check_diameter(find_outer_seal(cable, gland), cable.sheath_od, gland.outer, "sheath",
                        "outer seal", "the sheath diameter is not given");
}

std::optional<Check> check_inner_seal(const cable::Cable& cable, const gland::Gland& gland,
                                      bool barrier) {
  const auto finding = find_inner_seal(cable, gland, barrier);
  if (!finding) return std::nullopt;
  return check_diameter(*finding, cable.bedding, *inner_range(cable, gland, barrier), "bedding",
                        "inner seal", k_no_bedding);
}

std::optional<Check> check_bore(const cable::Cable& cable, const gland::Gland& gland) {
  const auto finding = find_bore(cable, gland);
  if (!finding) return std::nullopt;
  return check_diameter(*finding, cable.bedding, *bore_range(cable, gland), "bedding",
                        "bore of the armour cone", k_no_bedding);
}

Check check_armour(const cable::Cable& cable, const gland::Gland& gland) {
  const Finding finding = find_armour(cable, gland);
  if (cable.armour != gland.armour || cable.armour == ArmourKind::none) {
    Check check = check_of(finding);
    check.says = armour_kinds_text(cable.armour, gland.armour);
    check.source = "kind of armour against the gland list";
    return check;
  }
  if (cable.wire && cable.wire_nominal) {
    return check_nominal_wire(finding, cable, gland.armour_clamp);
  }
  Check check =
      check_diameter(finding, cable.wire, gland.armour_clamp, "wire", "clamp",
                     "the armour wire is not given: measure one wire, cleaned of zinc lumps");
  if (cable.wire && cable.armour == ArmourKind::wire) {
    check.says += "; not a standard wire: look twice, it may be an imported cable";
  }
  return check;
}

std::optional<Check> check_build_up(const cable::Cable& cable,
                                    const std::optional<cable::Construction>& construction) {
  const auto found = find_build_up(cable, construction);
  if (!found) return std::nullopt;
  Check check{.name = CheckName::build_up,
              .verdict = found->verdict,
              .value = found->sheath_mm,
              .low = found->low_mm,
              .high = found->high_mm,
              .margin_mm = found->margin_mm};
  say_build_up(cable, construction ? &*construction : nullptr, found->proven, check);
  return check;
}

std::optional<EntryCheck> check_entry(const entry::Entry& entry, const gland::Gland& gland,
                                      bool asked) {
  if (!entry.thread && !asked) return std::nullopt;
  if (!entry.thread) {
    return EntryCheck{.check = {.name = CheckName::entry,
                                .verdict = Verdict::not_known,
                                .says = "the thread or size of the entry is not given (--entry)",
                                .source = "thread designations compared"},
                      .adaptor = std::nullopt};
  }
  const std::string hole = entry::to_text(*entry.thread);
  const std::string own = entry::to_text(gland.entry_thread);
  EntryCheck result{.check = {.name = CheckName::entry, .source = "thread designations compared"},
                    .adaptor = std::nullopt};
  if (gland.entry_thread == *entry.thread) {
    result.check.verdict = Verdict::fits;
    result.check.says = "gland thread " + own + " suits the entry " + hole;
    return result;
  }
  for (const entry::Adaptor& adaptor : entry.adaptors) {
    const bool suits = (adaptor.a == *entry.thread && adaptor.b == gland.entry_thread) ||
                       (adaptor.b == *entry.thread && adaptor.a == gland.entry_thread);
    if (!suits) continue;
    result.check.verdict = Verdict::fits;
    result.check.says =
        "gland thread " + own + " goes into the entry " + hole + " through one adaptor";
    result.check.source =
        "not more than one thread adaptor per entry (IEC 60079-14:2013, secondary)";
    result.adaptor = adaptor;
    return result;
  }
  result.check.verdict = Verdict::no_fit;
  result.check.says = "gland thread " + own + " does not suit the entry " + hole;
  return result;
}

}  // namespace cutback::fit::detail

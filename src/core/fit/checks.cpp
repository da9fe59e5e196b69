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

Check not_known(CheckName name, const Range& range, std::string says) {
  return {.name = name,
          .verdict = Verdict::not_known,
          .low = range.low_mm,
          .high = range.high_mm,
          .says = std::move(says),
          .source = k_interval_rule};
}

/// One diameter against one range of the gland.
Check check_diameter(CheckName name, const Estimate& estimate, const Range& range,
                     const char* subject, const char* object, Words words) {
  const measure::Judgement judgement = measure::judge(estimate, range);
  Check check{.name = name,
              .verdict = judgement.verdict,
              .value = estimate.value_mm,
              .low = range.low_mm,
              .high = range.high_mm,
              .margin_mm = judgement.margin_mm,
              .probability = judgement.probability,
              .counts_for_margin = true};
  if (words == Words::no) return check;
  std::string says = fmt::format("{} {}, {} {}: {}", subject, measure::with_spread(estimate),
                                 object, range_text(range), verdict_words(judgement));
  says += joined(judgement.reasons);
  if (estimate.evidence != Evidence::measured) says += "; measure before cutting";
  check.says = std::move(says);
  check.source = std::string(k_interval_rule) + "; " + estimate.source;
  return check;
}

Check check_nominal_wire(const cable::Cable& cable, const gland::Gland& gland, Words words) {
  const double size = cable.wire_nominal->nominal_mm;
  const Range& clamp = gland.armour_clamp;
  const double margin = std::min(size - clamp.low_mm.value_or(0.0),
                                 clamp.high_mm.value_or(measure::k_largest_diameter_mm) - size);
  const bool fits = at_least(margin, 0.0);
  Check check{.name = CheckName::armour,
              .verdict = fits ? Verdict::fits : Verdict::no_fit,
              .value = size,
              .low = clamp.low_mm,
              .high = clamp.high_mm,
              .margin_mm = margin,
              .probability = fits ? 1.0 : 0.0,
              // A nominal size is on the list or it is not: being at its end is no risk.
              .counts_for_margin = !fits};
  if (words == Words::no) return check;
  check.says =
      fmt::format("wire {} mm is nominal {} mm, clamp takes {}: {}", fixed(cable.wire->value_mm, 2),
                  plain(size), range_text(clamp), fits ? "grips" : "does not grip");
  if (cable.wire->evidence != Evidence::measured) check.says += "; measure before cutting";
  check.source =
      "nominal size by its band (CENELEC HD 604 S1/A1, armour wire tolerances) "
      "against the gland's range of nominal sizes";
  return check;
}

Check armour_kind_check(Verdict verdict, std::string says) {
  return {.name = CheckName::armour,
          .verdict = verdict,
          .says = std::move(says),
          .source = "kind of armour against the gland list"};
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

Check check_outer_seal(const cable::Cable& cable, const gland::Gland& gland, Words words) {
  if (!cable.sheath_od) {
    return not_known(CheckName::outer_seal, gland.outer, "the sheath diameter is not given");
  }
  return check_diameter(CheckName::outer_seal, *cable.sheath_od, gland.outer, "sheath",
                        "outer seal", words);
}

std::optional<Check> check_inner_seal(const cable::Cable& cable, const gland::Gland& gland,
                                      bool barrier, Words words) {
  if (!gland.inner || barrier) return std::nullopt;
  if (cable.armour == ArmourKind::none) return std::nullopt;
  if (!cable.bedding) {
    return not_known(CheckName::inner_seal, *gland.inner,
                     "the bedding diameter is not given: measure it under the armour");
  }
  return check_diameter(CheckName::inner_seal, *cable.bedding, *gland.inner, "bedding",
                        "inner seal", words);
}

std::optional<Check> check_bore(const cable::Cable& cable, const gland::Gland& gland, Words words) {
  if (!gland.bore_mm || cable.armour == ArmourKind::none) return std::nullopt;
  const Range range{.low_mm = std::nullopt, .high_mm = gland.bore_mm};
  if (!cable.bedding) {
    return not_known(CheckName::bore, range,
                     "the bedding diameter is not given: measure it under the armour");
  }
  return check_diameter(CheckName::bore, *cable.bedding, range, "bedding",
                        "bore of the armour cone", words);
}

Check check_armour(const cable::Cable& cable, const gland::Gland& gland, Words words) {
  if (cable.armour != gland.armour) {
    if (gland.armour == ArmourKind::none) {
      return armour_kind_check(Verdict::no_fit, "the gland has no armour clamp, the cable has " +
                                                    std::string(to_string(cable.armour)) +
                                                    " armour");
    }
    if (cable.armour == ArmourKind::none) {
      return armour_kind_check(Verdict::no_fit, "the gland clamps " +
                                                    std::string(to_string(gland.armour)) +
                                                    " armour, the cable has none");
    }
    return armour_kind_check(Verdict::no_fit,
                             "the gland clamps " + std::string(to_string(gland.armour)) +
                                 " armour, the cable has " + std::string(to_string(cable.armour)));
  }
  if (cable.armour == ArmourKind::none) {
    return armour_kind_check(Verdict::fits, "neither the cable nor the gland has armour parts");
  }
  if (!cable.wire) {
    return not_known(CheckName::armour, gland.armour_clamp,
                     "the armour wire is not given: measure one wire, cleaned of zinc lumps");
  }
  if (cable.wire_nominal) return check_nominal_wire(cable, gland, words);
  Check check =
      check_diameter(CheckName::armour, *cable.wire, gland.armour_clamp, "wire", "clamp", words);
  if (cable.armour == ArmourKind::wire && words == Words::yes) {
    check.says += "; not a standard wire: look twice, it may be an imported cable";
  }
  return check;
}

std::optional<Check> check_build_up(const cable::Cable& cable,
                                    const std::optional<cable::Construction>& construction,
                                    Words words) {
  const auto sheath = cable::sheath_thickness(cable);
  if (!sheath || cable.armour == ArmourKind::none) return std::nullopt;
  const bool measured = cable.sheath_od->evidence == Evidence::measured &&
                        cable.bedding->evidence == Evidence::measured;
  // Figures that are not measured belong together; their allowances are not independent readings.
  const double spread = measured ? sheath->expanded_mm : 0.0;
  Check check{.name = CheckName::build_up,
              .verdict = Verdict::fits,
              .value = sheath->value_mm,
              .low = 0.0,
              .margin_mm = sheath->value_mm - spread};
  const bool proven = sheath->value_mm > 0.0 && *check.margin_mm > 0.0;
  if (!proven) {
    check.verdict = sheath->value_mm <= 0.0 ? Verdict::no_fit : Verdict::marginal_inside;
  } else if (construction) {
    const double nominal = construction->layers.oversheath_mm;
    check.low = cable::least_at_a_point_mm(nominal);
    check.high = cable::most_likely_mm(nominal);
    check.margin_mm =
        std::min(sheath->value_mm - spread - *check.low, *check.high - (sheath->value_mm + spread));
    if (!at_least(*check.margin_mm, 0.0)) check.verdict = Verdict::marginal_inside;
  }
  if (words == Words::yes)
    say_build_up(cable, construction ? &*construction : nullptr, proven, check);
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

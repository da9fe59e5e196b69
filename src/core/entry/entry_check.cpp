#include "cutback/entry/entry_check.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "cutback/area/bundle.hpp"
#include "cutback/compare.hpp"
#include "cutback/entry/geometry.hpp"
#include "cutback/entry/hardware.hpp"
#include "cutback/entry/thread_check.hpp"
#include "cutback/number.hpp"

namespace cutback::entry {
namespace {

using cable::ArmourKind;
using measure::Estimate;

constexpr const char* k_compared = "thread designations compared";
constexpr const char* k_one_adaptor =
    "not more than one thread adaptor per entry (IEC 60079-14:2013, secondary)";

bool joins(const Adaptor& adaptor, const Thread& gland, const Entry& entry) {
  return (adaptor.b == gland && suits(adaptor.a, entry)) ||
         (adaptor.a == gland && suits(adaptor.b, entry));
}

/// What encloses everything that passes: the bedding, or the sheath of an unarmoured cable.
const std::optional<Estimate>& enclosing(const cable::Cable& cable) {
  return cable.armour == ArmourKind::none ? cable.sheath_od : cable.bedding;
}

std::optional<area::Bundle> core_bundle(const cable::Cable& cable, std::optional<double> core_mm,
                                        const tables::Standards& standards) {
  if (!cable.cores || !core_mm) return std::nullopt;
  return area::bundle_of(standards.table("bundle_factors"), *cable.cores, *core_mm);
}

/// Words for what is in the way of a pass although the limit is kept.
const char* doubt_of(const Passage& passage) {
  if (passage.bore_missing) return "the adaptor's smallest bore is not given (adaptor_bore_mm)";
  if (passage.from_memory) return "the thread's figures are from memory: measure the gland's bore";
  return nullptr;
}

std::string_view passer_name(Passer passer) {
  switch (passer) {
    case Passer::bedding:
      return "bedding";
    case Passer::sheath:
      return "sheath";
    case Passer::cores:
      return "cores";
  }
  return "";
}

const char* outcome_words(Verdict verdict) {
  switch (verdict) {
    case Verdict::fits:
      return "passes";
    case Verdict::marginal_inside:
      return "should pass, but that is not proven";
    case Verdict::marginal_outside:
      return "may not pass";
    case Verdict::no_fit:
      return "does not pass";
    case Verdict::not_known:
      return "it is not known whether they pass";
  }
  return "";
}

/// The bedding or the sheath itself.
void say_whole(fit::Check& check, const Passage& passage, const cable::Cable& cable) {
  const std::optional<Estimate>& whole = enclosing(cable);
  const std::string name(passer_name(passer_of(cable.armour, false)));
  const fit::Lack lack{name, name == "sheath" ? "sheath_od_mm" : "bedding_mm",
                       fit::Lack::Where::at_the_end};
  if (!whole) {
    check.says += "; the diameter of the " + name + " is not given";
    check.lacks = {lack};
    return;
  }
  const measure::Judgement judged = measure::judge(*whole, passage.range);
  check.verdict = judged.verdict;
  const bool estimated = whole->evidence == measure::Evidence::estimated;
  if (estimated && judged.verdict == Verdict::marginal_inside) check.lacks = {lack};
  check.value = whole->value_mm;
  check.margin_mm = judged.margin_mm;
  check.counts_for_margin = true;
  check.probability = judged.probability;
  check.says +=
      "; the " + name + ", " + measure::with_spread(*whole) + ", " + outcome_words(judged.verdict);
}

/// The cores, by what encloses them or by their bundle.
void say_cores(fit::Check& check, const Passage& passage, const cable::Cable& cable,
               std::optional<double> core_mm, const tables::Standards& standards) {
  const std::optional<Estimate>& whole = enclosing(cable);
  if (whole && at_most(whole->high_mm(), *passage.range.high_mm)) {
    check.verdict = Verdict::fits;
    check.value = whole->value_mm;
    check.says += "; the cores lie within " + measure::with_spread(*whole) + " and pass";
    return;
  }
  check.verdict = verdict_of_cores(passage, cable, core_mm, standards);
  if (const auto bundle = core_bundle(cable, core_mm, standards)) {
    check.value = bundle->laid_mm.value_or(bundle->least_mm);
    check.says += "; the cores, a bundle of about " + fixed(*check.value, 1) + " mm, ";
  } else {
    check.says += "; only the cores pass it, and their bundle is not known: ";
  }
  check.says += outcome_words(check.verdict);
}

}  // namespace

const Adaptor* adaptor_between(const Entry& entry, const Thread& gland) {
  if (suits(gland, entry)) return nullptr;
  const auto found = std::find_if(entry.adaptors.begin(), entry.adaptors.end(),
                                  [&](const Adaptor& one) { return joins(one, gland, entry); });
  return found == entry.adaptors.end() ? nullptr : &*found;
}

fit::Check check_entry(const gland::Gland& gland, const Entry& entry) {
  const std::string own = to_text(gland.entry_thread);
  fit::Check check{.name = fit::CheckName::entry, .source = k_compared};
  if (!entry.thread && !entry.to_suit) {
    check.says = "the thread or size of the entry is not given (--entry)";
    check.lacks = {{"entry", "entry", fit::Lack::Where::elsewhere}};
    return check;
  }
  check.verdict = Verdict::fits;
  if (!entry.thread) {
    check.says = "the hole will be made for the gland's thread " + own +
                 (hole_of(entry) == Hole::clearance ? ", a clearance hole" : ", tapped");
    return check;
  }
  const std::string hole = to_text(*entry.thread);
  if (suits(gland.entry_thread, entry)) {
    check.says = "gland thread " + own + " suits the entry " + hole;
  } else if (adaptor_between(entry, gland.entry_thread) != nullptr) {
    check.says = "gland thread " + own + " goes into the entry " + hole + " through one adaptor";
    check.source = k_one_adaptor;
  } else {
    check.verdict = Verdict::no_fit;
    check.says = "gland thread " + own + " does not suit the entry " + hole;
  }
  return check;
}

Passer passer_of(ArmourKind armour, bool barrier) {
  if (barrier) return Passer::cores;
  return armour == ArmourKind::none ? Passer::sheath : Passer::bedding;
}

Passage passage(const gland::Gland& gland, const Entry& entry, const Adaptor* adaptor,
                const tables::Standards& standards) {
  const ThreadDiameter own = male_root(gland.entry_thread, standards);
  Passage out{.range = {.low_mm = std::nullopt, .high_mm = own.mm},
              .from_memory = own.from_memory,
              .source = own.source};
  if (adaptor == nullptr) return out;
  out.bore_missing = !entry.adaptor_bore_mm;
  double bore_mm = entry.adaptor_bore_mm.value_or(own.mm);
  if (out.bore_missing) {
    const ThreadDiameter its = male_root(wall_side(*adaptor, gland), standards);
    bore_mm = its.mm;
    out.from_memory = out.from_memory || its.from_memory;
  }
  if (bore_mm < own.mm) {
    out.range.high_mm = bore_mm;
    out.adaptor_decides = true;
    if (!out.bore_missing) out.source = "smallest bore of the adaptor as given";
  }
  return out;
}

Verdict trust_in(const Passage& passage) {
  return doubt_of(passage) == nullptr ? Verdict::fits : Verdict::not_known;
}

Verdict verdict_of_cores(const Passage& passage, const cable::Cable& cable,
                         std::optional<double> core_mm, const tables::Standards& standards) {
  const double limit_mm = *passage.range.high_mm;
  const auto bundle = core_bundle(cable, core_mm, standards);
  if (!bundle) return Verdict::not_known;
  if (!at_most(bundle->least_mm, limit_mm)) return Verdict::no_fit;
  const bool within = bundle->laid_mm && at_most(*bundle->laid_mm, limit_mm);
  return worst(within ? Verdict::marginal_inside : Verdict::marginal_outside, trust_in(passage));
}

fit::Check check_passage(const Passage& passage, const cable::Cable& cable, bool barrier,
                         std::optional<double> core_mm, const tables::Standards& standards) {
  fit::Check check{.name = fit::CheckName::entry,
                   .high = passage.range.high_mm,
                   .source = std::string(passage.source)};
  check.says = fmt::format("{} leaves {} mm at most",
                           passage.adaptor_decides ? "the adaptor" : "the gland's own thread",
                           fixed(round_down(*passage.range.high_mm, 0.01), 2));
  if (barrier) {
    say_cores(check, passage, cable, core_mm, standards);
  } else {
    say_whole(check, passage, cable);
  }
  check.verdict = worst(check.verdict, trust_in(passage));
  const char* const doubt = doubt_of(passage);
  if (doubt != nullptr) check.counts_for_margin = false;  // it is not the diameter that fails
  if (doubt != nullptr && check.verdict == Verdict::not_known) {
    check.lacks.clear();
    if (passage.bore_missing) {
      check.lacks.push_back(
          {"smallest bore of the adaptor", "adaptor_bore_mm", fit::Lack::Where::elsewhere});
    } else {
      check.lacks.push_back({"bore of the gland's thread, its figures are from memory", "",
                             fit::Lack::Where::elsewhere});
    }
    check.says += std::string("; ") + doubt;
  }
  return check;
}

}  // namespace cutback::entry

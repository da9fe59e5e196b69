#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <optional>
#include <utility>
#include <vector>

#include "core/fit/rules.hpp"
#include "cutback/compare.hpp"
#include "cutback/entry/geometry.hpp"
#include "cutback/fit/fit.hpp"
#include "cutback/fit/questions.hpp"
#include "cutback/number.hpp"

namespace cutback::fit {
namespace {

/// What of a gland a check compares a diameter with, and which diameter that is.
struct Compares {
  CheckName name;
  const char* part;
  const char* diameter;
  std::optional<measure::Estimate> cable::Cable::*estimate;
};
constexpr std::array k_compares{
    Compares{CheckName::outer_seal, "outer seal", "the sheath", &cable::Cable::sheath_od},
    Compares{CheckName::inner_seal, "inner seal", "the bedding", &cable::Cable::bedding},
    Compares{CheckName::bore, "bore", "the bedding", &cable::Cable::bedding},
    Compares{CheckName::armour, "armour clamp", "the wire", &cable::Cable::wire},
};

/// @return null for a check that compares no diameter with the gland
const Compares* compares(CheckName name) {
  const auto found = std::find_if(k_compares.begin(), k_compares.end(),
                                  [&](const Compares& row) { return row.name == name; });
  return found == k_compares.end() ? nullptr : &*found;
}

std::string interval(const measure::Estimate& estimate) {
  return plain(round_down(estimate.low_mm(), 0.1), 1) + " to " +
         plain(round_up(estimate.high_mm(), 0.1), 1) + " mm";
}

/// Said where the cable's inside is thicker than the thread of the entry: no gland of that thread
/// can be ordered for it. Metric threads; the root of the male thread is ISO 68-1.
std::string too_thick_for_thread(const job::Job& job) {
  const auto& thread = job.entry.thread;
  if (!thread || thread->kind != entry::ThreadKind::metric) return {};
  const bool armoured = job.cable.armour != cable::ArmourKind::none;
  const auto& inside = armoured ? job.cable.bedding : job.cable.sheath_od;
  const double root_mm = entry::metric_profile(*thread).core_mm;
  if (!inside || at_most(inside->low_mm(), root_mm)) return {};
  return fmt::format(
      "; but a thread {} leaves less than {} mm for {} of {} mm: a larger entry, "
      "unless only the cores pass",
      entry::to_text(*thread), plain(round_up(root_mm, 0.1), 1),
      armoured ? "a bedding" : "a sheath", plain(round_down(inside->low_mm(), 0.1), 1));
}

/// Said where the hole itself is at fault.
std::string hole_at_fault(const GlandFit& fit) {
  if (!fit.thread || fit.thread->hole_says.empty()) return {};
  return "; but no gland mends the entry: " + fit.thread->hole_says;
}

/// Said where the armour itself does not carry the fault.
std::string armour_at_fault(const GlandFit& fit) {
  if (!fit.armour_too_thin) return {};
  return "; but no gland mends the armour: it is too thin for the earth fault";
}

/// What to order; nothing by readings that cannot be true together.
/// @param besides  put behind it
std::string order_text(const job::Job& job, const std::string& besides) {
  const cable::Cable& cable = job.cable;
  if (cable.contradiction) return {};
  std::string text = "a gland";
  if (job.entry.thread) text += " with thread " + entry::to_text(*job.entry.thread);
  if (cable.sheath_od) text += ", outer seal over " + interval(*cable.sheath_od);
  if (cable.armour != cable::ArmourKind::none) {
    if (cable.bedding) text += ", inner seal over " + interval(*cable.bedding);
    if (const auto wire = cable::wire_size_mm(cable)) {
      text += ", clamp for " + plain(*wire, 2) + " mm " + std::string(to_string(cable.armour));
    }
  } else {
    text += ", for unarmoured cable";
  }
  return text + besides;
}

/// What the place and the fault ask of any gland, by the checks that were made of this one: whoever
/// orders by diameters alone gets the wrong gland.
std::string asked_besides(const GlandFit& fit) {
  std::string names;
  for (const Check& check : fit.checks) {
    const Topic topic = topic_of(check.name);
    if (topic != Topic::place && topic != Topic::fault) continue;
    names += (names.empty() ? "" : ", ") + std::string(to_string(check.name));
  }
  return names.empty() ? "" : "; it must also pass: " + names;
}

/// The measurement that would settle the most, from what keeps the best gland from fitting.
std::string next_measurement(const job::Job& job, const GlandFit& best) {
  if (const auto& remark = job.cable.contradiction) {
    return "again: " + remark->repeat + "; " + remark->says;
  }
  for (const Check& check : best.checks) {
    const bool open = check.verdict != Verdict::fits && check.verdict != Verdict::no_fit;
    if (!open) continue;
    if (check.name == CheckName::build_up && !check.lacks.empty()) {
      return check.lacks.front().fact + ": it is not measured yet";
    }
    if (check.name == CheckName::fault && check.verdict == Verdict::marginal_inside)
      return "the wire and the bedding: how much armour there is, is estimated";
    const Compares* const row = compares(check.name);
    if (row == nullptr) continue;
    // What only paper tells is not measured at the cable.
    if (check.verdict == Verdict::not_known && job.cable.*(row->estimate)) continue;
    const std::string name = row->diameter;
    const auto& diameter = job.cable.*(row->estimate);
    if (!diameter || diameter->evidence != measure::Evidence::measured) {
      return name + ", twice at right angles where the gland will sit: it is not measured yet";
    }
    if (!diameter->caps.empty()) return name + ": " + diameter->caps.front().reason;
    return name + " again where the gland will sit, twice at right angles, with a finer caliper";
  }
  return {};
}

}  // namespace

void Miss::add(Verdict verdict, std::optional<double> margin) {
  if (verdict >= Verdict::marginal_inside) return;
  ++failures;
  if (margin) {
    largest_mm = std::max(largest_mm, -*margin);
  } else {
    ++other_failures;
  }
}

Miss miss_of(const GlandFit& fit) {
  Miss miss;
  for (const Check& check : fit.checks) {
    miss.add(check.verdict, check.counts_for_margin ? check.margin_mm : std::nullopt);
  }
  return miss;
}

namespace {

/// What a check is not proven without: "not measured: bedding", "not given: wall".
std::string lacking_text(const Check& check) {
  std::string names;
  bool diameters = true;
  for (const Lack& lack : check.lacks) {
    if (lack.key.empty()) return {};
    const bool diameter =
        lack.key == "sheath_od_mm" || lack.key == "bedding_mm" || lack.key == "armour_mm";
    diameters = diameters && diameter;
    names += (names.empty() ? "" : ", ") + lack.fact;
  }
  if (names.empty()) return {};
  return (diameters ? "not measured: " : "not given: ") + names;
}

}  // namespace

std::string miss_text(const Check& check) {
  if (check.verdict == Verdict::not_known || check.verdict == Verdict::marginal_inside) {
    const std::string lacking = lacking_text(check);
    if (!lacking.empty()) return lacking;
  }
  const Compares* const row = compares(check.name);
  const bool of_thread = check.name == CheckName::entry;
  if ((row == nullptr && !of_thread) || check.verdict == Verdict::not_known || !check.value) {
    return check.says;
  }
  const double above = check.high ? *check.value - *check.high : 0.0;
  const double below = check.low ? *check.low - *check.value : 0.0;
  const double miss = std::max(above, below);
  if (at_most(miss, 0.0)) return check.says;
  return std::string(of_thread ? "entry thread" : row->part) + " " + fixed(round_up(miss, 0.1), 1) +
         " mm " + (above > below ? "too small" : "too large");
}

std::string miss_text(std::span<const Check* const> failing) {
  std::vector<std::string> sentences;
  for (const Check* check : failing) {
    std::string sentence = miss_text(*check);
    if (std::find(sentences.begin(), sentences.end(), sentence) == sentences.end()) {
      sentences.push_back(std::move(sentence));
    }
  }
  return fmt::format("{}", fmt::join(sentences, "; "));
}

const GlandFit& nearest_of(std::span<const GlandFit> ranked) {
  const auto end = std::find_if(ranked.begin(), ranked.end(), [&](const GlandFit& fit) {
    return fit.verdict != ranked.front().verdict;
  });
  return *std::min_element(ranked.begin(), end, [](const GlandFit& a, const GlandFit& b) {
    return miss_of(a) < miss_of(b);
  });
}

Advice advise(const job::Job& job, const GlandFit& nearest) {
  Advice advice;
  advice.order_says = order_text(job, asked_besides(nearest) + too_thick_for_thread(job) +
                                          hole_at_fault(nearest) + armour_at_fault(nearest));
  advice.nearest = &nearest;
  std::vector<const Check*> failing;
  for (const Check& check : nearest.checks) {
    if (check.verdict != Verdict::fits) failing.push_back(&check);
  }
  advice.nearest_says = nearest.gland->part + ": " + miss_text(failing);
  advice.measure_says = next_measurement(job, nearest);
  return advice;
}

Advice advise(const job::Job& job, std::span<const GlandFit> ranked) {
  if (!ranked.empty()) return advise(job, nearest_of(ranked));
  Advice advice;
  advice.order_says = order_text(job, too_thick_for_thread(job));
  return advice;
}

}  // namespace cutback::fit

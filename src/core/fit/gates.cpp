#include "cutback/fit/gates.hpp"

#include <algorithm>
#include <cmath>

#include "core/fit/rules.hpp"
#include "cutback/cable/plausibility.hpp"
#include "cutback/compare.hpp"
#include "cutback/fit/questions.hpp"
#include "cutback/measure/estimate.hpp"
#include "cutback/number.hpp"

namespace cutback::fit {
namespace {

using cable::ArmourKind;
using cable::WireBand;
using detail::Diameter;
using measure::Range;

constexpr double k_step_mm = 0.1;
constexpr double k_wire_step_mm = 0.01;

void narrow(Range& range, const Range& by) {
  if (by.low_mm) range.low_mm = std::max(range.low_mm.value_or(*by.low_mm), *by.low_mm);
  if (by.high_mm) range.high_mm = std::min(range.high_mm.value_or(*by.high_mm), *by.high_mm);
}

/// What each diameter is compared with, all checks of the gland together.
struct Ranges {
  Range sheath;
  Range bedding;
  Range wire;
  Range& of(Diameter diameter) {
    return diameter == Diameter::sheath ? sheath : diameter == Diameter::bedding ? bedding : wire;
  }
};

Ranges ranges_of(const Question& question, const gland::Gland& gland) {
  Ranges ranges;
  const detail::Case at(question, gland);
  for (const detail::Rule& rule : detail::rules()) {
    if (!detail::is_of_gland(rule)) continue;
    const auto against = detail::against(rule, at);
    if (!against || !against->range) continue;
    // Where another way settles it, the diameter need not.
    if (against->otherwise && *against->otherwise >= against->verdict) continue;
    narrow(ranges.of(against->diameter), *against->range);
  }
  return ranges;
}

/// One reading of a wire or, where it may be oval, two alike at one place.
measure::Estimate read(const Question& question, double diameter_mm, measure::Section section) {
  const bool round = section == measure::Section::round;
  const std::vector<double> readings(round ? 1 : 2, diameter_mm);
  return measure::measure_here({.places = {{readings}},
                                .caliper = {.step_mm = question.job->caliper.step_mm,
                                            .mpe_mm = question.job->caliper.mpe_mm},
                                .section = section},
                               question.standards->caliper_limits);
}

double crossed_expanded_mm(const Question& question, double diameter_mm) {
  return read_crossed(question, diameter_mm).expanded_mm;
}

double wire_expanded_mm(const Question& question, double diameter_mm) {
  return read(question, diameter_mm, measure::Section::round).expanded_mm;
}

bool can_be_measured(double diameter_mm) {
  return diameter_mm > 0.0 && diameter_mm < measure::k_largest_diameter_mm;
}

/// A range less U, rounded inwards. Above 25 mm U is larger: a limit near there is kept from both.
Gate gate_of(const Question& question, const Range& range) {
  Gate gate;
  if (range.low_mm && can_be_measured(*range.low_mm)) {
    double least = *range.low_mm + crossed_expanded_mm(question, *range.low_mm);
    const double above =
        *range.low_mm + crossed_expanded_mm(question, measure::k_tape_above_mm + 0.1);
    if (above > measure::k_tape_above_mm) least = std::max(least, above);
    gate.low_mm = round_up(least, k_step_mm);
  }
  if (range.high_mm && can_be_measured(*range.high_mm)) {
    gate.high_mm =
        round_down(*range.high_mm - crossed_expanded_mm(question, *range.high_mm), k_step_mm);
  }
  return gate;
}

/// The construction says how far from it a reading may lie: the caliper's error is no reason to ask
/// for less, for it is not taken off where a reading is compared with the construction either.
void narrow(Gate& gate, double built_mm, double expanded_mm) {
  gate.low_mm = std::max(gate.low_mm.value_or(0.0), round_up(built_mm - expanded_mm, k_step_mm));
  const double most = round_down(built_mm + expanded_mm, k_step_mm);
  gate.high_mm = std::min(gate.high_mm.value_or(most), most);
}

/// Cores that no construction is known of go in all the same.
void keep_cores_in(const Question& question, Gate& gate) {
  const auto least = cable::least_round_cores_mm(question.job->cable);
  if (least) gate.low_mm = std::max(gate.low_mm.value_or(0.0), round_up(*least, k_step_mm));
}

/// What a wire of one standard size must read so that it is taken for it, whatever its error.
Gate gate_of_size(const Question& question, const WireBand& band) {
  const double expanded = wire_expanded_mm(question, band.nominal_mm);
  double low = band.min_mm;
  double high = band.max_mm;
  for (const WireBand& other : question.standards->wire_bands) {
    if (other.iec != band.iec || other.nominal_mm == band.nominal_mm) continue;
    if (other.nominal_mm < band.nominal_mm) low = std::max(low, other.max_mm + expanded);
    if (other.nominal_mm > band.nominal_mm) high = std::min(high, other.min_mm - expanded);
  }
  return {.low_mm = round_up(low, k_wire_step_mm), .high_mm = round_down(high, k_wire_step_mm)};
}

/// Sheath less bedding, for a wire of this size.
void put_between(const Question& question, const Gate& sheath, double size_mm, WireGate& wire) {
  const job::Job& job = *question.job;
  const cable::Construction* const built = job.construction ? &*job.construction : nullptr;
  cable::Cable thickest;
  thickest.sheath_od = job.cable.sheath_od;
  // The thicker the cable, the more sheath: the gate's upper end is the strict one.
  if (sheath.high_mm && can_be_measured(*sheath.high_mm)) {
    thickest.sheath_od = measure::from_datasheet(*sheath.high_mm, 0.0);
  }
  const auto nominal = cable::nominal_sheath_mm(thickest, built, *question.standards);
  if (!nominal) return;
  const double armour_mm = cable::armour_layers(job.cable.armour) * size_mm;
  wire.least_between_mm =
      round_up(2.0 * (armour_mm + cable::least_at_a_point_mm(*nominal)), k_step_mm);
  if (built == nullptr) return;
  wire.most_between_mm = round_down(2.0 * (armour_mm + cable::most_likely_mm(*nominal)), k_step_mm);
}

/// What a wire of no standard size must read so that it stays one and is gripped: between the bands
/// on both sides of it.
Gate gate_between_sizes(const Question& question, double wire_mm, const Range& clamp) {
  const double expanded = wire_expanded_mm(question, wire_mm);
  double low = clamp.low_mm.value_or(0.0) + expanded;
  double high = clamp.high_mm.value_or(measure::k_largest_diameter_mm) - expanded;
  for (const WireBand& band : question.standards->wire_bands) {
    if (band.max_mm < wire_mm) low = std::max(low, band.max_mm + expanded);
    if (band.min_mm > wire_mm) high = std::min(high, band.min_mm - expanded);
  }
  return {.low_mm = round_up(low, k_wire_step_mm), .high_mm = round_down(high, k_wire_step_mm)};
}

std::vector<WireGate> wire_gates(const Question& question, const Range& clamp, const Gate& sheath) {
  std::vector<WireGate> gates;
  const cable::Cable& cable = question.job->cable;
  if (cable.armour == ArmourKind::wire && cable.wire && !cable.wire_nominal) {
    // Depths and steps are those of the wire that is known, whatever its size.
    WireGate odd{.gate = gate_between_sizes(question, cable.wire->value_mm, clamp)};
    if (odd.gate.empty()) return gates;
    put_between(question, sheath, *odd.gate.high_mm, odd);
    odd.most_between_mm.reset();
    gates.push_back(odd);
    return gates;
  }
  if (cable.armour == ArmourKind::wire) {
    for (const WireBand& band : question.standards->wire_bands) {
      const bool gripped = at_least(band.nominal_mm, clamp.low_mm.value_or(0.0)) &&
                           (!clamp.high_mm || at_most(band.nominal_mm, *clamp.high_mm));
      // Depths and steps are those of the wire that is known.
      const auto& known = question.job->cable.wire_nominal;
      if (known && known->nominal_mm != band.nominal_mm) continue;
      WireGate wire{.gate = gate_of_size(question, band), .nominal_mm = band.nominal_mm};
      if (!gripped || wire.gate.empty()) continue;
      put_between(question, sheath, band.nominal_mm, wire);
      gates.push_back(wire);
    }
    std::sort(gates.begin(), gates.end(),
              [](const WireGate& a, const WireGate& b) { return *a.nominal_mm < *b.nominal_mm; });
    return gates;
  }
  WireGate wire;
  if (clamp.low_mm && can_be_measured(*clamp.low_mm)) {
    wire.gate.low_mm =
        round_up(*clamp.low_mm + wire_expanded_mm(question, *clamp.low_mm), k_wire_step_mm);
  }
  if (clamp.high_mm && can_be_measured(*clamp.high_mm)) {
    wire.gate.high_mm =
        round_down(*clamp.high_mm - wire_expanded_mm(question, *clamp.high_mm), k_wire_step_mm);
  }
  if (wire.gate.empty()) return gates;
  if (wire.gate.high_mm) put_between(question, sheath, *wire.gate.high_mm, wire);
  wire.most_between_mm.reset();
  gates.push_back(wire);
  return gates;
}

/// How far apart two readings inside a gate may be and still be those of a round cable.
std::optional<double> apart_mm(const Gate& gate) {
  if (!gate.low_mm || !gate.high_mm || gate.empty()) return std::nullopt;
  const double most = round_down(measure::k_ovality_limit_ratio * *gate.low_mm, k_step_mm);
  if (at_most(*gate.high_mm - *gate.low_mm, most)) return std::nullopt;
  return most;
}

/// The armour against the fault, were the cable read like this.
class FaultTrial {
 public:
  explicit FaultTrial(const Question& question) : job_(*question.job), question_(question) {
    question_.job = &job_;
    for (const detail::Rule& rule : detail::rules()) {
      if (rule.name == CheckName::fault) rule_ = &rule;
    }
  }
  [[nodiscard]] bool is_enough(double bedding_mm, double wire_mm) {
    job_.cable.bedding = read(question_, bedding_mm, measure::Section::oval);
    job_.cable.wire = read(question_, wire_mm, measure::Section::round);
    job_.cable.wire_nominal =
        cable::standard_size(question_.standards->wire_bands, *job_.cable.wire);
    return detail::alone(*rule_, question_) == Verdict::fits;
  }

 private:
  job::Job job_;
  Question question_;
  const detail::Rule* rule_ = nullptr;
};

/// A cable inside its gates has armour enough for the fault: fewer wires go round a smaller
/// bedding. Where no reading has enough, the gates say nothing of it: the verdict does.
void narrow_by_fault(const Question& question, Gates& gates) {
  if (!is_asked(Topic::fault, question) || question.job->cable.armour != ArmourKind::wire) return;
  const Gate& bedding = gates.bedding;
  if (!bedding.high_mm || bedding.empty() || *bedding.high_mm < k_step_mm) return;
  FaultTrial trial(question);
  double least_mm = std::max(k_step_mm, bedding.low_mm.value_or(k_step_mm));
  for (WireGate& wire : gates.wire) {
    if (wire.gate.low_mm.value_or(0.0) <= 0.0) continue;
    if (!trial.is_enough(*bedding.high_mm, *wire.gate.low_mm)) {
      // A thinner wire than its size has counts as it was read.
      if (!wire.nominal_mm || !trial.is_enough(*bedding.high_mm, *wire.nominal_mm)) continue;
      wire.gate.low_mm = *wire.nominal_mm;
    }
    // From the upper end down, so that every bedding above the least is enough too.
    int good = 0;
    const int most = static_cast<int>(std::floor((*bedding.high_mm - least_mm) / k_step_mm + 1e-9));
    while (good < most &&
           trial.is_enough(*bedding.high_mm - (good + 1) * k_step_mm, *wire.gate.low_mm)) {
      ++good;
    }
    if (good < most || !trial.is_enough(least_mm, *wire.gate.low_mm)) {
      least_mm = std::max(least_mm, *bedding.high_mm - good * k_step_mm);
    }
  }
  if (least_mm > bedding.low_mm.value_or(k_step_mm)) {
    gates.bedding.low_mm = round_up(least_mm, k_step_mm);
  }
}

}  // namespace

bool Gates::possible() const {
  if (sheath.empty() || bedding.empty()) return false;
  return bedding.high_mm.has_value() ? !wire.empty() : true;
}

measure::Estimate read_crossed(const Question& question, double diameter_mm) {
  return read(question, diameter_mm, measure::Section::oval);
}

Gates gates_of(const Question& question, const gland::Gland& gland) {
  const Ranges ranges = ranges_of(question, gland);
  const auto& built = question.job->construction;
  Gates gates{.sheath = gate_of(question, ranges.sheath)};
  if (built) narrow(gates.sheath, built->sheath_od_mm, built->expanded_mm);
  const bool armoured = question.job->cable.armour != ArmourKind::none;
  if (!built && !armoured) keep_cores_in(question, gates.sheath);
  gates.sheath_apart_mm = apart_mm(gates.sheath);
  if (!armoured) return gates;
  gates.bedding = gate_of(question, ranges.bedding);
  if (built) narrow(gates.bedding, built->bedding_diameter_mm, built->bedding_expanded_mm);
  if (!built) keep_cores_in(question, gates.bedding);
  gates.wire = wire_gates(question, ranges.wire, gates.sheath);
  narrow_by_fault(question, gates);
  gates.bedding_apart_mm = apart_mm(gates.bedding);
  return gates;
}

}  // namespace cutback::fit

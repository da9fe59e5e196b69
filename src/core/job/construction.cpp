#include "cutback/job/construction.hpp"

#include <array>

#include "core/job/words.hpp"

namespace cutback::job {
namespace {

using cable::ArmourKind;
using cable::Conductor;
using cable::Insulation;
using cable::Pattern;
using cable::Voltage;
using detail::value_of;

}  // namespace

std::optional<cable::ConstructionInput> construction_input(const JobInput& in) {
  if (!in.cores || !in.csa_mm2) return std::nullopt;
  constexpr std::array k_insulations{Insulation::xlpe, Insulation::pvc};
  constexpr std::array k_voltages{Voltage::kv_0_6_1, Voltage::kv_1_9_3_3};
  constexpr std::array k_conductors{Conductor::circular, Conductor::shaped, Conductor::solid};
  constexpr std::array k_patterns{Pattern::british, Pattern::iec};
  constexpr std::array k_armours{ArmourKind::wire, ArmourKind::braid, ArmourKind::tape,
                                 ArmourKind::strip, ArmourKind::none};
  return cable::ConstructionInput{
      .cores = static_cast<int>(*in.cores),
      .csa_mm2 = *in.csa_mm2,
      .earth_csa_mm2 = in.earth_csa_mm2,
      .insulation = value_of(in.insulation, k_insulations),
      .voltage = value_of(in.voltage, k_voltages).value_or(Voltage::kv_0_6_1),
      .conductor = value_of(in.conductor, k_conductors),
      .armour = value_of(in.armour, k_armours).value_or(ArmourKind::wire),
      .pattern = value_of(in.pattern, k_patterns).value_or(Pattern::british)};
}

}  // namespace cutback::job

#include "cutback/job/construction.hpp"

namespace cutback::job {

std::optional<cable::ConstructionInput> construction_input(const JobInput& in) {
  if (!in.cores || !in.csa_mm2) return std::nullopt;
  return cable::ConstructionInput{.cores = static_cast<int>(*in.cores),
                                  .csa_mm2 = *in.csa_mm2,
                                  .earth_csa_mm2 = in.earth_csa_mm2,
                                  .insulation = in.insulation,
                                  .voltage = in.voltage.value_or(cable::Voltage::kv_0_6_1),
                                  .conductor = in.conductor,
                                  .armour = in.armour.value_or(cable::ArmourKind::wire),
                                  .pattern = in.pattern.value_or(cable::Pattern::british)};
}

}  // namespace cutback::job

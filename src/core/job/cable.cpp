#include <array>

#include "core/job/resolve.hpp"
#include "core/job/words.hpp"

namespace cutback::job::detail {

using cable::ArmourKind;

cable::Cable cable_without_diameters(const JobInput& in) {
  constexpr std::array k_armours{ArmourKind::wire, ArmourKind::braid, ArmourKind::tape,
                                 ArmourKind::strip, ArmourKind::none};
  cable::Cable cable;
  cable.armour = detail::value_of(in.armour, k_armours).value_or(ArmourKind::wire);
  cable.cores = whole(in.cores);
  cable.csa_mm2 = in.csa_mm2;
  cable.earth_csa_mm2 = in.earth_csa_mm2;
  cable.insulation = in.insulation;
  cable.length_m = in.length_m;
  cable.circular = yes_no(in.circular);
  cable.compact = yes_no(in.compact);
  if (in.bedding_made) {
    cable.bedding_made =
        *in.bedding_made == "extruded" ? cable::BeddingMade::extruded : cable::BeddingMade::lapped;
  }
  if (in.fillers) {
    cable.fillers = *in.fillers == "none"              ? cable::Fillers::none
                    : *in.fillers == "non-hygroscopic" ? cable::Fillers::non_hygroscopic
                                                       : cable::Fillers::hygroscopic;
  }
  constexpr std::array k_materials{cable::ArmourMaterial::steel, cable::ArmourMaterial::aluminium,
                                   cable::ArmourMaterial::copper};
  constexpr std::array k_supplies{cable::Supply::ac, cable::Supply::dc};
  cable.armour_material = detail::value_of(in.armour_material, k_materials);
  cable.supply = detail::value_of(in.supply, k_supplies);
  return cable;
}

}  // namespace cutback::job::detail

#pragma once
// A gland against the demands of its place.

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "cutback/area/area.hpp"
#include "cutback/area/bundle.hpp"
#include "cutback/area/demand.hpp"
#include "cutback/cable/cable.hpp"
#include "cutback/fit/check.hpp"
#include "cutback/gland/gland.hpp"
#include "cutback/tables/standards.hpp"

namespace cutback::area {

// The checks of a place, each only where the place asks for it. A figure that the gland list does
// not state gives not_known and the name of its column, a fact that the place does not say gives
// not_known and the name of its field.

/// The gland's marking against the enclosure's, and the enclosure's against the place.
[[nodiscard]] std::optional<fit::Check> check_protection(const Demand& demand,
                                                         const gland::Gland& gland);
[[nodiscard]] std::optional<fit::Check> check_level(const Demand& demand,
                                                    const gland::Gland& gland);
/// Gas and dust are two columns and one check.
[[nodiscard]] std::optional<fit::Check> check_group(const Demand& demand,
                                                    const gland::Gland& gland);
[[nodiscard]] std::optional<fit::Check> check_ingress(const Demand& demand,
                                                      const gland::Gland& gland);
[[nodiscard]] std::optional<fit::Check> check_temperature(const Demand& demand,
                                                          const gland::Gland& gland);
/// A flameproof entry asks for a seal on the bedding or round the cores.
/// @param bundle  as check_area() takes it
[[nodiscard]] std::optional<fit::Check> check_sealing(const Demand& demand,
                                                      const cable::Cable& cable,
                                                      const gland::Gland& gland,
                                                      const std::optional<SealingBundle>& bundle);

/// All of them.
/// @param bundle  the cores in the gland's chamber, where that was worked out: it counts when the
///                gland is ended as a barrier; else the number of cores alone counts
[[nodiscard]] std::vector<fit::Check> check_area(const Demand& demand, const cable::Cable& cable,
                                                 const gland::Gland& gland,
                                                 const std::optional<SealingBundle>& bundle = {});

/// An adaptor between gland and entry in a hazardous place must itself be of a type of protection
/// that serves the enclosure. Nothing in an ordinary place.
/// @param marks  the adaptor's own markings; empty when they were not given
[[nodiscard]] std::optional<fit::Check> check_adaptor(const Demand& demand,
                                                      std::span<const Protection> marks);

/// What the gland touches, as words of the field table; absent where it is not known.
struct Touching {
  std::optional<std::string> enclosure;
  std::optional<std::string> adaptor;  ///< that stands between gland and wall, where one does
  /// Only where it is stated. Galvanised steel in brass is what every gland of this kind is made
  /// for (common practice, no source) and gets no word.
  std::optional<cable::ArmourMaterial> armour;
};

/// Metals that meet at the gland: a caution for a couple that corrodes where it is damp, with the
/// largest difference that the potentials allow and the places where it is too much; no verdict
/// (fits). Nothing when there is nothing to say.
/// @source anodic index (data/standards/)
[[nodiscard]] std::optional<fit::Check> check_metals(const Touching& touching,
                                                     const gland::Gland& gland,
                                                     const tables::Standards& standards);

}  // namespace cutback::area

#pragma once
// Cores in the chamber of a barrier gland: do they fit, and how much compound goes round them?

#include <optional>
#include <string>

#include "cutback/gland/gland.hpp"
#include "cutback/tables/standards.hpp"
#include "cutback/verdict.hpp"

namespace cutback::area {

/// Diameter of a bundle of equal cores [mm].
struct Bundle {
  double least_mm = 0.0;          ///< best-known packing: no bundle is smaller
  std::optional<double> laid_mm;  ///< the larger of packing and assembly coefficient (IEC 60502-1
                                  ///< Annex A); absent beyond the printed coefficients (27 cores)
};

/// @param factors  table `bundle_factors`  @param cores >= 1  @param core_mm  over the insulation,
/// > 0
/// @return nothing for more cores than the table has (61)
[[nodiscard]] std::optional<Bundle> bundle_of(const tables::Table& factors, int cores,
                                              double core_mm);

/// What is known of the cores; an absent member is not.
struct SealingCores {
  std::optional<int> cores;
  std::optional<double> core_mm;       ///< diameter over the insulation of one core
  std::optional<double> enclosing_mm;  ///< a diameter in which all cores lie, as the bedding's
};

struct SealingBundle {
  Verdict verdict = Verdict::not_known;
  std::optional<double> bundle_mm;  ///< expected, or the least where only that is known
  std::optional<double> limit_mm;   ///< smaller of the gland's largest bundle and chamber bore
  std::string says;
  std::string source;
};

/// Cores against max_cores, and the bundle against max_bundle_mm and chamber_bore_mm: what the
/// gland states of them decides, all where all are stated; where none is, it is not_known.
/// `no-fit`: more cores than allowed, or even the least bundle is too wide. `marginal-outside`:
/// only the least bundle fits. `fits`: the laid-up bundle, or what encloses the cores, is narrow
/// enough.
[[nodiscard]] SealingBundle check_sealing_bundle(const gland::Gland& gland,
                                                 const SealingCores& cores,
                                                 const tables::Table& factors);

/// The widest bundle that the gland states, or whose chamber it states: the smaller of both [mm].
[[nodiscard]] std::optional<double> chamber_limit_mm(const gland::Gland& gland);

/// A cylindrical chamber and the equal cores through it. All > 0, lengths in mm.
struct Chamber {
  double bore_mm;
  double length_mm;
  int cores;
  double core_mm;
};

struct Compound {
  double volume_cm3;  ///< round the cores: length pi/4 (bore^2 - N d^2)
  double core_ratio;  ///< part of the cross-section that is core: N d^2 / bore^2
  double gap_mm;      ///< even gap between cores, and to the wall: (bore - R d)/(R + 1), R for N
};

/// The compound that fills a chamber; domes and tapers are not counted.
/// @return nothing when the cores do not fit the bore or the table has no row for them
[[nodiscard]] std::optional<Compound> compound_of(const tables::Table& factors,
                                                  const Chamber& chamber);

}  // namespace cutback::area

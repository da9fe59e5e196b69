#pragma once
// What the diameters must read before anything is cut: the gates of one end and one gland.

#include <optional>
#include <vector>

#include "cutback/compare.hpp"
#include "cutback/fit/fit.hpp"

namespace cutback::fit {

/// What every reading of a diameter must lie in [mm], both limits included; an absent limit does
/// not bind.
struct Gate {
  std::optional<double> low_mm;
  std::optional<double> high_mm;
  /// No reading can prove it: what the gland takes is narrower than the caliper's error.
  [[nodiscard]] bool empty() const { return low_mm && high_mm && *low_mm > *high_mm; }
  [[nodiscard]] bool holds(double reading_mm) const {
    return (!low_mm || at_least(reading_mm, *low_mm)) &&
           (!high_mm || at_most(reading_mm, *high_mm));
  }
};

/// The gate of one size of armour wire, or of armour without standard sizes.
struct WireGate {
  Gate gate;
  std::optional<double> nominal_mm;
  /// What sheath less bedding must be [mm], so that a sheath is left over this wire that can be.
  std::optional<double> least_between_mm;
  std::optional<double> most_between_mm;  ///< where the construction is known
};

struct Gates {
  Gate sheath;
  Gate bedding;  ///< no limit binds for an unarmoured cable
  /// One of them is to be met: that of the wire that is known, else of every size that the clamp
  /// takes. None for an unarmoured cable.
  std::vector<WireGate> wire;
  /// What two crossed readings of one place may differ by [mm]; only where the gates let them
  /// differ by more.
  std::optional<double> sheath_apart_mm;
  std::optional<double> bedding_apart_mm;

  /// Whether readings can prove the fit at all.
  [[nodiscard]] bool possible() const;
};

/// Two crossed readings [mm] of a sheath or bedding, both alike, by the caliper of the question.
[[nodiscard]] measure::Estimate read_crossed(const Question& question, double diameter_mm);

/// The intersection of all ranges that each diameter is checked against (seals, bore, entry thread,
/// adaptor, chamber), less the expanded uncertainty of two crossed readings, and of what the
/// construction can be; rounded inwards to 0.1 mm (a wire to 0.01 mm). Two crossed readings of
/// sheath and bedding and one of the wire inside their gates make every check of a diameter fit,
/// and the armour enough for the fault that is asked about, where it can be. Sources: those of the
/// checks; U by JCGM 100:2008.
[[nodiscard]] Gates gates_of(const Question& question, const gland::Gland& gland);

}  // namespace cutback::fit

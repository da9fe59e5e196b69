#pragma once
// Which pairs of sheath and bedding a gland list serves, for one wire, entry and place.

#include <cstddef>
#include <vector>

#include "cutback/fit/select.hpp"
#include "cutback/job/input.hpp"
#include "cutback/tables/standards.hpp"

namespace cutback::fit {

/// Diameters from `low_mm` on, one cell every `step_mm`; the middle of a cell stands for it.
struct CoverAxis {
  double low_mm = 0.0;
  double step_mm = 1.0;
  std::size_t cells = 0;

  [[nodiscard]] double middle_mm(std::size_t cell) const;
  [[nodiscard]] double edge_mm(std::size_t cell) const;
};

/// A grid of pairs. A cell holds how many glands `fit` says `fits` of for a cable that reads so,
/// crossed; k_no_cable where no cable can be so.
struct CoverMap {
  static constexpr int k_no_cable = -1;

  CoverAxis sheath;
  CoverAxis bedding;  ///< of one cell without a figure for an unarmoured cable
  bool armoured = true;
  std::vector<int> counts;  ///< row by row, the smallest bedding first

  [[nodiscard]] int at(std::size_t sheath_cell, std::size_t bedding_cell) const {
    return counts[bedding_cell * sheath.cells + sheath_cell];
  }
};

/// Sheaths and beddings that no gland serves, side by side.
struct CoverGap {
  double sheath_low_mm = 0.0;
  double sheath_high_mm = 0.0;
  double bedding_low_mm = 0.0;
  double bedding_high_mm = 0.0;
};

/// Sheaths thicker than this are not looked for among the gaps (common practice, no source).
inline constexpr double k_thickest_sheath_mm = 4.0;

/// The end of the job for one pair, as `fit` would have it: each diameter read twice, crossed.
[[nodiscard]] job::JobInput covered_end(const job::JobInput& end, double sheath_mm,
                                        double bedding_mm);

/// @param end  armour, wire, entry, place and whatever else is asked; its diameters of sheath and
/// bedding are not looked at
/// @param most_sheaths, most_beddings  cells at most
/// @throws InputError where the end contradicts itself, an armoured cable has no wire, or no gland
/// of the list takes its armour
[[nodiscard]] CoverMap cover_map(const job::JobInput& end, const Selector& glands,
                                 const tables::Standards& standards, std::size_t most_sheaths,
                                 std::size_t most_beddings);

/// The largest first. Cells with no gland whose sheath is at most k_thickest_sheath_mm thick.
/// @param wire_mm  0 for an unarmoured cable
[[nodiscard]] std::vector<CoverGap> gaps_of(const CoverMap& map, double wire_mm);

}  // namespace cutback::fit

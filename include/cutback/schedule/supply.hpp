#pragma once
// What each end of a schedule gets of the stock that was shared out, or why it gets nothing.

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "cutback/gland/gland.hpp"
#include "cutback/schedule/decide.hpp"
#include "cutback/schedule/groups.hpp"
#include "cutback/schedule/share.hpp"

namespace cutback::schedule {

/// Gives the parts of a share out to single ends. Ends of one group that get different parts get
/// them in the schedule's order, the cheapest part first and nothing last.
class Supplies {
 public:
  /// @param ends    of the groups, in the schedule's order
  /// @param glands  behind `wanted.parts`; borrowed
  Supplies(const Wanted& wanted, const Share& share, std::span<const WantedEnd> ends,
           std::span<const gland::Gland> glands);

  /// @return null for an end that nothing fits
  [[nodiscard]] const Supply* of(std::size_t row, Side side) const;

 private:
  struct Place {
    std::size_t row = 0;
    Side side = Side::both;
    std::uint32_t supply = 0;
  };
  std::vector<Supply> supplies_;  ///< of each group one for each part, and one for no part
  std::vector<Place> places_;     ///< ascending
};

}  // namespace cutback::schedule

#include "core/entry/engagement.hpp"

#include <algorithm>
#include <cmath>

namespace cutback::entry {

Engagement engage(const EngagementInput& in) {
  const double male_mm =
      in.thread_mm - in.undercut_mm - in.washer_mm - in.tag_mm - in.serrated_mm - in.lead_in_mm;
  const double hole_mm = in.hole_mm - in.chamfer_mm;
  const double engaged_mm = std::max(0.0, std::min(male_mm, hole_mm));
  const double turns = engaged_mm / in.pitch_mm;
  return {engaged_mm, turns, static_cast<int>(std::floor(turns + 1e-9)), hole_mm <= male_mm};
}

}  // namespace cutback::entry

#pragma once
// How much of a gland's thread engages in a tapped hole.

namespace cutback::entry {

/// All lengths >= 0 in mm, pitch > 0.
struct EngagementInput {
  double thread_mm;    ///< length of the gland's thread from its shoulder
  double washer_mm;    ///< between shoulder and wall
  double tag_mm;       ///< earth tag between shoulder and wall
  double undercut_mm;  ///< unthreaded length behind the gland's shoulder
  double hole_mm;      ///< depth of the tapped hole, chamfer included
  double chamfer_mm;   ///< of the hole
  double pitch_mm;
  double serrated_mm = 0.0;  ///< serrated washer between shoulder and wall
  double lead_in_mm = 0.0;   ///< at the tip of the gland's thread, where its turns are not full
};

struct Engagement {
  double engaged_mm;     ///< >= 0
  double turns;          ///< engaged_mm / pitch_mm
  int full_turns;        ///< whole turns
  bool limited_by_hole;  ///< a longer thread would not engage more
};

/// min(thread - undercut - washer - tag - serrated washer - lead-in, hole - chamfer), never below
/// 0. A turn counts as full when it lacks less than 1e-9 of itself.
[[nodiscard]] Engagement engage(const EngagementInput& in);

}  // namespace cutback::entry

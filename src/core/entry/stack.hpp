#pragma once
// What a gland's thread must reach through in a clearance hole.

namespace cutback::entry {

/// All lengths >= 0 in mm, pitch > 0.
struct StackInput {
  double thread_mm;    ///< length of the gland's thread from its shoulder
  double undercut_mm;  ///< unthreaded length behind the gland's shoulder
  double washer_mm;    ///< sealing washer, outside
  double wall_mm;
  double tag_mm;       ///< earth tag, inside
  double serrated_mm;  ///< serrated washer, inside
  double locknut_mm;
  double pitch_mm;
};

struct Stack {
  double before_nut_mm;  ///< washer + wall + tag + serrated washer
  double needed_mm;      ///< before_nut_mm + locknut + one pitch standing out
  double margin_mm;      ///< thread - needed_mm
  bool nut_clamps;       ///< the thread begins before the locknut does
};

[[nodiscard]] Stack stack_up(const StackInput& in);

}  // namespace cutback::entry

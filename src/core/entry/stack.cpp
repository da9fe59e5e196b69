#include "core/entry/stack.hpp"

#include "cutback/compare.hpp"

namespace cutback::entry {

Stack stack_up(const StackInput& in) {
  const double before_nut_mm = in.washer_mm + in.wall_mm + in.tag_mm + in.serrated_mm;
  const double needed_mm = before_nut_mm + in.locknut_mm + in.pitch_mm;
  return {before_nut_mm, needed_mm, in.thread_mm - needed_mm,
          at_most(in.undercut_mm, before_nut_mm)};
}

}  // namespace cutback::entry

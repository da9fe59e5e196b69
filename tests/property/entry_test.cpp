#include <rapidcheck.h>
#include <catch2/catch.hpp>

#include "core/entry/engagement.hpp"
#include "core/entry/stack.hpp"
#include "cutback/entry/thread_check.hpp"
#include "cutback/io/standards.hpp"

using namespace cutback;
using namespace cutback::entry;

namespace {

double in_tenths(int low, int high) { return *rc::gen::inRange(low, high) / 10.0; }

EngagementInput any_engagement() {
  return {in_tenths(50, 300), in_tenths(0, 40), in_tenths(0, 20), in_tenths(0, 20),
          in_tenths(10, 300), in_tenths(0, 20), in_tenths(5, 30)};
}

}  // namespace

TEST_CASE("engage: more in between never engages more, more thread never less",
          "[property][thread]") {
  CHECK(rc::check("monotonic", [] {
    const EngagementInput in = any_engagement();
    const double before = engage(in).engaged_mm;
    const double more = in_tenths(0, 50);
    for (double EngagementInput::*member :
         {&EngagementInput::washer_mm, &EngagementInput::tag_mm, &EngagementInput::undercut_mm,
          &EngagementInput::chamfer_mm}) {
      EngagementInput changed = in;
      changed.*member += more;
      RC_ASSERT(engage(changed).engaged_mm <= before);
    }
    for (double EngagementInput::*member :
         {&EngagementInput::thread_mm, &EngagementInput::hole_mm}) {
      EngagementInput changed = in;
      changed.*member += more;
      RC_ASSERT(engage(changed).engaged_mm >= before);
    }
  }));
}

TEST_CASE("engage: full turns lie in what is engaged", "[property][thread]") {
  CHECK(rc::check("turns", [] {
    const EngagementInput in = any_engagement();
    const Engagement out = engage(in);
    RC_ASSERT(out.engaged_mm >= 0.0);
    RC_ASSERT(out.full_turns * in.pitch_mm <= out.engaged_mm + 1e-6);
    RC_ASSERT((out.full_turns + 1) * in.pitch_mm > out.engaged_mm);
  }));
}

TEST_CASE("check_thread: the thread length that would do does, where the wall allows it",
          "[property][thread]") {
  const tables::Standards standards = io::builtin_standards();
  CHECK(rc::check("needed length fits", [&] {
    gland::Gland gland;
    gland.entry_thread = *parse_thread(*rc::gen::element("M16", "M20", "M63", "M90", "PG 16"));
    gland.entry_length_mm = in_tenths(0, 300);
    Entry entry;
    entry.hole = *rc::gen::element(Hole::threaded, Hole::clearance);
    entry.wall_mm = *entry.hole == Hole::threaded ? 100.0 : in_tenths(10, 100);
    entry.washer_mm = in_tenths(0, 40);
    entry.tag_mm = in_tenths(0, 20);
    entry.locknut_mm = in_tenths(1, 80);
    const ThreadFit first = check_thread(gland, entry, nullptr, {}, standards);
    gland.entry_length_mm = first.needed_mm;
    RC_ASSERT(check_thread(gland, entry, nullptr, {}, standards).check.verdict == Verdict::fits);
    gland.entry_length_mm = *first.needed_mm - 0.01;
    RC_ASSERT(check_thread(gland, entry, nullptr, {}, standards).check.verdict != Verdict::fits);
  }));
}

TEST_CASE("check_thread: more washer never improves a verdict", "[property][thread]") {
  const tables::Standards standards = io::builtin_standards();
  CHECK(rc::check("verdict falls", [&] {
    gland::Gland gland;
    gland.entry_thread =
        *parse_thread(*rc::gen::element("M20", "M32", "M90", "NPT 1/2", "NPT 3", "PG 16"));
    gland.entry_length_mm = in_tenths(0, 400);
    Entry entry;
    entry.hole = *rc::gen::element(Hole::threaded, Hole::clearance);
    entry.wall_mm = in_tenths(10, 400);
    entry.washer_mm = in_tenths(0, 40);
    entry.locknut_mm = in_tenths(1, 80);
    if (*rc::gen::arbitrary<bool>()) entry.chamfer_mm = in_tenths(0, 20);
    EntryJoint joint;
    joint.flameproof = *rc::gen::arbitrary<bool>();
    if (*rc::gen::arbitrary<bool>()) joint.volume_cm3 = in_tenths(500, 2000);
    const Verdict before = check_thread(gland, entry, nullptr, joint, standards).check.verdict;
    entry.washer_mm = *entry.washer_mm + in_tenths(0, 50);
    RC_ASSERT(check_thread(gland, entry, nullptr, joint, standards).check.verdict <= before);
  }));
}

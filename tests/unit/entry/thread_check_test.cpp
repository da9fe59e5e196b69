#include "cutback/entry/thread_check.hpp"

#include <catch2/catch.hpp>

#include "cutback/io/standards.hpp"

using namespace cutback;
using namespace cutback::entry;
using Catch::Contains;

namespace {

const tables::Standards& standards() {
  static const tables::Standards all = io::builtin_standards();
  return all;
}

gland::Gland gland_of(const char* thread, double length_mm) {
  gland::Gland gland;
  gland.entry_thread = *parse_thread(thread);
  gland.entry_length_mm = length_mm;
  return gland;
}

Entry tapped(double wall_mm) {
  Entry entry;
  entry.hole = Hole::threaded;
  entry.wall_mm = wall_mm;
  entry.washer_mm = 0.0;
  return entry;
}

Entry clearance(double wall_mm) {
  Entry entry = tapped(wall_mm);
  entry.hole = Hole::clearance;
  entry.locknut_mm = 4.0;
  return entry;
}

constexpr EntryJoint k_ordinary{};
constexpr EntryJoint k_flameproof{true, 5000.0};

ThreadFit check(const gland::Gland& gland, const Entry& entry, const EntryJoint& joint) {
  return check_thread(gland, entry, nullptr, joint, standards());
}

}  // namespace

TEST_CASE("check_thread: missing figures are named", "[unit][thread]") {
  gland::Gland gland = gland_of("M20", 15.0);
  gland.entry_length_mm.reset();
  const ThreadFit all = check(gland, {}, k_ordinary);
  CHECK(all.check.name == fit::CheckName::thread);
  CHECK(all.check.verdict == Verdict::not_known);
  CHECK_THAT(all.check.says,
             Contains("kind of hole") && Contains("gland's thread") && Contains("wall"));
  Entry entry = tapped(10.0);
  entry.wall_mm.reset();
  const ThreadFit wall = check(gland_of("M20", 15.0), entry, k_ordinary);
  CHECK(wall.check.says == "not given: wall");
  CHECK_FALSE(wall.engaged_mm.has_value());
  entry.wall_mm = 10.0;
  CHECK(check(gland_of("M20", 15.0), entry, k_ordinary).check.verdict == Verdict::fits);
}

TEST_CASE("check_thread: a washer or locknut that nobody states is not taken as none",
          "[unit][thread]") {
  const gland::Gland gland = gland_of("M20", 15.0);
  for (Entry entry : {tapped(10.0), clearance(2.0)}) {
    CHECK(check(gland, entry, k_ordinary).check.verdict == Verdict::fits);
    entry.washer_mm.reset();
    const ThreadFit unstated = check(gland, entry, k_ordinary);
    CHECK(unstated.check.verdict == Verdict::not_known);
    CHECK_THAT(unstated.check.says, Contains("sealing washer (0: none)"));
  }
  Entry entry = clearance(2.0);
  for (const std::optional<double>& none : {std::optional<double>(), std::optional<double>(0.0)}) {
    entry.locknut_mm = none;
    const ThreadFit unheld = check(gland, entry, k_ordinary);
    CHECK(unheld.check.verdict == Verdict::not_known);
    CHECK_THAT(unheld.check.says, Contains("locknut"));
  }
}

TEST_CASE("check_thread: flameproof wants five turns and eight millimetres", "[unit][thread]") {
  Entry entry = tapped(10.0);
  entry.chamfer_mm = 1.0;
  entry.washer_mm = 2.0;
  const ThreadFit good = check(gland_of("M20", 15.0), entry, k_flameproof);
  CHECK(good.check.verdict == Verdict::fits);
  CHECK(good.engaged_mm == 9.0);
  CHECK(good.turns == 6);
  // 8 turns and 8 mm of its own are more than 8 engaged, a washer of 2 and a lead-in of 1.5.
  CHECK(good.needed_mm == 12.0);
  CHECK_THAT(good.check.says, Contains("min(15 - 2 - 1.5, 10 - 1) = 9 mm = 6 full turns"));
  entry.wall_mm = 8.0;
  entry.chamfer_mm = 2.0;
  const ThreadFit bad = check(gland_of("M20", 15.0), entry, k_flameproof);
  CHECK(bad.check.verdict == Verdict::no_fit);
  CHECK_THAT(bad.check.says, Contains("the hole's own thread is too short"));
  CHECK(bad.hole_says == "the hole's own thread is too short");
  entry.wall_mm = 20.0;
  const ThreadFit short_gland = check(gland_of("M20", 8.0), entry, k_flameproof);
  CHECK(short_gland.check.verdict == Verdict::no_fit);
  CHECK(short_gland.hole_says.empty());
}

TEST_CASE("check_thread: the volume decides between five and eight millimetres", "[unit][thread]") {
  Entry entry = tapped(7.5);
  entry.chamfer_mm = 0.0;
  const gland::Gland gland = gland_of("M20", 15.0);
  CHECK(check(gland, entry, {true, 100.0}).check.verdict == Verdict::fits);
  CHECK(check(gland, entry, {true, 100.1}).check.verdict == Verdict::no_fit);
  const ThreadFit unknown = check(gland, entry, {true, {}});
  CHECK(unknown.check.verdict == Verdict::no_fit);
  CHECK_THAT(unknown.check.says, Contains("give the volume"));
  entry.wall_mm = 6.0;
  const ThreadFit four = check(gland, entry, {true, 100.0});
  CHECK(four.turns == 4);
  CHECK(four.check.verdict == Verdict::no_fit);
  CHECK_THAT(check(gland, entry, {true, {}}).check.says, !Contains("give the volume"));
}

TEST_CASE("check_thread: a chamfer that is not given counts as the deepest allowed",
          "[unit][thread]") {
  const gland::Gland gland = gland_of("M20", 15.0);
  CHECK(check(gland, tapped(10.0), k_flameproof).check.verdict == Verdict::fits);
  const ThreadFit open = check(gland, tapped(9.0), k_flameproof);
  CHECK(open.check.verdict == Verdict::not_known);
  CHECK_THAT(open.check.says, Contains("chamfer") && Contains("measure it"));
  CHECK(check(gland, tapped(7.0), k_flameproof).check.verdict == Verdict::no_fit);
  Entry deep = tapped(20.0);
  deep.chamfer_mm = 3.0;
  const ThreadFit noted = check(gland, deep, k_flameproof);
  CHECK(noted.check.verdict == Verdict::not_known);
  CHECK_THAT(noted.check.says, Contains("deeper than 2 mm") && Contains("certificate"));
  REQUIRE(noted.notes.size() == 1);
  CHECK_THAT(noted.notes[0], Contains("2 mm deep at most"));
  deep.chamfer_mm = 2.0;
  CHECK(check(gland, deep, k_flameproof).check.verdict == Verdict::fits);
}

TEST_CASE("check_thread: flameproof never goes into a clearance hole", "[unit][thread]") {
  Entry entry;
  entry.hole = Hole::clearance;
  CHECK(check(gland_of("M20", 15.0), entry, k_flameproof).check.verdict == Verdict::no_fit);
}

TEST_CASE("check_thread: a PG thread is not proven flameproof", "[unit][thread]") {
  Entry entry = tapped(20.0);
  entry.chamfer_mm = 0.0;
  const ThreadFit pg = check(gland_of("PG 16", 15.0), entry, k_flameproof);
  CHECK(pg.check.verdict == Verdict::not_known);
  CHECK_THAT(pg.check.says, Contains("PG"));
  CHECK(check(gland_of("PG 16", 15.0), entry, k_ordinary).check.verdict == Verdict::fits);
}

TEST_CASE("check_thread: ordinary tapped hole", "[unit][thread]") {
  const gland::Gland gland = gland_of("M20", 10.0);
  const auto plain_hole = [](double depth_mm) {
    Entry hole = tapped(depth_mm);
    hole.chamfer_mm = 0.0;
    return hole;
  };
  CHECK(check(gland, plain_hole(4.5), k_ordinary).check.verdict == Verdict::fits);
  CHECK(check(gland, plain_hole(4.4), k_ordinary).check.verdict == Verdict::not_known);
  CHECK(check(gland, plain_hole(1.4), k_ordinary).check.verdict == Verdict::no_fit);
  // A chamfer that is not given counts for 2 mm, and is asked for where it decides.
  CHECK(check(gland, tapped(6.5), k_ordinary).check.verdict == Verdict::fits);
  const fit::Check open = check(gland, tapped(6.4), k_ordinary).check;
  CHECK(open.verdict == Verdict::not_known);
  CHECK(open.lacks.at(0).key == "chamfer_mm");
  const ThreadFit thin = check(gland, tapped(4.5), k_ordinary);
  REQUIRE(thin.notes.size() == 1);
  CHECK_THAT(thin.notes[0], Contains("short engagement"));
}

TEST_CASE("check_thread: a flameproof male thread by itself", "[unit][thread]") {
  // IEC 60079-1:2007, annex on cable glands: 8 full turns and 8 mm; older editions 6 turns.
  Entry entry = tapped(30.0);
  entry.chamfer_mm = 0.0;
  CHECK(check(gland_of("M20", 12.0), entry, k_flameproof).check.verdict == Verdict::fits);
  const ThreadFit few = check(gland_of("M20", 11.9), entry, k_flameproof);
  CHECK(few.check.verdict == Verdict::not_known);
  CHECK_THAT(few.check.says, Contains("7 full turns") && Contains("certificate"));
  CHECK(few.needed_mm == 12.0);
  // 6 turns of 2 mm are 12 mm, of which 10 engage: only the count refuses what is shorter.
  CHECK(check(gland_of("M90", 12.0), entry, k_flameproof).check.verdict == Verdict::not_known);
  CHECK(check(gland_of("M90", 11.9), entry, k_flameproof).check.verdict == Verdict::no_fit);
  // Eight turns of a fine thread are short of 8 mm.
  CHECK(check(gland_of("M12x1", 9.0), entry, {true, 50.0}).check.verdict == Verdict::fits);
  CHECK(check(gland_of("M6x0.75", 7.5), entry, {true, 50.0}).check.verdict == Verdict::not_known);
  CHECK(check(gland_of("M90", 12.0), entry, k_ordinary).check.verdict == Verdict::fits);
}

TEST_CASE("check_thread: the lead-in of a flameproof thread does not engage", "[unit][thread]") {
  Entry entry = tapped(30.0);
  entry.chamfer_mm = 0.0;
  entry.washer_mm = 4.0;
  // 13.5 - 4 - 1.5 = 8 mm; a millimetre more of washer leaves 7.
  CHECK(check(gland_of("M20", 13.5), entry, k_flameproof).check.verdict == Verdict::fits);
  entry.washer_mm = 4.1;
  CHECK(check(gland_of("M20", 13.5), entry, k_flameproof).check.verdict == Verdict::no_fit);
}

TEST_CASE("check_thread: tag and serrated washer take thread of a tapped hole", "[unit][thread]") {
  Entry entry = tapped(10.0);
  entry.tag_mm = 1.5;
  entry.serrated_mm = 1.0;
  CHECK(check(gland_of("M20", 7.0), entry, k_ordinary).check.verdict == Verdict::fits);
  CHECK(check(gland_of("M20", 6.9), entry, k_ordinary).check.verdict == Verdict::not_known);
}

TEST_CASE("check_thread: taper threads", "[unit][thread]") {
  const gland::Gland gland = gland_of("NPT 1/2", 19.85);
  const ThreadFit good = check(gland, tapped(14.0), k_flameproof);
  CHECK(good.check.verdict == Verdict::fits);
  CHECK(*good.engaged_mm == Approx(8.128));
  CHECK(good.turns == 4);
  CHECK(check(gland, tapped(8.0), k_flameproof).check.verdict == Verdict::not_known);
  CHECK(check(gland, tapped(6.0), k_flameproof).check.verdict == Verdict::no_fit);
  CHECK(check(gland, tapped(6.0), k_ordinary).check.verdict == Verdict::fits);
  // The figures of a size that was not seen decide no pass.
  CHECK(check(gland_of("NPT 5", 50.0), tapped(40.0), k_ordinary).check.verdict ==
        Verdict::not_known);
  CHECK(check(gland_of("NPT 4", 50.0), tapped(40.0), k_ordinary).check.verdict == Verdict::fits);
}

TEST_CASE("check_thread: a locknut on a taper thread is a caution, not flameproof",
          "[unit][thread]") {
  const gland::Gland gland = gland_of("NPT 1/2", 19.85);
  const ThreadFit held = check(gland, clearance(2.0), k_ordinary);
  CHECK(held.check.verdict == Verdict::fits);
  CHECK_THAT(held.check.says, Contains("caution") && Contains("taper"));
  REQUIRE(held.notes.size() == 1);
  CHECK(check(gland, clearance(2.0), k_flameproof).check.verdict == Verdict::no_fit);
  CHECK(check(gland_of("NPT 1/2", 7.0), clearance(2.0), k_ordinary).check.verdict ==
        Verdict::no_fit);
}

TEST_CASE("check_thread: a clearance hole needs the whole stack and one pitch", "[unit][thread]") {
  Entry entry = clearance(3.0);
  entry.washer_mm = 2.0;
  entry.tag_mm = 1.5;
  entry.serrated_mm = 1.0;
  entry.locknut_mm = 3.0;
  CHECK(check(gland_of("M20", 12.0), entry, k_ordinary).check.verdict == Verdict::fits);
  const ThreadFit tight = check(gland_of("M20", 11.9), entry, k_ordinary);
  CHECK(tight.check.verdict == Verdict::no_fit);
  CHECK(tight.needed_mm == 12.0);
  CHECK(*tight.check.margin_mm == Approx(-0.1));
  entry.undercut_mm = 8.0;
  CHECK(check(gland_of("M20", 15.0), entry, k_ordinary).check.verdict == Verdict::no_fit);
}

TEST_CASE("check_thread: the entry's washer and locknut go before the gland's", "[unit][thread]") {
  gland::Gland gland = gland_of("M20", 15.0);
  gland.washer_mm = 2.0;
  gland.locknut_mm = 3.0;
  Entry entry = clearance(3.0);
  entry.washer_mm.reset();
  entry.locknut_mm.reset();
  CHECK(check(gland, entry, k_ordinary).needed_mm == 9.5);
  entry.washer_mm = 0.0;
  entry.locknut_mm = 5.0;
  CHECK(check(gland, entry, k_ordinary).needed_mm == 9.5);
  entry.locknut_mm = 6.0;
  CHECK(check(gland, entry, k_ordinary).needed_mm == 10.5);
}

TEST_CASE("check_thread: another thread in the wall needs an adaptor", "[unit][thread]") {
  Entry entry = tapped(10.0);
  entry.thread = parse_thread("M25");
  const ThreadFit other = check(gland_of("M20", 15.0), entry, k_ordinary);
  CHECK(other.check.verdict == Verdict::not_known);
  CHECK_THAT(other.check.says, Contains("does not suit"));
  entry = clearance(3.0);
  entry.thread = parse_thread("M20");
  CHECK(check(gland_of("M20x1", 15.0), entry, k_ordinary).check.verdict == Verdict::fits);
  CHECK_THAT(std::string(adaptor_rule().says), Contains("At most one"));
}

TEST_CASE("check_thread: both threads of an adaptor must engage", "[unit][thread]") {
  Entry entry = tapped(10.0);
  entry.thread = parse_thread("M25");
  entry.adaptor_mm = 12.0;
  entry.adaptor_thread_mm = 15.0;
  const Adaptor adaptor{*parse_thread("M25"), *parse_thread("M20"), {}};
  const auto through = [&](double gland_thread_mm, const EntryJoint& joint) {
    return check_thread(gland_of("M20", gland_thread_mm), entry, &adaptor, joint, standards());
  };
  const ThreadFit good = through(15.0, k_ordinary);
  CHECK(good.check.verdict == Verdict::fits);
  CHECK_THAT(good.check.says, Contains("adaptor in the wall: engaged: min(15, 10 - 2)") &&
                                  Contains("gland in the adaptor: engaged: min(15, 27 - 2)"));
  CHECK(through(4.4, k_ordinary).check.verdict == Verdict::not_known);
  CHECK(through(4.5, k_ordinary).check.verdict == Verdict::fits);
  // A flameproof adaptor: how deep it is tapped stands in its certificate only.
  const ThreadFit flameproof = through(15.0, k_flameproof);
  CHECK(flameproof.check.verdict == Verdict::not_known);
  CHECK_THAT(flameproof.check.says, Contains("certificate"));
  entry.adaptor_thread_mm = 4.0;
  CHECK(through(15.0, k_ordinary).check.verdict == Verdict::not_known);
  CHECK(through(15.0, k_flameproof).check.verdict == Verdict::no_fit);
  entry.adaptor_thread_mm.reset();
  CHECK_THAT(through(15.0, k_ordinary).check.says, Contains("the adaptor's own thread"));
  entry.adaptor_thread_mm = 15.0;
  entry.adaptor_mm.reset();
  CHECK_THAT(through(15.0, k_ordinary).check.says, Contains("holds the gland off"));
}

TEST_CASE("check_thread: an adaptor stands with its own washer and locknut", "[unit][thread]") {
  Entry entry = clearance(3.0);
  entry.thread = parse_thread("M25");
  entry.adaptor_mm = 12.0;
  entry.adaptor_thread_mm = 10.5;
  entry.washer_mm = 2.0;
  const Adaptor adaptor{*parse_thread("M20"), *parse_thread("M25"), {}};
  gland::Gland gland = gland_of("M20", 15.0);
  gland.washer_mm = 1.0;
  gland.locknut_mm = 1.0;
  const auto through = [&] {
    return check_thread(gland, entry, &adaptor, k_ordinary, standards());
  };
  // 2 + 3 + 4 + 1.5
  CHECK(through().check.verdict == Verdict::fits);
  entry.adaptor_thread_mm = 10.4;
  CHECK(through().check.verdict == Verdict::no_fit);
  entry.adaptor_thread_mm = 10.5;
  entry.locknut_mm.reset();
  CHECK(through().check.verdict == Verdict::not_known);
  CHECK_THAT(through().check.says, Contains("locknut of the adaptor"));
}

TEST_CASE("check_thread: a plastic wall is noted", "[unit][thread]") {
  Entry entry = clearance(3.0);
  entry.material = "polymer";
  entry.locknut_mm = 5.0;
  const ThreadFit plastic = check(gland_of("M20", 15.0), entry, k_ordinary);
  REQUIRE(plastic.notes.size() == 1);
  CHECK_THAT(plastic.notes[0], Contains("earth tag"));
}

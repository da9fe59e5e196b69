// What the checks of the entry say, whole: words, figures, what is lacking and the source. The
// figures are worked out beside each; the words are what a fitter reads.
#include <catch2/catch.hpp>

#include "cutback/entry/entry_check.hpp"
#include "cutback/entry/joint_check.hpp"
#include "cutback/entry/thread_check.hpp"
#include "support/build_job.hpp"
#include "support/whole.hpp"

using namespace cutback;
using namespace cutback::entry;
using test::whole;

namespace {

gland::Gland threaded_gland(const char* thread, std::optional<double> length_mm) {
  gland::Gland gland;
  gland.entry_thread = *parse_thread(thread);
  gland.entry_length_mm = length_mm;
  return gland;
}

Entry hole(Hole kind, double wall_mm) {
  Entry entry;
  entry.hole = kind;
  entry.wall_mm = wall_mm;
  entry.washer_mm = 0.0;
  if (kind == Hole::clearance) entry.locknut_mm = 4.0;
  return entry;
}

std::string thread_words(const gland::Gland& gland, const Entry& entry, const EntryJoint& joint,
                         const Adaptor* adaptor = nullptr) {
  const ThreadFit fit = check_thread(gland, entry, adaptor, joint, test::standards());
  std::string text = whole(fit.check);
  if (fit.engaged_mm) text += " | engaged " + plain(*fit.engaged_mm, 2);
  if (fit.turns) text += " turns " + std::to_string(*fit.turns);
  if (fit.needed_mm) text += " needed " + plain(*fit.needed_mm, 2);
  if (!fit.hole_says.empty()) text += " | hole: " + fit.hole_says;
  for (const std::string& note : fit.notes) text += " | note: " + note;
  return text;
}

constexpr EntryJoint k_plain{};
constexpr EntryJoint k_flameproof{true, 5000.0};

}  // namespace

TEST_CASE("thread, whole: a tapped hole", "[unit][thread]") {
  Entry entry = hole(Hole::threaded, 10.0);
  const gland::Gland gland = threaded_gland("M20", 15.0);
  // 10 less the 2 mm that are counted are 8 mm: 5 full turns of 1.5 mm; three turns are 4.5 mm.
  CHECK(thread_words(gland, entry, k_plain) ==
        "fits: engaged: min(15, 10 - 2) = 8 mm = 5 full turns (chamfer not given, 2 mm counted) | "
        "value 8 low 4.5 margin 3.5 | three turns: common practice, no source | engaged 8 turns 5 "
        "needed 4.5");
  entry.chamfer_mm = 1.0;
  entry.undercut_mm = 0.5;
  entry.washer_mm = 1.5;
  entry.tag_mm = 1.0;
  entry.serrated_mm = 0.5;
  // A tag outside stands between two washers: 15 - 0.5 - 3 - 1 - 0.5 = 10, and 10 - 1 = 9 decides.
  CHECK(thread_words(gland, entry, k_plain) ==
        "fits: engaged: min(15 - 0.5 - 3 - 1 - 0.5, 10 - 1) = 9 mm = 6 full turns | value 9 low "
        "4.5 margin 4.5 | three turns: common practice, no source | engaged 9 turns 6 needed 9.5");
  entry = hole(Hole::threaded, 4.0);
  entry.chamfer_mm = 0.0;
  // 2 full turns, the hole decides.
  CHECK(thread_words(gland, entry, k_plain) ==
        "not-known: engaged: min(15, 4) = 4 mm = 2 full turns; fewer than 3: the hole's own thread "
        "is too short | value 4 low 4.5 margin -0.5 | lacks: whether 2 full turns hold, 3 are "
        "usual <> | three turns: common practice, no source | engaged 4 turns 2 needed 4.5 | hole: "
        "the hole's own thread is too short | note: 4 mm is a short engagement (ISO 965-1: normal "
        "is over 5.6 mm), so 6H and 6g are no longer the usual tolerances");
  entry.wall_mm = 10.0;
  // 1 turn, the thread decides.
  CHECK(thread_words(threaded_gland("M20", 1.5), entry, k_plain) ==
        "not-known: engaged: min(1.5, 10) = 1.5 mm = 1 full turn; fewer than 3: a thread of 4.5 mm "
        "would do | value 1.5 low 4.5 margin -3 | lacks: whether 1 full turn holds, 3 are usual <> "
        "| three turns: common practice, no source | engaged 1.5 turns 1 needed 4.5 | note: 1.5 mm "
        "is a short engagement (ISO 965-1: normal is over 5.6 mm), so 6H and 6g are no longer the "
        "usual tolerances");
  CHECK(thread_words(threaded_gland("M20", 1.4), entry, k_plain) ==
        "no-fit: engaged: min(1.4, 10) = 1.4 mm = 0 full turns; fewer than 3: a thread of 4.5 mm "
        "would do | value 1.4 low 4.5 margin -3.1 | three turns: common practice, no source | "
        "engaged 1.4 turns 0 needed 4.5 | note: 1.4 mm is a short engagement (ISO 965-1: normal is "
        "over 5.6 mm), so 6H and 6g are no longer the usual tolerances");
  entry.chamfer_mm.reset();
  entry.wall_mm = 5.0;
  // 3.3 turns without a chamfer, 2 with one.
  CHECK(
      thread_words(gland, entry, k_plain) ==
      "not-known: engaged: min(15, 5 - 2) = 3 mm = 2 full turns (chamfer not given, 2 mm counted); "
      "the chamfer of the hole decides: measure it | value 3 low 4.5 margin -1.5 | lacks: chamfer "
      "of the hole <at the end chamfer_mm> | three turns: common practice, no source | engaged 3 "
      "turns 2 needed 4.5 | note: 3 mm is a short engagement (ISO 965-1: normal is over 5.6 mm), "
      "so 6H and 6g are no longer the usual tolerances");
  entry.wall_mm = 20.0;
  CHECK(thread_words(threaded_gland("M12x1", 3.0), entry, k_plain) ==
        "fits: engaged: min(3, 20 - 2) = 3 mm = 3 full turns (chamfer not given, 2 mm counted) | "
        "value 3 low 3 margin 0 | three turns: common practice, no source | engaged 3 turns 3 "
        "needed 3");
}

TEST_CASE("thread, whole: a flameproof hole", "[unit][thread]") {
  Entry entry = hole(Hole::threaded, 12.0);
  const gland::Gland gland = threaded_gland("M20", 15.0);
  CHECK(thread_words(gland, entry, k_flameproof) ==
        "fits: flameproof: 5 full turns and 8 mm needed; engaged: min(15 - 1.5, 12 - 2) = 10 mm = "
        "6 full turns (chamfer not given, 2 mm counted) | value 10 low 8 margin 2 | IEC 60079-1 "
        "5.3 (secondary) | engaged 10 turns 6 needed 12");
  entry.wall_mm = 9.0;
  CHECK(thread_words(gland, entry, k_flameproof) ==
        "not-known: flameproof: 5 full turns and 8 mm needed; engaged: min(15 - 1.5, 9 - 2) = 7 mm "
        "= 4 full turns (chamfer not given, 2 mm counted); the chamfer of the hole decides: "
        "measure it | value 7 low 8 margin -1 | lacks: chamfer of the hole <at the end chamfer_mm> "
        "| IEC 60079-1 5.3 (secondary) | engaged 7 turns 4 needed 12");
  entry.wall_mm = 7.5;
  CHECK(
      thread_words(gland, entry, k_flameproof) ==
      "no-fit: flameproof: 5 full turns and 8 mm needed; engaged: min(15 - 1.5, 7.5 - 2) = 5.5 mm "
      "= 3 full turns (chamfer not given, 2 mm counted); too little: the hole's own thread is too "
      "short | value 5.5 low 8 margin -2.5 | IEC 60079-1 5.3 (secondary) | engaged 5.5 turns 3 "
      "needed 12 | hole: the hole's own thread is too short | note: 5.5 mm is a short engagement "
      "(ISO 965-1: normal is over 5.6 mm), so 6H and 6g are no longer the usual tolerances");
  entry.chamfer_mm = 0.0;
  CHECK(thread_words(gland, entry, {true, {}}) ==
        "no-fit: flameproof: 5 full turns and 8 mm needed; engaged: min(15 - 1.5, 7.5) = 7.5 mm = "
        "5 full turns; too little: the hole's own thread is too short; in a volume of at most 100 "
        "cm3 it would do: give the volume | value 7.5 low 8 margin -0.5 | IEC 60079-1 5.3 "
        "(secondary) | engaged 7.5 turns 5 needed 12 | hole: the hole's own thread is too short");
  CHECK(thread_words(gland, entry, {true, 100.0}) ==
        "fits: flameproof: 5 full turns and 5 mm needed; engaged: min(15 - 1.5, 7.5) = 7.5 mm = 5 "
        "full turns | value 7.5 low 7.5 margin 0 | IEC 60079-1 5.3 (secondary) | engaged 7.5 turns "
        "5 needed 12");
  entry.wall_mm = 30.0;
  entry.chamfer_mm = 2.5;
  CHECK(thread_words(threaded_gland("M90", 24.0), entry, k_flameproof) ==
        "not-known: flameproof: 5 full turns and 8 mm needed; engaged: min(24 - 2, 30 - 2.5) = 22 "
        "mm = 11 full turns; a chamfer of 2.5 mm is deeper than 2 mm: its certificate decides | "
        "value 22 low 10 margin 12 | lacks: the enclosure's certificate on a chamfer of 2.5 mm <> "
        "| IEC 60079-1 5.3 (secondary) | engaged 22 "
        "turns 11 needed 16 | note: the chamfer of a flameproof entry hole may be 2 mm deep at "
        "most (IEC 60079-1)");
  CHECK(thread_words(threaded_gland("M20", 9.0), entry, k_flameproof) ==
        "no-fit: flameproof: 5 full turns and 8 mm needed; engaged: min(9 - 1.5, 30 - 2.5) = 7.5 "
        "mm = 5 full turns; too little: a thread of 9.5 mm would do; the gland's thread has 6 full "
        "turns in 9 mm; IEC 60079-1:2007 asks 8 and 8 mm, older editions 6 turns: its certificate "
        "decides | value 7.5 low 8 margin -0.5 | lacks: the certificate on 6 full turns of thread "
        "<> | IEC 60079-1 5.3 (secondary) | engaged 7.5 turns 5 needed 12 | note: the chamfer of a "
        "flameproof entry hole may be 2 mm deep at most (IEC 60079-1)");
  CHECK(thread_words(threaded_gland("M20", 8.9), entry, k_flameproof) ==
        "no-fit: flameproof: 5 full turns and 8 mm needed; engaged: min(8.9 - 1.5, 30 - 2.5) = 7.4 "
        "mm = 4 full turns; too little: a thread of 9.5 mm would do; the gland's thread has 5 full "
        "turns in 8.9 mm, and every edition of IEC 60079-1 asks 6 of it | value 7.4 low 8 margin "
        "-0.6 | IEC 60079-1 5.3 (secondary) | engaged 7.4 turns 4 needed 12 | note: the chamfer of "
        "a flameproof entry hole may be 2 mm deep at most (IEC 60079-1)");
  CHECK(thread_words(threaded_gland("PG 16", 15.0), entry, k_flameproof) ==
        "not-known: flameproof: 5 full turns and 8 mm needed; engaged: min(15 - 1.411, 30 - 2.5) = "
        "13.59 mm = 9 full turns; a PG thread has no ISO 965-1 fit: check against the certificate; "
        "a chamfer of 2.5 mm is deeper than 2 mm: its certificate decides "
        "| value 13.589 low 8 margin 5.589 | lacks: the certificate on a thread PG 16 <>, the "
        "enclosure's certificate on a chamfer of 2.5 mm <> | IEC "
        "60079-1 5.3 (secondary) | engaged 13.59 turns 9 needed 11.29 | note: the chamfer of a "
        "flameproof entry hole may be 2 mm deep at most (IEC 60079-1)");
  Entry clear = hole(Hole::clearance, 10.0);
  CHECK(thread_words(gland, clear, k_flameproof) ==
        "no-fit: a flameproof entry is tapped: a clearance hole is not permitted | | IEC 60079-1 "
        "(secondary) | hole: a flameproof entry is tapped: a clearance hole is not permitted");
}

TEST_CASE("thread, whole: a taper thread", "[unit][thread]") {
  const gland::Gland gland = threaded_gland("NPT 1/2", 19.85);
  CHECK(thread_words(gland, hole(Hole::threaded, 14.0), k_flameproof) ==
        "fits: taper thread: 7.7 turns in both parts, 4.5 engaged by hand (L1 8.13 mm) | value 14 "
        "low 9.071 margin 4.929 | IEC 60079-1: 3.5 turns engaged (secondary), 5 in each part (from "
        "memory); ASME B1.20.1 | engaged 8.13 turns 4 needed 9.07 | note: a taper thread is made "
        "up tight, without a locknut, and no washer seals it (from memory)");
  CHECK(thread_words(gland, hole(Hole::threaded, 8.0), k_flameproof) ==
        "not-known: taper thread: 4.4 turns in both parts, 4.4 engaged by hand (L1 8.13 mm); fewer "
        "than 5: check against the standard | value 8 low 9.071 margin -1.071 | lacks: whether 4.4 "
        "turns of a taper thread hold <> | IEC 60079-1: 3.5 turns engaged (secondary), 5 in each "
        "part (from memory); ASME B1.20.1 | engaged 8 turns 4 needed 9.07 | note: a taper thread "
        "is made up tight, without a locknut, and no washer seals it (from memory)");
  CHECK(thread_words(gland, hole(Hole::threaded, 6.0), k_flameproof) ==
        "no-fit: taper thread: 3.3 turns in both parts, 3.3 engaged by hand (L1 8.13 mm); too few: "
        "the hole's own thread is too short | value 6 low 9.071 margin -3.071 | IEC 60079-1: 3.5 "
        "turns engaged (secondary), 5 in each part (from memory); ASME B1.20.1 | engaged 6 turns 3 "
        "needed 9.07 | hole: the hole's own thread is too short | note: a taper thread is made up "
        "tight, without a locknut, and no washer seals it (from memory)");
  CHECK(
      thread_words(gland, hole(Hole::threaded, 3.0), k_plain) ==
      "not-known: taper thread: 1.7 turns in both parts, 1.7 engaged by hand (L1 8.13 mm); fewer "
      "than 3: the hole's own thread is too short | value 3 low 5.443 margin -2.443 | lacks: "
      "whether 1.7 turns of a taper thread hold <> | three turns: common practice, no source; ASME "
      "B1.20.1 | engaged 3 turns 1 needed 5.44 | hole: the hole's own thread is too short | note: "
      "a taper thread is made up tight, without a locknut, and no washer seals it (from memory)");
  CHECK(thread_words(gland, hole(Hole::threaded, 1.0), k_plain) ==
        "no-fit: taper thread: 0.6 turns in both parts, 0.6 engaged by hand (L1 8.13 mm); too few: "
        "the hole's own thread is too short | value 1 low 5.443 margin -4.443 | three turns: "
        "common practice, no source; ASME B1.20.1 | engaged 1 turns 0 needed 5.44 | hole: the "
        "hole's own thread is too short | note: a taper thread is made up tight, without a "
        "locknut, and no washer seals it (from memory)");
  CHECK(thread_words(threaded_gland("NPT 5", 50.0), hole(Hole::threaded, 40.0), k_plain) ==
        "not-known: taper thread: 12.6 turns in both parts, 7.5 engaged by hand (L1 23.80 mm); a "
        "size known from memory only: check against the standard | value 40 low 9.525 margin "
        "30.475 | lacks: the standard on a thread NPT 5 <> | three turns: common practice, no "
        "source; ASME B1.20.1 | engaged 23.8 turns 7 needed 9.53 | note: a taper thread is made up "
        "tight, without a locknut, and no washer seals it (from memory)");
  CHECK(thread_words(gland, hole(Hole::clearance, 2.0), k_plain) ==
        "fits: needed: washer 0 + wall 2 + tag 0 + serrated washer 0 + locknut 4 + one pitch 1.814 "
        "= 7.81 mm of thread; there are 19.85 mm; caution: a locknut holds a taper thread by a few "
        "turns only: use the one that its maker gives for it, and check that it is tight | value "
        "19.85 low 7.814 margin 12.036 | one pitch beyond the locknut: common practice, no source; "
        "taper thread: from memory needed 7.81 | note: a locknut holds a taper thread by a few "
        "turns only: use the one that its maker gives for it, and check that it is tight");
}

TEST_CASE("thread, whole: a clearance hole", "[unit][thread]") {
  Entry entry = hole(Hole::clearance, 3.0);
  entry.washer_mm = 2.0;
  entry.tag_mm = 1.5;
  entry.serrated_mm = 1.0;
  CHECK(thread_words(threaded_gland("M20", 13.0), entry, k_plain) ==
        "fits: needed: washer 2 + wall 3 + tag 1.5 + serrated washer 1 + locknut 4 + one pitch 1.5 "
        "= 13 mm of thread; there are 13 mm | value 13 low 13 margin 0 | one pitch beyond the "
        "locknut: common practice, no source needed 13");
  CHECK(thread_words(threaded_gland("M20", 12.9), entry, k_plain) ==
        "no-fit: needed: washer 2 + wall 3 + tag 1.5 + serrated washer 1 + locknut 4 + one pitch "
        "1.5 = 13 mm of thread; there are 12.9 mm | value 12.9 low 13 margin -0.1 | one pitch "
        "beyond the locknut: common practice, no source needed 13");
  entry.undercut_mm = 9.0;
  CHECK(thread_words(threaded_gland("M20", 15.0), entry, k_plain) ==
        "no-fit: needed: washer 2 + wall 3 + tag 1.5 + serrated washer 1 + locknut 4 + one pitch "
        "1.5 = 13 mm of thread; there are 15 mm; the undercut ends behind the locknut: it cannot "
        "clamp | value 15 low 13 margin 2 | one pitch beyond the locknut: common practice, no "
        "source needed 13");
  entry = hole(Hole::clearance, 3.0);
  entry.material = "polymer";
  CHECK(thread_words(threaded_gland("M20", 15.0), entry, k_plain) ==
        "fits: needed: washer 0 + wall 3 + tag 0 + serrated washer 0 + locknut 4 + one pitch 1.5 = "
        "8.5 mm of thread; there are 15 mm | value 15 low 8.5 margin 6.5 | one pitch beyond the "
        "locknut: common practice, no source needed 8.5 | note: a plastic wall does not carry the "
        "earth: fit an earth tag inside and bond it (common practice, no source)");
  entry.tag_mm = 1.0;
  CHECK(thread_words(threaded_gland("M20", 15.0), entry, k_plain) ==
        "fits: needed: washer 0 + wall 3 + tag 1 + serrated washer 0 + locknut 4 + one pitch 1.5 = "
        "9.5 mm of thread; there are 15 mm | value 15 low 9.5 margin 5.5 | one pitch beyond the "
        "locknut: common practice, no source needed 9.5");
}

TEST_CASE("thread, whole: through an adaptor, and what is not given", "[unit][thread]") {
  Entry entry = hole(Hole::threaded, 10.0);
  entry.thread = parse_thread("M25");
  entry.adaptor_mm = 12.0;
  entry.adaptor_thread_mm = 15.0;
  const Adaptor adaptor{*parse_thread("M25"), *parse_thread("M20"), {}};
  CHECK(thread_words(threaded_gland("M20", 15.0), entry, k_plain, &adaptor) ==
        "fits: adaptor in the wall: engaged: min(15, 10 - 2) = 8 mm = 5 full turns (chamfer not "
        "given, 2 mm counted); gland in the adaptor: engaged: min(15, 27 - 2) = 15 mm = 10 full "
        "turns (chamfer not given, 2 mm counted) | value 8 low 4.5 margin 3.5 | three turns: "
        "common practice, no source; three turns: common practice, no source | engaged 8 turns 5 "
        "needed 4.5");
  CHECK(thread_words(threaded_gland("M20", 15.0), entry, k_flameproof, &adaptor) ==
        "not-known: adaptor in the wall: flameproof: 5 full turns and 8 mm needed; engaged: min(15 "
        "- 1.5, 10 - 2) = 8 mm = 5 full turns (chamfer not given, 2 mm counted); gland in the "
        "adaptor: flameproof: 5 full turns and 8 mm needed; engaged: min(15 - 1.5, 27 - 2) = 13.5 "
        "mm = 9 full turns (chamfer not given, 2 mm counted); how deep the adaptor's own tapped "
        "thread is is not known: see its certificate | value 8 low 8 margin 0 | lacks: depth of "
        "the adaptor's tapped thread (its certificate) <> | IEC 60079-1 5.3 (secondary); IEC "
        "60079-1 5.3 (secondary) | engaged 8 turns 5 needed 12");
  CHECK(thread_words(threaded_gland("M20", 3.0), entry, k_plain, &adaptor) ==
        "not-known: adaptor in the wall: engaged: min(15, 10 - 2) = 8 mm = 5 full turns (chamfer "
        "not given, 2 mm counted); gland in the adaptor: engaged: min(3, 27 - 2) = 3 mm = 2 full "
        "turns (chamfer not given, 2 mm counted); fewer than 3: a thread of 4.5 mm would do | "
        "value 3 low 4.5 margin -1.5 | lacks: whether 2 full turns hold, 3 are usual <> | three "
        "turns: common practice, no source; three turns: common practice, no source | engaged 8 "
        "turns 5 needed 4.5 | note: 3 mm is a short engagement (ISO 965-1: normal is over 5.6 mm), "
        "so 6H and 6g are no longer the usual tolerances");
  const Adaptor wider{*parse_thread("M25"), *parse_thread("M32"), {}};
  CHECK(thread_words(threaded_gland("M32", 15.0), entry, k_plain, &wider) ==
        "fits: adaptor in the wall: engaged: min(15, 10 - 2) = 8 mm = 5 full turns (chamfer not "
        "given, 2 mm counted); gland in the adaptor: engaged: min(15, 12 - 2) = 10 mm = 6 full "
        "turns (chamfer not given, 2 mm counted) | value 8 low 4.5 margin 3.5 | three turns: "
        "common practice, no source; three turns: common practice, no source | engaged 8 turns 5 "
        "needed 4.5");
  CHECK(thread_words(threaded_gland("M20", 15.0), entry, k_plain) ==
        "not-known: gland thread M20 does not suit the entry M25 | | nothing to compare");
  CHECK(thread_words(threaded_gland("M20", {}), {}, k_plain, &adaptor) ==
        "not-known: not given: length of the gland's thread and length of the adaptor's own thread "
        "and how far the adaptor holds the gland off and kind of hole, threaded or clearance and "
        "wall and sealing washer of the adaptor (0: none) | | lacks: length of the gland's thread "
        "<entry_length_mm>, length of the adaptor's own thread <adaptor_thread_mm>, how far the "
        "adaptor holds the gland off <adaptor_mm>, kind of hole, threaded or clearance <at the end "
        "hole>, wall <at the end wall_mm>, sealing washer of the adaptor (0: none) <washer_mm> | "
        "nothing to compare");
  entry = hole(Hole::clearance, 3.0);
  entry.thread = parse_thread("M25");
  entry.adaptor_mm = 12.0;
  entry.adaptor_thread_mm = 10.0;
  gland::Gland gland = threaded_gland("M20", 15.0);
  gland.washer_mm = 1.0;
  CHECK(thread_words(gland, entry, k_plain, &adaptor) ==
        "fits: adaptor in the wall: needed: washer 0 + wall 3 + tag 0 + serrated washer 0 + "
        "locknut 4 + one pitch 1.5 = 8.5 mm of thread; there are 10 mm; gland in the adaptor: "
        "engaged: min(15 - 1, 22 - 2) = 14 mm = 9 full turns (chamfer not given, 2 mm counted) | "
        "value 10 low 8.5 margin 1.5 | one pitch beyond the locknut: common practice, no source; "
        "three turns: common practice, no source needed 5.5");
}

TEST_CASE("entry, whole: which thread goes into which hole", "[unit][entry]") {
  const gland::Gland gland = threaded_gland("M20", 15.0);
  Entry entry;
  CHECK(whole(check_entry(gland, entry)) ==
        "not-known: the thread or size of the entry is not given (--entry) | | lacks: entry "
        "<entry> | thread designations compared");
  entry.to_suit = true;
  CHECK(whole(check_entry(gland, entry)) ==
        "fits: the hole will be made for the gland's thread M20, a clearance hole | | thread "
        "designations compared");
  entry.hole = Hole::threaded;
  CHECK(whole(check_entry(gland, entry)) ==
        "fits: the hole will be made for the gland's thread M20, tapped | | thread designations "
        "compared");
  entry = {};
  entry.thread = parse_thread("M20");
  CHECK(whole(check_entry(gland, entry)) ==
        "fits: gland thread M20 suits the entry M20 | | thread designations compared");
  entry.thread = parse_thread("M25");
  CHECK(whole(check_entry(gland, entry)) ==
        "no-fit: gland thread M20 does not suit the entry M25 | | thread designations compared");
  entry.adaptors = {{*parse_thread("M32"), *parse_thread("M20"), {}},
                    {*parse_thread("M20"), *parse_thread("M25"), {}}};
  CHECK(whole(check_entry(gland, entry)) ==
        "fits: gland thread M20 goes into the entry M25 through one adaptor | | not more than one "
        "thread adaptor per entry (IEC 60079-14:2013, secondary)");
}

TEST_CASE("passage, whole: what passes the thread of the entry", "[unit][entry]") {
  const gland::Gland gland = threaded_gland("M20", 15.0);
  const cable::Cable small = test::resolved(test::small_cable()).cable;
  const auto words = [&](const Passage& passage, const cable::Cable& cable, bool barrier,
                         std::optional<double> core_mm = {}) {
    return whole(check_passage(passage, cable, barrier, core_mm, test::standards()));
  };
  Entry entry;
  const Passage own = passage(gland, entry, nullptr, test::standards());
  CHECK(words(own, small, false) ==
        "fits: the gland's own thread leaves 18.15 mm at most; the bedding, 10.00 +/- 0.07 mm, "
        "passes | value 10 high 18.16 margin* 8.096 p 1 | ISO 68-1, root of the male thread");
  cable::Cable cable = small;
  cable.bedding.reset();
  CHECK(words(own, cable, false) ==
        "not-known: the gland's own thread leaves 18.15 mm at most; the diameter of the bedding is "
        "not given | high 18.16 | lacks: bedding <at the end bedding_mm> | ISO 68-1, root of the "
        "male thread");
  cable.armour = cable::ArmourKind::none;
  CHECK(words(own, cable, false) ==
        "fits: the gland's own thread leaves 18.15 mm at most; the sheath, 15.00 +/- 0.07 mm, "
        "passes | value 15 high 18.16 margin* 3.096 p 1 | ISO 68-1, root of the male thread");
  cable.sheath_od.reset();
  CHECK(words(own, cable, false) ==
        "not-known: the gland's own thread leaves 18.15 mm at most; the diameter of the sheath is "
        "not given | high 18.16 | lacks: sheath <at the end sheath_od_mm> | ISO 68-1, root of the "
        "male thread");
  cable = small;
  cable.bedding = measure::from_datasheet(18.1, 0.1);
  CHECK(words(own, cable, false) ==
        "marginal-inside: the gland's own thread leaves 18.15 mm at most; the bedding, 18.10 +/- "
        "0.10 mm, should pass, but that is not proven | value 18.1 high 18.16 margin* -0.04 p "
        "0.798 | ISO 68-1, root of the male thread");
  cable.bedding = measure::from_datasheet(18.2, 0.1);
  CHECK(words(own, cable, false) ==
        "marginal-outside: the gland's own thread leaves 18.15 mm at most; the bedding, 18.20 +/- "
        "0.10 mm, may not pass | value 18.2 high 18.16 margin* -0.14 p 0.298 | ISO 68-1, root of "
        "the male thread");
  cable.bedding = measure::from_datasheet(19.0, 0.1);
  CHECK(
      words(own, cable, false) ==
      "no-fit: the gland's own thread leaves 18.15 mm at most; the bedding, 19.00 +/- 0.10 mm, "
      "does not pass | value 19 high 18.16 margin* -0.94 p 0 | ISO 68-1, root of the male thread");
  CHECK(words(own, cable, true) ==
        "not-known: the gland's own thread leaves 18.15 mm at most; only the cores pass it, and "
        "their bundle is not known: it is not known whether they pass | high 18.16 | ISO 68-1, "
        "root of the male thread");
  cable.cores = 3;
  CHECK(words(own, cable, true, 6.0) ==
        "marginal-inside: the gland's own thread leaves 18.15 mm at most; the cores, a bundle of "
        "about 13.0 mm, should pass, but that is not proven | value 12.96 high 18.16 | ISO 68-1, "
        "root of the male thread");
  CHECK(words(own, cable, true, 9.0) ==
        "no-fit: the gland's own thread leaves 18.15 mm at most; the cores, a bundle of about 19.4 "
        "mm, does not pass | value 19.44 high 18.16 | ISO 68-1, root of the male thread");
  CHECK(words(own, small, true) ==
        "fits: the gland's own thread leaves 18.15 mm at most; the cores lie within 10.00 +/- 0.07 "
        "mm and pass | value 10 high 18.16 | ISO 68-1, root of the male thread");
  const Adaptor adaptor{*parse_thread("M16"), *parse_thread("M20"), {}};
  entry.thread = parse_thread("M16");
  CHECK(words(passage(gland, entry, &adaptor, test::standards()), small, false) ==
        "not-known: the adaptor leaves 14.15 mm at most; the bedding, 10.00 +/- 0.07 mm, passes; "
        "the adaptor's smallest bore is not given (adaptor_bore_mm) | value 10 high 14.16 margin "
        "4.096 p 1 | lacks: smallest bore of the adaptor <adaptor_bore_mm> | ISO 68-1, root of the "
        "male thread");
  entry.adaptor_bore_mm = 10.2;
  CHECK(words(passage(gland, entry, &adaptor, test::standards()), small, false) ==
        "fits: the adaptor leaves 10.20 mm at most; the bedding, 10.00 +/- 0.07 mm, passes | value "
        "10 high 10.2 margin* 0.137 p 1 | smallest bore of the adaptor as given");
  entry.adaptor_bore_mm = 30.0;
  CHECK(words(passage(gland, entry, &adaptor, test::standards()), small, false) ==
        "fits: the gland's own thread leaves 18.15 mm at most; the bedding, 10.00 +/- 0.07 mm, "
        "passes | value 10 high 18.16 margin* 8.096 p 1 | ISO 68-1, root of the male thread");
  const gland::Gland taper = threaded_gland("NPT 5", 50.0);
  CHECK(words(passage(taper, {}, nullptr, test::standards()), small, false) ==
        "not-known: the gland's own thread leaves 134.38 mm at most; the bedding, 10.00 +/- 0.07 "
        "mm, passes; the thread's figures are from memory: measure the gland's bore | value 10 "
        "high 134.385 margin 124.321 p 1 | lacks: bore of the gland's thread, its figures are from "
        "memory <> | ASME B1.20.1, root of the male thread at its small end");
}

namespace {

/// The joint of a gland where IP codes ("54", "55/66"; empty: none) are asked for.
std::string joint_words(const gland::Gland& gland, const Entry& entry, const char* ip,
                        bool restricted_breathing = false, const Adaptor* adaptor = nullptr) {
  std::vector<area::IngressDemand> demands;
  if (*ip != '\0') {
    const auto codes = area::parse_ip_codes(ip);
    for (const area::IpCode& code : *codes) {
      demands.push_back({.needed = "IP" + area::to_text(code) + " for the place",
                         .source = "test",
                         .not_given = {},
                         .rungs = {{code, Verdict::fits, {}}}});
    }
  }
  return whole(
      check_joint(gland, entry, adaptor, {demands, restricted_breathing}, test::standards()));
}

}  // namespace

TEST_CASE("joint, whole: what closes the hole", "[unit][joint]") {
  const gland::Gland gland = threaded_gland("M20", 15.0);
  CHECK(joint_words(gland, {}, "") ==
        "not-known: not given: the kind of hole (threaded or clearance) | | lacks: kind of hole, "
        "threaded or clearance <at the end hole> | nothing to compare");
  Entry entry = hole(Hole::threaded, 6.0);
  CHECK(joint_words(gland, entry, "") ==
        "fits: there is no sealing washer: a tapped wall of 6 mm or more serves IP54, and none is "
        "asked for | | IEC 60079-14 (secondary)");
  CHECK(joint_words(gland, entry, "54") ==
        "fits: there is no sealing washer: a tapped wall of 6 mm or more serves IP54 | | IEC "
        "60079-14 (secondary)");
  CHECK(joint_words(gland, entry, "55/66") ==
        "no-fit: there is no sealing washer: a tapped wall of 6 mm or more serves IP54, and IP55 "
        "for the place, IP66 for the place are asked for: a sealing washer is needed | | IEC "
        "60079-14 (secondary)");
  entry.wall_mm = 5.9;
  CHECK(joint_words(gland, entry, "54") ==
        "no-fit: there is no sealing washer: a tapped wall under 6 mm has no protection by itself, "
        "and IP54 for the place is asked for: a sealing washer is needed | | IEC 60079-14 "
        "(secondary)");
  entry.wall_mm.reset();
  CHECK(joint_words(gland, entry, "54") ==
        "not-known: there is no sealing washer: a tapped wall under 6 mm has no protection by "
        "itself, and IP54 for the place is asked for: a sealing washer is needed; the thickness of "
        "the wall is not given | | IEC 60079-14 (secondary)");
  entry.washer_mm.reset();
  CHECK(joint_words(gland, entry, "54") ==
        "not-known: no sealing washer is stated, so none is counted: a tapped wall under 6 mm has "
        "no protection by itself, and IP54 for the place is asked for: state the washer "
        "(washer_mm); the thickness of the wall is not given | | lacks: sealing washer (0: none) "
        "<washer_mm> | IEC 60079-14 (secondary)");
  entry.washer_mm = 1.5;
  CHECK(joint_words(gland, entry, "66") ==
        "fits: a sealing washer of 1.5 mm closes the hole | | a washer seals the hole: common "
        "practice, no source");
  entry.tag_mm = 1.0;
  CHECK(joint_words(gland, entry, "66") ==
        "fits: a sealing washer of 1.5 mm on each side of the tag closes the hole | | a washer "
        "seals the hole: common practice, no source");
  CHECK(
      joint_words(gland, hole(Hole::threaded, 10.0), "", true) ==
      "no-fit: there is no sealing washer: a tapped wall of 6 mm or more serves IP54, and "
      "restricted breathing is asked for: a sealing washer is needed | | IEC 60079-14 (secondary)");
  CHECK(joint_words(gland, hole(Hole::clearance, 3.0), "54", true) ==
        "no-fit: there is no sealing washer: a clearance hole has no protection by itself, and "
        "IP54 for the place, restricted breathing are asked for: a sealing washer is needed | | "
        "IEC 60079-14 (secondary)");
  const gland::Gland taper = threaded_gland("NPT 1/2", 19.85);
  CHECK(joint_words(taper, hole(Hole::threaded, 10.0), "66") ==
        "not-known: no washer seals a taper thread: a tapped wall of 6 mm or more serves IP54, and "
        "IP66 for the place is asked for: its maker says what seals it | | lacks: what seals a "
        "taper thread (its maker) <> | IEC 60079-14 (secondary)");
  CHECK(joint_words(taper, hole(Hole::threaded, 10.0), "") ==
        "fits: no washer seals a taper thread: a tapped wall of 6 mm or more serves IP54, and none "
        "is asked for | | IEC 60079-14 (secondary)");
}

TEST_CASE("joint, whole: the width of a clearance hole, and an adaptor", "[unit][joint]") {
  const gland::Gland gland = threaded_gland("M20", 15.0);
  Entry entry = hole(Hole::clearance, 3.0);
  entry.washer_mm = 1.5;
  entry.hole_dia_mm = 19.9;
  CHECK(joint_words(gland, entry, "") ==
        "no-fit: a sealing washer of 1.5 mm closes the hole; the hole is 19.9 mm wide, the thread "
        "M20 is 20 mm: the thread does not go through | value 19.9 low 20 high 20.5 margin -0.1 | "
        "a washer seals the hole: common practice, no source; half a millimetre over the thread: "
        "common practice, no source");
  entry.hole_dia_mm = 20.0;
  CHECK(joint_words(gland, entry, "") ==
        "fits: a sealing washer of 1.5 mm closes the hole; the hole is 20 mm wide, the thread M20 "
        "is 20 mm | value 20 low 20 high 20.5 margin 0 | a washer seals the hole: common practice, "
        "no source; half a millimetre over the thread: common practice, no source");
  entry.hole_dia_mm = 20.5;
  CHECK(joint_words(gland, entry, "") ==
        "fits: a sealing washer of 1.5 mm closes the hole; the hole is 20.5 mm wide, the thread "
        "M20 is 20 mm | value 20.5 low 20 high 20.5 margin 0.5 | a washer seals the hole: common "
        "practice, no source; half a millimetre over the thread: common practice, no source");
  entry.hole_dia_mm = 20.6;
  CHECK(joint_words(gland, entry, "") ==
        "not-known: a sealing washer of 1.5 mm closes the hole; the hole is 20.6 mm wide, the "
        "thread M20 is 20 mm: over 20.5 mm washer and locknut may not cover it all round; measure "
        "them | value 20.6 low 20 high 20.5 margin 0.6 | lacks: whether washer and locknut cover "
        "the hole <> | a washer seals the hole: common practice, no source; half a millimetre over "
        "the thread: common practice, no source");
  entry.hole_dia_mm = 22.0;
  CHECK(joint_words(threaded_gland("NPT 1/2", 15.0), entry, "") ==
        "fits: a sealing washer of 1.5 mm closes the hole; the hole is 22 mm wide, the thread NPT "
        "1/2 is 21.34 mm | value 22 low 21.336 high 23.012 margin 0.664 | a washer seals the hole: "
        "common practice, no source; NEMA machine terminal boxes (as printed in a public copy), "
        "holes for conduit");
  entry.hole_dia_mm = 24.0;
  CHECK(joint_words(threaded_gland("NPT 1/2", 15.0), entry, "") ==
        "not-known: a sealing washer of 1.5 mm closes the hole; the hole is 24 mm wide, the thread "
        "NPT 1/2 is 21.34 mm: over 23.01 mm washer and locknut may not cover it all round; measure "
        "them | value 24 low 21.336 high 23.012 margin 2.664 | lacks: whether washer and locknut "
        "cover the hole <> | a washer seals the hole: common practice, no source; NEMA machine "
        "terminal boxes (as printed in a public copy), holes for conduit");
  entry.hole_dia_mm = 145.0;  // of this size there is no row
  CHECK(joint_words(threaded_gland("NPT 5", 50.0), entry, "") ==
        "not-known: a sealing washer of 1.5 mm closes the hole; the hole is 145 mm wide, the "
        "thread NPT 5 is 141.3 mm: no figure says how wide a hole washer and locknut cover; "
        "measure them | value 145 low 141.3 margin 3.7 | lacks: whether washer and locknut cover "
        "the hole <> | a washer seals the hole: common practice, no source; NEMA machine terminal "
        "boxes (as printed in a public copy), holes for conduit");
  entry.hole_dia_mm = 100.0;
  CHECK(joint_words(threaded_gland("NPT 5", 50.0), entry, "") ==
        "not-known: a sealing washer of 1.5 mm closes the hole; the hole is 100 mm wide, the "
        "thread NPT 5 is 141.3 mm: the thread does not go through | value 100 low 141.3 margin "
        "-41.3 | lacks: whether washer and locknut cover the hole <> | a washer seals the hole: "
        "common practice, no source; NEMA machine terminal boxes (as printed in a public copy), "
        "holes for conduit");
  entry.hole_dia_mm.reset();
  const Adaptor adaptor{*parse_thread("M25"), *parse_thread("M20"), {}};
  CHECK(joint_words(gland, entry, "", false, &adaptor) ==
        "fits: a sealing washer of 1.5 mm closes the hole; nothing seals the gland in the adaptor, "
        "and no protection is asked for | | a washer seals the hole: common practice, no source");
  CHECK(joint_words(gland, entry, "66", false, &adaptor) ==
        "not-known: a sealing washer of 1.5 mm closes the hole; what seals the gland in the "
        "adaptor for IP66 for the place is not known (washer_mm of the gland) | | lacks: washer of "
        "the gland <washer_mm> | a washer seals the hole: common practice, no source");
  gland::Gland sealed = gland;
  sealed.washer_mm = 1.0;
  CHECK(joint_words(sealed, entry, "66", false, &adaptor) ==
        "fits: a sealing washer of 1.5 mm closes the hole; the gland's own washer seals it in the "
        "adaptor | | a washer seals the hole: common practice, no source");
}

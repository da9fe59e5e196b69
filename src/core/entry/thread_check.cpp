#include "cutback/entry/thread_check.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "cutback/compare.hpp"
#include "cutback/entry/engagement.hpp"
#include "cutback/entry/geometry.hpp"
#include "cutback/entry/stack.hpp"
#include "cutback/error.hpp"
#include "cutback/number.hpp"

namespace cutback::entry {
namespace {

using tables::Table;

// What an ordinary tapped hole should give. No standard was found that says it.
constexpr double k_ordinary_turns = 3.0;
constexpr double k_least_turns = 1.0;
// A thinner tapped wall needs a washer to keep water out.
constexpr double k_self_sealing_wall_mm = 6.0;
// Pitches for which the flameproof rule for parallel threads stands as it is (from memory).
constexpr double k_least_pitch_mm = 0.7;
constexpr double k_special_pitch_mm = 2.0;

constexpr const char* k_ordinary_source = "three turns: common practice, no source";
constexpr const char* k_stack_source = "one pitch beyond the locknut: common practice, no source";
constexpr const char* k_flameproof_source = "IEC 60079-1 5.3 (secondary)";

/// The figures of gland and entry that the check uses.
struct Figures {
  double thread_mm = 0.0;
  double wall_mm = 0.0;
  double washer_mm = 0.0;
  double tag_mm = 0.0;
  double serrated_mm = 0.0;
  double locknut_mm = 0.0;
  double undercut_mm = 0.0;
};

/// Least engagement, with the words and the source for it.
struct Demand {
  double turns = 0.0;
  double depth_mm = 0.0;
  std::string source;
};

Figures figures_of(const gland::Gland& gland, const Entry& entry) {
  Figures out;
  out.thread_mm = gland.entry_length_mm.value_or(0.0);
  out.wall_mm = entry.wall_mm.value_or(0.0);
  out.washer_mm = entry.washer_mm ? *entry.washer_mm : gland.washer_mm.value_or(0.0);
  out.tag_mm = entry.tag_mm.value_or(0.0);
  out.serrated_mm = entry.serrated_mm.value_or(0.0);
  out.locknut_mm = entry.locknut_mm ? *entry.locknut_mm : gland.locknut_mm.value_or(0.0);
  out.undercut_mm = entry.undercut_mm.value_or(0.0);
  return out;
}

/// The figures without which nothing can be said, by name; empty when all are there.
std::string missing_figures(const gland::Gland& gland, const Entry& entry) {
  std::string names;
  const auto add = [&](bool missing, const char* name) {
    if (missing) names += (names.empty() ? "" : " and ") + std::string(name);
  };
  add(!entry.hole, "the kind of hole (threaded or clearance)");
  add(!gland.entry_length_mm, "the length of the gland's entry thread");
  add(!entry.wall_mm, "the thickness of the wall");
  return names;
}

/// The parallel rule for a volume; not known: the row without an upper end, the stricter one.
Demand parallel_demand(const Table& table, std::optional<double> volume_cm3) {
  const std::size_t small = table.row("rule", "parallel");
  const std::size_t large = table.row("rule", "parallel", small + 1);
  const bool is_small = volume_cm3 && at_most(*volume_cm3, table.number(small, "volume_max_cm3"));
  const std::size_t row = is_small ? small : large;
  return {table.number(row, "turns"), table.number(row, "depth_mm"), k_flameproof_source};
}

EngagementInput engagement_input(const Figures& f, double pitch_mm, double chamfer_mm) {
  return {f.thread_mm, f.washer_mm, f.tag_mm, f.undercut_mm, f.wall_mm, chamfer_mm, pitch_mm};
}

double needed_engagement_mm(const Demand& demand, double pitch_mm) {
  return std::max(demand.turns * pitch_mm, demand.depth_mm);
}

/// The sum and its outcome, as in "engaged: min(15 - 2, 10 - 1) = 9 mm = 6 full turns".
std::string engagement_words(const Figures& f, double chamfer_mm, const Engagement& engagement) {
  std::string male = plain(f.thread_mm);
  for (const double less : {f.undercut_mm, f.washer_mm, f.tag_mm}) {
    if (less > 0.0) male += " - " + plain(less);
  }
  std::string hole = plain(f.wall_mm);
  if (chamfer_mm > 0.0) hole += " - " + plain(chamfer_mm);
  return fmt::format("engaged: min({}, {}) = {} mm = {} full turn{}", male, hole,
                     plain(engagement.engaged_mm, 2), engagement.full_turns,
                     engagement.full_turns == 1 ? "" : "s");
}

void report_engagement(ThreadFit& out, const Figures& f, const Engagement& engagement,
                       double needed_mm) {
  out.engaged_mm = engagement.engaged_mm;
  out.turns = engagement.full_turns;
  out.needed_mm = needed_mm + f.washer_mm + f.tag_mm + f.undercut_mm;
  out.check.value = engagement.engaged_mm;
  out.check.low = needed_mm;
  out.check.margin_mm = engagement.engaged_mm - needed_mm;
}

/// What to do about an engagement that is too small.
std::string remedy(ThreadFit& out, const Engagement& engagement) {
  if (!engagement.limited_by_hole) {
    return fmt::format("a thread of {} mm would do", plain(*out.needed_mm, 2));
  }
  out.hole_says = "the hole's own thread is too short";
  return out.hole_says;
}

void check_ordinary(ThreadFit& out, const Figures& f, double pitch_mm, double chamfer_mm) {
  const Engagement engagement = engage(engagement_input(f, pitch_mm, chamfer_mm));
  report_engagement(out, f, engagement, k_ordinary_turns * pitch_mm);
  out.check.source = k_ordinary_source;
  out.check.says = engagement_words(f, chamfer_mm, engagement);
  if (engagement.full_turns >= k_ordinary_turns) {
    out.check.verdict = Verdict::fits;
    return;
  }
  out.check.verdict = engagement.full_turns >= k_least_turns ? Verdict::not_known : Verdict::no_fit;
  out.check.says +=
      fmt::format("; fewer than {}: {}", plain(k_ordinary_turns), remedy(out, engagement));
}

/// Reasons for which a parallel thread that is long enough is still not proven.
std::string unproven(const Thread& thread) {
  if (thread.kind == ThreadKind::pg) {
    return "a PG thread has no ISO 965-1 fit: check against the certificate";
  }
  if (!at_least(thread.pitch_mm, k_least_pitch_mm)) {
    return "a pitch under 0.7 mm: check against the standard";
  }
  return {};
}

void check_flameproof_parallel(ThreadFit& out, const Figures& f, const Thread& thread,
                               std::optional<double> chamfer_mm, const EntryJoint& joint,
                               const Table& rules) {
  const double deepest_mm = rules.number(rules.row("rule", "hole-chamfer"), "depth_mm");
  const double counted_mm = chamfer_mm.value_or(deepest_mm);
  const Demand demand = parallel_demand(rules, joint.volume_cm3);
  const double needed_mm = needed_engagement_mm(demand, thread.pitch_mm);
  const auto enough = [&](double chamfer, const Demand& asked) {
    const Engagement engagement = engage(engagement_input(f, thread.pitch_mm, chamfer));
    return engagement.full_turns >= asked.turns && at_least(engagement.engaged_mm, asked.depth_mm);
  };
  const Engagement engagement = engage(engagement_input(f, thread.pitch_mm, counted_mm));
  report_engagement(out, f, engagement, needed_mm);
  out.check.source = demand.source;
  std::string& says = out.check.says;
  says = fmt::format("flameproof: {} full turns and {} mm needed; {}", plain(demand.turns),
                     plain(demand.depth_mm), engagement_words(f, counted_mm, engagement));
  if (!chamfer_mm) says += fmt::format(" (chamfer not given, {} mm counted)", plain(counted_mm));
  if (enough(counted_mm, demand)) {
    const std::string doubt = unproven(thread);
    out.check.verdict = doubt.empty() ? Verdict::fits : Verdict::not_known;
    if (!doubt.empty()) says += "; " + doubt;
  } else if (!chamfer_mm && enough(0.0, demand)) {
    out.check.verdict = Verdict::not_known;
    says += "; the chamfer of the hole decides: measure it";
  } else {
    out.check.verdict = Verdict::no_fit;
    says += "; too little: " + remedy(out, engagement);
  }
  const Demand small = parallel_demand(rules, 0.0);
  if (!joint.volume_cm3 && !enough(counted_mm, demand) && enough(counted_mm, small)) {
    says += "; in a volume of at most 100 cm3 it would do: give the volume";
  }
  if (chamfer_mm && !at_most(*chamfer_mm, deepest_mm)) {
    out.notes.push_back(fmt::format(
        "the chamfer of a flameproof entry hole may be {} mm deep at most (IEC 60079-1)",
        plain(deepest_mm)));
  }
  if (!at_most(thread.pitch_mm, k_special_pitch_mm)) {
    out.notes.push_back(
        "a flameproof thread with a pitch over 2 mm needs special care (IEC 60079-1 "
        "5.3, from memory)");
  }
}

/// The gland's own thread against what its standard asks of it.
void note_male_thread(ThreadFit& out, const Figures& f, double pitch_mm, const Table& rules) {
  const std::size_t row = rules.row("rule", "male-thread");
  const double turns = std::floor((f.thread_mm - f.undercut_mm) / pitch_mm + 1e-9);
  if (turns >= rules.number(row, "turns")) return;
  out.notes.push_back(fmt::format(
      "the gland's thread has {} full turns; IEC 60079-1:2007 asks {} of it, older editions 6: its "
      "certificate decides",
      plain(turns, 0), plain(rules.number(row, "turns"))));
}

void check_taper(ThreadFit& out, const Figures& f, const Thread& thread, double chamfer_mm,
                 bool flameproof, const tables::Standards& standards) {
  const Engagement provided = engage(engagement_input(f, thread.pitch_mm, chamfer_mm));
  const NptGeometry geometry = npt_geometry(thread, standards.table("npt_threads"));
  const double by_hand_mm = std::min(provided.engaged_mm, geometry.hand_tight_mm);
  const Table& rules = standards.table("flameproof_threads");
  const double least = rules.number(rules.row("rule", "taper-engaged"), "turns");
  const double wanted = rules.number(rules.row("rule", "taper-provided"), "turns");
  const double needed = flameproof ? wanted : k_ordinary_turns;
  report_engagement(out, f, provided, needed * thread.pitch_mm);
  out.engaged_mm = by_hand_mm;
  out.turns = static_cast<int>(std::floor(by_hand_mm / thread.pitch_mm + 1e-9));
  out.check.says =
      fmt::format("taper thread: {} turns in both parts, {} engaged by hand (L1 {} mm)",
                  fixed(provided.turns, 1), fixed(by_hand_mm / thread.pitch_mm, 1),
                  fixed(geometry.hand_tight_mm, 2));
  out.notes.push_back(
      "a taper thread is made up tight, without a locknut, and no washer seals it "
      "(from memory)");
  const auto reaches = [&](double turns) { return at_least(provided.turns, turns); };
  if (reaches(needed)) {
    out.check.verdict = Verdict::fits;
  } else if (reaches(flameproof ? least : k_least_turns)) {
    out.check.verdict = Verdict::not_known;
    out.check.says +=
        fmt::format("; fewer than {}: {}", plain(needed),
                    flameproof ? "check against the standard" : remedy(out, provided));
  } else {
    out.check.verdict = Verdict::no_fit;
    out.check.says += fmt::format("; too few: {}", remedy(out, provided));
  }
  out.check.source = flameproof
                         ? "IEC 60079-1: 3.5 turns engaged (secondary), 5 in each part (from "
                           "memory); ASME B1.20.1"
                         : std::string(k_ordinary_source) + "; ASME B1.20.1";
}

void check_tapped(ThreadFit& out, const Figures& f, const Thread& thread, const Entry& entry,
                  const EntryJoint& joint, const tables::Standards& standards) {
  const double chamfer_mm = entry.chamfer_mm.value_or(0.0);
  const Table& rules = standards.table("flameproof_threads");
  if (thread.kind == ThreadKind::npt) {
    check_taper(out, f, thread, chamfer_mm, joint.flameproof, standards);
  } else if (joint.flameproof) {
    check_flameproof_parallel(out, f, thread, entry.chamfer_mm, joint, rules);
    note_male_thread(out, f, thread.pitch_mm, rules);
  } else {
    check_ordinary(out, f, thread.pitch_mm, chamfer_mm);
  }
  const auto short_mm = short_engagement_mm(thread, standards.table("engagement_group_n"));
  if (short_mm && at_most(*out.engaged_mm, *short_mm)) {
    out.notes.push_back(fmt::format(
        "{} mm is a short engagement (ISO 965-1: normal is over {} mm), so 6H and 6g are no longer "
        "the usual tolerances",
        plain(*out.engaged_mm, 2), plain(*short_mm)));
  }
  if (f.washer_mm <= 0.0 && !at_least(f.wall_mm, k_self_sealing_wall_mm)) {
    out.notes.push_back(
        "a tapped wall under 6 mm needs a sealing washer to keep IP54 (IEC 60079-14, "
        "secondary)");
  }
}

void check_clearance(ThreadFit& out, const Figures& f, const Thread& thread, const Entry& entry) {
  if (thread.kind == ThreadKind::npt) {
    out.check.says =
        "a taper thread takes no locknut, so it does not hold in a clearance hole: check "
        "with the gland's maker";
    out.check.source = "from memory";
    return;
  }
  const Stack stack = stack_up({f.thread_mm, f.undercut_mm, f.washer_mm, f.wall_mm, f.tag_mm,
                                f.serrated_mm, f.locknut_mm, thread.pitch_mm});
  out.needed_mm = stack.needed_mm;
  out.check.value = f.thread_mm;
  out.check.low = stack.needed_mm;
  out.check.margin_mm = stack.margin_mm;
  out.check.source = k_stack_source;
  const bool enough = at_least(f.thread_mm, stack.needed_mm) && stack.nut_clamps;
  out.check.verdict = enough ? Verdict::fits : Verdict::no_fit;
  out.check.says = fmt::format(
      "needed: washer {} + wall {} + tag {} + serrated washer {} + locknut {} + one pitch {} = {} "
      "mm "
      "of thread; there are {} mm",
      plain(f.washer_mm), plain(f.wall_mm), plain(f.tag_mm), plain(f.serrated_mm),
      plain(f.locknut_mm), plain(thread.pitch_mm), plain(stack.needed_mm, 2), plain(f.thread_mm));
  if (!stack.nut_clamps)
    out.check.says += "; the undercut ends behind the locknut: it cannot clamp";
  if (f.locknut_mm <= 0.0)
    out.notes.push_back("the locknut's thickness is not given: 0 is counted");
  if (entry.material == "polymer" && f.tag_mm <= 0.0) {
    out.notes.push_back(
        "a plastic wall does not carry the earth: fit an earth tag inside and bond it "
        "(common practice, no source)");
  }
}

/// Without an adaptor: the same thread in a tapped hole, the same size in a clearance hole.
bool suits(const Thread& thread, const Entry& entry) {
  if (entry.hole == Hole::threaded) return *entry.thread == thread;
  return entry.thread->kind == thread.kind && std::abs(entry.thread->size - thread.size) < 1e-9;
}

}  // namespace

ThreadFit check_thread(const gland::Gland& gland, const Entry& entry, const EntryJoint& joint,
                       const tables::Standards& standards) {
  ThreadFit out;
  out.check.name = fit::CheckName::thread;
  const Thread& thread = gland.entry_thread;
  const Figures figures = figures_of(gland, entry);
  if (joint.flameproof && entry.hole == Hole::clearance) {
    out.check.verdict = Verdict::no_fit;
    out.check.says = "a flameproof entry is tapped: a clearance hole is not permitted";
    out.hole_says = out.check.says;
    out.check.source = "IEC 60079-1 (secondary)";
    return out;
  }
  const std::string missing = missing_figures(gland, entry);
  if (!missing.empty()) {
    out.check.says = "not given: " + missing;
    out.check.source = "nothing to compare";
    return out;
  }
  if (entry.thread && !suits(thread, entry)) {
    out.check.says = fmt::format(
        "{} does not go into {} without an adaptor, and the adaptor's lengths "
        "are not known: see its papers",
        to_text(thread), to_text(*entry.thread));
    out.check.source = "nothing to compare";
    return out;
  }
  if (entry.hole == Hole::threaded) {
    check_tapped(out, figures, thread, entry, joint, standards);
  } else {
    check_clearance(out, figures, thread, entry);
  }
  return out;
}

Rule adaptor_rule() {
  return {
      "At most one thread adaptor at an entry, itself marked with the protection that the "
      "enclosure needs, and never together with a blanking element.",
      "IEC 60079-14 (secondary)"};
}

}  // namespace cutback::entry

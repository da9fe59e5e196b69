#include "cutback/entry/thread_check.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/entry/engagement.hpp"
#include "core/entry/stack.hpp"
#include "cutback/compare.hpp"
#include "cutback/entry/geometry.hpp"
#include "cutback/entry/hardware.hpp"
#include "cutback/error.hpp"
#include "cutback/number.hpp"

namespace cutback::entry {
namespace {

using tables::Table;

// What an ordinary tapped hole should give. No standard was found that says it.
constexpr double k_ordinary_turns = 3.0;
constexpr double k_least_turns = 1.0;
// The first pitch of a flameproof male thread is its lead-in, where no turn is full.
constexpr double k_lead_in_turns = 1.0;
// Pitches for which the flameproof rule for parallel threads stands as it is (from memory).
constexpr double k_least_pitch_mm = 0.7;
constexpr double k_special_pitch_mm = 2.0;

constexpr const char* k_ordinary_source = "three turns: common practice, no source";
constexpr const char* k_stack_source = "one pitch beyond the locknut: common practice, no source";
constexpr const char* k_flameproof_source = "IEC 60079-1 5.3 (secondary)";

/// One male thread in one hole: the gland's in the wall, or the adaptor's in the wall and the
/// gland's in the adaptor. Lengths in mm.
struct Figures {
  Thread thread;
  double thread_mm = 0.0;
  double undercut_mm = 0.0;
  double wall_mm = 0.0;
  double washer_mm = 0.0;
  double tag_mm = 0.0;
  double serrated_mm = 0.0;
  double locknut_mm = 0.0;
  std::optional<double> chamfer_mm;
  const char* whose = "the gland's";
};

/// Least engagement, with the words and the source for it.
struct NeededThreads {
  double turns = 0.0;
  double depth_mm = 0.0;
  std::string source;
};

Figures in_wall(const Hardware& at, const Entry& entry) {
  Figures out;
  out.wall_mm = at.wall_mm.value_or(0.0);
  out.washer_mm = at.washers_mm().value_or(0.0);
  out.tag_mm = at.tag_mm;
  out.serrated_mm = at.serrated_mm;
  out.locknut_mm = at.locknut_mm.value_or(0.0);
  out.chamfer_mm = entry.chamfer_mm;
  return out;
}

Figures gland_in_wall(const gland::Gland& gland, const Hardware& at, const Entry& entry) {
  Figures out = in_wall(at, entry);
  out.thread = gland.entry_thread;
  out.thread_mm = gland.entry_length_mm.value_or(0.0);
  out.undercut_mm = entry.undercut_mm.value_or(0.0);
  return out;
}

Figures adaptor_in_wall(const gland::Gland& gland, const Adaptor& adaptor, const Hardware& at,
                        const Entry& entry) {
  Figures out = in_wall(at, entry);
  out.thread = wall_side(adaptor, gland);
  out.thread_mm = entry.adaptor_thread_mm.value_or(0.0);
  out.whose = "the adaptor's";
  return out;
}

/// The depth of an adaptor's female thread is in its papers only. It ends with the body, which a
/// narrower thread may run through to the tip of the adaptor's own.
Figures gland_in_adaptor(const gland::Gland& gland, const Adaptor& adaptor, const Hardware& at,
                         const Entry& entry, const tables::Standards& standards) {
  Figures out;
  out.thread = gland.entry_thread;
  out.thread_mm = gland.entry_length_mm.value_or(0.0);
  out.undercut_mm = entry.undercut_mm.value_or(0.0);
  out.washer_mm = at.gland_washer_mm;
  out.wall_mm = entry.adaptor_mm.value_or(0.0);
  const bool narrower = at_most(male_outside(gland.entry_thread, standards).mm,
                                male_root(wall_side(adaptor, gland), standards).mm);
  if (narrower) out.wall_mm += entry.adaptor_thread_mm.value_or(0.0);
  return out;
}

/// The missing figures without which nothing can be said; empty when all are there.
std::vector<fit::Lack> missing_figures(const gland::Gland& gland, const Hardware& at,
                                       const Entry& entry) {
  using enum fit::Lack::Where;
  std::vector<fit::Lack> lacks;
  if (!gland.entry_length_mm) {
    lacks.push_back({"length of the gland's thread", "entry_length_mm", elsewhere});
  }
  if (at.through_adaptor && !entry.adaptor_thread_mm) {
    lacks.push_back({"length of the adaptor's own thread", "adaptor_thread_mm", elsewhere});
  }
  if (at.through_adaptor && !entry.adaptor_mm) {
    lacks.push_back({"how far the adaptor holds the gland off", "adaptor_mm", elsewhere});
  }
  for (fit::Lack& lack : at.missing()) lacks.push_back(std::move(lack));
  return lacks;
}

/// The parallel rule for a volume; not known: the row without an upper end, the stricter one.
NeededThreads parallel_needs(const Table& table, std::optional<double> volume_cm3) {
  const std::size_t small = table.row("rule", "parallel");
  const std::size_t large = table.row("rule", "parallel", small + 1);
  const bool is_small = volume_cm3 && at_most(*volume_cm3, table.number(small, "volume_max_cm3"));
  const std::size_t row = is_small ? small : large;
  return {table.number(row, "turns"), table.number(row, "depth_mm"), k_flameproof_source};
}

EngagementInput engagement_input(const Figures& f, double chamfer_mm, double lead_in_mm = 0.0) {
  return {.thread_mm = f.thread_mm,
          .washer_mm = f.washer_mm,
          .tag_mm = f.tag_mm,
          .undercut_mm = f.undercut_mm,
          .hole_mm = f.wall_mm,
          .chamfer_mm = chamfer_mm,
          .pitch_mm = f.thread.pitch_mm,
          .serrated_mm = f.serrated_mm,
          .lead_in_mm = lead_in_mm};
}

double needed_engagement_mm(const NeededThreads& demand, double pitch_mm) {
  return std::max(demand.turns * pitch_mm, demand.depth_mm);
}

/// The sum and its outcome, as in "engaged: min(15 - 2, 10 - 1) = 9 mm = 6 full turns".
std::string engagement_words(const Figures& f, const EngagementInput& in,
                             const Engagement& engagement) {
  const double chamfer_mm = in.chamfer_mm;
  std::string male = plain(f.thread_mm);
  for (const double less : {f.undercut_mm, f.washer_mm, f.tag_mm, f.serrated_mm, in.lead_in_mm}) {
    if (less > 0.0) male += " - " + plain(less);
  }
  std::string hole = plain(f.wall_mm);
  if (chamfer_mm > 0.0) hole += " - " + plain(chamfer_mm);
  return fmt::format("engaged: min({}, {}) = {} mm = {} full turn{}", male, hole,
                     plain(engagement.engaged_mm, 2), engagement.full_turns,
                     engagement.full_turns == 1 ? "" : "s");
}

void report_engagement(ThreadFit& out, const EngagementInput& in, const Engagement& engagement,
                       double needed_mm) {
  out.engaged_mm = engagement.engaged_mm;
  out.turns = engagement.full_turns;
  out.needed_mm =
      needed_mm + in.washer_mm + in.tag_mm + in.serrated_mm + in.undercut_mm + in.lead_in_mm;
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

/// The chamfer that is counted [mm]: where it is not given the deepest of a flameproof entry.
double counted_chamfer_mm(const Figures& f, const Table& rules) {
  return f.chamfer_mm.value_or(rules.number(rules.row("rule", "hole-chamfer"), "depth_mm"));
}

std::string counted_words(const Figures& f, double counted_mm) {
  if (f.chamfer_mm) return {};
  return fmt::format(" (chamfer not given, {} mm counted)", plain(counted_mm));
}

/// What only papers tell of a thread.
void lack(ThreadFit& out, std::string fact) {
  out.check.lacks.push_back({std::move(fact), "", fit::Lack::Where::elsewhere});
}

/// Where the chamfer alone stands between the hole and a pass.
void ask_for_chamfer(ThreadFit& out) {
  out.check.verdict = Verdict::not_known;
  out.check.says += "; the chamfer of the hole decides: measure it";
  out.check.lacks.push_back({"chamfer of the hole", "chamfer_mm", fit::Lack::Where::at_the_end});
}

void check_ordinary(ThreadFit& out, const Figures& f, const Table& rules) {
  const double counted_mm = counted_chamfer_mm(f, rules);
  const EngagementInput in = engagement_input(f, counted_mm);
  const Engagement engagement = engage(in);
  report_engagement(out, in, engagement, k_ordinary_turns * f.thread.pitch_mm);
  out.check.source = k_ordinary_source;
  out.check.says = engagement_words(f, in, engagement) + counted_words(f, counted_mm);
  if (engagement.full_turns >= k_ordinary_turns) {
    out.check.verdict = Verdict::fits;
    return;
  }
  if (!f.chamfer_mm && engage(engagement_input(f, 0.0)).full_turns >= k_ordinary_turns) {
    ask_for_chamfer(out);
    return;
  }
  out.check.verdict = engagement.full_turns >= k_least_turns ? Verdict::not_known : Verdict::no_fit;
  if (out.check.verdict == Verdict::not_known) {
    lack(out,
         fmt::format("whether {} full turn{}, {} are usual", engagement.full_turns,
                     engagement.full_turns == 1 ? " holds" : "s hold", plain(k_ordinary_turns)));
  }
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

void note_flameproof(ThreadFit& out, const Figures& f, double deepest_chamfer_mm) {
  if (f.chamfer_mm && !at_most(*f.chamfer_mm, deepest_chamfer_mm)) {
    out.notes.push_back(fmt::format(
        "the chamfer of a flameproof entry hole may be {} mm deep at most (IEC 60079-1)",
        plain(deepest_chamfer_mm)));
    if (out.check.verdict != Verdict::no_fit) {
      out.check.verdict = Verdict::not_known;
      out.check.says +=
          fmt::format("; a chamfer of {} mm is deeper than {} mm: its certificate decides",
                      plain(*f.chamfer_mm), plain(deepest_chamfer_mm));
      lack(out,
           fmt::format("the enclosure's certificate on a chamfer of {} mm", plain(*f.chamfer_mm)));
    }
  }
  if (!at_most(f.thread.pitch_mm, k_special_pitch_mm)) {
    out.notes.push_back(
        "a flameproof thread with a pitch over 2 mm needs special care (IEC 60079-1 "
        "5.3, from memory)");
  }
}

void check_flameproof_parallel(ThreadFit& out, const Figures& f, const EntryJoint& joint,
                               const Table& rules) {
  const double deepest_mm = rules.number(rules.row("rule", "hole-chamfer"), "depth_mm");
  const double counted_mm = counted_chamfer_mm(f, rules);
  const double lead_in_mm = k_lead_in_turns * f.thread.pitch_mm;
  const NeededThreads demand = parallel_needs(rules, joint.volume_cm3);
  const auto enough = [&](double chamfer, const NeededThreads& asked) {
    const Engagement engagement = engage(engagement_input(f, chamfer, lead_in_mm));
    return engagement.full_turns >= asked.turns && at_least(engagement.engaged_mm, asked.depth_mm);
  };
  const EngagementInput in = engagement_input(f, counted_mm, lead_in_mm);
  const Engagement engagement = engage(in);
  report_engagement(out, in, engagement, needed_engagement_mm(demand, f.thread.pitch_mm));
  out.check.source = demand.source;
  std::string& says = out.check.says;
  says = fmt::format("flameproof: {} full turns and {} mm needed; {}", plain(demand.turns),
                     plain(demand.depth_mm), engagement_words(f, in, engagement));
  says += counted_words(f, counted_mm);
  if (enough(counted_mm, demand)) {
    const std::string doubt = unproven(f.thread);
    out.check.verdict = doubt.empty() ? Verdict::fits : Verdict::not_known;
    if (!doubt.empty()) {
      says += "; " + doubt;
      lack(out, "the certificate on a thread " + to_text(f.thread));
    }
  } else if (!f.chamfer_mm && enough(0.0, demand)) {
    ask_for_chamfer(out);
  } else {
    out.check.verdict = Verdict::no_fit;
    says += "; too little: " + remedy(out, engagement);
  }
  const NeededThreads small = parallel_needs(rules, 0.0);
  if (!joint.volume_cm3 && !enough(counted_mm, demand) && enough(counted_mm, small)) {
    says += "; in a volume of at most 100 cm3 it would do: give the volume";
  }
  note_flameproof(out, f, deepest_mm);
}

/// A male thread by itself, wherever it goes: what its standard asks of its turns and its length.
void check_male_thread(ThreadFit& out, const Figures& f, const Table& rules) {
  const std::size_t row = rules.row("rule", "male-thread");
  const double older = rules.number(rules.row("rule", "male-thread-older"), "turns");
  const double wanted = rules.number(row, "turns");
  const double wanted_mm = rules.number(row, "depth_mm");
  const double length_mm = f.thread_mm - f.undercut_mm;
  const double turns = std::floor(length_mm / f.thread.pitch_mm + 1e-9);
  out.needed_mm =
      std::max(*out.needed_mm, std::max(wanted * f.thread.pitch_mm, wanted_mm) + f.undercut_mm);
  if (turns >= wanted && at_least(length_mm, wanted_mm)) return;
  const bool refused = turns < older;
  out.check.verdict = worst(out.check.verdict, refused ? Verdict::no_fit : Verdict::not_known);
  out.check.says += fmt::format("; {} thread has {} full turns in {} mm", f.whose, plain(turns, 0),
                                plain(length_mm, 2));
  out.check.says +=
      refused ? fmt::format(", and every edition of IEC 60079-1 asks {} of it", plain(older))
              : fmt::format(
                    "; IEC 60079-1:2007 asks {} and {} mm, older editions {} turns: its "
                    "certificate decides",
                    plain(wanted), plain(wanted_mm), plain(older));
  if (!refused)
    lack(out, fmt::format("the certificate on {} full turns of thread", plain(turns, 0)));
}

void check_taper(ThreadFit& out, const Figures& f, bool flameproof,
                 const tables::Standards& standards) {
  const double pitch_mm = f.thread.pitch_mm;
  const Table& rules = standards.table("flameproof_threads");
  const EngagementInput in = engagement_input(f, f.chamfer_mm.value_or(0.0));
  const Engagement provided = engage(in);
  const NptGeometry geometry = npt_geometry(f.thread, standards.table("npt_threads"));
  const double by_hand_mm = std::min(provided.engaged_mm, geometry.hand_tight_mm);
  const double least = rules.number(rules.row("rule", "taper-engaged"), "turns");
  const double wanted = rules.number(rules.row("rule", "taper-provided"), "turns");
  const double needed = flameproof ? wanted : k_ordinary_turns;
  report_engagement(out, in, provided, needed * pitch_mm);
  out.engaged_mm = by_hand_mm;
  out.turns = static_cast<int>(std::floor(by_hand_mm / pitch_mm + 1e-9));
  out.check.says = fmt::format(
      "taper thread: {} turns in both parts, {} engaged by hand (L1 {} mm)",
      fixed(provided.turns, 1), fixed(by_hand_mm / pitch_mm, 1), fixed(geometry.hand_tight_mm, 2));
  out.notes.push_back(
      "a taper thread is made up tight, without a locknut, and no washer seals it "
      "(from memory)");
  const auto reaches = [&](double turns) { return at_least(provided.turns, turns); };
  if (reaches(needed)) {
    out.check.verdict = geometry.from_memory ? Verdict::not_known : Verdict::fits;
    if (geometry.from_memory)
      out.check.says += "; a size known from memory only: check against the standard";
    if (geometry.from_memory) lack(out, "the standard on a thread " + to_text(f.thread));
  } else if (reaches(flameproof ? least : k_least_turns)) {
    out.check.verdict = Verdict::not_known;
    out.check.says +=
        fmt::format("; fewer than {}: {}", plain(needed),
                    flameproof ? "check against the standard" : remedy(out, provided));
    lack(out, fmt::format("whether {} turns of a taper thread hold", fixed(provided.turns, 1)));
  } else {
    out.check.verdict = Verdict::no_fit;
    out.check.says += fmt::format("; too few: {}", remedy(out, provided));
  }
  out.check.source = flameproof
                         ? "IEC 60079-1: 3.5 turns engaged (secondary), 5 in each part (from "
                           "memory); ASME B1.20.1"
                         : std::string(k_ordinary_source) + "; ASME B1.20.1";
}

void check_tapped(ThreadFit& out, const Figures& f, const EntryJoint& joint,
                  const tables::Standards& standards) {
  const Table& rules = standards.table("flameproof_threads");
  if (f.thread.kind == ThreadKind::npt) {
    check_taper(out, f, joint.flameproof, standards);
  } else if (joint.flameproof) {
    check_flameproof_parallel(out, f, joint, rules);
    check_male_thread(out, f, rules);
  } else {
    check_ordinary(out, f, rules);
  }
  const auto short_mm = short_engagement_mm(f.thread, standards.table("engagement_group_n"));
  if (short_mm && at_most(*out.engaged_mm, *short_mm)) {
    out.notes.push_back(fmt::format(
        "{} mm is a short engagement (ISO 965-1: normal is over {} mm), so 6H and 6g are no longer "
        "the usual tolerances",
        plain(*out.engaged_mm, 2), plain(*short_mm)));
  }
}

void check_clearance(ThreadFit& out, const Figures& f, const Entry& entry) {
  const Stack stack = stack_up({f.thread_mm, f.undercut_mm, f.washer_mm, f.wall_mm, f.tag_mm,
                                f.serrated_mm, f.locknut_mm, f.thread.pitch_mm});
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
      plain(f.locknut_mm), plain(f.thread.pitch_mm), plain(stack.needed_mm, 2), plain(f.thread_mm));
  if (!stack.nut_clamps)
    out.check.says += "; the undercut ends behind the locknut: it cannot clamp";
  if (f.thread.kind == ThreadKind::npt) {
    const char* const caution =
        "a locknut holds a taper thread by a few turns only: use the one that its maker gives for "
        "it, and check that it is tight";
    out.check.says += std::string("; caution: ") + caution;
    out.check.source += "; taper thread: from memory";
    out.notes.emplace_back(caution);
  }
  if (entry.material == "polymer" && f.tag_mm <= 0.0) {
    out.notes.push_back(
        "a plastic wall does not carry the earth: fit an earth tag inside and bond it "
        "(common practice, no source)");
  }
}

/// The gland's thread in the adaptor, and both in one check: the worse verdict, and the thread of
/// the gland as what is needed.
void add_gland_in_adaptor(ThreadFit& out, const Figures& f, const EntryJoint& joint,
                          const tables::Standards& standards) {
  ThreadFit inner;
  check_tapped(inner, f, joint, standards);
  if (joint.flameproof) {
    inner.check.verdict = worst(inner.check.verdict, Verdict::not_known);
    inner.check.says +=
        "; how deep the adaptor's own tapped thread is is not known: see its certificate";
    lack(inner, "depth of the adaptor's tapped thread (its certificate)");
  }
  out.check.says =
      "adaptor in the wall: " + out.check.says + "; gland in the adaptor: " + inner.check.says;
  out.check.source += "; " + inner.check.source;
  out.needed_mm = inner.needed_mm;
  const bool inner_decides = *inner.check.margin_mm < *out.check.margin_mm;
  if (inner_decides) {
    out.check.value = inner.check.value;
    out.check.low = inner.check.low;
    out.check.margin_mm = inner.check.margin_mm;
  }
  out.check.verdict = worst(out.check.verdict, inner.check.verdict);
  for (fit::Lack& each : inner.check.lacks) out.check.lacks.push_back(std::move(each));
  for (std::string& note : inner.notes) {
    if (std::find(out.notes.begin(), out.notes.end(), note) == out.notes.end())
      out.notes.push_back(std::move(note));
  }
}

/// A check that cannot be made, and why.
ThreadFit unanswered(Verdict verdict, std::string says, const char* source) {
  ThreadFit out;
  out.check = {.name = fit::CheckName::thread,
               .verdict = verdict,
               .says = std::move(says),
               .source = source};
  return out;
}

}  // namespace

bool suits(const Thread& thread, const Entry& entry) {
  if (!entry.thread) return entry.to_suit;
  if (hole_of(entry) == Hole::clearance) {
    return entry.thread->kind == thread.kind && std::abs(entry.thread->size - thread.size) < 1e-9;
  }
  return *entry.thread == thread;
}

ThreadFit check_thread(const gland::Gland& gland, const Entry& entry, const Adaptor* adaptor,
                       const EntryJoint& joint, const tables::Standards& standards) {
  const Hardware at = hardware_of(gland, entry, adaptor != nullptr);
  if (joint.flameproof && at.hole == Hole::clearance) {
    ThreadFit out = unanswered(Verdict::no_fit,
                               "a flameproof entry is tapped: a clearance hole is not permitted",
                               "IEC 60079-1 (secondary)");
    out.hole_says = out.check.says;
    return out;
  }
  std::vector<fit::Lack> missing = missing_figures(gland, at, entry);
  if (!missing.empty()) {
    std::string names;
    for (const fit::Lack& lack : missing) names += (names.empty() ? "" : " and ") + lack.fact;
    ThreadFit out = unanswered(Verdict::not_known, "not given: " + names, "nothing to compare");
    out.check.lacks = std::move(missing);
    return out;
  }
  if (adaptor == nullptr && entry.thread && !suits(gland.entry_thread, entry)) {
    return unanswered(Verdict::not_known,
                      fmt::format("gland thread {} does not suit the entry {}",
                                  to_text(gland.entry_thread), to_text(*entry.thread)),
                      "nothing to compare");
  }
  const Figures f = adaptor != nullptr ? adaptor_in_wall(gland, *adaptor, at, entry)
                                       : gland_in_wall(gland, at, entry);
  ThreadFit out;
  out.check.name = fit::CheckName::thread;
  if (at.hole == Hole::threaded) {
    check_tapped(out, f, joint, standards);
  } else {
    check_clearance(out, f, entry);
  }
  if (adaptor != nullptr) {
    add_gland_in_adaptor(out, gland_in_adaptor(gland, *adaptor, at, entry, standards), joint,
                         standards);
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

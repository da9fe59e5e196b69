#include "cutback/entry/joint_check.hpp"

#include <fmt/format.h>

#include <cmath>

#include "cutback/area/ip.hpp"
#include "cutback/compare.hpp"
#include "cutback/entry/geometry.hpp"
#include "cutback/entry/hardware.hpp"
#include "cutback/number.hpp"

namespace cutback::entry {
namespace {

// A tapped wall of this thickness needs no seal of its own up to this protection.
constexpr double k_self_sealing_wall_mm = 6.0;
constexpr area::IpCode k_self_sealing_ip{.solids = 5, .water = 4};
constexpr area::IpCode k_open{.solids = 0, .water = 0};
constexpr const char* k_washer_source = "a washer seals the hole: common practice, no source";
constexpr double k_mm_per_inch = 25.4;

/// The result for one joint. Of several, the worst counts.
struct JointPart {
  Verdict verdict = Verdict::fits;
  std::string says;
  std::string source;
  std::vector<fit::Lack> lacks = {};
};

void add(fit::Check& check, const JointPart& finding) {
  check.verdict = worst(check.verdict, finding.verdict);
  check.lacks.insert(check.lacks.end(), finding.lacks.begin(), finding.lacks.end());
  check.says += (check.says.empty() ? "" : "; ") + finding.says;
  if (finding.source.empty() || check.source.find(finding.source) != std::string::npos) return;
  check.source += (check.source.empty() ? "" : "; ") + finding.source;
}

/// What is asked, in words: "IP66 for the place, IP54 for type e".
std::string asked_words(const JointAsked& asked) {
  std::string text;
  for (const area::IngressDemand& one : asked.ingress) {
    if (!one.rungs.empty()) text += (text.empty() ? "" : ", ") + one.needed;
  }
  if (asked.restricted_breathing) {
    text += (text.empty() ? "" : ", ") + std::string("restricted breathing");
  }
  return text;
}

/// How far a joint without a seal serves what is asked for: it has no protection, or where it
/// closes by itself that of a thick tapped wall.
Verdict served_unsealed(const JointAsked& asked, bool closes_itself,
                        const tables::Standards& standards) {
  // An enclosure with restricted breathing needs the washer: from memory, and so stricter only.
  if (asked.restricted_breathing) return Verdict::no_fit;
  const area::IpCode own = closes_itself ? k_self_sealing_ip : k_open;
  const auto rules = area::water_rules(standards);
  Verdict verdict = Verdict::fits;
  for (const area::IngressDemand& one : asked.ingress) {
    if (one.rungs.empty()) continue;
    Verdict best = Verdict::no_fit;
    for (const area::IngressDemand::Rung& rung : one.rungs) {
      const Verdict serves = area::serves(rung.code, {&own, 1}, rules).verdict;
      best = std::max(best, worst(serves, rung.verdict));
    }
    verdict = worst(verdict, best);
  }
  return verdict;
}

/// The wall's hole: closed by a washer, by its own thread, or not at all.
JointPart find_wall(const Hardware& at, const Thread& thread, const JointAsked& asked,
                    const tables::Standards& standards) {
  const bool tapped = at.hole == Hole::threaded;
  const bool taper = thread.kind == ThreadKind::npt && tapped;
  JointPart out{.verdict = Verdict::fits, .says = {}, .source = "IEC 60079-14 (secondary)"};
  if (at.washer_mm && *at.washer_mm > 0.0 && !taper) {
    out.says =
        at.washers() > 1
            ? fmt::format("a sealing washer of {} mm on each side of the tag closes the hole",
                          plain(*at.washer_mm))
            : fmt::format("a sealing washer of {} mm closes the hole", plain(*at.washer_mm));
    out.source = k_washer_source;
    return out;
  }
  const bool thick = tapped && at.wall_mm && at_least(*at.wall_mm, k_self_sealing_wall_mm);
  const std::string without = taper          ? "no washer seals a taper thread"
                              : at.washer_mm ? "there is no sealing washer"
                                             : "no sealing washer is stated, so none is counted";
  const std::string has = thick    ? "a tapped wall of 6 mm or more serves IP54"
                          : tapped ? "a tapped wall under 6 mm has no protection by itself"
                                   : "a clearance hole has no protection by itself";
  out.says = without + ": " + has;
  const std::string words = asked_words(asked);
  const Verdict served = served_unsealed(asked, thick, standards);
  if (served == Verdict::fits) {
    if (words.empty()) out.says += ", and none is asked for";
    return out;
  }
  const bool could_be = !at.washer_mm || taper || (tapped && !at.wall_mm);
  out.verdict = could_be ? Verdict::not_known : served;
  out.says +=
      ", and " + words + (words.find(',') == std::string::npos ? " is" : " are") + " asked for";
  out.says += taper           ? ": its maker says what seals it"
              : !at.washer_mm ? ": state the washer (washer_mm)"
                              : ": a sealing washer is needed";
  if (tapped && !at.wall_mm) out.says += "; the thickness of the wall is not given";
  if (out.verdict == Verdict::not_known && !taper && !at.washer_mm) {
    out.lacks = {{"sealing washer (0: none)", "washer_mm", fit::Lack::Where::elsewhere}};
  } else if (out.verdict == Verdict::not_known && taper) {
    out.lacks = {{"what seals a taper thread (its maker)", "", fit::Lack::Where::elsewhere}};
  }
  return out;
}

/// The largest clearance hole that is still covered; nothing where no figure is known.
std::optional<double> widest_hole_mm(const Thread& thread, double outside_mm,
                                     const tables::Standards& standards) {
  if (thread.kind != ThreadKind::npt) return outside_mm + k_clearance_mm;
  const tables::Table& table = standards.table("clearance_holes_inch");
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    if (std::abs(table.number(i, "size_in") - thread.size) < 1e-9) {
      return table.number(i, "max_in") * k_mm_per_inch;
    }
  }
  return std::nullopt;
}

JointPart find_hole(double hole_mm, const Thread& thread, const tables::Standards& standards) {
  const ThreadDiameter outside = male_outside(thread, standards);
  const auto widest_mm = widest_hole_mm(thread, outside.mm, standards);
  JointPart out{.verdict = Verdict::fits,
                .says = fmt::format("the hole is {} mm wide, the thread {} is {} mm",
                                    plain(hole_mm), to_text(thread), plain(outside.mm, 2)),
                .source = thread.kind == ThreadKind::npt
                              ? standards.table("clearance_holes_inch").source()
                              : "half a millimetre over the thread: common practice, no source"};
  const fit::Lack covers{"whether washer and locknut cover the hole", "",
                         fit::Lack::Where::elsewhere};
  if (!at_least(hole_mm, outside.mm)) {
    out.verdict = outside.from_memory ? Verdict::not_known : Verdict::no_fit;
    if (outside.from_memory) out.lacks = {covers};
    out.says += ": the thread does not go through";
  } else if (!widest_mm) {
    out.verdict = Verdict::not_known;
    out.says += ": no figure says how wide a hole washer and locknut cover; measure them";
    out.lacks = {covers};
  } else if (!at_most(hole_mm, *widest_mm)) {
    out.verdict = Verdict::not_known;
    out.says +=
        fmt::format(": over {} mm washer and locknut may not cover it all round; measure them",
                    plain(*widest_mm, 2));
    out.lacks = {covers};
  }
  return out;
}

/// The gland's own joint in an adaptor, of which the tapped depth is not known.
JointPart find_in_adaptor(const gland::Gland& gland, const JointAsked& asked,
                          const tables::Standards& standards) {
  JointPart out{.verdict = Verdict::fits, .says = {}, .source = k_washer_source};
  const bool taper = gland.entry_thread.kind == ThreadKind::npt;
  if (gland.washer_mm && *gland.washer_mm > 0.0 && !taper) {
    out.says = "the gland's own washer seals it in the adaptor";
  } else if (served_unsealed(asked, false, standards) == Verdict::fits) {
    out.says = "nothing seals the gland in the adaptor, and no protection is asked for";
  } else {
    out.verdict = Verdict::not_known;
    out.says = "what seals the gland in the adaptor for " + asked_words(asked) +
               " is not known (washer_mm of the gland)";
    out.lacks = {{"washer of the gland", "washer_mm", fit::Lack::Where::elsewhere}};
  }
  return out;
}

}  // namespace

fit::Check check_joint(const gland::Gland& gland, const Entry& entry, const Adaptor* adaptor,
                       const JointAsked& asked, const tables::Standards& standards) {
  const Hardware at = hardware_of(gland, entry, adaptor != nullptr);
  fit::Check check{.name = fit::CheckName::joint, .verdict = Verdict::fits};
  if (!at.hole) {
    check.verdict = Verdict::not_known;
    check.says = "not given: the kind of hole (threaded or clearance)";
    check.source = "nothing to compare";
    check.lacks = {{"kind of hole, threaded or clearance", "hole", fit::Lack::Where::at_the_end}};
    return check;
  }
  const Thread& thread = adaptor != nullptr ? wall_side(*adaptor, gland) : gland.entry_thread;
  add(check, find_wall(at, thread, asked, standards));
  if (adaptor != nullptr) add(check, find_in_adaptor(gland, asked, standards));
  if (at.hole == Hole::clearance && entry.hole_dia_mm) {
    const JointPart hole = find_hole(*entry.hole_dia_mm, thread, standards);
    check.value = entry.hole_dia_mm;
    check.low = male_outside(thread, standards).mm;
    check.high = widest_hole_mm(thread, *check.low, standards);
    check.margin_mm = *entry.hole_dia_mm - *check.low;
    add(check, hole);
  }
  return check;
}

}  // namespace cutback::entry

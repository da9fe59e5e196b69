#include "print/mark_words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <string_view>

#include "cutback/entry/hardware.hpp"
#include "cutback/number.hpp"
#include "cutback/print/words.hpp"

namespace cutback::print {
namespace {

using sheet::Sheet;
using strip::Axis;

constexpr std::string_view k_behind = "behind mark 1";
constexpr std::string_view k_in_front = "in front of mark 1";
constexpr std::string_view k_beyond = "beyond thread and locknut, gland offered up";

/// What must be measured for the marks, in the order of their sums.
struct OpenLengths {
  bool reach = false;
  bool strip = false;
  bool wall = false;
};

bool has_strip(const strip::Core& core) { return core.strip_mm || core.spare; }

/// The longest way, where every core has one that is a length.
std::optional<double> longest_reach_mm(const strip::Tails& tails) {
  std::optional<double> longest;
  for (const strip::Core& core : tails.cores) {
    if (!core.reach_mm) return std::nullopt;
    longest = std::max(longest.value_or(0.0), *core.reach_mm + core.strip_mm.value_or(0.0));
  }
  return longest;
}

OpenLengths open_lengths(const Sheet& sheet) {
  const strip::Tails& tails = sheet.job->tails;
  OpenLengths open;
  open.wall = !sheet.job->entry.wall_mm;
  open.reach = tails.cores.empty() || (open.wall && !longest_reach_mm(tails));
  open.strip = tails.cores.empty()
                   ? !tails.strip_mm
                   : !std::all_of(tails.cores.begin(), tails.cores.end(), has_strip);
  return open;
}

/// Where the longest core ends, from the shoulder: a length, and what must be added to it.
struct Tip {
  std::string before;  ///< empty: all is known
  std::optional<double> length_mm;
};

Tip tip_of(const Sheet& sheet) {
  const job::Job& job = *sheet.job;
  const Axis& axis = sheet.plan->axis;
  const OpenLengths open = open_lengths(sheet);
  Tip tip;
  if (open.reach) tip.before += "reach + ";
  if (open.strip) tip.before += "strip + ";
  if (open.wall) tip.before += "wall + ";
  if (axis.tip_mm) {
    tip.length_mm = axis.tip_mm;
    return tip;
  }
  const bool adaptor = sheet.fit->adaptor.has_value();
  const entry::Hardware at = entry::hardware_of(*sheet.fit->gland, job.entry, adaptor);
  std::optional<double> inside = axis.inside_face_mm;
  if (!inside && !at.wall_mm && at.outside_mm() && (!adaptor || job.entry.adaptor_mm)) {
    inside = *at.outside_mm() + (adaptor ? *job.entry.adaptor_mm : 0.0);
  }
  if (!inside) return tip;
  double length = *inside + job.tails.slack_mm;
  if (!open.reach) length += *longest_reach_mm(job.tails);
  if (open.reach && !open.strip) length += job.tails.strip_mm.value_or(0.0);
  tip.length_mm = round_up(length, 1.0);
  return tip;
}

/// A place along the axis, from the cable's end. The first of the marks is a whole number where it
/// is a sum, so that nobody adds up halves: the tails come out longer by it, never shorter.
void put_place(MarkWords& mark, const Tip& tip, const std::optional<double>& axis_mm,
               bool first = false) {
  if (!axis_mm || !tip.length_mm) {
    mark.after = "print again when the wall is known";
    return;
  }
  const double exact = *tip.length_mm - *axis_mm;
  const double figure = first && !tip.before.empty() ? round_up(exact, 1.0) : exact;
  mark.before = tip.before;
  mark.figure = plain(std::abs(figure), 1);
  // "reach + strip - 16"
  if (figure < 0.0 && mark.before.ends_with("+ ")) {
    mark.before.replace(mark.before.size() - 2, 1, "-");
  }
  mark.blank = !tip.before.empty();
  mark.after = mark.blank ? "=" : "from the end";
}

std::string saw_words(const strip::Depths& depths) {
  if (!depths.saw_mm) return "by eye, half through each wire";
  std::string text = "saw " + fixed(*depths.saw_mm, 1);
  if (depths.saw_limit_mm && depths.saw_limit_mm != depths.saw_mm) {
    return text + ", never " + fixed(*depths.saw_limit_mm, 1);
  }
  return text + " at most";
}

/// Of a braid or a tape, which lies under the sheath: how deep the sheath is scored, and what then.
std::string shears_words(const strip::Depths& depths) {
  return "sheath " + (depths.sheath_mm ? fixed(*depths.sheath_mm, 1) : std::string("by eye")) +
         ", shears";
}

std::string score_words(const std::optional<double>& depth_mm) {
  return depth_mm ? "score " + fixed(*depth_mm, 1) : "by eye, lightly";
}

MarkWords sheath_mark(const strip::CutPlan& plan, const Tip& tip) {
  MarkWords sheath{.number = '2', .layer = "sheath"};
  sheath.depth = score_words(plan.depths.sheath_mm);
  if (!plan.marks.exposed_min_mm) {
    sheath.after = std::string(k_behind) + ", by the gland's leaflet";
    sheath.blank = true;
    return sheath;
  }
  sheath.figure = plain(*plan.marks.exposed_min_mm, 1);
  if (*plan.marks.exposed_max_mm > *plan.marks.exposed_min_mm) {
    sheath.figure += " to " + plain(*plan.marks.exposed_max_mm, 1);
  }
  sheath.after = k_behind;
  // While mark 1 is a sum nobody knows how far from the end this one is.
  if (plan.marks.sheath_cut_mm && tip.before.empty()) {
    sheath.from_end = plain(*plan.marks.sheath_cut_mm, 1);
  }
  return sheath;
}

/// How far the gland reaches into the enclosure depends on a wall that is measured at the end: what
/// is cut behind it is marked on the gland in hand.
bool is_by_the_wall(const Sheet& sheet) {
  return !sheet.plan->axis.bedding_end_mm && !sheet.job->entry.wall_mm;
}

void put_beyond(const Sheet& sheet, MarkWords& mark) {
  mark.figure = plain(sheet.fit->gland->bedding_past_mm, 1);
  mark.after = k_beyond;
}

/// From the cable's end; from the tips, which are there by then, where that is a sum.
MarkWords bedding_mark(const Sheet& sheet, const Tip& tip) {
  const Axis& axis = sheet.plan->axis;
  MarkWords bedding{.number = '3', .layer = "bedding"};
  bedding.depth = score_words(sheet.plan->depths.bedding_mm);
  const bool open = !tip.length_mm || !tip.before.empty();
  if (open && axis.bedding_end_mm && axis.armour_stop_mm) {
    bedding.figure = plain(*axis.bedding_end_mm + *axis.armour_stop_mm, 1);
    bedding.after = k_in_front;
  } else if (!axis.bedding_end_mm && sheet.fit->barrier) {
    bedding.after = "by the gland's leaflet";
    bedding.blank = true;
  } else if (is_by_the_wall(sheet)) {
    put_beyond(sheet, bedding);
  } else {
    put_place(bedding, tip, axis.bedding_end_mm);
  }
  return bedding;
}

std::vector<MarkWords> armoured_marks(const Sheet& sheet, const Tip& tip) {
  const strip::CutPlan& plan = *sheet.plan;
  const std::optional<double>& stop = plan.axis.armour_stop_mm;
  MarkWords shoulder{.number = 'S', .layer = stop ? "check" : "hold", .is_cut = false};
  MarkWords armour{.number = '1', .layer = "armour"};
  // A braid or a tape lies under the sheath, which comes off before the shears reach it.
  armour.depth = sheet.job->cable.armour == cable::ArmourKind::wire ? saw_words(plan.depths)
                                                                    : shears_words(plan.depths);
  if (stop) {
    put_place(armour, tip, -*stop, true);
    if (!tip.before.empty() || !tip.length_mm) {
      shoulder.figure = plain(*stop, 1);
      shoulder.after = k_in_front;
    } else {
      put_place(shoulder, tip, 0.0);
    }
    return {std::move(armour), sheath_mark(plan, tip), bedding_mark(sheet, tip),
            std::move(shoulder)};
  }
  put_place(shoulder, tip, 0.0);
  shoulder.depth = "shoulder, no cut";
  armour.after = "where the clamp ends, gland held at S";
  return {std::move(shoulder), std::move(armour), sheath_mark(plan, tip), bedding_mark(sheet, tip)};
}

/// What may be written into a blank, behind its words.
std::string accepted(const Sheet& sheet, std::string_view key) {
  for (const sheet::Accepted& each : sheet.accepts) {
    if (each.key == key) return " (" + each.words + ")";
  }
  return {};
}

/// What has no figure in a sum and no gate of its own.
bool is_other(const fit::Lack& lack) {
  constexpr std::array<std::string_view, 6> k_elsewhere{"sheath_od_mm", "bedding_mm", "armour_mm",
                                                        "reach_mm",     "strip_mm",   "wall_mm"};
  return std::find(k_elsewhere.begin(), k_elsewhere.end(), lack.key) == k_elsewhere.end();
}

}  // namespace

std::string MarkWords::brief() const {
  if (figure.empty()) return blank ? "by the leaflet" : std::string();
  if (after == k_behind) return figure + " behind 1";
  if (after == k_in_front) return figure + " in front of 1";
  if (after == k_beyond) return "by the gland";
  return before + figure;
}

std::vector<MarkWords> mark_words(const Sheet& sheet) {
  const Tip tip = tip_of(sheet);
  if (sheet.job->cable.armour != cable::ArmourKind::none) return armoured_marks(sheet, tip);
  MarkWords cut{.number = '1', .layer = "sheath"};
  if (is_by_the_wall(sheet)) {
    put_beyond(sheet, cut);
  } else {
    put_place(cut, tip, sheet.plan->axis.bedding_end_mm, true);
  }
  cut.depth = score_words(sheet.plan->depths.sheath_mm);
  MarkWords shoulder{.number = 'S', .layer = "check", .is_cut = false};
  const std::optional<double>& sheath_mm = sheet.plan->axis.bedding_end_mm;
  if (cut.blank && sheath_mm) {
    shoulder.figure = plain(std::abs(*sheath_mm), 1);
    shoulder.after = *sheath_mm < 0.0 ? "in front of the cut" : "behind the cut";
  } else {
    put_place(shoulder, tip, 0.0);
  }
  return {std::move(cut), std::move(shoulder)};
}

std::string MarkWords::check() const {
  if (is_cut || layer != "check" || figure.empty()) return {};
  const bool measured = after == "from the end";
  return std::string("shoulder ") + (measured ? "at " : "") + figure + " mm " + after +
         ", gland offered up: no cut";
}

std::vector<OpenBlank> open_blanks(const Sheet& sheet) {
  const OpenLengths open = open_lengths(sheet);
  std::vector<OpenBlank> blanks;
  if (open.reach) {
    blanks.push_back({"MEASURE THE ROUTE", "inside face to the furthest terminal", "reach", "mm"});
  }
  if (open.strip) {
    blanks.push_back({"STRIP LENGTH", "bare core in the deepest terminal", "strip", "mm"});
  }
  if (open.wall)
    blanks.push_back(
        {"MEASURE THE WALL", "where the gland sits" + accepted(sheet, "wall_mm"), "wall", "mm"});
  for (const fit::Lack& lack : sheet.lacks) {
    if (!is_other(lack)) continue;
    // What would do is not always worked out: nobody may take any answer for a good one.
    const std::string which = accepted(sheet, lack.key);
    blanks.push_back({"LOOK AND WRITE IN",
                      lack.fact + (which.empty() ? " (ask the office whether it will do)" : which),
                      "", ""});
  }
  return blanks;
}

std::string open_tail(const Sheet& sheet) {
  const Tip tip = tip_of(sheet);
  const std::optional<double>& bedding_mm = sheet.plan->axis.bedding_end_mm;
  if (!sheet.plan->tails.empty() || !tip.length_mm || !bedding_mm) return {};
  const double more = *tip.length_mm - *bedding_mm;
  std::string text = tip.before + plain(std::abs(more), 1);
  if (more < 0.0) text.replace(tip.before.size() - 2, 1, "-");
  return text;
}

std::vector<TailRow> tail_rows(const std::vector<strip::Tail>& tails) {
  const auto alike = [](const strip::Tail& a, const strip::Tail& b) {
    return a.length_mm == b.length_mm && a.less_strip_mm == b.less_strip_mm &&
           a.cut_back_mm == b.cut_back_mm && a.strip_mm == b.strip_mm;
  };
  std::vector<TailRow> rows;
  for (std::size_t i = 0; i < tails.size();) {
    std::size_t last = i;
    while (last + 1 < tails.size() && alike(tails[i], tails[last + 1])) ++last;
    rows.push_back(
        {last == i ? tails[i].core : tails[i].core + " to " + tails[last].core, &tails[i]});
    i = last + 1;
  }
  return rows;
}

std::string depth_spread(const Sheet& sheet) {
  const strip::Depths& depths = sheet.plan->depths;
  if (!depths.spread_mm || !(depths.sheath_mm || depths.saw_mm)) return {};
  return "+/- " + fixed(round_up(*depths.spread_mm, 0.1), 1);
}

}  // namespace cutback::print

#include "print/pages/mark_words.hpp"

#include <algorithm>
#include <cmath>

#include "cutback/entry/hardware.hpp"
#include "cutback/number.hpp"

namespace cutback::print {
namespace {

using sheet::Sheet;
using strip::Axis;

/// Where the longest core ends, from the shoulder: a length, and what must be added to it.
struct Tip {
  std::string before;  ///< empty: all is known
  std::optional<double> length_mm;
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

Tip tip_of(const Sheet& sheet, const std::optional<double>& strip_mm) {
  const job::Job& job = *sheet.job;
  const Axis& axis = sheet.plan->axis;
  const OpenLengths open = open_lengths(sheet, strip_mm);
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
  if (open.reach && !open.strip) length += strip_mm.value_or(0.0);
  tip.length_mm = round_up(length, 1.0);
  return tip;
}

/// What a figure is good for.
std::string from_end(double figure_mm) {
  const bool whole = std::abs(figure_mm - std::round(figure_mm)) < 0.05;
  return whole ? "from the end" : "from the end, to 0.5 mm";
}

/// A place along the axis, from the cable's end.
void put_place(MarkWords& mark, const Tip& tip, const std::optional<double>& axis_mm) {
  mark.axis_mm = axis_mm;
  if (!axis_mm || !tip.length_mm) {
    mark.after = "no figure yet: print again when the wall is known";
    return;
  }
  const double figure = *tip.length_mm - *axis_mm;
  mark.before = tip.before;
  mark.figure = plain(std::abs(figure), 1);
  // "reach + strip - 16"
  if (figure < 0.0 && mark.before.ends_with("+ ")) {
    mark.before.replace(mark.before.size() - 2, 1, "\u2212");
  }
  mark.blank = !tip.before.empty();
  mark.after = mark.blank ? "=" : from_end(figure);
}

std::string saw_words(const strip::Depths& depths) {
  if (!depths.saw_mm) return "saw by eye, half through the wires";
  std::string text = "saw " + fixed(*depths.saw_mm, 1);
  if (depths.saw_limit_mm && depths.saw_limit_mm != depths.saw_mm) {
    return text + ", never " + fixed(*depths.saw_limit_mm, 1);
  }
  return text + " at most";
}

std::string score_words(const std::optional<double>& depth_mm) {
  return depth_mm ? "score " + fixed(*depth_mm, 1) : "by eye, lightly";
}

std::vector<MarkWords> armoured_marks(const Sheet& sheet, const Tip& tip) {
  const strip::CutPlan& plan = *sheet.plan;
  const Axis& axis = plan.axis;
  const bool held = !axis.armour_stop_mm;
  std::vector<MarkWords> list;
  MarkWords shoulder{.number = 'S', .layer = held ? "hold" : "check", .is_cut = false};
  put_place(shoulder, tip, 0.0);
  if (held) list.push_back(shoulder);

  MarkWords armour{.number = '1', .layer = "armour"};
  if (held) {
    armour.after = "where the clamp ends, with the gland's shoulder held at S";
  } else {
    put_place(armour, tip, -*axis.armour_stop_mm);
  }
  armour.depth = sheet.job->cable.armour == cable::ArmourKind::wire ? saw_words(plan.depths)
                                                                    : "shears, no saw";
  list.push_back(std::move(armour));

  MarkWords sheath{.number = '2', .layer = "sheath"};
  if (plan.marks.exposed_min_mm) {
    sheath.figure = plain(*plan.marks.exposed_min_mm, 1);
    if (*plan.marks.exposed_max_mm > *plan.marks.exposed_min_mm) {
      sheath.figure += " to " + plain(*plan.marks.exposed_max_mm, 1);
    }
    sheath.after = "behind the tips";
    if (!held) sheath.axis_mm = -*axis.armour_stop_mm - *plan.marks.exposed_min_mm;
  } else {
    sheath.after = "behind the tips, as the gland's leaflet says";
    sheath.blank = true;
  }
  sheath.depth = score_words(plan.depths.sheath_mm);
  list.push_back(std::move(sheath));

  MarkWords bedding{.number = '3', .layer = "bedding"};
  put_place(bedding, tip, axis.bedding_end_mm);
  if (axis.bedding_end_mm && axis.armour_stop_mm && !tip.length_mm) {
    bedding.figure = plain(*axis.bedding_end_mm + *axis.armour_stop_mm, 1);
    bedding.after = "in front of the tips";
  }
  if (!axis.bedding_end_mm && sheet.fit->barrier) {
    bedding.after = "as the gland's leaflet says";
    bedding.blank = true;
  }
  bedding.depth = score_words(plan.depths.bedding_mm);
  list.push_back(std::move(bedding));
  if (!held) list.push_back(std::move(shoulder));
  return list;
}

}  // namespace

std::string MarkWords::brief() const {
  if (figure.empty()) return blank ? "by the leaflet" : std::string();
  if (after == "behind the tips") return figure + " behind 1";
  if (after == "in front of the tips") return figure + " in front of 1";
  return before + figure;
}

OpenLengths open_lengths(const Sheet& sheet, const std::optional<double>& strip_mm) {
  const strip::Tails& tails = sheet.job->tails;
  OpenLengths open;
  open.wall = !sheet.job->entry.wall_mm;
  open.reach = tails.cores.empty() || (open.wall && !longest_reach_mm(tails));
  open.strip = tails.cores.empty()
                   ? !strip_mm
                   : !std::all_of(tails.cores.begin(), tails.cores.end(), has_strip);
  return open;
}

std::vector<MarkWords> mark_words(const Sheet& sheet, const std::optional<double>& strip_mm) {
  const Tip tip = tip_of(sheet, strip_mm);
  if (sheet.job->cable.armour != cable::ArmourKind::none) return armoured_marks(sheet, tip);
  MarkWords cut{.number = '1', .layer = "sheath"};
  put_place(cut, tip, sheet.plan->axis.bedding_end_mm);
  cut.depth = score_words(sheet.plan->depths.sheath_mm);
  MarkWords shoulder{.number = 'S', .layer = "check", .is_cut = false};
  put_place(shoulder, tip, 0.0);
  return {std::move(cut), std::move(shoulder)};
}

std::string depth_spread(const Sheet& sheet) {
  const strip::Depths& depths = sheet.plan->depths;
  if (!depths.spread_mm || !(depths.sheath_mm || depths.saw_mm)) return {};
  return "\u00b1 " + fixed(round_up(*depths.spread_mm, 0.1), 1);
}

}  // namespace cutback::print

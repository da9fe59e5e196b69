#include "cutback/strip/cut_plan.hpp"

#include <fmt/format.h>
#include <algorithm>
#include <cmath>
#include <limits>

#include "cutback/compare.hpp"
#include "cutback/entry/hardware.hpp"
#include "cutback/error.hpp"
#include "cutback/number.hpp"

namespace cutback::strip {
namespace {

using cable::ArmourKind;

constexpr double k_whole_mm = 1.0;

/// Where the core list and messages point to.
InputError tails_error(const std::string& what, const std::string& where, const std::string& given,
                       const std::string& hint) {
  return InputError(Fault{.code = ErrorCode::contradiction,
                          .what = what,
                          .where = where,
                          .given = given,
                          .allowed = {},
                          .hint = hint});
}

std::optional<double> sum(const std::optional<double>& a, const std::optional<double>& b) {
  if (!a || !b) return std::nullopt;
  return *a + *b;
}

std::optional<double> larger(const std::optional<double>& a, const std::optional<double>& b) {
  if (!a || !b) return std::nullopt;
  return std::max(*a, *b);
}

/// How far from the shoulder the gland's or the adaptor's thread and all that stands on it reach.
std::optional<double> thread_end_mm(const job::Job& job, const gland::Gland& gland,
                                    const entry::Hardware& at) {
  const auto parts_mm = sum(at.inside_face_mm(), at.inside_mm());
  if (!at.hole && !at.through_adaptor) {
    // A thread that stands out of any locknut ends at the same place in either kind of hole.
    const auto most_mm = sum(at.inside_face_mm(), at.locknut_mm);
    const auto end_mm = larger(gland.entry_length_mm, most_mm);
    return end_mm == gland.entry_length_mm ? end_mm : std::nullopt;
  }
  if (!at.through_adaptor) return larger(gland.entry_length_mm, parts_mm);
  return larger(gland.entry_length_mm, sum(sum(job.entry.adaptor_mm, at.gland_washer_mm),
                                           larger(job.entry.adaptor_thread_mm, parts_mm)));
}

/// What the axis lacks, in the order in which it is measured.
std::string lacking(const job::Job& job, const gland::Gland& gland, const entry::Hardware& at,
                    bool barrier) {
  std::string names;
  const auto add = [&](const std::string& name) { names += (names.empty() ? "" : ", ") + name; };
  for (const fit::Lack& lack : at.missing()) add(lack.fact);
  if (at.through_adaptor && !job.entry.adaptor_mm) {
    add("the length of the adaptor between its washer and the gland's (--adaptor-length)");
  }
  if (barrier) return names;
  if (at.through_adaptor && !job.entry.adaptor_thread_mm) {
    add("the length of the adaptor's own thread (--adaptor-thread)");
  }
  if (!gland.entry_length_mm) add("the length of the gland's entry thread");
  return names;
}

/// Inside face and end of the bedding, and what they lack.
void put_entry(const job::Job& job, const gland::Gland& gland, const Termination& how, Axis& axis,
               CutPlan& plan) {
  std::vector<std::string>& missing = plan.missing;
  const entry::Hardware at = entry::hardware_of(gland, job.entry, how.adaptor);
  axis.inside_face_mm = at.inside_face_mm();
  if (how.adaptor) {
    axis.inside_face_mm = sum(axis.inside_face_mm, sum(job.entry.adaptor_mm, at.gland_washer_mm));
  }
  if (how.barrier) {
    axis.bedding_end_mm = gland.bedding_end_mm;
  } else {
    axis.bedding_end_mm = sum(thread_end_mm(job, gland, at), gland.bedding_past_mm);
  }
  if (!axis.inside_face_mm || (!axis.bedding_end_mm && !how.barrier)) {
    missing.push_back("not given: " + lacking(job, gland, at, how.barrier) +
                      (axis.inside_face_mm ? ": no mark for the bedding cut"
                                           : ": no mark has a figure from the cable's end") +
                      "; give it and print again");
  }
  if (how.barrier && !gland.bedding_end_mm) {
    missing.push_back(
        "bedding_end_mm of the gland is not stated: no mark for the bedding cut; "
        "take it from the gland's instructions");
    plan.lacks.push_back({"bedding_end_mm of the gland", "", fit::Lack::Where::elsewhere});
  }
}

Axis axis_of(const job::Job& job, const gland::Gland& gland, const Termination& how,
             CutPlan& plan) {
  std::vector<std::string>& missing = plan.missing;
  Axis axis;
  put_entry(job, gland, how, axis, plan);
  if (job.cable.armour == ArmourKind::none) return axis;
  axis.armour_stop_mm = job.armour_stop_mm ? job.armour_stop_mm : gland.armour_stop_mm;
  axis.exposed_mm = gland.exposed_armour_mm;
  axis.exposed_plus_mm = gland.exposed_plus_mm;
  if (!axis.armour_stop_mm) {
    missing.push_back(
        "the armour stop of the gland is not stated: hold the gland with its shoulder "
        "at the shoulder mark, mark the armour where the clamp ends, and measure the "
        "exposed armour from there; or measure the stop and give --armour-stop");
  }
  if (!axis.exposed_mm) {
    missing.push_back(
        "exposed_armour_mm of the gland is not stated: take it from the gland's "
        "instructions");
  }
  return axis;
}

struct Route {
  double length_mm;
  std::string says;
};

/// |x| + |y| + |z| less 0.4292 r for each bend, one bend fewer than there are legs. A bend for
/// which a leg is too short saves nothing: the core is then rather too long than too short.
Route route_by_legs(const Core& core, const std::optional<double>& radius_mm,
                    std::vector<std::string>& missing) {
  double sum = 0.0;
  double shortest = std::numeric_limits<double>::infinity();
  int legs = 0;
  std::string says;
  for (const auto& leg : {core.x_mm, core.y_mm, core.z_mm}) {
    if (!leg || *leg == 0.0) continue;
    ++legs;
    shortest = std::min(shortest, std::abs(*leg));
    sum += std::abs(*leg);
    says += (says.empty() ? "" : " + ") + plain(std::abs(*leg));
  }
  const int bends = std::max(0, legs - 1);
  const bool too_tight = bends > 0 && radius_mm && !at_least(shortest, *radius_mm);
  if (too_tight) {
    missing.push_back("core " + core.name + ": a leg of " + plain(shortest) +
                      " mm is shorter than the bend radius of " + plain(*radius_mm) +
                      " mm, so the bend cannot be made there and nothing is taken off for it");
  }
  const double saved = too_tight ? 0.0 : bends * k_bend_saving * radius_mm.value_or(0.0);
  if (saved > 0.0) says += fmt::format(" - {} x 0.4292 x {}", bends, plain(*radius_mm));
  return {sum - saved, says + " = " + plain(sum - saved, 1)};
}

std::optional<Route> own_route(const Core& core, const std::optional<double>& radius_mm,
                               std::vector<std::string>& missing) {
  if (core.reach_mm) return Route{*core.reach_mm, plain(*core.reach_mm)};
  if (core.x_mm || core.y_mm || core.z_mm) return route_by_legs(core, radius_mm, missing);
  return std::nullopt;
}

bool lacks_strip(const Tails& tails) {
  return std::any_of(tails.cores.begin(), tails.cores.end(),
                     [](const Core& core) { return !core.strip_mm && !core.spare; });
}

std::vector<Tail> tails_of(const Tails& tails, const Axis& axis, CutPlan& plan) {
  std::vector<std::string>& missing = plan.missing;
  std::vector<std::optional<Route>> routes;
  double furthest = -1.0;
  for (const Core& core : tails.cores) {
    routes.push_back(own_route(core, tails.bend_radius_mm, missing));
    if (routes.back()) furthest = std::max(furthest, routes.back()->length_mm);
  }
  std::vector<Tail> result;
  if (furthest < 0.0) return result;
  for (std::size_t i = 0; i < tails.cores.size(); ++i) {
    const Core& core = tails.cores[i];
    if (!routes[i] && !core.spare) {
      missing.push_back("core " + core.name +
                        " has no route: it is drawn as a spare that reaches the furthest terminal");
      plan.lacks.push_back({"route of core " + core.name, "reach_mm", fit::Lack::Where::elsewhere});
    }
    const Route route =
        routes[i].value_or(Route{furthest, "as the furthest, " + plain(furthest, 1)});
    const double tip = round_up(
        *axis.inside_face_mm + route.length_mm + core.strip_mm.value_or(0.0) + tails.slack_mm,
        k_whole_mm);
    result.push_back(
        {.core = core.name, .tip_mm = tip, .strip_mm = core.strip_mm, .route = route.says});
  }
  if (lacks_strip(tails)) {
    // A page has one blank for the strip length of all.
    const bool some = std::any_of(tails.cores.begin(), tails.cores.end(),
                                  [](const Core& core) { return core.strip_mm.has_value(); });
    plan.lacks.push_back({some ? "strip length of every core" : "strip length", "strip_mm",
                          some ? fit::Lack::Where::elsewhere : fit::Lack::Where::at_the_end});
    missing.push_back(
        "strip_mm is not given for every core: nothing is added for the terminal there");
  }
  return result;
}

void finish_tails(const std::vector<Core>& cores, std::vector<Tail>& tails, Axis& axis) {
  if (tails.empty()) return;
  axis.tip_mm = std::max_element(tails.begin(), tails.end(), [](const Tail& a, const Tail& b) {
                  return a.tip_mm < b.tip_mm;
                })->tip_mm;
  for (std::size_t i = 0; i < tails.size(); ++i) {
    Tail& tail = tails[i];
    tail.cut_back_mm = *axis.tip_mm - tail.tip_mm;
    if (!axis.bedding_end_mm) continue;
    const double length_mm = tail.tip_mm - *axis.bedding_end_mm;
    (tail.strip_mm || cores[i].spare ? tail.length_mm : tail.less_strip_mm) = length_mm;
    if (at_most(length_mm, tail.strip_mm.value_or(0.0))) {
      throw tails_error("the tail is not longer than its strip length", "core " + tail.core,
                        "tail " + plain(length_mm) + " mm beyond the bedding, strip " +
                            plain(tail.strip_mm.value_or(0.0)) + " mm",
                        "give a longer route or more slack");
    }
  }
}

Marks marks_of(const Axis& axis) {
  Marks marks;
  marks.shoulder_mm = axis.tip_mm;
  if (axis.tip_mm && axis.bedding_end_mm)
    marks.bedding_cut_mm = *axis.tip_mm - *axis.bedding_end_mm;
  if (axis.tip_mm && axis.armour_stop_mm) {
    marks.armour_cut_mm = *axis.tip_mm + *axis.armour_stop_mm;
    if (axis.exposed_mm) marks.sheath_cut_mm = *marks.armour_cut_mm + *axis.exposed_mm;
  }
  if (axis.exposed_mm) {
    marks.exposed_min_mm = *axis.exposed_mm;
    marks.exposed_max_mm = *axis.exposed_mm + axis.exposed_plus_mm;
  }
  return marks;
}

Marks unarmoured_marks_of(const Axis& axis) {
  Marks marks;
  marks.shoulder_mm = axis.tip_mm;
  if (axis.tip_mm && axis.bedding_end_mm) marks.sheath_cut_mm = *axis.tip_mm - *axis.bedding_end_mm;
  return marks;
}

}  // namespace

CutPlan plan_cuts(const job::Job& job, const gland::Gland& gland, const Termination& how) {
  CutPlan plan;
  plan.axis = axis_of(job, gland, how, plan);
  const Axis& axis = plan.axis;
  if (axis.bedding_end_mm && axis.armour_stop_mm &&
      at_most(*axis.bedding_end_mm, -*axis.armour_stop_mm)) {
    throw tails_error("the bedding would end behind the armour tips", "gland " + gland.part,
                      "bedding ends at " + plain(*axis.bedding_end_mm) + " mm, armour tips at " +
                          plain(-*axis.armour_stop_mm) + " mm from the shoulder",
                      "check bedding_end_mm and armour_stop_mm of the gland");
  }
  if (job.tails.cores.empty()) {
    plan.lacks.push_back({"route", "reach_mm", fit::Lack::Where::at_the_end});
    plan.missing.push_back(
        "no route to the terminals is given (reach_mm): no mark has a figure from the cable's "
        "end; "
        "give --reach, or tails in the job file");
  } else if (axis.inside_face_mm) {
    plan.tails = tails_of(job.tails, axis, plan);
    finish_tails(job.tails.cores, plan.tails, plan.axis);
  }
  // Without a strip length nobody knows where the end of the longest core is.
  Axis known = axis;
  if (lacks_strip(job.tails)) known.tip_mm.reset();
  plan.marks = job.cable.armour == ArmourKind::none ? unarmoured_marks_of(known) : marks_of(known);
  plan.depths = depths_of(job.cable, {.sheath_mm = oversheath_thickness_mm(job),
                                      .bedding_mm = how.bedding_thickness_mm});
  return plan;
}

std::optional<double> oversheath_thickness_mm(const job::Job& job) {
  if (!job.construction) return std::nullopt;
  return job.construction->layers.oversheath_mm;
}

std::optional<double> bedding_thickness_mm(const job::Job& job) {
  if (!job.construction || job.construction->layers.bedding_mm <= 0.0) return std::nullopt;
  return job.construction->layers.bedding_mm;
}

}  // namespace cutback::strip

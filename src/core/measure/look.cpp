#include "core/measure/look.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "cutback/compare.hpp"
#include "cutback/number.hpp"

namespace cutback::detail {

namespace {
constexpr double k_tape_step_mm = 0.5;
/// Round cables are seldom less round than this (common practice, no source): a word, no verdict.
constexpr double k_look_ratio = 0.05;
}  // namespace

std::string tape_note(double diameter_mm) {
  if (at_most(diameter_mm, measure::k_tape_above_mm)) return {};
  return "; above 25 mm IEC 60811-203:2012 4.2 takes it from the circumference, by tape, to 0.5 mm";
}

double step_for(double step_mm, double diameter_mm) {
  return at_most(diameter_mm, measure::k_tape_above_mm) ? step_mm
                                                        : std::max(step_mm, k_tape_step_mm);
}

void add_uncrossed(std::span<const PlaceFigures> places, std::optional<double> ovality_mm,
                   std::vector<Term>& terms, std::vector<measure::Cap>& caps) {
  const bool single = std::any_of(places.begin(), places.end(),
                                  [](const PlaceFigures& place) { return place.readings == 1; });
  if (!single) return;
  if (!ovality_mm) {
    caps.push_back(
        {"one reading does not show how oval the cable is: take a second reading at "
         "right angles",
         "once more, at right angles"});
    return;
  }
  const double standard = oval_standard(*ovality_mm);
  terms.push_back({standard * standard, std::numeric_limits<double>::infinity()});
}

void look_at_ovality(std::span<const PlaceFigures> places, double limit_ratio,
                     measure::Section section, const std::string& label,
                     std::vector<measure::Cap>& caps, std::vector<std::string>& warnings) {
  bool over = false;
  for (std::size_t i = 0; i < places.size(); ++i) {
    const PlaceFigures& place = places[i];
    if (at_most(place.ovality_mm, k_look_ratio * place.mean_mm)) continue;
    std::string warning = label + "place " + std::to_string(i + 1) + ": the readings differ by " +
                          plain(place.ovality_mm) + " mm, " +
                          fixed(100.0 * place.ovality_mm / place.mean_mm, 1) + " % of their mean; ";
    if (at_most(place.ovality_mm, limit_ratio * place.mean_mm)) {
      warning += "crushed there, or a typing error? Read again";
    } else {
      over = true;
      warning += "the limit is " + plain(100.0 * limit_ratio, 1) + " %";
    }
    warnings.push_back(std::move(warning));
  }
  if (!over) return;
  caps.push_back({section == measure::Section::oval ? "not round: ask the seal maker"
                                                    : "not round: measure the wire again",
                  "again, it is not round"});
}

std::string listed(std::span<const double> readings_mm, std::string_view unit) {
  constexpr std::size_t k_shown = 5;
  std::string names;
  for (const double reading : readings_mm.first(std::min(readings_mm.size(), k_shown))) {
    names += (names.empty() ? "" : ", ") + plain(reading);
  }
  names += unit;
  if (readings_mm.size() <= k_shown) return names;
  return names + " and " + std::to_string(readings_mm.size() - k_shown) + " more";
}

void look_at_steps(std::span<const measure::Place> places, double step_mm, const std::string& label,
                   std::vector<std::string>& warnings) {
  if (!(step_mm > 0.0)) return;
  std::vector<double> between;
  for (const measure::Place& place : places) {
    for (const double reading : place.readings_mm) {
      const double off = std::abs(reading - std::round(reading / step_mm) * step_mm);
      if (off > k_epsilon_mm) between.push_back(reading);
    }
  }
  if (between.empty()) return;
  warnings.push_back(label + listed(between, "") + ": no multiple of the caliper's step of " +
                     plain(step_mm, 4) + " mm; a typing error, or the step is another");
}

}  // namespace cutback::detail

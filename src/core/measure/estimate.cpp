#include "cutback/measure/estimate.hpp"

#include <algorithm>
#include <cmath>

#include "core/measure/budget.hpp"
#include "core/measure/look.hpp"
#include "cutback/error.hpp"
#include "cutback/number.hpp"

namespace cutback::measure {
namespace {

void check(const MeasureInput& in) {
  std::vector<Fault> faults;
  detail::need_caliper(faults, in.caliper);
  detail::need_readings(faults, in.places, in.caliper.zero_mm, "readings");
  detail::need_ratios(faults, in.level_ratio, in.ovality_limit_ratio);
  detail::need_length(faults, in.declared_ovality_mm, "declared ovality");
  if (!faults.empty()) throw InputError(std::move(faults));
}

std::string source_of(const MeasureInput& in, double mean_mm, std::size_t readings) {
  const std::size_t places = in.places.size();
  std::string text =
      "mean of " + std::to_string(readings) + (readings == 1 ? " reading" : " readings");
  text += places == 1 ? " at the place where the gland will sit"
                      : " at " + std::to_string(places) + " places, spread for a new place";
  text += " (JCGM 100:2008 ";
  text += places == 1 ? "4.3.7, F.2.2.1)" : "4.2, 4.3.7, F.2.2.1, G.4.1)";
  return in.section == Section::oval ? text + detail::tape_note(mean_mm) : text;
}

Estimate rectangle(double value_mm, double half_width_mm, Evidence evidence, std::string source) {
  std::vector<Fault> faults;
  const auto check_number = [&](double value, bool good, const char* what, const char* allowed) {
    if (std::isfinite(value) && good) return;
    faults.push_back({.code = ErrorCode::out_of_range,
                      .what = what,
                      .where = std::string(to_string(evidence)) + " figure",
                      .given = plain(value, 6),
                      .allowed = allowed,
                      .hint = {}});
  };
  check_number(value_mm, value_mm > 0.0 && value_mm <= k_largest_diameter_mm,
               "not a diameter of a cable", "above 0 mm, at most 300 mm");
  check_number(half_width_mm, half_width_mm >= 0.0, "an allowance is given without its sign",
               "0 mm or more");
  if (!faults.empty()) throw InputError(std::move(faults));
  Estimate out;
  out.value_mm = value_mm;
  out.standard_mm = detail::rectangular_standard(half_width_mm);
  out.expanded_mm = half_width_mm;
  out.evidence = evidence;
  out.spread = Spread::rectangular;
  out.source = std::move(source);
  return out;
}

}  // namespace

Estimate measure_here(const MeasureInput& in, std::span<const CaliperLimit> limits) {
  check(in);
  const std::vector<detail::PlaceFigures> figures =
      detail::figures_of(in.places, in.caliper.zero_mm);
  Caliper caliper = in.caliper;
  // The permissible error goes by the instrument's own step.
  caliper.mpe_mm = detail::caliper_error_mm(caliper, limits, detail::largest_reading(in.places));
  const double mean_mm = detail::mean_of(figures);
  if (in.section == Section::oval) caliper.step_mm = detail::step_for(caliper.step_mm, mean_mm);
  std::vector<detail::Term> terms{
      detail::caliper_term(caliper, limits, detail::largest_reading(in.places))};
  if (figures.size() > 1) {
    terms.push_back(detail::new_place_term(detail::scatter_of({&figures, 1}), figures.size()));
  }
  std::vector<Cap> caps;
  if (in.section == Section::oval) {
    detail::add_uncrossed(figures, detail::known_ovality(figures, in.declared_ovality_mm), terms,
                          caps);
  }
  Estimate out = detail::make_estimate(mean_mm, detail::combine(terms, in.level_ratio), in.places,
                                       in.caliper.zero_mm);
  out.caps = std::move(caps);
  detail::look_at_ovality(figures, in.ovality_limit_ratio, in.section, "", out.caps, out.warnings);
  detail::look_at_steps(in.places, in.caliper.step_mm, "", out.warnings);
  out.source = source_of(in, out.value_mm, out.readings_mm.size());
  return out;
}

Estimate from_datasheet(double nominal_mm, double half_width_mm) {
  return rectangle(nominal_mm, half_width_mm, Evidence::datasheet,
                   "datasheet +-" + plain(half_width_mm) +
                       " mm, every value in between alike (JCGM 100:2008 4.3.7)");
}

Estimate from_model(double value_mm, double half_width_mm, std::string source) {
  Estimate out = rectangle(value_mm, half_width_mm, Evidence::estimated, std::move(source));
  out.caps.push_back({"an estimate alone passes no gland", "measured"});
  return out;
}

std::string with_spread(const Estimate& estimate) {
  const int decimals = std::clamp(round_uncertainty(estimate.expanded_mm).decimals, 1, 2);
  const double step = decimals == 2 ? 0.01 : 0.1;
  return fixed(estimate.value_mm, decimals) + " +/- " +
         fixed(round_up(estimate.expanded_mm, step), decimals) + " mm";
}

}  // namespace cutback::measure

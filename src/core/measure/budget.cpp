#include "core/measure/budget.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/measure/distributions.hpp"
#include "cutback/number.hpp"

namespace cutback::detail {
namespace {

constexpr double k_infinite = std::numeric_limits<double>::infinity();

Fault out_of_range(std::string what, std::string where, double given, std::string allowed) {
  return {.code = ErrorCode::out_of_range,
          .what = std::move(what),
          .where = std::move(where),
          .given = plain(given, 6),
          .allowed = std::move(allowed),
          .hint = {}};
}

/// Whole degrees of freedom. The 1e-9 keeps an exact 4 from becoming 3 through rounding noise;
/// beyond a million the t and the normal distribution are the same.
double whole_degrees(double effective) {
  if (effective > 1e6) return k_infinite;
  return std::max(1.0, std::floor(effective + 1e-9));
}

}  // namespace

double rectangular_standard(double half_width) { return half_width / std::sqrt(3.0); }

double step_standard(double step) { return step / std::sqrt(12.0); }

double oval_standard(double ovality) { return ovality / std::sqrt(8.0); }

Combined combine(std::span<const Term> terms, double level_ratio) {
  double variance = 0.0;
  double denominator = 0.0;
  for (const Term& term : terms) {
    variance += term.variance;
    if (term.variance > 0.0 && std::isfinite(term.degrees_of_freedom)) {
      denominator += term.variance * term.variance / term.degrees_of_freedom;
    }
  }
  Combined out{};
  out.standard = std::sqrt(variance);
  out.effective_degrees = denominator > 0.0 ? variance * variance / denominator : k_infinite;
  out.degrees_used = whole_degrees(out.effective_degrees);
  out.k = student_quantile((1.0 + level_ratio) / 2.0, out.degrees_used);
  out.expanded = out.k * out.standard;
  return out;
}

std::vector<PlaceFigures> figures_of(std::span<const measure::Place> places, double zero_mm) {
  std::vector<PlaceFigures> figures;
  figures.reserve(places.size());
  for (const measure::Place& place : places) {
    // Sorted, so that the order of the readings does not even touch the last bit of the mean.
    std::vector<double> sorted = place.readings_mm;
    std::sort(sorted.begin(), sorted.end());
    double sum = 0.0;
    for (const double reading : sorted) sum += reading - zero_mm;
    figures.push_back(
        {sum / static_cast<double>(sorted.size()), sorted.back() - sorted.front(), sorted.size()});
  }
  return figures;
}

double mean_of(std::span<const PlaceFigures> places) {
  double sum = 0.0;
  for (const PlaceFigures& place : places) sum += place.mean_mm;
  return sum / static_cast<double>(places.size());
}

Scatter scatter_of(std::span<const std::vector<PlaceFigures>> cables) {
  double squares = 0.0;
  Scatter scatter;
  for (const std::vector<PlaceFigures>& places : cables) {
    const double mean = mean_of(places);
    for (const PlaceFigures& place : places)
      squares += (place.mean_mm - mean) * (place.mean_mm - mean);
    scatter.degrees_of_freedom += static_cast<double>(places.size()) - 1.0;
  }
  if (scatter.degrees_of_freedom > 0.0) {
    const double standard = std::sqrt(squares / scatter.degrees_of_freedom);
    scatter.standard_mm = standard < k_noise_mm ? 0.0 : standard;
  }
  return scatter;
}

Term new_place_term(const Scatter& scatter, std::size_t places) {
  return {scatter.standard_mm * scatter.standard_mm * (1.0 + 1.0 / static_cast<double>(places)),
          scatter.degrees_of_freedom};
}

double largest_reading(std::span<const measure::Place> places) {
  double largest = 0.0;
  for (const measure::Place& place : places) {
    for (const double reading : place.readings_mm) largest = std::max(largest, reading);
  }
  return largest;
}

double caliper_error_mm(const measure::Caliper& caliper,
                        std::span<const measure::CaliperLimit> limits, double length_mm) {
  return caliper.mpe_mm ? *caliper.mpe_mm
                        : measure::permissible_error_mm(limits, caliper.step_mm, length_mm);
}

Term caliper_term(const measure::Caliper& caliper, std::span<const measure::CaliperLimit> limits,
                  double length_mm) {
  const double step = step_standard(caliper.step_mm);
  const double error = rectangular_standard(caliper_error_mm(caliper, limits, length_mm));
  const double extra = caliper.extra_standard_mm;
  return {step * step + error * error + extra * extra, k_infinite};
}

std::optional<double> known_ovality(std::span<const PlaceFigures> places,
                                    std::optional<double> declared_mm) {
  std::optional<double> largest = declared_mm;
  for (const PlaceFigures& place : places) {
    if (place.readings > 1) largest = std::max(largest.value_or(0.0), place.ovality_mm);
  }
  return largest;
}

void need_length(std::vector<Fault>& faults, std::optional<double> length_mm, const char* where) {
  if (!length_mm || (std::isfinite(*length_mm) && *length_mm >= 0.0)) return;
  faults.push_back(out_of_range("a length that cannot be", where, *length_mm, "0 mm or more"));
}

void need_caliper(std::vector<Fault>& faults, const measure::Caliper& caliper) {
  need_length(faults, caliper.step_mm, "step of the caliper");
  need_length(faults, caliper.mpe_mm, "permissible error of the caliper");
  need_length(faults, caliper.extra_standard_mm, "further standard uncertainty");
  if (!std::isfinite(caliper.zero_mm)) {
    faults.push_back(out_of_range("not a number", "zero of the caliper", caliper.zero_mm, "mm"));
  }
}

void need_readings(std::vector<Fault>& faults, std::span<const measure::Place> places,
                   double zero_mm, const std::string& where) {
  const auto missing = [&faults](const std::string& there) {
    faults.push_back({.code = ErrorCode::missing,
                      .what = "there is no reading",
                      .where = there,
                      .given = {},
                      .allowed = {},
                      .hint = {}});
  };
  if (places.empty()) missing(where);
  for (std::size_t p = 0; p < places.size(); ++p) {
    const std::string place = where + ", place " + std::to_string(p + 1);
    if (places[p].readings_mm.empty()) missing(place);
    for (const double reading : places[p].readings_mm) {
      const double diameter = reading - zero_mm;
      if (diameter > 0.0 && diameter <= measure::k_largest_diameter_mm) continue;
      faults.push_back(out_of_range("a reading less the zero is no diameter of a cable", place,
                                    diameter, "above 0 mm, at most 300 mm"));
    }
  }
}

void need_ratios(std::vector<Fault>& faults, double level_ratio, double ovality_limit_ratio) {
  if (!(level_ratio >= 0.5 && level_ratio <= 0.9999)) {
    faults.push_back(
        out_of_range("not a level for an interval", "confidence", level_ratio, "0.5 to 0.9999"));
  }
  if (!(ovality_limit_ratio >= 0.0 && ovality_limit_ratio <= 1.0)) {
    faults.push_back(out_of_range("not a share of a diameter", "limit on ovality",
                                  ovality_limit_ratio, "0 to 1"));
  }
}

measure::Estimate make_estimate(double value_mm, const Combined& combined,
                                std::span<const measure::Place> places, double zero_mm) {
  measure::Estimate out;
  out.value_mm = value_mm;
  out.standard_mm = combined.standard;
  out.expanded_mm = combined.expanded;
  out.k = combined.k;
  out.degrees_of_freedom = combined.degrees_used;
  for (const measure::Place& place : places) {
    for (const double reading : place.readings_mm) out.readings_mm.push_back(reading - zero_mm);
  }
  return out;
}

}  // namespace cutback::detail

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
  constexpr double k_noise_mm = 1e-9;
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

Term caliper_term(const measure::Caliper& caliper, std::span<const measure::CaliperLimit> limits,
                  double length_mm) {
  const double error = caliper.mpe_mm
                           ? *caliper.mpe_mm
                           : measure::permissible_error_mm(limits, caliper.step_mm, length_mm);
  const double step = step_standard(caliper.step_mm);
  const double instrument = rectangular_standard(error);
  const double extra = caliper.extra_standard_mm;
  return {step * step + instrument * instrument + extra * extra, k_infinite};
}

std::optional<double> known_ovality(std::span<const PlaceFigures> places,
                                    std::optional<double> declared_mm) {
  std::optional<double> largest = declared_mm;
  for (const PlaceFigures& place : places) {
    if (place.readings > 1) largest = std::max(largest.value_or(0.0), place.ovality_mm);
  }
  return largest;
}

std::vector<Fault> faults_of(const measure::Caliper& caliper) {
  std::vector<Fault> faults;
  const auto not_negative = [&faults](double value, const char* what, const char* where) {
    if (std::isfinite(value) && value >= 0.0) return;
    faults.push_back(out_of_range(what, where, value, "0 mm or more"));
  };
  not_negative(caliper.step_mm, "a step cannot be negative", "step of the caliper");
  not_negative(caliper.mpe_mm.value_or(0.0), "a permissible error is given without its sign",
               "permissible error of the caliper");
  not_negative(caliper.extra_standard_mm, "a standard uncertainty cannot be negative",
               "further standard uncertainty");
  if (!std::isfinite(caliper.zero_mm)) {
    faults.push_back(out_of_range("not a number", "zero of the caliper", caliper.zero_mm, "mm"));
  }
  return faults;
}

std::vector<Fault> faults_of(std::span<const measure::Place> places, double zero_mm,
                             const std::string& where) {
  const Fault missing{.code = ErrorCode::missing,
                      .what = "there is no reading",
                      .where = where,
                      .given = {},
                      .allowed = {},
                      .hint = "measure at least one place"};
  if (places.empty()) return {missing};
  std::vector<Fault> faults;
  for (std::size_t p = 0; p < places.size(); ++p) {
    const std::string place = where + ", place " + std::to_string(p + 1);
    if (places[p].readings_mm.empty()) {
      faults.push_back(missing);
      faults.back().where = place;
    }
    for (const double reading : places[p].readings_mm) {
      const double diameter = reading - zero_mm;
      if (diameter > 0.0 && diameter <= measure::k_largest_diameter_mm) continue;
      faults.push_back(out_of_range("a reading less the zero is no diameter of a cable", place,
                                    diameter, "above 0 mm, at most 300 mm"));
    }
  }
  return faults;
}

std::vector<Fault> level_faults(double level_ratio) {
  if (level_ratio >= 0.5 && level_ratio <= 0.9999) return {};
  return {out_of_range("no level for an interval", "confidence", level_ratio, "0.5 to 0.9999")};
}

}  // namespace cutback::detail

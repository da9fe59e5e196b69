#pragma once
// The uncertainty of a diameter, step by step: what readings say of a place, what places say of a
// cable, what the caliper adds, and how it is all put together.

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "cutback/error.hpp"
#include "cutback/measure/caliper.hpp"
#include "cutback/measure/estimate.hpp"
#include "cutback/measure/reading.hpp"

namespace cutback::detail {

/// A spread below this is the noise of binary fractions and counts as none.
inline constexpr double k_noise_mm = 1e-9;

/// Standard uncertainty of limits +-`half_width`, nothing else known (JCGM 100:2008 4.3.7).
[[nodiscard]] double rectangular_standard(double half_width);

/// Standard uncertainty of a display or vernier of this step (JCGM 100:2008 F.2.2.1).
[[nodiscard]] double step_standard(double step);

/// Standard uncertainty of one width of an oval taken at an unknown angle: its widths swing like a
/// sine between the extremes, amplitude half of `ovality` (JCGM 100:2008 H.1.3.4, arcsine).
[[nodiscard]] double oval_standard(double ovality);

/// One variance with its degrees of freedom; infinite when it does not come from scatter.
struct Term {
  double variance;
  double degrees_of_freedom;
};

struct Combined {
  double standard;           ///< u
  double effective_degrees;  ///< Welch-Satterthwaite; infinite when no scatter takes part
  double degrees_used;       ///< whole, at least 1, or infinite
  double k;                  ///< two-sided t factor for the level
  double expanded;           ///< U = k u
};

/// Independent terms added in squares; degrees of freedom and k for the level in (0, 1)
/// (JCGM 100:2008 5.1.2, G.4.1, G.6.4).
[[nodiscard]] Combined combine(std::span<const Term> terms, double level_ratio);

/// What the readings at one place say.
struct PlaceFigures {
  double mean_mm;     ///< of the readings less the zero
  double ovality_mm;  ///< largest less smallest reading
  std::size_t readings;
};

[[nodiscard]] std::vector<PlaceFigures> figures_of(std::span<const measure::Place> places,
                                                   double zero_mm);

/// Mean of the place means.
[[nodiscard]] double mean_of(std::span<const PlaceFigures> places);

/// The spread of places about the mean of their own cable, pooled over cables.
struct Scatter {
  double standard_mm = 0.0;         ///< s_w
  double degrees_of_freedom = 0.0;  ///< nu_w; 0 when no cable has two places
};

/// s_w^2 = sum of (place mean - cable mean)^2 / nu_w (JCGM 100:2008 4.2.4); none when it is
/// below k_noise_mm.
[[nodiscard]] Scatter scatter_of(std::span<const std::vector<PlaceFigures>> cables);

/// Spread of a new place about the mean of `places` measured ones: s_w^2 (1 + 1/n).
[[nodiscard]] Term new_place_term(const Scatter& scatter, std::size_t places);

/// The largest reading as shown: the length at which a permissible error is looked up.
[[nodiscard]] double largest_reading(std::span<const measure::Place> places);

/// The permissible error that the caliper states, else the published one [mm].
/// @param length_mm  at which it is looked up
[[nodiscard]] double caliper_error_mm(const measure::Caliper& caliper,
                                      std::span<const measure::CaliperLimit> limits,
                                      double length_mm);

/// What the caliper adds; common to all readings, so it is never divided by their number.
[[nodiscard]] Term caliper_term(const measure::Caliper& caliper,
                                std::span<const measure::CaliperLimit> limits, double length_mm);

/// Largest difference of two readings at one place, or `declared` where that is larger; nothing
/// when neither is known.
[[nodiscard]] std::optional<double> known_ovality(std::span<const PlaceFigures> places,
                                                  std::optional<double> declared_mm);

/// Adds a fault for a length that is there and is not 0 or more.
void need_length(std::vector<Fault>& faults, std::optional<double> length_mm, const char* where);

/// Adds what is wrong with a caliper, with readings taken with it, and with the level of an
/// interval and the limit on ovality.
void need_caliper(std::vector<Fault>& faults, const measure::Caliper& caliper);
void need_readings(std::vector<Fault>& faults, std::span<const measure::Place> places,
                   double zero_mm, const std::string& where);
void need_ratios(std::vector<Fault>& faults, double level_ratio, double ovality_limit_ratio);

/// The parts of an estimate that both questions, this place and a whole drum, fill alike.
[[nodiscard]] measure::Estimate make_estimate(double value_mm, const Combined& combined,
                                              std::span<const measure::Place> places,
                                              double zero_mm);

}  // namespace cutback::detail

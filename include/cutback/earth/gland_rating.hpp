#pragma once
// Does the gland's declared earth-fault rating cover the fault?

#include <optional>
#include <string>

#include "cutback/fit/check.hpp"
#include "cutback/gland/gland.hpp"
#include "cutback/verdict.hpp"

namespace cutback::earth {

/// A verdict with the sentence that explains it.
struct Finding {
  Verdict verdict = Verdict::not_known;
  std::string says;
  std::string source;
};

/// A fault to earth; an absent member is not known. Current in kA r.m.s., time in s, both > 0.
struct EarthFault {
  std::optional<double> current_ka;
  std::optional<double> time_s;
  /// Let-through energy I^2 t of the protective device [A2 s], for faults under 0.1 s.
  std::optional<double> let_through_a2s;
};

struct GlandRating {
  Finding finding;
  std::optional<double> limit_ka;  ///< for the fault's time
};

/// Compares a fault with a rating declared for 1 s. From 1 s to 5 s the limit is rating/sqrt(t):
/// the adiabatic equation, the stricter way to read the rating. Under 1 s only the rating itself
/// decides `fits`: between it and rating/sqrt(t) the gland's papers decide (`not-known`), for that
/// glands follow the equation there is from memory. Over 5 s nothing earns `fits`.
/// @param rating_ka  absent: not stated
[[nodiscard]] GlandRating judge_gland_rating(std::optional<double> rating_ka,
                                             const EarthFault& fault);

/// The check `earth` of a gland. @return nothing when there is nothing to check: no fault current
/// is given, or the gland is for unarmoured cable
[[nodiscard]] std::optional<fit::Check> check_earth(const gland::Gland& gland,
                                                    const EarthFault& fault);

}  // namespace cutback::earth

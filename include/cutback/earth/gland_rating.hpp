#pragma once
// Does the gland's declared earth-fault rating cover the fault?

#include <optional>

#include "cutback/earth/fault.hpp"

namespace cutback::earth {

struct GlandRating {
  Finding finding;
  std::optional<double> limit_ka;  ///< for the fault's time
};

/// Compares a fault with a rating declared for 1 s. From 1 s to 5 s the limit is rating/sqrt(t):
/// the adiabatic equation, the stricter way to read the rating. Under 1 s only the rating itself
/// decides `fits`: between it and rating/sqrt(t) the gland's papers decide (`not-known`), for that
/// glands follow the equation there is from memory. Over 5 s nothing earns `fits`. A fact of the
/// fault that is missing is named.
/// @param rating_ka  absent: not stated
[[nodiscard]] GlandRating judge_gland_rating(std::optional<double> rating_ka,
                                             const EarthFault& fault);

}  // namespace cutback::earth

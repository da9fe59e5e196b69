#pragma once
// The ambient of a place that is asked about [degC]: as given, else what is taken.

#include <algorithm>

#include "cutback/area/area.hpp"

namespace cutback::area::detail {

[[nodiscard]] inline double ambient_min_degc(const Area& area) {
  const double taken =
      std::min(k_ambient_min_degc, area.ambient_max_degc.value_or(k_ambient_min_degc));
  return area.ambient_min_degc.value_or(taken);
}

[[nodiscard]] inline double ambient_max_degc(const Area& area) {
  const double taken =
      std::max(k_ambient_max_degc, area.ambient_min_degc.value_or(k_ambient_max_degc));
  return area.ambient_max_degc.value_or(taken);
}

}  // namespace cutback::area::detail

#include "core/fit/order.hpp"

#include <cmath>

namespace cutback::fit::detail {

double preference(const gland::Gland& gland, Prefer prefer) {
  constexpr double k_endless = std::numeric_limits<double>::infinity();
  constexpr double k_last = std::numeric_limits<double>::max();
  // Of equals those of the preferred list come first, by less than any price differs.
  const auto placed = [&](double value) {
    return gland.preferred ? value : std::nextafter(value, k_endless);
  };
  switch (prefer) {
    case Prefer::price:
      return placed(gland.price.value_or(k_last));
    case Prefer::stock:
      return placed(gland.stock ? -static_cast<double>(*gland.stock) : k_last);
    case Prefer::margin:
      return 0.0;  // the margin itself comes next in any case
  }
  return 0.0;
}

}  // namespace cutback::fit::detail

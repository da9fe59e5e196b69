#include "core/fit/order.hpp"

namespace cutback::fit::detail {

double preference(const gland::Gland& gland, Prefer prefer) {
  constexpr double k_last = std::numeric_limits<double>::infinity();
  switch (prefer) {
    case Prefer::price:
      return gland.price.value_or(k_last);
    case Prefer::stock:
      return gland.stock ? -static_cast<double>(*gland.stock) : k_last;
    case Prefer::margin:
      return 0.0;  // the margin itself comes next in any case
  }
  return 0.0;
}

}  // namespace cutback::fit::detail

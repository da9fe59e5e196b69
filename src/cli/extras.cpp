#include "cli/extras.hpp"

namespace cutback::cli {

const Extras& all_extras() {
  static constexpr Extras k_extras{};
  return k_extras;
}

}  // namespace cutback::cli

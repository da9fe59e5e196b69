#pragma once
// Where the cores go inside the enclosure.

#include <optional>
#include <string>
#include <vector>

namespace cutback::strip {

/// One core. Its route is a length, or a terminal's coordinates from the entry on the inside face,
/// or that of the furthest terminal (a spare). Lengths in mm.
struct Core {
  std::string name;
  std::optional<double> reach_mm;
  std::optional<double> x_mm;
  std::optional<double> y_mm;
  std::optional<double> z_mm;
  std::optional<double> strip_mm;
  bool spare = false;
};

struct Tails {
  std::vector<Core> cores;  ///< empty when no route was given
  double slack_mm = 0.0;
  std::optional<double> strip_mm;  ///< of every core that has none of its own
  std::optional<double> bend_radius_mm;
};

}  // namespace cutback::strip

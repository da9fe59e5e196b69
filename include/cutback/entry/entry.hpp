#pragma once
// The hole that the gland goes into.

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/area/marking.hpp"
#include "cutback/entry/thread.hpp"

namespace cutback::entry {

enum class Hole { threaded, clearance };

/// In the order in which a user is told of them.
[[nodiscard]] constexpr auto all_values(Hole) {
  using enum Hole;
  return std::array{threaded, clearance};
}

[[nodiscard]] constexpr std::string_view to_string(Hole hole) {
  switch (hole) {
    case Hole::threaded:
      return "threaded";
    case Hole::clearance:
      return "clearance";
  }
  return "";
}

/// A thread adaptor that may be used: one side suits the hole, the other the gland.
struct Adaptor {
  Thread a;
  Thread b;
  std::vector<area::Protection> protection;  ///< its own marking; empty when not stated
};

/// The entry of an enclosure; an absent member is not known. Lengths in mm.
struct Entry {
  std::optional<Thread> thread;       ///< the tapped thread, or the size of a clearance hole
  bool to_suit = false;               ///< the hole will be made for the gland, a clearance hole
  std::optional<double> hole_dia_mm;  ///< of a clearance hole
  std::optional<Hole> hole;
  std::optional<double> wall_mm;      ///< thickness of the wall, or depth of the tapped hole
  std::optional<double> washer_mm;    ///< sealing washer between shoulder and wall
  std::optional<double> tag_mm;       ///< earth tag
  std::optional<double> serrated_mm;  ///< serrated washer under the locknut
  std::optional<double> locknut_mm;
  std::optional<double> chamfer_mm;
  std::optional<double> undercut_mm;
  std::optional<std::string> material;
  std::optional<double> adaptor_mm;         ///< how far the adaptor holds the gland off the wall
  std::optional<double> adaptor_thread_mm;  ///< length of its own male thread
  std::optional<double> adaptor_bore_mm;    ///< its smallest bore
  std::optional<std::string> adaptor_material;
  std::vector<Adaptor> adaptors;  ///< at hand; at most one is ever used
};

}  // namespace cutback::entry

#pragma once
// What goes on at the entry.

#include <optional>
#include <string_view>
#include <vector>

#include "cutback/entry/entry.hpp"
#include "cutback/gland/gland.hpp"

namespace cutback::entry {

/// One part at the entry.
struct EntryPart {
  std::string_view name;               ///< `locknut`; the gland and the wall are among them
  std::string_view place;              ///< `outside`; may be empty
  std::optional<double> thickness_mm;  ///< along the thread, where it has one that is known
  bool beside = false;                 ///< it goes on beside the gland and is ordered with it
};

/// The parts of hardware_of() in the order in which they go on, from the gland inwards. Sealing
/// washer outside, between shoulder and wall, unless it is stated that there is none; a tag or
/// serrated washer inside, under the locknut. In a tapped hole no locknut, a sealing washer only
/// where it is stated, and tag and serrated washer outside, before the washer that seals the wall.
/// Where the kind of hole is not known, as in a clearance hole, and nothing is `beside`.
/// @param through_adaptor  an adaptor stands in the hole, the gland in the adaptor
[[nodiscard]] std::vector<EntryPart> parts_in_order(const gland::Gland& gland, const Entry& entry,
                                                    bool through_adaptor);

}  // namespace cutback::entry

#pragma once
// The path from the armour to the earth of the enclosure.

#include <optional>
#include <string_view>

#include "cutback/cable/cable.hpp"
#include "cutback/entry/entry.hpp"
#include "cutback/fit/check.hpp"
#include "cutback/gland/gland.hpp"

namespace cutback::earth {

/// How gland or adaptor reach the earth of the enclosure.
enum class Way {
  not_known,    ///< wall or hole are not known
  tapped_wall,  ///< a tapped wall that conducts
  tag,          ///< an earth tag, wired to the earth terminal
  serrated,     ///< a serrated washer on a wall that conducts
  bare_metal,   ///< a locknut on bare metal of a wall that conducts: a hold point
  tag_missing,  ///< a wall that does not conduct, and nothing said of a tag
  none,         ///< a wall that does not conduct, and no tag
};

/// By wall, hole and tag alone. Where nothing is said of a tag or a serrated washer at a metal wall
/// the locknut is taken to stand on bare metal.
[[nodiscard]] Way way_of(const entry::Entry& entry);

/// Whether the cable is, or for all that is said may be, a single core that no steel may enclose.
/// One on d.c. is none where the number of cores is not given.
[[nodiscard]] bool may_be_single(const cable::Cable& cable);

/// The check `earth`: gland and adaptor of metal, and a way to the enclosure; and no steel round
/// the core of a single-core a.c. cable. A fact that is missing gives `not-known` and is named.
/// @param adaptor  whether one stands between gland and entry, or may
/// @return nothing for an unarmoured cable that cannot be a single core
/// @source BS 7671 521.5.1 (single cores, secondary); the path: common practice, no source
[[nodiscard]] std::optional<fit::Check> check_path(const cable::Cable& cable,
                                                   const entry::Entry& entry,
                                                   const gland::Gland& gland, bool adaptor);

}  // namespace cutback::earth

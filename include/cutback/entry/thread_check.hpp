#pragma once
// Is there enough thread?

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/entry/entry.hpp"
#include "cutback/fit/check.hpp"
#include "cutback/gland/gland.hpp"
#include "cutback/tables/standards.hpp"

namespace cutback::entry {

/// Whether the thread of the enclosure's entry is a flameproof joint, and the free volume that
/// decides its depth. No volume: not known.
struct EntryJoint {
  bool flameproof = false;
  std::optional<double> volume_cm3;
};

struct ThreadFit {
  fit::Check check;  ///< value and low: engagement (tapped) or thread length (clearance)
  std::optional<double> engaged_mm;  ///< tapped hole; a taper thread: turned in by hand
  std::optional<int> turns;          ///< full turns in engaged_mm
  std::optional<double> needed_mm;   ///< thread length of the gland that would do
  std::string hole_says;             ///< why no gland would do in this hole; empty where one could
  std::vector<std::string> notes;    ///< things to know that change no verdict
};

/// Checks the gland's thread against the hole.
/// Tapped hole: full turns and depth engaged. Flameproof, parallel: IEC 60079-1 5.3, the deeper
/// figure when the volume is not known; a chamfer that is not known counts as the deepest that the
/// standard allows, and as `not-known` where that decides. Flameproof, taper: 3.5 turns, and
/// `not-known` under the 5 that each part should have. Otherwise three turns (common practice, no
/// source), `not-known` from one turn on.
/// Clearance hole: washer, wall, tag, serrated washer, locknut and one pitch; never for a
/// flameproof entry, and `not-known` for a taper thread.
/// Washer and locknut: the entry's figure, else the gland's, else 0; no locknut in a tapped hole.
/// A missing figure gives `not-known` and is named; so does a thread that needs an adaptor.
[[nodiscard]] ThreadFit check_thread(const gland::Gland& gland, const Entry& entry,
                                     const EntryJoint& joint, const tables::Standards& standards);

/// What holds for a thread adaptor, in words, with its source.
struct Rule {
  std::string_view says;
  std::string_view source;
};
[[nodiscard]] Rule adaptor_rule();

}  // namespace cutback::entry

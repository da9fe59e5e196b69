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

/// Whether this male thread goes into the entry: the same thread in a tapped hole, the same size in
/// a clearance hole, any in one that will be made for it. False where the entry's is not known.
[[nodiscard]] bool suits(const Thread& thread, const Entry& entry);

/// Checks the thread in the hole: the gland's, or that of the adaptor in the wall and the gland's
/// in the adaptor, which must both do. The parts along it are those of hardware_of(). Tapped hole:
/// full turns and depth engaged, of the shorter of male and female thread. Flameproof, parallel:
/// IEC 60079-1 5.3, one pitch of lead-in taken off the male thread, the deeper figure when the
/// volume is not known; a chamfer that is not known counts as the deepest that the standard allows,
/// and as `not-known` where that decides. The male thread itself: under 8 full turns or 8 mm
/// `not-known`, under 6 turns `no-fit`. Flameproof, taper: 3.5 turns, and `not-known` under the 5
/// that each part should have. Otherwise three turns (common practice, no source), `not-known` from
/// one turn on.
/// Clearance hole: washer, wall, tag, serrated washer, locknut and one pitch; never for a
/// flameproof entry; with a caution for a taper thread.
/// In an adaptor: its female thread is as deep as its body at most; a flameproof one is
/// `not-known`, for how deep it is stands in its certificate. A missing figure gives `not-known`
/// and is named; so does a thread that needs an adaptor.
/// @param adaptor  that stands between gland and entry; null where none does
[[nodiscard]] ThreadFit check_thread(const gland::Gland& gland, const Entry& entry,
                                     const Adaptor* adaptor, const EntryJoint& joint,
                                     const tables::Standards& standards);

/// What holds for a thread adaptor, in words, with its source.
struct Rule {
  std::string_view says;
  std::string_view source;
};
[[nodiscard]] Rule adaptor_rule();

}  // namespace cutback::entry

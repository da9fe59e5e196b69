#pragma once
// Does the gland go into the entry, and the cable through it?

#include <optional>
#include <string_view>

#include "cutback/cable/cable.hpp"
#include "cutback/entry/entry.hpp"
#include "cutback/fit/check.hpp"
#include "cutback/gland/gland.hpp"
#include "cutback/measure/judge.hpp"
#include "cutback/tables/standards.hpp"

namespace cutback::entry {

/// The adaptor at hand that joins this gland's thread to the entry; null where none is needed, or
/// none is there. At most one is ever used.
[[nodiscard]] const Adaptor* adaptor_between(const Entry& entry, const Thread& gland);

/// Whether the gland's thread suits the entry, directly or through one adaptor at hand: the same
/// thread in a tapped hole, the same size in a clearance hole, any where the hole will be made for
/// it. Without a thread of the entry: `not-known`. What must pass through is for check_passage().
[[nodiscard]] fit::Check check_entry(const gland::Gland& gland, const Entry& entry);

/// What of the cable goes through the gland's entry thread.
enum class Passer {
  bedding,  ///< the inner covering of an armoured cable
  sheath,   ///< of an unarmoured one
  cores,    ///< where the gland is made off with compound round them
};

[[nodiscard]] Passer passer_of(cable::ArmourKind armour, bool barrier);

/// The widest that passes every thread on its way [mm]. No figure of it depends on the cable.
struct Passage {
  measure::Range range;          ///< an upper limit
  bool adaptor_decides = false;  ///< its bore is the narrowest
  bool bore_missing = false;     ///< the adaptor's bore is not given: the limit can only refuse
  bool from_memory = false;      ///< the figures of the thread are remembered: likewise
  std::string_view source;
};

/// The root of the gland's own male thread is the widest that can be, for it has a wall; behind an
/// adaptor its smallest bore counts as well, and where that is not given, the root of its thread.
/// @param adaptor  that stands between gland and entry; null where none does
[[nodiscard]] Passage passage(const gland::Gland& gland, const Entry& entry, const Adaptor* adaptor,
                              const tables::Standards& standards);

/// The best verdict that a passage allows: `not-known` where its limit can only refuse.
[[nodiscard]] Verdict trust_in(const Passage& passage);

/// Where only the cores pass, and what encloses them, bedding or sheath, does not lie within the
/// limit as a whole: by the bundle that the construction gives, which proves nothing by itself
/// (`marginal-inside`); `not-known` without it.
/// @param core_mm  over the insulation of one core, where the construction tells it
[[nodiscard]] Verdict verdict_of_cores(const Passage& passage, const cable::Cable& cable,
                                       std::optional<double> core_mm,
                                       const tables::Standards& standards);

/// Bedding or sheath against the limit, by its interval; the cores, where only they pass, by what
/// encloses them, which settles it where it is within, else by verdict_of_cores(). A diameter that
/// is not given: `not-known`. As a check of the name `entry`.
[[nodiscard]] fit::Check check_passage(const Passage& passage, const cable::Cable& cable,
                                       bool barrier, std::optional<double> core_mm,
                                       const tables::Standards& standards);

}  // namespace cutback::entry

#pragma once
// Is the hole closed?

#include <optional>
#include <span>
#include <string>

#include "cutback/area/demand.hpp"
#include "cutback/entry/entry.hpp"
#include "cutback/fit/check.hpp"
#include "cutback/gland/gland.hpp"
#include "cutback/tables/standards.hpp"

namespace cutback::entry {

/// How much wider than a metric or PG thread a clearance hole is made at most (common practice, no
/// source).
inline constexpr double k_clearance_mm = 0.5;

/// What the joint must keep out. Borrowed.
struct JointAsked {
  /// Every protection that place and enclosure ask for: the joint serves the worst of them too.
  std::span<const area::IngressDemand> ingress;
  /// The enclosure breathes through its seals alone (nR): without a washer it does not
  /// (IEC 60079-14:2013 Table 10, from memory).
  bool restricted_breathing = false;
};

/// Whether the hole is closed for the ingress protection that is asked for.
/// A sealing washer closes a hole against whatever the gland itself withstands, but not under a
/// taper thread (from memory). Without one a tapped wall of 6 mm or more serves IP54 (IEC 60079-14,
/// secondary), and any other hole nothing. A washer that is not stated counts as none, and makes
/// the check `not-known` where that decides. Behind an adaptor there are two joints: the adaptor's
/// in the wall, with the parts of the entry, and the gland's in the adaptor, with the gland's
/// washer. A clearance hole whose diameter is given must let the thread through, and be no wider
/// than washer and locknut cover: half a millimetre over a metric or PG thread (common practice, no
/// source), the printed largest hole of an inch trade size; a wider one is `not-known`.
[[nodiscard]] fit::Check check_joint(const gland::Gland& gland, const Entry& entry,
                                     const Adaptor* adaptor, const JointAsked& asked,
                                     const tables::Standards& standards);

}  // namespace cutback::entry

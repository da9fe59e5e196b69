#pragma once
// Is the hole closed?

#include <optional>
#include <span>
#include <string>

#include "cutback/entry/entry.hpp"
#include "cutback/fit/check.hpp"
#include "cutback/gland/gland.hpp"
#include "cutback/tables/standards.hpp"

namespace cutback::entry {

/// Whether the hole is closed for the ingress protection that is asked for.
/// A sealing washer closes a hole against whatever the gland itself withstands, but not under a
/// taper thread (from memory). Without one a tapped wall of 6 mm or more serves IP54 (IEC 60079-14,
/// secondary), and any other hole nothing. A washer that is not stated counts as none, and makes
/// the check `not-known` where that decides. Behind an adaptor there are two joints: the adaptor's
/// in the wall, with the parts of the entry, and the gland's in the adaptor, with the gland's
/// washer. A clearance hole whose diameter is given must let the thread through, and be no wider
/// than washer and locknut cover: half a millimetre over a metric or PG thread (common practice, no
/// source), the printed largest hole of an inch trade size; a wider one is `not-known`.
/// @param ip  the codes that are asked for, as `54` or `66`; all of them must be served
[[nodiscard]] fit::Check check_joint(const gland::Gland& gland, const Entry& entry,
                                     const Adaptor* adaptor, std::span<const area::IpCode> ip,
                                     const tables::Standards& standards);

}  // namespace cutback::entry

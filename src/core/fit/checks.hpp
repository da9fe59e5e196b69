#pragma once
// The checks that compare the cable and the thread with the gland, one function each.

#include <optional>

#include "cutback/fit/check.hpp"
#include "cutback/gland/gland.hpp"
#include "cutback/job/job.hpp"

namespace cutback::fit::detail {

/// Whether a check is to be read, or its verdict and figures alone are wanted: the words cost more
/// than the rest.
enum class Words { yes, no };

Check check_outer_seal(const cable::Cable& cable, const gland::Gland& gland, Words words);
/// Nothing where the gland has no inner seal, or is made off as a barrier round the cores.
std::optional<Check> check_inner_seal(const cable::Cable& cable, const gland::Gland& gland,
                                      bool barrier, Words words);
/// Nothing where the gland states no bore, or the cable has nothing under an armour.
std::optional<Check> check_bore(const cable::Cable& cable, const gland::Gland& gland, Words words);
Check check_armour(const cable::Cable& cable, const gland::Gland& gland, Words words);
/// Nothing for an unarmoured cable, or where OD, bedding or wire is not known.
std::optional<Check> check_build_up(const cable::Cable& cable,
                                    const std::optional<cable::Construction>& construction,
                                    Words words);

struct EntryCheck {
  Check check;
  std::optional<entry::Adaptor> adaptor;
};
/// Nothing where no entry was given and nothing else was said of the hole.
/// @param asked  the place or the hole asks for a thread, so that a missing one is not known
std::optional<EntryCheck> check_entry(const entry::Entry& entry, const gland::Gland& gland,
                                      bool asked);

}  // namespace cutback::fit::detail

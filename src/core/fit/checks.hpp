#pragma once
// The checks that compare the cable and the thread with the gland, one function each.

#include <optional>

#include "cutback/fit/check.hpp"
#include "cutback/gland/gland.hpp"
#include "cutback/job/job.hpp"

namespace cutback::fit::detail {

/// What a check comes to, without its words: they cost more than the rest, and most checks are
/// never read.
struct Finding {
  CheckName name = CheckName::outer_seal;
  Verdict verdict = Verdict::not_known;
  std::optional<double> margin_mm;
  bool counts_for_margin = false;
};

Finding find_outer_seal(const cable::Cable& cable, const gland::Gland& gland);
/// Nothing where the gland has no inner seal, or is made off as a barrier round the cores.
std::optional<Finding> find_inner_seal(const cable::Cable& cable, const gland::Gland& gland,
                                       bool barrier);
/// Nothing where the gland states no bore, or the cable has nothing under an armour.
std::optional<Finding> find_bore(const cable::Cable& cable, const gland::Gland& gland);
Finding find_armour(const cable::Cable& cable, const gland::Gland& gland);

/// The sheath that the three readings leave. Lengths in mm.
struct BuildUp {
  Verdict verdict = Verdict::fits;
  double sheath_mm = 0.0;
  double low_mm = 0.0;
  std::optional<double> high_mm;  ///< where the construction is known
  double margin_mm = 0.0;
  bool proven = false;  ///< some sheath is left whatever the spread
};
/// Nothing for an unarmoured cable, or where OD, bedding or wire is not known.
std::optional<BuildUp> find_build_up(const cable::Cable& cable,
                                     const std::optional<cable::Construction>& construction);

// The same with words.
Check check_outer_seal(const cable::Cable& cable, const gland::Gland& gland);
std::optional<Check> check_inner_seal(const cable::Cable& cable, const gland::Gland& gland,
                                      bool barrier);
std::optional<Check> check_bore(const cable::Cable& cable, const gland::Gland& gland);
Check check_armour(const cable::Cable& cable, const gland::Gland& gland);
std::optional<Check> check_build_up(const cable::Cable& cable,
                                    const std::optional<cable::Construction>& construction);

struct EntryCheck {
  Check check;
  std::optional<entry::Adaptor> adaptor;
};
/// Nothing where no entry was given and nothing else was said of the hole.
/// @param asked  the place or the hole asks for a thread, so that a missing one is not known
std::optional<EntryCheck> check_entry(const entry::Entry& entry, const gland::Gland& gland,
                                      bool asked);

}  // namespace cutback::fit::detail

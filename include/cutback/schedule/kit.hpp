#pragma once
// The smallest kit: the fewest different parts, or the cheapest set of one of each, so that every
// end of a schedule that can be served is served by one of them. Exact, by set cover.

#include <cstddef>
#include <cstdint>
#include <vector>

#include "cutback/schedule/groups.hpp"
#include "cutback/schedule/program.hpp"

namespace cutback::schedule {

/// What is least: the number of parts, and among those kits the price; or the price, and among
/// those kits the number of parts. The price of a kit is the sum of the unit prices of its parts,
/// one of each: what it costs to carry the range, not what the schedule uses up.
enum class KitBy { parts, price };

struct KitPart {
  std::size_t part = 0;    ///< place in Wanted::parts
  std::int64_t fits = 0;   ///< ends that it fits
  std::int64_t alone = 0;  ///< ends that no other part of the kit fits
};

/// What so many parts can serve at most.
struct KitStep {
  std::vector<std::size_t> parts;  ///< places in Wanted::parts, by part code
  std::int64_t ends = 0;
  bool exact = false;  ///< no other set of as many parts serves more
};

struct Kit {
  std::vector<KitPart> parts;  ///< by part code
  std::int64_t cost_units = 0;
  std::int64_t served = 0;      ///< ends that the kit serves: all that a part of the list fits
  std::int64_t not_served = 0;  ///< ends that no part fits
  /// No kit has fewer parts, or costs less [units of Wanted::decimals], as the case may be.
  std::int64_t bound = 0;
  bool proven = false;  ///< the kit reaches the bound
  /// Whether the second measure and the part codes could decide between equal kits.
  bool ties_broken = false;
  std::vector<KitStep> curve;  ///< for 1, 2, ... parts, to the first that serves all
  /// What was left for integer programming: ends in groups, and parts.
  std::size_t rows = 0;
  std::size_t columns = 0;
};

/// Repeated and dominated ends, dominated and forced parts are dealt with first, and what does not
/// hang together is solved apart. Of two parts of which one serves all that the other does at no
/// higher price only that one is looked at; among equal kits the one with the first part codes is
/// taken.
[[nodiscard]] Kit choose_kit(const Wanted& wanted, KitBy by, const ProgramSolver& solve);

}  // namespace cutback::schedule

#pragma once
// What is said of a kit in text and in JSON alike.

#include <string>
#include <vector>

#include "cutback/print/kit.hpp"

namespace cutback::print {

/// "4 parts serve 80.2 %, 9 serve all." Shares are rounded down, so that less than all never reads
/// as 100 %.
std::string buys_text(const schedule::Kit& kit);

/// Whether and how the kit is proven to be the least.
std::string proof_text(const KitReport& report);

/// How far the kit may be from the least, as a share of it.
double gap_of(const KitReport& report);

/// The share of the ends that can be served [%], rounded down to a tenth.
double share_percent(std::int64_t ends, std::int64_t of);

/// One reason why ends are not served.
struct NotServed {
  std::string group;
  std::vector<const schedule::Exception*> ends;  ///< in the schedule's order
};
/// The largest group first.
std::vector<NotServed> not_served_groups(const KitReport& report);

/// A sum, with the label of its currency.
std::string money(const KitReport& report, std::int64_t units);

/// Parts of the kit without a price.
std::size_t unpriced_in(const KitReport& report);

}  // namespace cutback::print

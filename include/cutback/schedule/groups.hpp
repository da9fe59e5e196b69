#pragma once
// The ends of a schedule in groups that the same glands fit: what stock is shared among and what a
// kit is chosen for.

#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "cutback/error.hpp"
#include "cutback/gland/gland.hpp"
#include "cutback/schedule/layout.hpp"

namespace cutback::schedule {

/// Glands by their place in the list, ascending.
using PartSet = std::vector<std::uint32_t>;

/// What sharing and choosing look at of a gland.
struct Part {
  std::string code;
  /// Its price in units of Wanted::decimals; without one, that of the dearest part of the list.
  std::int64_t cost_units = 0;
  bool priced = false;
  std::optional<std::int64_t> stock;  ///< absent: no limit
};

/// Ends that exactly these parts fit.
struct EndGroup {
  std::int64_t ends = 0;
  PartSet parts;
};

/// One end that something fits.
struct WantedEnd {
  std::size_t row = 0;  ///< a number that no other row of the schedule has, ascending
  Side side = Side::both;
  std::int64_t quantity = 1;  ///< of such ends
  std::uint32_t group = 0;    ///< its place in Wanted::groups
  std::string name;           ///< tag and end, for messages
};

/// A schedule as the solvers see it. Two groups differ in their parts.
struct Wanted {
  std::vector<Part> parts;  ///< in the order of the gland list
  int decimals = 2;         ///< of the prices
  std::vector<EndGroup> groups;
};

/// The decimals that write every price of the list exactly, two at least.
/// @throws InputError where one needs more than six
[[nodiscard]] int decimals_of(std::span<const gland::Gland> glands);

/// The glands as parts, their prices exact. @param decimals  of decimals_of(), or more
[[nodiscard]] std::vector<Part> parts_of(std::span<const gland::Gland> glands, int decimals);

/// What makes a whole row unusable: a blank tag, a quantity that is
/// none, more cells than headings.
[[nodiscard]] std::optional<Fault> fault_of_row(const Layout& layout, Cells cells);

/// Gathers ends into groups, which are numbered in the order of their first end.
class Grouper {
 public:
  /// @return the number of the group
  std::uint32_t add(const PartSet& parts, std::int64_t ends);
  void add_to(std::uint32_t group, std::int64_t ends) { groups_[group].ends += ends; }
  [[nodiscard]] const std::vector<EndGroup>& groups() const { return groups_; }

 private:
  std::map<PartSet, std::uint32_t> numbers_;
  std::vector<EndGroup> groups_;
};

}  // namespace cutback::schedule

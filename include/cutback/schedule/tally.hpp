#pragma once
// What a whole schedule comes to: the take-off, the exceptions, the totals.

#include <cstddef>
#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <unordered_map>
#include <vector>

#include "cutback/schedule/decide.hpp"
#include "cutback/schedule/defaults.hpp"

namespace cutback::schedule {

/// One end that needs a person.
struct Exception {
  std::size_t line = 0;  ///< of the schedule's file
  std::string tag;
  std::string end;
  std::string verdict;  ///< of verdict_word()
  std::string group;
  std::string nearest;  ///< part code; may be empty
  std::string reason;
  std::string change;
  std::string source;  ///< the file or sheet of the line, where it has a name of its own
};

/// How often a gland is wanted.
struct Count {
  std::uint64_t proven = 0;      ///< ends that it fits
  std::uint64_t not_proven = 0;  ///< ends that it is the best for, but marginal-inside
};

/// Counts of a part of a schedule; parts add up to the whole in any order, and the exceptions stand
/// in the order in which they were added.
struct Tally {
  std::uint64_t rows = 0;
  std::uint64_t ends = 0;
  std::uint64_t by_verdict[5] = {};  ///< indexed by Verdict; the ends below are in none of them
  std::uint64_t unusable = 0;
  std::uint64_t out_of_stock = 0;
  std::uint64_t exceptions = 0;
  std::uint64_t barrier = 0;   ///< ends made off with compound
  std::uint64_t remarked = 0;  ///< ends with a remark about their figures
  std::uint64_t wavering = 0;  ///< ends to be measured before their gland is ordered
  /// Ends by the weakest evidence among their diameters, indexed by measure::Evidence.
  std::uint64_t by_evidence[3] = {};
  DefaultCounts defaults;
  std::unordered_map<const gland::Gland*, Count> glands;
  std::unordered_map<std::shared_ptr<const Accessories>, Count> accessories;
  std::map<std::string, std::uint64_t> groups;  ///< exceptions by what they lack
  std::vector<Exception> list;                  ///< only where it is asked for

  /// @param quantity  of ends that are decided so
  void add(const Decision& decision, std::uint64_t quantity = 1);
  void add(Tally&& other);
};

/// One line of the take-off.
struct TakeoffLine {
  std::string part;
  std::string description;
  std::uint64_t ends = 0;        ///< that it fits
  std::uint64_t quantity = 0;    ///< with the spares
  std::uint64_t not_proven = 0;  ///< more, where measuring confirms it
  std::optional<std::uint64_t> stock;
  std::uint64_t to_order = 0;
  std::optional<double> unit_price;
  std::optional<double> total;  ///< of what is to be ordered
};

/// Glands by part code, then the parts that go on beside them by name and thread.
/// @param spare_percent  0 to 100; spares are rounded up to whole parts
[[nodiscard]] std::vector<TakeoffLine> takeoff(const Tally& tally,
                                               std::span<const gland::Gland> glands,
                                               double spare_percent);

/// The exceptions grouped: the largest group first, within a group in the schedule's order.
[[nodiscard]] std::vector<const Exception*> grouped(const Tally& tally);

/// What an exception of an end that cannot be used is grouped by: what is wrong with its first
/// value.
[[nodiscard]] std::string group_of(const Decision& decision);

/// An end that is not proven, as the list of exceptions holds it.
[[nodiscard]] Exception exception_of(const EndName& name, const Decision& decision);

}  // namespace cutback::schedule

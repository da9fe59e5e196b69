#pragma once
// Two revisions of a schedule against each other.

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "cutback/schedule/tally.hpp"

namespace cutback::schedule {

/// One end as it was given and decided, kept to be compared.
struct EndRecord {
  std::string tag;
  std::string end;
  std::size_t line = 0;
  std::string source;  ///< the file or sheet, where there are several
  /// What it was decided with: the key of each field, and its value in one notation, whatever the
  /// schedule's.
  std::vector<std::pair<std::string, std::string>> values;
  std::string part;     ///< the gland; empty where none is chosen
  std::string verdict;  ///< of verdict_word()
};

/// What became of an end.
struct EndChange {
  enum class Kind { added, removed, changed };
  Kind kind = Kind::changed;
  const EndRecord* before = nullptr;  ///< borrowed; null where it was added
  const EndRecord* after = nullptr;   ///< the same where it was removed
  std::string what;                   ///< `sheath_od_mm 15.2 -> 16.4; entry none -> M25`

  [[nodiscard]] bool gland_changed() const {
    return kind == Kind::changed && before->part != after->part;
  }
};

/// Ends are the same where tag and end are; of those that stand in a schedule more than once the
/// first is compared with the first. What is new or changed comes in the order of `after`, then
/// what was removed in the order of `before`.
[[nodiscard]] std::vector<EndChange> changes_between(std::span<const EndRecord> before,
                                                     std::span<const EndRecord> after);

[[nodiscard]] std::string_view to_string(EndChange::Kind kind);

/// Puts the quantities of an earlier take-off beside those of this one; parts that are not wanted
/// any more become lines without a quantity.
void compare_takeoff(Takeoff& takeoff, const Takeoff& before);

}  // namespace cutback::schedule

#pragma once
// The walk through the questions for a flameproof entry.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/area/demand.hpp"

namespace cutback::area::detail {

/// What the questions ask about; an absent member is not known.
struct EntryFacts {
  const Area& area;
  const cable::Cable& cable;
  std::optional<int> gas_zone;  ///< the stricter of the zone and the zone of the level
};

/// The end of a walk: whether a barrier is demanded, and on what that rests.
struct Walk {
  bool barrier = true;
  bool from_memory = false;  ///< the last step is known from memory only
  std::vector<Answer> path;
  std::vector<std::string> unknown;  ///< fields asked for that are not known
  std::string source;
  std::string reason;   ///< the answers that led there, in words
  std::string caution;  ///< what is held against the last answer; may be empty
};

/// Walks through a table of questions (`flameproof_entry_...`).
/// @param hopeful  answer what is not known to the laxer side: shows what a fact could change
[[nodiscard]] Walk walk_chart(const tables::Standards& standards, std::string_view table_id,
                              const EntryFacts& facts, bool hopeful);

}  // namespace cutback::area::detail

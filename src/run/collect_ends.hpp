#pragma once
// The ends of a schedule as they were given and decided, all in memory.

#include <span>
#include <vector>

#include "cutback/io/schedule_file.hpp"
#include "cutback/schedule/changes.hpp"
#include "cutback/schedule/decide.hpp"
#include "cutback/schedule/layout.hpp"

namespace cutback::run {

struct CollectedEnds {
  std::vector<schedule::EndRecord> ends;  ///< in the schedule's order
  schedule::Tally tally;                  ///< without its exceptions
};

/// Reads the tables to their ends, one after the other.
[[nodiscard]] CollectedEnds collect_ends(std::span<io::ScheduleFile* const> files,
                                         const schedule::Settings& settings, schedule::GroupBy by);

}  // namespace cutback::run

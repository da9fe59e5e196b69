#pragma once
// Reads a schedule to its end and puts its ends into groups that the same glands fit.

#include <cstddef>
#include <cstdint>
#include <set>
#include <span>
#include <vector>

#include "cutback/io/schedule_file.hpp"
#include "cutback/schedule/decide.hpp"
#include "cutback/schedule/groups.hpp"
#include "cutback/schedule/tally.hpp"

namespace cutback::run {

struct GroupedSchedule {
  std::uint64_t rows = 0;
  std::vector<schedule::EndGroup> groups;
  /// The ends of the groups in the schedule's order.
  std::vector<schedule::WantedEnd> ends;
  /// The ends that no gland fits or that cannot be used, with their list.
  schedule::Tally not_served;
  std::vector<schedule::SkippedRows> skipped;  ///< of each table
  std::set<std::string> taken;                 ///< words of cells, and what they were taken for
  schedule::DefaultCounts defaults;
};

/// What is kept besides the groups.
enum class Keep { ends, not_served };

/// On several threads; what comes out does not depend on how many.
[[nodiscard]] GroupedSchedule group_schedule(std::span<io::ScheduleFile* const> files,
                                             const schedule::Settings& settings, unsigned threads,
                                             Keep keep);

}  // namespace cutback::run

#pragma once
// Decides a schedule on several threads; what comes out does not depend on how many.

#include <cstddef>
#include <functional>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/io/schedule_file.hpp"
#include "cutback/schedule/decide.hpp"
#include "cutback/schedule/supply.hpp"
#include "cutback/schedule/tally.hpp"
#include "run/suppliers.hpp"

namespace cutback::run {

struct ScheduleRun {
  schedule::Settings settings;
  const schedule::Supplies* supplies = nullptr;       ///< where limited stock was shared out
  std::span<const schedule::OwnValue> defaults = {};  ///< Format::defaults
  Suppliers suppliers;
  schedule::GroupBy by = schedule::GroupBy::nothing;  ///< what the tally's parts are put under
  bool json = false;
  unsigned threads = 1;
  std::function<void(std::string_view)> write;  ///< the results, in the schedule's order
  /// Where it is set: the results as CSV without headings, as `write` gets them or beside JSON.
  std::function<void(std::string_view)> write_csv;
  /// Where it is set: each end that is not proven as a line of append_exception_csv, in the
  /// schedule's order.
  std::function<void(const std::string& group, std::string_view line)> write_exception;
  /// Rows done, and the part of the file where its size is known; in order, never at once.
  std::function<void(std::size_t rows, std::optional<double> part)> progress;
};

struct ScheduleResult {
  schedule::Tally tally;
  std::vector<std::string> twice;  ///< the first ends that stand in the schedule twice
  std::size_t twice_count = 0;
  std::vector<std::string> many;  ///< the first rows that stand for very many cables
  std::size_t many_count = 0;
  std::vector<schedule::SkippedRows> skipped;  ///< of each table
  /// Of each table the texts of rows that speak of a hazardous place, where they are looked for.
  struct Places {
    std::vector<std::string> first;
    std::size_t count = 0;
  };
  std::vector<Places> places;
  std::set<std::string> taken;  ///< words of cells, and what they were taken for
  bool all_compared = true;  ///< false where there were too many rows to look for tags given twice
};

/// Reads the tables to their ends, one after the other.
/// @throws what reading throws: the first error in the order of the rows
[[nodiscard]] ScheduleResult run_schedule(std::span<io::ScheduleFile* const> files,
                                          const ScheduleRun& run);

}  // namespace cutback::run

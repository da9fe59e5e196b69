#pragma once
// Results with one row per cable.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/io/csv.hpp"

namespace cutback::run {

/// Puts the two ends of a cable, which stand one behind the other in the results, into one row.
class WideResults {
 public:
  /// @param two_ends  rows of the schedule have two: their columns get from_ and to_ before them
  explicit WideResults(bool two_ends);

  /// The headings, with a line end.
  [[nodiscard]] const std::string& head() const { return head_; }
  /// The same without what names the row: what stands beside a row of the schedule.
  [[nodiscard]] const std::vector<std::string>& columns() const { return columns_; }

  /// @param csv  whole lines of append_schedule_csv, both ends of a row among them
  /// @return as many lines as there are rows
  [[nodiscard]] std::string rows(std::string_view csv);

 private:
  void begin(const io::CsvRecord& end);
  void finish(std::string& out);

  bool two_ends_;
  std::string head_;
  std::vector<std::string> columns_;
  std::vector<std::size_t> places_;  ///< in the results, of what names a row
  std::vector<std::size_t> kept_;    ///< columns of the results that are an end's
  std::vector<std::string> names_;   ///< of the row at hand: tag, end, line, source, quantity
  std::vector<std::string> cells_;   ///< of the row at hand
  std::size_t ends_ = 0;             ///< of it, that are there
};

}  // namespace cutback::run

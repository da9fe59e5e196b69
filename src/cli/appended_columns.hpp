#pragma once
// The results of a schedule as columns of its own workbook.

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/io/xlsx_append.hpp"
#include "run/open_schedule.hpp"
#include "run/wide_results.hpp"

namespace cutback::cli {

class AppendedColumns {
 public:
  /// @param schedule  of one workbook
  explicit AppendedColumns(const run::Schedule& schedule);

  /// @param csv  whole lines of append_schedule_csv
  void add(std::string_view csv);

  [[nodiscard]] std::vector<io::AddedColumns> sheets() const;

 private:
  run::WideResults wide_;
  bool two_ends_;
  std::map<std::string, io::AddedColumns, std::less<>> sheets_;
};

}  // namespace cutback::cli

#pragma once
// All rows of a table that is no schedule: CSV, or a sheet of a workbook.

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "cutback/io/gland_convert.hpp"
#include "cutback/io/workbook.hpp"

namespace cutback::run {

struct TableRows {
  std::vector<io::TableRow> rows;
  std::string row_word;            ///< `line` or `row`
  std::vector<std::string> notes;  ///< how the file is written, where that is not as usual
};

/// @param sheet          of a workbook; empty: its only one that is not hidden
/// @param open_workbook  null in a program that cannot
/// @throws InputError, FileError
[[nodiscard]] TableRows read_table(
    const std::string& path, const std::string& sheet, char decimal,
    std::unique_ptr<io::Workbook> (*open_workbook)(const std::string&, char));

}  // namespace cutback::run

#pragma once
// A workbook copied with columns added to its sheets.

#include <cstddef>
#include <map>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/io/files.hpp"

namespace cutback::io {

/// A cell that is added: a number where the text is one and is meant as one.
struct AddedCell {
  std::string text;
  bool is_number = false;
};

/// What is added to one sheet: for rows, by their numbers from 1, cells behind the last column that
/// anything stands in, or in columns of their own.
struct AddedColumns {
  std::string sheet;  ///< its name
  std::map<std::size_t, std::vector<AddedCell>> rows;
  /// Of each cell of a row, the column that it stands in, from 1: what stands there in any row
  /// goes. 0, and of a cell beyond: behind the last column.
  std::vector<std::size_t> columns{};
  std::vector<std::size_t> emptied{};  ///< columns of which nothing stays, nor comes
};

/// Copies a workbook: every part byte for byte, but the sheets that get cells; of those everything
/// stays as it stands, and only the cells, the extent of the rows and that of the sheet are new.
/// @throws InputError where a sheet is not written as this program expects it; FileError
/// @param to  gets the copy; it is put in its place by its owner
void append_to_workbook(const std::string& from, FileWriter& to,
                        std::span<const AddedColumns> sheets);

/// The same for the XML of one sheet.
/// @param where  for messages
[[nodiscard]] std::string with_columns(std::string_view xml, const AddedColumns& added,
                                       const std::string& where);

}  // namespace cutback::io

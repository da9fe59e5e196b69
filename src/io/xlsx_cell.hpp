#pragma once
// One cell of a sheet, and what it gives as text.

#include <cstddef>
#include <optional>
#include <string>

#include "io/xlsx_format.hpp"
#include "io/xlsx_strings.hpp"

namespace cutback::io {

enum class XlsxCellType { number, shared, text, formula_text, boolean, error, date };

/// @param text  of the attribute `t`, nullptr where there is none
/// @return nothing when there is no such type
[[nodiscard]] std::optional<XlsxCellType> xlsx_cell_type(const char* text);

/// The cell that is being read.
struct XlsxCell {
  std::size_t column = 0;
  XlsxCellType type = XlsxCellType::number;
  const XlsxStyle* style = nullptr;  ///< null: that of a cell without one
  bool as_text = false;              ///< a number is wanted as the sheet shows it
  bool formula = false;
  std::string value;  ///< as it stands in the sheet; its storage is used again
};

/// How numbers and days are written.
struct XlsxNotation {
  bool from_1904 = false;
  char decimal = '.';
};

/// @return false when the cell names a shared text that is not there
[[nodiscard]] bool append_xlsx_cell(std::string& out, const XlsxCell& cell,
                                    const XlsxStrings& strings, const XlsxNotation& how);

}  // namespace cutback::io

#pragma once
// The cells of a workbook (Office Open XML, ECMA-376 and ISO/IEC 29500) as text, row by row.

#include <memory>
#include <string>
#include <string_view>

#include "cutback/io/workbook.hpp"

namespace cutback::io {

/// An .xlsx workbook. What a cell of its sheets gives:
/// - text as it is, rich text without its format, without phonetic guides;
/// - a number with 15 significant digits as spreadsheets show it; with a percent format, the
///   hundredfold with a percent sign; with a date or time format, ISO 8601 such as 2026-11-25,
///   2026-11-25T13:30:00 or 13:30:00; in a column of show_as_text(), a whole number with the
///   zeros, letters and signs of its format (0012, P-101);
/// - a formula, the value that was saved with it; `#not-calculated` where there is none;
/// - `TRUE`, `FALSE`, and errors as they are shown (`#N/A`).
/// A merged cell counts in every cell that it covers (CellMark). Rows that are hidden, and cells
/// that are struck through, are marked. A row's number is that of the sheet.
/// Memory: the texts that the workbook shares between cells, and each open sheet, unpacked; of a
/// sheet over 256 MB a piece for each block.
/// @param path     of an ordinary file
/// @param decimal  mark with which numbers are given
/// @throws FileError; InputError when it is no workbook or a damaged one, is locked, or unpacks to
/// more than any schedule could. Reading a sheet throws InputError when it is empty, damaged or
/// larger than the format allows (1,048,576 rows, 16,384 columns).
[[nodiscard]] std::unique_ptr<Workbook> open_xlsx(const std::string& path, char decimal);

/// The same of bytes in memory. @param bytes  borrowed, for as long as a sheet is read
[[nodiscard]] std::unique_ptr<Workbook> open_xlsx(std::string_view bytes, std::string name,
                                                  char decimal);

}  // namespace cutback::io

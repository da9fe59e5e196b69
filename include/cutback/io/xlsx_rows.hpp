#pragma once
// The cells of a workbook (Office Open XML, ECMA-376 and ISO/IEC 29500) as text, row by row.

#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "cutback/io/files.hpp"
#include "cutback/io/rows.hpp"

namespace cutback::io {

/// One sheet of an .xlsx workbook. What a cell gives:
/// - text as it is, rich text without its format, without phonetic guides;
/// - a number with 15 significant digits as spreadsheets show it; with a percent format, the
///   hundredfold with a percent sign; with a date or time format, ISO 8601 such as 2026-11-25,
///   2026-11-25T13:30:00 or 13:30:00;
/// - a formula, the value that was saved with it; `#not-calculated` where there is none;
/// - `TRUE`, `FALSE`, and errors as they are shown (`#N/A`).
/// Merged cells: the value stands in the first one. Hidden rows and columns are read as well. A
/// row's number is that of the sheet.
/// Memory: the texts that the workbook shares between cells, and a piece of the sheet for each
/// block.
class XlsxRows final : public RowSource {
 public:
  struct Options {
    std::string sheet;   ///< its name; empty: the first that is not hidden
    char decimal = '.';  ///< decimal mark with which numbers are given
  };

  /// @param path  of an ordinary file
  /// @throws FileError; InputError as below
  XlsxRows(const std::string& path, const Options& options);
  /// @param bytes  of the whole file; borrowed: they must outlive this object
  /// @param name   of the file, for messages
  /// @throws InputError when it is no workbook or a damaged one, is locked, unpacks to more than
  /// any schedule could, or has no such sheet (the message names those that it has)
  XlsxRows(std::string_view bytes, std::string name, const Options& options);
  ~XlsxRows() override;

  /// The name of the sheet that is read.
  [[nodiscard]] const std::string& sheet() const;

  /// @throws InputError when the sheet is empty, damaged or larger than the format allows
  /// (1,048,576 rows, 16,384 columns)
  bool read(RowBlock& block) override;
  void finish(RowBlock& block) const override;
  [[nodiscard]] std::optional<double> taken() const override;
  [[nodiscard]] std::string_view row_word() const override { return "row"; }

 private:
  class Reader;
  std::unique_ptr<MappedFile> mapped_;
  std::unique_ptr<Reader> reader_;
};

}  // namespace cutback::io

#pragma once
// Numbers of cells as text, by the number format of their style.

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "io/xlsx_package.hpp"

namespace cutback::io {

enum class XlsxFormat : std::uint8_t { number, percent, date };

/// What a cell looks like, as far as it says anything.
struct XlsxStyle {
  XlsxFormat format = XlsxFormat::number;
  bool struck = false;       ///< struck through
  std::string whole_format;  ///< how it shows whole numbers, where that is more than their digits
};

/// What a number format makes of a number. @param code  such as `0.00%` or `dd/mm/yyyy hh:mm`
[[nodiscard]] XlsxFormat xlsx_format(std::string_view code);
/// The same of a built-in format, by its number.
[[nodiscard]] XlsxFormat xlsx_format(unsigned built_in);

/// What of a number format shows a whole number as more than its digits: zeros in front of it,
/// letters and signs; `0000`, `"P-"0`. Empty where the format does anything else, or nothing.
[[nodiscard]] std::string xlsx_whole_format(std::string_view code);
/// Appends a whole number in such a format; any other text as append_xlsx_number does.
void append_xlsx_whole(std::string& out, std::string_view text, std::string_view format,
                       char decimal);

/// The workbook's cell styles, in the order in which cells refer to them.
/// @throws InputError when the part is damaged
[[nodiscard]] std::vector<XlsxStyle> read_xlsx_styles(XlsxPackage& package,
                                                      const std::string& part);

/// Appends a number as it is written in a sheet, with 15 significant digits; text that is no number
/// stays as it is.
void append_xlsx_number(std::string& out, std::string_view text, char decimal);
/// Appends a number hundredfold, with a percent sign.
void append_xlsx_percent(std::string& out, std::string_view text, char decimal);
/// Appends days since the workbook's first day as date and time (ISO 8601); outside the years 1900
/// to 9999 the number itself.
/// @param from_1904  whether the days are counted from 1904-01-01
void append_xlsx_date(std::string& out, std::string_view text, bool from_1904, char decimal);

/// `text` with its `_xHHHH_` turned into the characters that they stand for (ECMA-376 part 1,
/// 22.9.2.19).
[[nodiscard]] std::string unescaped_xlsx(std::string_view text);

}  // namespace cutback::io

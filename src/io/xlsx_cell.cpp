#include "io/xlsx_cell.hpp"

#include <string_view>

namespace cutback::io {
namespace {

void append_number(std::string& out, const XlsxCell& cell, const XlsxNotation& how) {
  if (cell.value.empty()) {
    if (cell.formula) out += "#not-calculated";
    return;
  }
  switch (cell.style != nullptr ? cell.style->format : XlsxFormat::number) {
    case XlsxFormat::number:
      if (cell.as_text && cell.style != nullptr && !cell.style->whole_format.empty()) {
        append_xlsx_whole(out, cell.value, cell.style->whole_format, how.decimal);
      } else {
        append_xlsx_number(out, cell.value, how.decimal);
      }
      break;
    case XlsxFormat::percent:
      append_xlsx_percent(out, cell.value, how.decimal);
      break;
    case XlsxFormat::date:
      append_xlsx_date(out, cell.value, how.from_1904, how.decimal);
      break;
  }
}

}  // namespace

std::optional<XlsxCellType> xlsx_cell_type(const char* text) {
  if (text == nullptr) return XlsxCellType::number;
  const std::string_view name(text);
  // ECMA-376 part 1, 18.18.11
  if (name == "inlineStr") return XlsxCellType::text;
  if (name == "str") return XlsxCellType::formula_text;
  if (name.size() != 1) return std::nullopt;
  switch (name.front()) {
    case 'n':
      return XlsxCellType::number;
    case 's':
      return XlsxCellType::shared;
    case 'b':
      return XlsxCellType::boolean;
    case 'e':
      return XlsxCellType::error;
    case 'd':
      return XlsxCellType::date;
    default:
      return std::nullopt;
  }
}

bool append_xlsx_cell(std::string& out, const XlsxCell& cell, const XlsxStrings& strings,
                      const XlsxNotation& how) {
  const std::string& value = cell.value;
  switch (cell.type) {
    case XlsxCellType::number:
      append_number(out, cell, how);
      break;
    case XlsxCellType::shared: {
      const auto text = strings.find(value);
      if (!text) return value.empty();
      out += *text;
      break;
    }
    case XlsxCellType::text:
    case XlsxCellType::formula_text:
      out += value.find("_x") == std::string::npos ? value : unescaped_xlsx(value);
      break;
    case XlsxCellType::boolean:
      if (!value.empty()) out += value == "1" || value == "true" ? "TRUE" : "FALSE";
      break;
    case XlsxCellType::error:
    case XlsxCellType::date:
      out += value;
      break;
  }
  return true;
}

}  // namespace cutback::io

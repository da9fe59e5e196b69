#pragma once
// Texts of a sheet that stand in none of its cells.

#include <string>
#include <string_view>
#include <vector>

#include "cutback/io/rows.hpp"
#include "io/xlsx_package.hpp"

namespace cutback::io {

/// The comments on the cells of a sheet and the texts of the shapes that are drawn on it.
/// @param part  of the sheet. @throws InputError when a part is damaged
[[nodiscard]] std::vector<Aside> read_xlsx_asides(XlsxPackage& package, const std::string& part);

/// The words of a page header or footer, without its codes: `&L&"Arial,Bold"&12Site&RPage &P`
/// (ECMA-376 part 1, 18.3.1.46).
[[nodiscard]] std::string page_text(std::string_view codes);

}  // namespace cutback::io

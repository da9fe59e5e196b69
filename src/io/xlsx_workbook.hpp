#pragma once
// Where the sheets, texts and styles of a workbook are.

#include <string>
#include <vector>

#include "io/xlsx_package.hpp"

namespace cutback::io {

struct XlsxSheet {
  std::string name;
  std::string part;  ///< empty where it is no sheet of cells, a chart for example
  bool hidden = false;
};

struct XlsxWorkbook {
  std::vector<XlsxSheet> sheets;
  std::string strings;  ///< part of the shared texts; empty where there is none
  std::string styles;
  bool from_1904 = false;
};

/// What a part refers to.
struct XlsxRelationship {
  std::string id;
  std::string type;  ///< what comes after the last slash: worksheet, comments, drawing ...
  std::string part;
};
/// @return nothing where the part refers to none. @throws InputError when they are damaged
[[nodiscard]] std::vector<XlsxRelationship> read_xlsx_relationships(XlsxPackage& package,
                                                                    const std::string& part);

/// Follows the relationships of the package to the workbook and its parts.
/// @throws InputError when it is no workbook of this format
[[nodiscard]] XlsxWorkbook read_xlsx_workbook(XlsxPackage& package);

}  // namespace cutback::io

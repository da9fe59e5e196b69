#pragma once
// What a table's file is, by its first bytes.

#include <string_view>

namespace cutback::io {

enum class TableKind {
  text,          ///< anything else, CSV among it
  xlsx,          ///< a ZIP archive
  old_workbook,  ///< the container of .xls, and of a workbook that is locked with a password
};

/// @param first  the first eight bytes or more
[[nodiscard]] TableKind table_kind(std::string_view first);

}  // namespace cutback::io

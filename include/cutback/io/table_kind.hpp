#pragma once
// What a table's file is, by its first bytes.

#include <cstddef>
#include <string>
#include <string_view>

namespace cutback::io {

enum class TableKind {
  text,          ///< anything else, CSV among it
  xlsx,          ///< a ZIP archive
  old_workbook,  ///< the container of .xls
  locked,        ///< the same container, with a workbook that is locked with a password
  web_page,      ///< HTML, which some programs name .xls
  xml_workbook,  ///< the XML of 2003, which is named .xls or .xml
  empty,
};

/// How many bytes of a file table_kind() looks at.
inline constexpr std::size_t k_kind_bytes = 16384;

/// @param first  the first bytes of the file, k_kind_bytes of them where there are as many
[[nodiscard]] TableKind table_kind(std::string_view first);

/// @param kind  one that is never read as a table
/// @throws InputError that says what it is and what to do
[[noreturn]] void refuse_table(TableKind kind, const std::string& name);

}  // namespace cutback::io

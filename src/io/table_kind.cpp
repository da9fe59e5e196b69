#include "cutback/io/table_kind.hpp"

namespace cutback::io {

TableKind table_kind(std::string_view first) {
  // PKWARE APPNOTE 6.3: a local file header, or the end of an archive without files.
  if (first.starts_with("PK\x03\x04") || first.starts_with("PK\x05\x06")) return TableKind::xlsx;
  // [MS-CFB] 2.2: the signature of a compound file.
  if (first.starts_with("\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1")) return TableKind::old_workbook;
  return TableKind::text;
}

}  // namespace cutback::io

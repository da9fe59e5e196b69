#pragma once
// Whether a workbook that was written holds what was put into it.

#include <cstdint>
#include <span>
#include <string>

namespace cutback::io {

/// What was put into a sheet.
struct XlsxContent {
  std::uint64_t cells = 0;
  std::uint64_t text_bytes = 0;  ///< of the cells that hold texts
};

/// Reads a finished workbook through: every part unpacks to its size with its check sum and is
/// well-formed XML, and the sheets hold the cells and texts that were put there. libxlsxwriter does
/// not look whether its temporary files took all: where a disk was full it packs what is left.
/// @param path    of the file
/// @param sheets  in their order
/// @return empty, or what is wrong
[[nodiscard]] std::string xlsx_mismatch(const std::string& path,
                                        std::span<const XlsxContent> sheets);

}  // namespace cutback::io

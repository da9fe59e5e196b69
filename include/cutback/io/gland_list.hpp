#pragma once
// Gland lists as CSV.

#include <string>
#include <string_view>

#include "cutback/gland/gland.hpp"

namespace cutback::io {

/// Reads and checks a whole gland list (UTF-8 CSV with a header row; columns in data/README.md).
/// @param text  the file's content
/// @param name  for messages and for GlandList::name
/// @return the glands in file order; a column that is not known is named in `warnings`
/// @throws InputError with every fault of the file, each with row, column, value and what is
/// allowed; a list with no gland is a fault
[[nodiscard]] gland::GlandList read_gland_list(std::string_view text, const std::string& name);

/// Reads it from a file. @throws FileError, InputError
[[nodiscard]] gland::GlandList load_gland_list(const std::string& path);

/// The demonstration list that is built in; its glands are invented and its name says so.
[[nodiscard]] gland::GlandList demo_gland_list();

}  // namespace cutback::io

#pragma once
// Published tables from JSON.

#include <string>
#include <string_view>

#include "cutback/tables/standards.hpp"

namespace cutback::io {

/// Reads one table. @throws InputError for unknown, duplicate or missing keys, rows of another
/// length than the columns, and cells that are neither number, text nor null
[[nodiscard]] tables::Table read_table(std::string_view json, const std::string& name);

/// The tables that are built in. @throws InternalError when one of them is broken
[[nodiscard]] tables::Standards builtin_standards();

/// The tables of a folder in the place of the built-in ones, matched by id; all of them must be
/// there. One that differs from the built-in one by its check sum is `own`, whatever it says of
/// itself, or weaker.
/// @throws FileError, InputError
[[nodiscard]] tables::Standards load_standards(const std::string& folder);

}  // namespace cutback::io

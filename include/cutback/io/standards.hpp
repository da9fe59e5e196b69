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

/// The built-in tables with those of a folder put in their place, matched by id.
/// @throws FileError, InputError
[[nodiscard]] tables::Standards load_standards(const std::string& folder);

}  // namespace cutback::io

#pragma once
// A gland list of the user's own, some cells of it changed and nothing else.

#include <span>
#include <string>
#include <string_view>
#include <utility>

namespace cutback::io {

/// Column and value.
using CellEdit = std::pair<std::string, std::string>;

/// The text with these cells of one gland changed; every other byte stays as it is. A column that
/// the list does not have is added behind its last one.
/// @param name  of the list, for messages
/// @throws InputError where no row, or more than one, has the part, and where the text is no table
[[nodiscard]] std::string with_gland_cells(std::string_view text, const std::string& name,
                                           std::string_view part, std::span<const CellEdit> cells);

}  // namespace cutback::io

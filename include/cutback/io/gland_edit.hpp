#pragma once
// A gland list of the user's own, some cells of it changed and nothing else.

#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace cutback::io {

/// Column and value.
using CellEdit = std::pair<std::string, std::string>;

/// The text with these cells of one gland changed; every other byte stays as it is. A column that
/// the list does not have is added behind its last one.
/// @param name  of the list, for messages
/// @throws InputError where no row, or more than one, has the part, and where the text is no table
[[nodiscard]] std::string with_gland_cells(std::string_view text, const std::string& name,
                                           std::string_view part, std::span<const CellEdit> cells);

/// The text with one gland more behind its last row, its columns as above.
/// @param cells  its part among them
/// @throws InputError where the text is no table of glands, or has the part already
[[nodiscard]] std::string with_gland_added(std::string_view text, const std::string& name,
                                           std::span<const CellEdit> cells);

/// The text with a gland that is not whole yet as a remark behind its last row: no list reads it as
/// a gland, and take_begun finds it again.
[[nodiscard]] std::string with_begun(std::string_view text, std::span<const CellEdit> cells);
/// Takes such a remark out of the text. @return its cells; none where there is no such remark
[[nodiscard]] std::vector<CellEdit> take_begun(std::string& text);

}  // namespace cutback::io

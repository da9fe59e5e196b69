#pragma once
// Readings of drums as CSV.

#include <string>
#include <string_view>
#include <vector>

#include "cutback/measure/reading.hpp"

namespace cutback::io {

/// Reads readings of drums (UTF-8 CSV): a header row with the columns `drum`, `place` and
/// `value_mm` in any order, then one reading a row. Rows with the same drum and place are one
/// place; drums and places keep the order in which they first appear.
/// @param name  of the file, for messages
/// @return at least one drum; every reading > 0 and at most measure::k_largest_diameter_mm
/// @throws InputError with every fault of the file, each with its line and column
[[nodiscard]] std::vector<measure::Drum> read_drums(std::string_view text, const std::string& name);

/// Reads it from a file; of a register of finished ends what drums_of() tells. @throws FileError,
/// InputError
[[nodiscard]] std::vector<measure::Drum> load_drums(const std::string& path);

}  // namespace cutback::io

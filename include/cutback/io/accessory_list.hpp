#pragma once
// Prices of the parts that go on beside a gland, and how parts are sold, as CSV.

#include <string>
#include <string_view>
#include <vector>

#include "cutback/schedule/tally.hpp"

namespace cutback::io {

/// Reads a whole list (UTF-8 CSV, a header row): `name` (needed), `thread`, `part`, `price`,
/// `stock`, `pack`, `min_order`; the others may be blank or absent.
/// @param name  of the file, for messages
/// @throws InputError with every fault of the file: an unknown or missing column, a figure that is
/// none, a price with more than six decimals, two rows for one thing
[[nodiscard]] std::vector<schedule::AccessoryPrice> read_accessory_list(std::string_view text,
                                                                        const std::string& name);

/// Reads it from a file. @throws FileError, InputError
[[nodiscard]] std::vector<schedule::AccessoryPrice> load_accessory_list(const std::string& path);

}  // namespace cutback::io

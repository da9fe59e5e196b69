#pragma once
// Whether a cell may hold a value of a column, however oddly it is written.

#include <string_view>

#include "cutback/job/input.hpp"

namespace cutback::schedule {

/// False only where nobody would write such a value that way: "Area 3" is no zone, "Cu" no
/// enclosure. What tells of a hazardous place is looked for inside the text: "Zone 1", "Ex d IIB".
[[nodiscard]] bool may_be(const job::Field& field, std::string_view text);

/// 0, 1, 2, 20, 21, 22.
[[nodiscard]] bool is_zone_figure(std::string_view text);

}  // namespace cutback::schedule

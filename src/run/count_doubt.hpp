#pragma once
// Why it is not known how often the ends of a row are wanted.

#include <optional>
#include <string>

#include "cutback/schedule/decide.hpp"
#include "cutback/schedule/layout.hpp"

namespace cutback::run {

/// @param row  the one on which the tag stands already
[[nodiscard]] std::string stands_above(const std::string& row);

/// @param above  stands_above() of a row whose tag stands above; else null
/// @return nothing where it is known
[[nodiscard]] std::optional<schedule::CountDoubt> count_doubt(const schedule::Layout& layout,
                                                              const schedule::RowCount& count,
                                                              const std::string* above);

}  // namespace cutback::run

#pragma once
// The columns that a schedule has and a job has not.

#include <span>

#include "cutback/job/input.hpp"

namespace cutback::schedule {

/// Rows like those of the field table; their members are not used.
[[nodiscard]] std::span<const job::Field> own_fields();

}  // namespace cutback::schedule

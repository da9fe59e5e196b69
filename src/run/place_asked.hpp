#pragma once
// Whether a schedule speaks of places: then the place of every end is asked about.

#include "run/open_schedule.hpp"

namespace cutback::run {

/// Whether the schedule has a column that speaks of a place (area::is_asked).
[[nodiscard]] bool has_place_column(const Schedule& schedule);

/// Whether any row says something there. It reads rows until one does: open the schedule again for
/// what comes after.
/// @throws InputError where the text cannot be read as a table
[[nodiscard]] bool speaks_of_place(const Schedule& schedule);

}  // namespace cutback::run

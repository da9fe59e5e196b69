#pragma once
// Whether a schedule speaks of the places where its ends are.

#include <functional>
#include <string>
#include <vector>

#include "run/open_schedule.hpp"

namespace cutback::run {

/// Whether every end is asked about its place, and what else than a column says that it is to be.
struct PlaceAsked {
  bool asked = false;
  std::vector<std::string> because;  ///< sentences: titles, names and notes with a hazardous place
};

/// Every end is asked about its place as soon as one row speaks of one: a plain room is zone
/// `none`. So it is where a title, the name of an equipment or a column that nobody reads has a
/// hazardous place.
/// @param schedule  opened, not yet read
/// @param again     opens it once more, to be read to its end; empty where that cannot be: then a
/// column is enough, and whoever reads the schedule looks at RowBlock::places
[[nodiscard]] PlaceAsked ask_place(const Schedule& schedule,
                                   const std::function<Schedule()>& again);

/// The error of a text that speaks of a hazardous place, where it is too late to ask.
[[nodiscard]] InputError too_late_to_ask(const io::ScheduleFile& file, const io::PlaceText& text);

}  // namespace cutback::run

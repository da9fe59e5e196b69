#pragma once
// Whether a schedule speaks of the places where its ends are.

#include <cstddef>
#include <functional>
#include <span>
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
/// @param schedule    opened, not yet read
/// @param again       opens it once more, to be read to its end; empty where that cannot be: then a
/// column is enough, and whoever reads the schedule looks at RowBlock::places
/// @param rows_noted  whoever reads `schedule` names what stands in RowBlock::places and a default
/// takes for plain (told_plain_text), so that it is not read twice for that
[[nodiscard]] PlaceAsked ask_place(const Schedule& schedule, const std::function<Schedule()>& again,
                                   bool rows_noted = false);

/// So many texts are named; the others are counted.
inline constexpr std::size_t k_named_places = 5;
/// A sentence on texts that speak of hazardous places where a default says that all are plain.
/// @param texts  the first of them, as place_name() writes them
/// @param count  of all
[[nodiscard]] std::string told_plain_text(const std::string& name,
                                          std::span<const std::string> texts, std::size_t count);
/// `row 4 "ZONE 1 AREA"`
[[nodiscard]] std::string place_name(const io::ScheduleFile& file, const io::PlaceText& place);

/// What its name, its headings and what stands above or beside its rows say of hazardous places, as
/// place_name() writes it.
[[nodiscard]] std::vector<std::string> places_above(const ScheduleTable& table);

/// What stands above the rows of a table or beside them, or is its name, and tells a hazardous
/// place; empty where nothing does.
[[nodiscard]] std::string title_of(const ScheduleTable& table);

/// The error of a text that speaks of a hazardous place, where it is too late to ask.
[[nodiscard]] InputError too_late_to_ask(const io::ScheduleFile& file, const io::PlaceText& text);

}  // namespace cutback::run

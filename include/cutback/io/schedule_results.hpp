#pragma once
// What comes of a schedule as CSV: results, take-off and exceptions.

#include <span>
#include <string>
#include <string_view>

#include "cutback/schedule/changes.hpp"
#include "cutback/schedule/decide.hpp"
#include "cutback/schedule/tally.hpp"

namespace cutback::io {

/// The headings of the results, with a line end.
[[nodiscard]] std::string_view schedule_csv_head();
/// What follows `tag,end` of an end that can be used: the same for all ends decided alike.
void append_schedule_csv_tail(std::string& out, const schedule::Decision& decision);
/// What follows the quantity: the diameters that were used, with their evidence, the defaults, the
/// remarks, and the list of the gland where there are several.
void append_schedule_csv_more(std::string& out, const schedule::Decision& decision,
                              std::span<const schedule::OwnValue> defaults,
                              std::string_view supplier);
/// One line of the results.
/// @param tail  of append_schedule_csv_tail; not used where the end is unusable
/// @param more  of append_schedule_csv_more
void append_schedule_csv(std::string& out, const schedule::EndName& name,
                         const schedule::Decision& decision, std::string_view tail,
                         std::string_view more);

[[nodiscard]] std::string takeoff_csv(const schedule::Takeoff& takeoff);

/// What is not as it was in an earlier revision, one row per end.
[[nodiscard]] std::string changes_csv(std::span<const schedule::EndChange> changes);

/// The headings of the exceptions, with a line end.
[[nodiscard]] std::string_view exceptions_csv_head();
/// What is to be said of how the schedule was read: lines of the exceptions that name no end.
[[nodiscard]] std::string reading_notes_csv(std::span<const std::string> notes);
/// One line of the exceptions.
void append_exception_csv(std::string& out, const schedule::Exception& exception);

}  // namespace cutback::io

#pragma once
// A cell as people write it in a spreadsheet, made into a value as the field table reads it.

#include <optional>
#include <string>
#include <string_view>

#include "cutback/error.hpp"
#include "cutback/job/input.hpp"

namespace cutback::schedule {

/// Turns a decimal comma into a point, and finds what a spreadsheet cell holds that is no value: a
/// formula, an error, a unit, a range, a thousands sign, a decimal mark of the other kind.
/// @param text     not blank, trimmed
/// @param decimal  `.` or `,`
/// @param plain    the value, decimal point; not set after a fault
/// @return a fault without its `where`, or nothing
[[nodiscard]] std::optional<Fault> to_plain_text(const job::Field& field, std::string_view text,
                                                 char decimal, std::string& plain);

}  // namespace cutback::schedule

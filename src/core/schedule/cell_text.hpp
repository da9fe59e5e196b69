#pragma once
// A cell as people write it in a spreadsheet, made into a value as the field table reads it.

#include <optional>
#include <string>
#include <string_view>

#include "cutback/error.hpp"
#include "cutback/schedule/layout.hpp"

namespace cutback::schedule {

/// Turns a decimal comma into a point, takes off a unit that is the column's own ("22.5 mm"), a
/// diameter sign, a thousands sign that nothing else can be ("1,234.50"), and the words that a
/// column says already ("Zone 1"); makes M25 of a bare 25 where the heading says metric. Finds what
/// a cell holds that is no value: a formula, an error, another unit, a range, a decimal mark of the
/// other kind.
/// @param text     not blank, trimmed
/// @param decimal  `.` or `,`
/// @param plain    the value, decimal point; empty where the cell says nothing certain (a bare 25
///                 for an entry of no kind of thread); not set after a fault
/// @return a fault without its `where`, or nothing
[[nodiscard]] std::optional<Fault> to_plain_text(const Column& column, std::string_view text,
                                                 char decimal, std::string& plain);

/// The errors that spreadsheets show, and what stands for a cell that is no value (#REF!).
[[nodiscard]] bool is_sheet_error(std::string_view text);

}  // namespace cutback::schedule

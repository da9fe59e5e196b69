#pragma once
// A field's value from text, checked against its row of the field table.

#include <string>
#include <string_view>
#include <vector>

#include "cutback/error.hpp"
#include "cutback/job/input.hpp"

namespace cutback::job {

/// Puts `text` into the member of `record` that `field` names.
/// @param where  option, column or JSON path, for the message
/// @return the faults, or none; after a fault the record is as before
template <class Record>
[[nodiscard]] std::vector<Fault> set_from_text(Record& record, const FieldOf<Record>& field,
                                               std::string_view text, std::string_view where);

/// The same for a number that was already one (from JSON).
template <class Record>
[[nodiscard]] std::vector<Fault> set_from_number(Record& record, const FieldOf<Record>& field,
                                                 double value, std::string_view where);

/// What a field accepts, for messages: "0 to 200 mm", "wire, braid or none".
template <class Record>
[[nodiscard]] std::string allowed_text(const FieldOf<Record>& field);

/// "a, b or c" from "a b c".
[[nodiscard]] std::string either_of(std::string_view words);

}  // namespace cutback::job

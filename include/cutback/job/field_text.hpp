#pragma once
// A field's value from text, checked against its row of the field table.

#include <optional>
#include <span>
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

/// The words of a field of kind words or yes_no, in order; none of another kind.
template <class Record>
[[nodiscard]] std::vector<std::string_view> words_of(const FieldOf<Record>& field);

/// "a, b or c".
[[nodiscard]] std::string either_of(std::span<const std::string_view> words);

/// The value as set_from_text takes it; nothing where it was not given.
template <class Record>
[[nodiscard]] std::optional<std::string> text_of(const Record& record,
                                                 const FieldOf<Record>& field);

/// Makes the field one that was not given.
template <class Record>
void take_away(Record& record, const FieldOf<Record>& field);

}  // namespace cutback::job

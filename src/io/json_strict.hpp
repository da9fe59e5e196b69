#pragma once
// JSON read strictly: duplicate keys and deep nesting are errors, with the place.

#include <nlohmann/json.hpp>
#include <string>
#include <string_view>

namespace cutback::io {

/// Parses `text`. @throws InputError for a syntax error (line and column), a key given twice in
/// one object (JSON path), nesting deeper than 32 levels, an empty or a binary file
[[nodiscard]] nlohmann::ordered_json parse_json(std::string_view text, const std::string& name);

/// What kind of JSON value it is, in a user's words.
[[nodiscard]] std::string_view json_kind(const nlohmann::ordered_json& value);

}  // namespace cutback::io

#pragma once
// Characters that are obeyed and not seen, written out.

#include <string>
#include <string_view>

namespace cutback {

/// JSON that says the same, with what hidden_length() finds and DEL as \u escapes: a terminal that
/// it is printed on obeys none of it.
/// @param json  as a serialiser writes it: outside texts it holds none of them
[[nodiscard]] std::string harmless_json(std::string_view json);

}  // namespace cutback

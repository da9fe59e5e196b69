#pragma once
// Texts that are not UTF-8, made UTF-8.

#include <optional>
#include <string>
#include <string_view>

namespace cutback::io {

struct Decoded {
  std::string text;      ///< UTF-8
  std::string encoding;  ///< that it was in, for people
};

/// Whether a text must be decoded before it can be read. @param text  of a file, or its beginning
[[nodiscard]] bool needs_decoding(std::string_view text);

/// UTF-16 by its byte order mark, or by its zero bytes; else Windows-1252, where a byte is no UTF-8
/// and nothing in the text is UTF-8 of several bytes.
/// @return nothing where the text is UTF-8 already
/// @throws InputError where it is none of these
[[nodiscard]] std::optional<Decoded> decoded(std::string_view text, const std::string& name);

}  // namespace cutback::io

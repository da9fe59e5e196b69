#pragma once
// Is the text UTF-8?

#include <cstddef>
#include <string_view>

namespace cutback::io {

/// Where the first byte stands that no well-formed UTF-8 has there (The Unicode Standard 15.0,
/// table 3-7: no overlong form, no surrogate, nothing above U+10FFFF); npos when there is none.
[[nodiscard]] std::size_t first_invalid_utf8(std::string_view text);

}  // namespace cutback::io

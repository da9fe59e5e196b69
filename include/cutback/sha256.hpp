#pragma once
// A check sum by which a file can be told from any other.

#include <string>
#include <string_view>

namespace cutback {

/// SHA-256 of the bytes, in 64 small hexadecimal digits.
/// @source FIPS 180-4, 5.1.1, 5.3.3, 6.2.2
[[nodiscard]] std::string sha256(std::string_view text);

}  // namespace cutback

#pragma once
// A short name for the content of a file, so that paper can be told from paper of another issue.

#include <string>
#include <string_view>

namespace cutback::run {

/// Eight hexadecimal digits. Two issues of one schedule have one name once in four thousand million
/// times; nothing is kept safe by it.
/// @source FNV-1a, 64 bits folded to 32 (common practice)
[[nodiscard]] std::string content_hash(std::string_view content);

/// What paper says that it is from: the file's name without its folder, and the hash.
[[nodiscard]] std::string source_name(const std::string& path, std::string_view content);

}  // namespace cutback::run

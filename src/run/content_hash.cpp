#include "run/content_hash.hpp"

#include <fmt/format.h>
#include <cstdint>

namespace cutback::run {

std::string content_hash(std::string_view content) {
  std::uint64_t hash = 0xcbf29ce484222325U;
  for (const char c : content) {
    hash ^= static_cast<unsigned char>(c);
    hash *= 0x100000001b3U;
  }
  return fmt::format("{:08x}", static_cast<std::uint32_t>(hash ^ (hash >> 32U)));
}

std::string source_name(const std::string& path, std::string_view content) {
  const std::size_t folder = path.rfind('/');
  const std::string name = folder == std::string::npos ? path : path.substr(folder + 1);
  return (path == "-" ? std::string("standard input") : name) + " " + content_hash(content);
}

}  // namespace cutback::run

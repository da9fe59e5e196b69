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

}  // namespace cutback::run

#include "io/utf8.hpp"

#include <cstdint>
#include <cstring>

namespace cutback::io {
namespace {

std::uint8_t byte_at(std::string_view text, std::size_t i) {
  return i < text.size() ? static_cast<std::uint8_t>(text[i]) : std::uint8_t{0};
}

bool in(std::uint8_t byte, std::uint8_t low, std::uint8_t high) {
  return byte >= low && byte <= high;
}

/// Length of the well-formed sequence at `i` that does not start with an ASCII byte, or 0.
/// The second byte has its own limits after four lead bytes; all others lie in 80..BF.
std::size_t sequence(std::string_view text, std::size_t i) {
  const std::uint8_t lead = byte_at(text, i);
  const std::uint8_t second = byte_at(text, i + 1);
  const auto tail = [&](std::size_t k) { return in(byte_at(text, i + k), 0x80, 0xBF); };
  if (in(lead, 0xC2, 0xDF)) return tail(1) ? 2 : 0;
  if (in(lead, 0xE0, 0xEF)) {
    const std::uint8_t low = lead == 0xE0 ? 0xA0 : 0x80;
    const std::uint8_t high = lead == 0xED ? 0x9F : 0xBF;
    return in(second, low, high) && tail(2) ? 3 : 0;
  }
  if (in(lead, 0xF0, 0xF4)) {
    const std::uint8_t low = lead == 0xF0 ? 0x90 : 0x80;
    const std::uint8_t high = lead == 0xF4 ? 0x8F : 0xBF;
    return in(second, low, high) && tail(2) && tail(3) ? 4 : 0;
  }
  return 0;
}

}  // namespace

std::size_t first_invalid_utf8(std::string_view text) {
  constexpr std::uint64_t k_high_bits = 0x8080808080808080;
  std::size_t i = 0;
  while (i < text.size()) {
    std::uint64_t eight = 0;
    if (i + sizeof eight <= text.size()) {  // most text is ASCII: eight bytes at a time
      std::memcpy(&eight, text.data() + i, sizeof eight);
      if ((eight & k_high_bits) == 0) {
        i += sizeof eight;
        continue;
      }
    }
    const std::size_t length = byte_at(text, i) < 0x80 ? 1 : sequence(text, i);
    if (length == 0) return i;
    i += length;
  }
  return std::string_view::npos;
}

}  // namespace cutback::io

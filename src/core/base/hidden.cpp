#include "cutback/hidden.hpp"

#include <cstdint>

#include "cutback/error.hpp"

namespace cutback {
namespace {

void append_escape(std::string& out, std::uint32_t unit) {
  constexpr std::string_view k_digits = "0123456789abcdef";
  out += "\\u";
  for (unsigned i = 0; i < 4; ++i) out += k_digits[(unit >> (12U - 4U * i)) & 0xFU];
}

std::uint32_t code_of(std::string_view sequence) {
  const auto lead = static_cast<unsigned char>(sequence.front());
  std::uint32_t code = lead & (0xFFU >> (sequence.size() + 1));
  for (const char c : sequence.substr(1))
    code = (code << 6U) | (static_cast<unsigned char>(c) & 0x3FU);
  return code;
}

}  // namespace

std::string harmless_json(std::string_view json) {
  std::string out;
  out.reserve(json.size());
  for (std::size_t i = 0; i < json.size(); ++i) {
    const auto byte = static_cast<unsigned char>(json[i]);
    const std::size_t hidden = byte < 0x80 ? 0 : hidden_length(json.substr(i));
    if (byte == 0x7F) {
      append_escape(out, byte);
    } else if (hidden == 0) {
      out += json[i];
    } else {
      const std::uint32_t code = code_of(json.substr(i, hidden));
      constexpr std::uint32_t k_first_plane = 0x10000;
      if (code < k_first_plane) {
        append_escape(out, code);
      } else {  // two halves (RFC 8259, 7)
        append_escape(out, 0xD800U | ((code - k_first_plane) >> 10U));
        append_escape(out, 0xDC00U | ((code - k_first_plane) & 0x3FFU));
      }
      i += hidden - 1;
    }
  }
  return out;
}

}  // namespace cutback

// Texts as cells can hold them.

#include <fmt/format.h>

#include <algorithm>

#include "io/xlsx_book.hpp"

namespace cutback::io {
namespace {

constexpr std::size_t k_most_bytes = 16000;  // a cell takes 32,767 characters, escapes among them

bool is_hexadecimal(char c) {
  return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'F') || (c >= 'a' && c <= 'f');
}

/// Whether a text goes on with `_xHHHH_`, which is read as a character (ECMA-376 part
/// 1, 22.9.2.19).
bool is_escape(std::string_view text) {
  return text.size() >= 7 && text.starts_with("_x") && text[6] == '_' &&
         std::all_of(text.begin() + 2, text.begin() + 6, is_hexadecimal);
}

/// Control characters but tab and line feed. XML allows none of the first 31, and makes a line feed
/// of a carriage return.
bool is_control(char c) {
  const auto byte = static_cast<unsigned char>(c);
  return byte < 0x20 && c != '\t' && c != '\n';
}

/// U+FFFE and U+FFFF, which XML does not allow.
bool is_no_character(std::string_view text) {
  return text.starts_with("\xEF\xBF\xBE") || text.starts_with("\xEF\xBF\xBF");
}

}  // namespace

std::string xlsx_text(std::string_view text) {
  std::size_t size = std::min(text.size(), k_most_bytes);
  while (size < text.size() && (static_cast<unsigned char>(text[size]) & 0xC0U) == 0x80U) --size;
  std::string out;
  out.reserve(size);
  for (std::size_t i = 0; i < size; ++i) {
    const std::string_view rest = text.substr(i, size - i);
    if (is_escape(rest)) {
      out += "_x005F_";
    } else if (is_control(text[i])) {
      out += fmt::format("_x{:04X}_", static_cast<unsigned>(text[i]));
    } else if (is_no_character(rest)) {
      out += "\xEF\xBF\xBD";
      i += 2;
    } else {
      out += text[i];
    }
  }
  if (size < text.size()) out += " ...";
  return out;
}

}  // namespace cutback::io

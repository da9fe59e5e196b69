#include "cutback/text.hpp"

#include <cstdint>

#include "cutback/error.hpp"

namespace cutback {
namespace {

/// As \\x1b, \\u202e or \\U000e0041.
void append_code(std::string& out, std::uint32_t code) {
  const unsigned digits = code < 0x100 ? 2 : code < 0x10000 ? 4 : 8;
  out += digits == 2 ? "\\x" : digits == 4 ? "\\u" : "\\U";
  for (unsigned i = digits; i > 0; --i) out += "0123456789abcdef"[(code >> (4 * (i - 1))) & 0xFU];
}

/// Of one whole UTF-8 sequence of two bytes or more.
std::uint32_t code_of(std::string_view sequence) {
  std::uint32_t code =
      static_cast<unsigned char>(sequence.front()) & (0xFFU >> (sequence.size() + 1));
  for (const char c : sequence.substr(1)) {
    code = (code << 6U) | (static_cast<unsigned char>(c) & 0x3FU);
  }
  return code;
}

}  // namespace

std::string small_letters(std::string_view text) {
  std::string out(text);
  for (char& c : out) c = small_letter(c);
  return out;
}

std::string_view trimmed(std::string_view text, std::string_view spaces) {
  const std::size_t first = text.find_first_not_of(spaces);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(spaces) - first + 1);
}

std::string without_controls(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto byte = static_cast<unsigned char>(text[i]);
    const std::size_t hidden = byte < 0x80 ? 0 : hidden_length(text.substr(i));
    if ((byte < 0x20 && byte != '\n' && byte != '\t') || byte == 0x7F) {
      append_code(out, byte);
    } else if (hidden > 0) {
      append_code(out, code_of(text.substr(i, hidden)));
      i += hidden - 1;
    } else {
      out += text[i];
    }
  }
  return out;
}

void trim_end(std::string& text) { text.erase(text.find_last_not_of(' ') + 1); }

std::string joined(std::span<const std::string> words, std::string_view between) {
  std::string text;
  for (const std::string& word : words) {
    if (&word != &words.front()) text += between;
    text += word;
  }
  return text;
}

}  // namespace cutback

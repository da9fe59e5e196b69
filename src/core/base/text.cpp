#include "cutback/text.hpp"

namespace cutback {

std::string_view trimmed(std::string_view text, std::string_view spaces) {
  const std::size_t first = text.find_first_not_of(spaces);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(spaces) - first + 1);
}

std::string without_controls(std::string_view text) {
  constexpr std::string_view k_digits = "0123456789abcdef";
  std::string out;
  out.reserve(text.size());
  const auto put = [&](unsigned code) {
    out += "\\x";
    out += k_digits[code >> 4U];
    out += k_digits[code & 0xFU];
  };
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto byte = static_cast<unsigned>(static_cast<unsigned char>(text[i]));
    // U+0080 to U+009F are control characters as well.
    const bool second = byte == 0xC2 && i + 1 < text.size() &&
                        static_cast<unsigned char>(text[i + 1]) >= 0x80 &&
                        static_cast<unsigned char>(text[i + 1]) < 0xA0;
    if (second) {
      put(static_cast<unsigned>(static_cast<unsigned char>(text[++i])));
    } else if ((byte < 0x20 && byte != '\n' && byte != '\t') || byte == 0x7F) {
      put(byte);
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

#include "cutback/text.hpp"

namespace cutback {

std::string_view trimmed(std::string_view text, std::string_view spaces) {
  const std::size_t first = text.find_first_not_of(spaces);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(spaces) - first + 1);
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

#include "cutback/words.hpp"

namespace cutback {

std::vector<std::string_view> split_words(std::string_view text) {
  std::vector<std::string_view> parts;
  for (;;) {
    const std::size_t start = text.find_first_not_of(' ');
    if (start == std::string_view::npos) return parts;
    const std::size_t end = text.find(' ', start);
    parts.push_back(text.substr(start, end - start));
    if (end == std::string_view::npos) return parts;
    text.remove_prefix(end);
  }
}

}  // namespace cutback

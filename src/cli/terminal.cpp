#include "cli/terminal.hpp"

#include <sys/ioctl.h>
#include <unistd.h>
#include <algorithm>

#include "cutback/glyph_width.hpp"

namespace cutback::cli {
namespace {

constexpr std::size_t k_usual_columns = 80;
constexpr std::size_t k_least_columns = 20;  // below it nothing is gained by breaking lines

}  // namespace

std::size_t terminal_columns(int descriptor) {
  if (::isatty(descriptor) != 1) return 0;
  struct winsize size {};
  if (::ioctl(descriptor, TIOCGWINSZ, &size) != 0 || size.ws_col == 0) return k_usual_columns;
  return std::max<std::size_t>(size.ws_col, k_least_columns);
}

std::string folded(std::string_view text, std::size_t columns, std::size_t indent) {
  if (columns == 0) return std::string(text);
  std::string out;
  std::size_t used = 0;
  const std::string space(indent, ' ');
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' ', 1), text.size());
    std::string_view word = text.substr(0, end);
    text.remove_prefix(end);
    if (used > 0 && used + columns_of(word) > columns) {
      out += '\n' + space;
      used = indent;
      if (word.front() == ' ') word.remove_prefix(1);
    }
    out += word;
    used += columns_of(word);
  }
  return out;
}

}  // namespace cutback::cli

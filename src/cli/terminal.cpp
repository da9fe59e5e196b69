#include "cli/terminal.hpp"

#include <sys/ioctl.h>
#include <unistd.h>
#include <algorithm>
#include <optional>

#include "cutback/glyph_width.hpp"

namespace cutback::cli {
namespace {

constexpr std::size_t k_usual_columns = 80;
constexpr std::size_t k_usual_rows = 24;
constexpr std::size_t k_least_columns = 20;  // below it nothing is gained by breaking lines
constexpr std::size_t k_least_rows = 10;     // the same for pages

std::optional<struct winsize> size_of(int descriptor) {
  struct winsize size {};
  if (::ioctl(descriptor, TIOCGWINSZ, &size) != 0) return std::nullopt;
  return size;
}

/// Columns of a word; colours take none.
std::size_t shown_columns(std::string_view word) {
  std::size_t columns = 0;
  while (!word.empty()) {
    const std::size_t colour = std::min(word.find("\x1b["), word.size());
    columns += columns_of(word.substr(0, colour));
    word.remove_prefix(colour);
    if (!word.empty()) word.remove_prefix(std::min(word.find('m'), word.size() - 1) + 1);
  }
  return columns;
}

}  // namespace

std::size_t terminal_columns(int descriptor) {
  if (::isatty(descriptor) != 1) return 0;
  const auto size = size_of(descriptor);
  if (!size || size->ws_col == 0) return k_usual_columns;
  return std::max<std::size_t>(size->ws_col, k_least_columns);
}

std::size_t terminal_rows(int descriptor) {
  if (::isatty(descriptor) != 1) return 0;
  const auto size = size_of(descriptor);
  if (!size || size->ws_row == 0) return k_usual_rows;
  return std::max<std::size_t>(size->ws_row, k_least_rows);
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
    if (used > 0 && used + shown_columns(word) > columns) {
      out += '\n' + space;
      used = indent;
      if (word.front() == ' ') word.remove_prefix(1);
    }
    out += word;
    used += shown_columns(word);
  }
  return out;
}

}  // namespace cutback::cli

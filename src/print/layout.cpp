#include "print/layout.hpp"

#include <algorithm>
#include <cmath>

#include "cutback/error.hpp"
#include "cutback/glyph_width.hpp"
#include "cutback/number.hpp"
#include "cutback/text.hpp"
#include "cutback/print/words.hpp"

namespace cutback::print {
namespace {

constexpr const char* k_reset = "\x1b[0m";

const char* colour_of(Verdict verdict) {
  switch (verdict) {
    case Verdict::fits:
      return "\x1b[1;32m";
    case Verdict::marginal_inside:
      return "\x1b[1;33m";
    case Verdict::not_known:
      return "\x1b[1;36m";
    case Verdict::marginal_outside:
      return "\x1b[1;35m";
    case Verdict::no_fit:
      return "\x1b[1;31m";
  }
  return "";
}

}  // namespace

std::string wrapped(std::string_view first, std::string_view raw, std::size_t columns) {
  const std::string text = clean(raw);
  const std::string indent(columns_of(first), ' ');
  const std::size_t room = columns - 1 - indent.size();
  std::string out(first);
  std::string_view rest = text;
  std::size_t used = 0;
  while (!rest.empty()) {
    const std::size_t end = std::min(rest.find(' '), rest.size());
    std::string_view word = rest.substr(0, end);
    rest.remove_prefix(std::min(end + 1, rest.size()));
    while (!word.empty()) {
      std::string_view piece = first_columns(word, room);
      if (piece.empty()) piece = word.substr(0, first_glyph(word).bytes);
      // No more of a long word is looked at than a line takes.
      const bool longer = piece.size() < word.size();
      if (used > 0 && (longer || used + 1 + columns_of(piece) > room)) {
        out += '\n' + indent;
        used = 0;
      }
      if (used > 0) out += ' ';
      out += piece;
      used += (used > 0 ? 1 : 0) + columns_of(piece);
      word.remove_prefix(piece.size());
    }
  }
  return out + '\n';
}

std::string cell(std::string_view raw, std::size_t width) {
  std::string text = clean(raw);
  const std::size_t columns = columns_of(text);
  if (columns > width) {
    const std::string_view kept = first_columns(text, width - 1);
    return std::string(kept) + "~" + std::string(width - 1 - columns_of(kept), ' ');
  }
  return text + std::string(width - columns, ' ');
}

std::string right(std::string_view raw, std::size_t width) {
  const std::string text = clean(raw);
  const std::size_t columns = columns_of(text);
  return columns >= width ? text : std::string(width - columns, ' ') + text;
}

std::string line_of(std::string text) {
  trim_end(text);
  return text + "\n";
}

std::string heading(std::string_view words, const Style& style) {
  const std::string line = capitals(words);
  return style.colour ? "\n\x1b[1m" + line + k_reset + "\n" : "\n" + line + "\n";
}

std::string bullets(std::string_view words, const std::vector<std::string>& lines,
                    const Style& style) {
  if (lines.empty()) return {};
  std::string text = heading(words, style);
  for (const std::string& line : lines) text += wrapped("  - ", line);
  return text;
}

std::string verdict_word(Verdict verdict, const Style& style, std::size_t width) {
  std::string word(to_string(verdict));
  if (verdict == Verdict::fits) word = "FITS";
  if (width > 0) word = cell(word, width);
  return style.colour ? colour_of(verdict) + word + k_reset : word;
}

std::string margin_text(double margin_mm) {
  const double rounded = round_down(margin_mm, 0.01);
  return (rounded >= 0.0 ? "+" : "") + fixed(rounded, 2);
}

std::string probability_text(double probability) {
  if (probability > 0.999) return "> 99.9 %";
  if (probability < 0.001) return "< 0.1 %";
  return fixed(probability * 100.0, 1) + " %";
}

}  // namespace cutback::print

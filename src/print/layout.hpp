#pragma once
// Setting text in 80 columns.

#include <string>
#include <string_view>
#include <vector>

#include "cutback/print/print.hpp"

namespace cutback::print {

inline constexpr std::size_t k_columns = 80;

/// `text` as lines of less than `columns`: the first begins with `first`, the others with as many
/// spaces. A word longer than a line is broken.
std::string wrapped(std::string_view first, std::string_view text, std::size_t columns = k_columns);

/// `text` shortened to `width` columns with a mark, or filled up with spaces.
std::string cell(std::string_view text, std::size_t width);
std::string right(std::string_view text, std::size_t width);

/// The text as a line, without spaces at its end.
std::string line_of(std::string text);

/// A heading in capitals on a line of its own.
std::string heading(std::string_view words, const Style& style);

/// A heading and one line of text for each of `lines`; nothing where there is none.
std::string bullets(std::string_view words, const std::vector<std::string>& lines,
                    const Style& style);

/// The verdict's word, in capitals and coloured where colour is asked for, filled to `width`
/// (0: as long as it is).
std::string verdict_word(Verdict verdict, const Style& style, std::size_t width);

/// "+0.93", "-0.40" [mm], rounded towards the limit so that no margin looks larger than it is.
std::string margin_text(double margin_mm);

/// A probability as "> 99.9 %", "< 0.1 %" or with one decimal.
std::string probability_text(double probability);

}  // namespace cutback::print

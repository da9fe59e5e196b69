#pragma once
// How many columns of a terminal a text takes. No locale.

#include <cstddef>
#include <string_view>

namespace cutback {

struct Glyph {
  std::size_t bytes;
  std::size_t columns;  ///< 0 of a mark that is set on the letter before, 2 of a wide one
};

/// Of UTF-8 text that is not empty. Bytes that are no UTF-8 count one column each.
/// @source Unicode 14.0, UAX #11 (East Asian Width); general categories Mn and Me
[[nodiscard]] Glyph first_glyph(std::string_view text);

/// Of all of it, on one line.
[[nodiscard]] std::size_t columns_of(std::string_view text);

/// The longest beginning of `text` that takes `width` columns at most.
[[nodiscard]] std::string_view first_columns(std::string_view text, std::size_t width);

}  // namespace cutback

#pragma once
// How wide the terminal is, and text broken to fit it.

#include <cstddef>
#include <string>
#include <string_view>

namespace cutback::cli {

/// Columns of the terminal behind a descriptor; 0 where it is none.
[[nodiscard]] std::size_t terminal_columns(int descriptor);

/// Its lines; 0 where it is none.
[[nodiscard]] std::size_t terminal_rows(int descriptor);

/// `text` broken at spaces into lines of at most `columns`, those after the first moved in by
/// `indent`. A word that is longer keeps its line. With 0 columns nothing is broken.
[[nodiscard]] std::string folded(std::string_view text, std::size_t columns,
                                 std::size_t indent = 2);

}  // namespace cutback::cli

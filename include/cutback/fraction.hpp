#pragma once
// Figures as a tape or a ruler shows them.

#include <optional>
#include <string_view>

namespace cutback {

/// A figure and the smallest difference that its notation can show.
struct WrittenFigure {
  double value = 0.0;
  double step = 1.0;
};

/// Reads `2.5`, `19/32`, `1 1/4`: 2.5 shows tenths, 19/32 thirty-seconds.
/// @return nothing for anything else, or a fraction of nothing
[[nodiscard]] std::optional<WrittenFigure> parse_written(std::string_view text);

}  // namespace cutback

#pragma once
// A line from the terminal, with editing and history (libedit): of the full program alone.

#include <optional>
#include <string>

namespace cutback::cli {

/// @return nothing at the end of input, and where Ctrl-C was typed
[[nodiscard]] std::optional<std::string> read_line(const std::string& prompt);

}  // namespace cutback::cli

#pragma once
// A gland list begun: a template, or the figures off one packet after another.

#include <string>

#include "cli/runtime.hpp"

namespace cutback::cli {

/// Writes a list to `path`, where no file may be yet. Where answers come from a terminal or a pipe
/// the glands that they tell are in it; without any it is a template.
/// @return exit status
[[nodiscard]] int new_gland_list(const std::string& path, const Runtime& runtime);

/// Asks for the figures that makers do not print, to be taken once from the gland in hand, and
/// puts them into the list: everything else in it stays as it is.
/// @return exit status
[[nodiscard]] int measure_gland(const std::string& path, const std::string& part,
                                const Runtime& runtime);

}  // namespace cutback::cli

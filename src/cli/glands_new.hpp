#pragma once
// A gland list begun: a template, or the figures off one packet after another.

#include <string>

#include "cli/runtime.hpp"

namespace cutback::cli {

/// Begins a list at `path`, or goes on with the one that is there: the glands that answers from a
/// terminal or a pipe tell go behind its last, each as soon as it is whole; one that is not is kept
/// to be gone on with. Without any answer a new list is a template.
/// @return exit status
/// @throws InputError where the file is there and no gland list
[[nodiscard]] int new_gland_list(const std::string& path, const Runtime& runtime);

/// Asks for the figures that makers do not print, to be taken once from the gland in hand, and
/// puts them into the list: everything else in it stays as it is.
/// @return exit status
[[nodiscard]] int measure_gland(const std::string& path, const std::string& part,
                                const Runtime& runtime);

}  // namespace cutback::cli

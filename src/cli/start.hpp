#pragma once
// From main() to run(): the real environment, and the way from `cutback` to `cutback-full`.

#include "cli/extras.hpp"

namespace cutback::cli {

/// @param extras  null in `cutback`
/// @param build   of this program: the same in both where they were built from the same sources
/// @return the exit status
int start(int argc, char** argv, const Extras* extras, const char* build) noexcept;

}  // namespace cutback::cli

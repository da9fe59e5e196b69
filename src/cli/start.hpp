#pragma once
// From main() to run(): the real environment, and the way from `cutback` to `cutback-full`.

#include "cli/extras.hpp"

namespace cutback::cli {

/// @param extras  null in `cutback`
/// @return the exit status
int start(int argc, char** argv, const Extras* extras) noexcept;

}  // namespace cutback::cli

#pragma once
// cutback made: the register of finished ends.

#include "cli/commands.hpp"

namespace cutback::cli {

void add_made(CLI::App& app, Context& context);

}  // namespace cutback::cli

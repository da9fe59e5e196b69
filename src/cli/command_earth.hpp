#pragma once
// cutback earth: the armour as protective conductor.

#include "cli/commands.hpp"

namespace cutback::cli {

void add_earth(CLI::App& app, Context& context);

}  // namespace cutback::cli

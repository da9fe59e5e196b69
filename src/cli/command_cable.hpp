#pragma once
// cutback cable: a cable's layers and diameters from its construction.

#include "cli/commands.hpp"

namespace cutback::cli {

void add_cable(CLI::App& app, Context& context);

}  // namespace cutback::cli

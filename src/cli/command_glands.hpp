#pragma once
// cutback glands: check a gland list, and show what it covers.

#include "cli/commands.hpp"

namespace cutback::cli {

void add_glands(CLI::App& app, Context& context);

}  // namespace cutback::cli

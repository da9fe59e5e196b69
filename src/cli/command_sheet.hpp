#pragma once
// cutback sheet: the termination sheet of one end.

#include "cli/commands.hpp"

namespace cutback::cli {

void add_sheet(CLI::App& app, Context& context);

}  // namespace cutback::cli

#pragma once
// cutback rules: the tables of published values, with source and status.

#include "cli/commands.hpp"

namespace cutback::cli {

void add_rules(CLI::App& app, Context& context);

}  // namespace cutback::cli

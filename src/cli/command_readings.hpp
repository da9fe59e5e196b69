#pragma once
// cutback readings: what a set of readings says about a drum, measured or not.

#include "cli/commands.hpp"

namespace cutback::cli {

void add_readings(CLI::App& app, Context& context);

}  // namespace cutback::cli

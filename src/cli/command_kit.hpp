#pragma once
// `cutback kit`: the least set of glands that serves a schedule.

#include "cli/commands.hpp"

namespace cutback::cli {

void add_kit(CLI::App& app, Context& context);

}  // namespace cutback::cli

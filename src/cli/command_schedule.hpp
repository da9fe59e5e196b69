#pragma once
// `cutback schedule`: a gland for every end of a cable schedule.

#include "cli/commands.hpp"

namespace cutback::cli {

void add_schedule(CLI::App& app, Context& context);

}  // namespace cutback::cli

#pragma once
// cutback profile: what is remembered, what is in force and from where.

#include "cli/commands.hpp"

namespace cutback::cli {

void add_profile(CLI::App& app, Context& context);

}  // namespace cutback::cli

#pragma once
// cutback fit: one measured cable against a gland list.

#include "cli/commands.hpp"

namespace cutback::cli {

void add_fit(CLI::App& app, Context& context);

}  // namespace cutback::cli

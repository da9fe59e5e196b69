#pragma once
// cutback ask: led from the caliper to the answer.

#include "cli/commands.hpp"

namespace cutback::cli {

void add_ask(CLI::App& app, Context& context);

}  // namespace cutback::cli

#pragma once
// `cutback cards`: strip-length cards as PDF.

#include "cli/commands.hpp"

namespace cutback::cli {

void add_cards(CLI::App& app, Context& context);

}  // namespace cutback::cli

#pragma once
// The command line: parses, runs, and turns errors into messages and exit statuses.

#include <ostream>
#include <span>

#include "cli/runtime.hpp"

namespace cutback::cli {

/// The commands and their options. What is parsed goes into `context`.
void build_command_line(CLI::App& app, Context& context);

/// Runs the program. @param arguments  as main() gets them, the program's name first
/// @return an exit status of exit_code.hpp; never throws
int run(std::span<const char* const> arguments, std::ostream& out, std::ostream& err,
        const Environment& environment) noexcept;

}  // namespace cutback::cli

#pragma once
// Manual pages and completions for shells, from the options that --help prints.

#include <string>

namespace CLI {
class App;
}  // namespace CLI

namespace cutback::cli {

/// A manual page (section 1) of the program. @param program  with all its commands
[[nodiscard]] std::string manual_page(const CLI::App& program);
/// The same of one of its commands.
[[nodiscard]] std::string manual_page(const CLI::App& program, const CLI::App& command);

/// Scripts that complete commands, options, the words of an option and the kinds of its files.
[[nodiscard]] std::string bash_completion(const CLI::App& program);
[[nodiscard]] std::string zsh_completion(const CLI::App& program);
[[nodiscard]] std::string fish_completion(const CLI::App& program);

}  // namespace cutback::cli

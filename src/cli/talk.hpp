#pragma once
// What a dialogue says, and what is typed: at a terminal with a line editor, else from a pipe.

#include <cstddef>
#include <optional>
#include <ostream>
#include <string>
#include <string_view>

#include "cli/runtime.hpp"

namespace cutback::cli {

/// The two ways of a dialogue. Where the result itself goes to stdout, it is said on stderr.
class Talk {
 public:
  explicit Talk(const Runtime& runtime);

  void say(std::string_view text, std::size_t indent = 2);
  /// A command to be copied: broken as a shell goes on.
  void copy(std::string_view line);
  /// Lines that keep their spaces where the terminal is wide enough for them.
  void show(std::string_view lines);
  /// @return nothing where no more comes
  [[nodiscard]] std::optional<std::string> hear();

 private:
  const Runtime& runtime_;
  std::ostream& out_;
  std::size_t columns_;
  bool edited_;
};

}  // namespace cutback::cli

#pragma once
// What a dialogue says, and what is typed: at a terminal with a line editor, else from a pipe.

#include <array>
#include <csignal>
#include <cstddef>
#include <optional>
#include <ostream>
#include <string>
#include <string_view>

#include "cli/runtime.hpp"

namespace cutback::cli {

/// Ctrl-C, a terminal that is closed and an end from outside: the line that is being read ends, or
/// the next one, so that what was told can be kept.
class StopsReading {
 public:
  StopsReading();
  StopsReading(const StopsReading&) = delete;
  StopsReading& operator=(const StopsReading&) = delete;
  ~StopsReading();

 private:
  static constexpr std::array k_signals{SIGINT, SIGHUP, SIGTERM};
  std::array<struct sigaction, k_signals.size()> before_{};
};

/// The two ways of a dialogue. Where the result itself goes to stdout, it is said on stderr.
class Talk {
 public:
  explicit Talk(const Runtime& runtime);

  void say(std::string_view text, std::size_t indent = 2);
  /// A command to be copied: broken as a shell goes on.
  void copy(std::string_view line);
  /// Lines that keep their spaces where the terminal is wide enough for them.
  void show(std::string_view lines);
  /// Lines of the terminal that a text takes; 0 where no terminal shows it.
  [[nodiscard]] std::size_t lines_of(std::string_view text) const;
  /// Columns that a line may have.
  [[nodiscard]] std::size_t columns() const { return columns_; }
  /// Lines of the terminal as it is now; 0 where there is none.
  [[nodiscard]] std::size_t rows() const;
  /// @return nothing where no more comes
  [[nodiscard]] std::optional<std::string> hear();

 private:
  [[nodiscard]] std::optional<std::string> read();

  StopsReading stops_;
  const Runtime& runtime_;
  std::ostream& out_;
  std::size_t columns_;
  bool edited_;
};

}  // namespace cutback::cli

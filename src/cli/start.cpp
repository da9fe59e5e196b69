#include "cli/start.hpp"

#include <unistd.h>
#include <cerrno>
#include <csignal>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <iostream>

#include "cli/app.hpp"
#include "cli/terminal.hpp"
#include "cutback/error.hpp"

namespace cutback::cli {
namespace {

constexpr const char* k_full = "cutback-full";

std::optional<std::string> variable(const char* name) {
  const char* value = std::getenv(name);
  if (value == nullptr || *value == '\0') return std::nullopt;
  return value;
}

/// As the XDG Base Directory Specification 0.8 has it.
std::optional<std::string> profile_path() {
  const auto config = variable("XDG_CONFIG_HOME");
  if (config && config->front() == '/') return *config + "/cutback/profile.json";
  const auto home = variable("HOME");
  if (!home) return std::nullopt;
  return *home + "/.config/cutback/profile.json";
}

/// Beside this program in a build folder; where libexec programs are once it is installed.
std::filesystem::path full_program() {
  std::error_code error;
  const auto folder = std::filesystem::read_symlink("/proc/self/exe", error).parent_path();
  const auto beside = folder / k_full;
  if (std::filesystem::exists(beside, error)) return beside;
  return folder / CUTBACK_FROM_BIN_TO_LIBEXEC / k_full;
}

/// Does not return: this process goes on as the full program.
[[noreturn]] void become_full(char** argv) {
  const std::string path = full_program().lexically_normal().string();
  ::execv(path.c_str(), argv);
  throw FileError(
      Fault{.code = ErrorCode::cannot_read,
            .what = "the program for pages, spreadsheets and sharing cannot be started",
            .where = path,
            .given = {},
            .allowed = {},
            .hint = std::string(std::strerror(errno)) + "; install the whole of cutback again"});
}

}  // namespace

int start(int argc, char** argv, const Extras* extras) noexcept {
  const Environment environment{
      .glands = variable("CUTBACK_GLANDS"),
      .data = variable("CUTBACK_DATA"),
      .profile = profile_path(),
      .source_date_epoch = variable("SOURCE_DATE_EPOCH"),
      .no_colour = variable("NO_COLOR").has_value(),
      .in = &std::cin,
      .in_is_terminal = isatty(STDIN_FILENO) == 1,
      .out_is_terminal = isatty(STDOUT_FILENO) == 1,
      .out_columns = terminal_columns(STDOUT_FILENO),
      .err_is_terminal = isatty(STDERR_FILENO) == 1,
      .err_columns = terminal_columns(STDERR_FILENO),
      .extras = extras,
      .become_full = [argv] { become_full(argv); },
      // Where it is closed from the start nothing was written to it.
      .close_out = [] { return ::close(STDOUT_FILENO) == 0 || errno == EBADF; },
  };
#ifdef SIGXFSZ
  std::signal(SIGXFSZ, SIG_IGN);  // a file beyond the user's limit is an error of the write
#endif
  return run({argv, static_cast<std::size_t>(argc)}, std::cout, std::cerr, environment);
}

}  // namespace cutback::cli

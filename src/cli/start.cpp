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
// What the first program tells the second: its build. It is not asked for, and says nothing to any
// other program.
constexpr const char* k_first_build = "CUTBACK_FIRST_BUILD";

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

FileError no_full_program(const std::string& what, const std::string& path, std::string why) {
  return FileError(Fault{.code = ErrorCode::cannot_read,
                         .what = what,
                         .where = path,
                         .given = {},
                         .allowed = {},
                         .hint = std::move(why)});
}

/// Beside this program in a build folder; where libexec programs are once it is installed. Never in
/// the current folder or on PATH: what lies there may be anybody's.
/// @throws FileError where the system does not say where this program lies
std::filesystem::path full_program() {
  constexpr const char* k_self = "/proc/self/exe";
  std::error_code error;
  const auto folder = std::filesystem::read_symlink(k_self, error).parent_path();
  if (error || !folder.is_absolute()) {
    throw no_full_program("the program for pages, spreadsheets and sharing cannot be found", k_self,
                          "mount /proc, or start " + std::string(k_full) + " itself");
  }
  const auto beside = folder / k_full;
  if (std::filesystem::exists(beside, error)) return beside;
  return folder / CUTBACK_FROM_BIN_TO_LIBEXEC / k_full;
}

/// Does not return: this process goes on as the full program.
[[noreturn]] void become_full(char** argv, const char* build) {
  const std::string path = full_program().lexically_normal().string();
  if (std::getenv(k_first_build) != nullptr) {
    throw no_full_program(
        "this is no program for pages, spreadsheets and sharing, but a copy of "
        "the one without",
        path, "install the whole of cutback again");
  }
  ::setenv(k_first_build, build, 1);
  ::execv(path.c_str(), argv);
  const std::string why = std::strerror(errno);
  ::unsetenv(k_first_build);
  throw no_full_program("the program for pages, spreadsheets and sharing cannot be started", path,
                        why + "; install the whole of cutback again");
}

/// That the program which this one goes on for is of the same build. @throws FileError
void check_first(const char* build) {
  const auto first = variable(k_first_build);
  ::unsetenv(k_first_build);
  if (!first || *first == build) return;
  throw no_full_program("cutback and " + std::string(k_full) + " are of two builds",
                        "build " + *first + " and build " + build,
                        "install the whole of cutback again");
}

}  // namespace

int start(int argc, char** argv, const Extras* extras, const char* build) noexcept {
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
      .become_full = [argv, build] { become_full(argv, build); },
      .check_build =
          [extras, build] {
            if (extras != nullptr) check_first(build);
          },
      // Where it is closed from the start nothing was written to it.
      .close_out = [] { return ::close(STDOUT_FILENO) == 0 || errno == EBADF; },
  };
#ifdef SIGXFSZ
  std::signal(SIGXFSZ, SIG_IGN);  // a file beyond the user's limit is an error of the write
#endif
  return run({argv, static_cast<std::size_t>(argc)}, std::cout, std::cerr, environment);
}

}  // namespace cutback::cli

#include <unistd.h>
#include <cstdlib>
#include <iostream>

#include "cli/app.hpp"

namespace {

std::optional<std::string> variable(const char* name) {
  const char* value = std::getenv(name);
  if (value == nullptr || *value == '\0') return std::nullopt;
  return value;
}

}  // namespace

int main(int argc, char** argv) {
  const cutback::cli::Environment environment{
      .glands = variable("CUTBACK_GLANDS"),
      .data = variable("CUTBACK_DATA"),
      .no_colour = variable("NO_COLOR").has_value(),
      .out_is_terminal = isatty(STDOUT_FILENO) == 1,
      .err_is_terminal = isatty(STDERR_FILENO) == 1,
  };
  return cutback::cli::run({argv, static_cast<std::size_t>(argc)}, std::cout, std::cerr,
                           environment);
}

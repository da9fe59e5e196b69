// Any lines as the words of a command line: a status of the contract, and never that of a bug.
// Options that write files are left out, and so are names of folders.
#include <array>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include "cli/app.hpp"
#include "cli/exit_code.hpp"

using namespace cutback;

namespace {

bool is_left_out(std::string_view word) {
  constexpr std::array<std::string_view, 6> k_out{"--output", "--takeoff",      "--exceptions",
                                                  "--xlsx",   "--save-columns", "/"};
  for (const std::string_view out : k_out) {
    if (word.find(out) != std::string_view::npos) return true;
  }
  return word == "-";
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  std::vector<std::string> words{"cutback"};
  std::string word;
  for (std::size_t i = 0; i <= size; ++i) {
    if (i < size && data[i] == '\0') return 0;  // no argument holds one
    if (i < size && data[i] != '\n') {
      word += static_cast<char>(data[i]);
      continue;
    }
    if (is_left_out(word)) return 0;
    words.push_back(std::exchange(word, {}));
  }
  std::vector<const char*> arguments;
  for (const std::string& each : words) arguments.push_back(each.c_str());
  std::ostringstream out;
  std::ostringstream err;
  cli::Environment environment;
  environment.become_full = [] {
    throw FileError(Fault{.code = ErrorCode::cannot_read, .what = "not here"});
  };
  if (cli::run(arguments, out, err, environment) == cli::k_exit_bug) std::abort();
  return 0;
}

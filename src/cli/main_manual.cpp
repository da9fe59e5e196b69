// Writes the manual pages and completions into a folder: cutback_manual FOLDER

#include <CLI/CLI.hpp>
#include <fstream>
#include <iostream>

#include "cli/app.hpp"
#include "cli/manual.hpp"

int main(int argc, char** argv) {
  if (argc != 2) {
    std::cerr << "usage: cutback_manual FOLDER\n";
    return 2;
  }
  using namespace cutback::cli;
  const std::string folder = std::string(argv[1]) + "/";
  bool written = true;
  const auto write = [&](const std::string& name, const std::string& text) {
    std::ofstream file(folder + name, std::ios::binary);
    file << text << std::flush;
    written = written && file.good();
  };
  CLI::App program;
  Context context;
  build_command_line(program, context);
  write("cutback.1", manual_page(program));
  for (const CLI::App* command : program.get_subcommands([](const CLI::App*) { return true; })) {
    write("cutback-" + command->get_name() + ".1", manual_page(program, *command));
  }
  write("cutback.bash", bash_completion(program));
  write("_cutback", zsh_completion(program));
  write("cutback.fish", fish_completion(program));
  return written ? 0 : 3;
}

#include "cli/build.hpp"
#include "cli/start.hpp"

int main(int argc, char** argv) {
  return cutback::cli::start(argc, argv, nullptr, cutback::cli::build_identifier());
}

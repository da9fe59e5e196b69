#include "cli/build.hpp"
#include "cli/extras.hpp"
#include "cli/start.hpp"

int main(int argc, char** argv) {
  return cutback::cli::start(argc, argv, &cutback::cli::all_extras(),
                             cutback::cli::build_identifier());
}

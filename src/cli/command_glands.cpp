#include "cli/command_glands.hpp"

#include <CLI/CLI.hpp>
#include <memory>

#include "cli/exit_code.hpp"
#include "cli/runtime.hpp"
#include "cutback/gland/coverage.hpp"
#include "cutback/io/gland_list.hpp"
#include "cutback/print/glands.hpp"

namespace cutback::cli {
namespace {

constexpr const char* k_description =
    "Check a gland list (CSV), and show which sheaths its outer seals take and which\n"
    "none takes. Every fault of the list is named with line, column, value and what\n"
    "is allowed. Without a file: the list in use (CUTBACK_GLANDS, else the built-in\n"
    "invented one).";

constexpr const char* k_example = "Example:\n  cutback glands stock.csv";

int run_glands(const std::string& path, const Runtime& runtime) {
  const tables::Standards standards = runtime.standards();
  gland::GlandList list;
  if (path.empty()) {
    list = runtime.glands(standards);
  } else {
    list = io::load_gland_list(path);
    runtime.warn_of(list, standards);
  }
  const gland::Coverage coverage = gland::coverage(list.glands);
  const print::Style style{.colour = runtime.colour()};
  runtime.emit(runtime.common.json ? print::glands_json(list, coverage)
                                   : print::glands_text(list, coverage, style));
  return k_exit_fits;
}

}  // namespace

void add_glands(CLI::App& app, Context& context) {
  const auto path = std::make_shared<std::string>();
  CLI::App* command = app.add_subcommand("glands", k_description);
  command->footer(k_example);
  command->add_option("FILE", *path, "The gland list; its columns are in data/README.md");
  add_common(*command, context.common, Reads::no_glands);
  command->callback([path, &context] {
    context.command.run = [path](Runtime& runtime) { return run_glands(*path, runtime); };
  });
}

}  // namespace cutback::cli

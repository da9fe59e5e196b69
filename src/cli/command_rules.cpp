#include "cli/command_rules.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <memory>

#include "cli/exit_code.hpp"
#include "cli/runtime.hpp"
#include "cutback/error.hpp"
#include "cutback/nearest.hpp"
#include "cutback/print/rules.hpp"

namespace cutback::cli {
namespace {

constexpr const char* k_description =
    "Show the tables of published values behind the results, each with its source\n"
    "and how far it can be trusted: all of them by name, or one in full.";

constexpr const char* k_example = "Example:\n  cutback rules flameproof_entry_2007";

const tables::Table& named(const tables::Standards& standards, const std::string& name) {
  const auto& all = standards.tables;
  const auto it =
      std::find_if(all.begin(), all.end(), [&](const tables::Table& t) { return t.id == name; });
  if (it != all.end()) return *it;
  std::vector<std::string_view> ids;
  for (const tables::Table& table : all) ids.push_back(table.id);
  const std::string hint = did_you_mean(name, ids);
  throw InputError(Fault{.code = ErrorCode::unknown_name,
                         .what = "there is no table of this name",
                         .where = "NAME",
                         .given = name,
                         .allowed = {},
                         .hint = hint.empty() ? "\"cutback rules\" lists them" : hint});
}

int run_rules(const std::string& name, const Runtime& runtime) {
  const tables::Standards standards = runtime.standards();
  const print::Style style{.colour = runtime.colour()};
  const bool json = runtime.common.json;
  if (name.empty()) {
    runtime.emit(json ? print::rules_json(standards) : print::rules_text(standards, style));
  } else {
    const tables::Table& table = named(standards, name);
    runtime.emit(json ? print::rule_table_json(table) : print::rule_table_text(table, style));
  }
  return k_exit_fits;
}

}  // namespace

void add_rules(CLI::App& app, Context& context) {
  const auto name = std::make_shared<std::string>();
  CLI::App* command = app.add_subcommand("rules", k_description);
  command->footer(k_example);
  command->add_option("NAME", *name, "The table to print in full");
  add_common(*command, context.common, Reads::no_glands);
  command->callback([name, &context] {
    context.command.run = [name](Runtime& runtime) { return run_rules(*name, runtime); };
  });
}

}  // namespace cutback::cli

#include "cli/command_profile.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <array>
#include <filesystem>
#include <memory>
#include <nlohmann/json.hpp>
#include <system_error>
#include <utility>

#include "cli/exit_code.hpp"
#include "cli/runtime.hpp"
#include "cutback/error.hpp"
#include "cutback/io/files.hpp"
#include "cutback/io/profile_file.hpp"
#include "cutback/text.hpp"

namespace cutback::cli {
namespace {

constexpr const char* k_description =
    "What is remembered of gland lists, supplier, caliper, rules, slack and adaptor:\n"
    "what is in force, and from where. An option comes first, then the environment,\n"
    "then this. supplier=NAME names the list whose glands come first among those that\n"
    "fit at one price; several lists are remembered as glands='a.csv;b.csv'.";

constexpr const char* k_example =
    "Example: remember a gland list and a caliper that reads hundredths, then look:\n"
    "  cutback profile --set glands=stock.csv --set step_mm=0.01\n"
    "  cutback profile";

struct ProfileOptions {
  std::vector<std::string> set;
  std::vector<std::string> forget;
};

/// One value that is in force.
struct InForce {
  std::string_view key;
  std::string value;  ///< empty: the default of whoever asks
  const char* from;
};

std::vector<InForce> in_force(const io::Profile& profile, const Runtime& runtime) {
  std::vector<InForce> list;
  for (const std::string_view key : io::profile_keys()) {
    const auto remembered = io::text_in_profile(profile, key);
    if (key == "glands" && !runtime.common.glands.empty()) {
      list.push_back({key, joined(runtime.common.glands, " "), "option"});
    } else if (key == "glands" && runtime.environment.glands) {
      list.push_back({key, *runtime.environment.glands, "environment"});
    } else if (key == "supplier" && !runtime.common.supplier.empty()) {
      list.push_back({key, runtime.common.supplier, "option"});
    } else if (remembered) {
      list.push_back({key, *remembered, "profile"});
    } else {
      list.push_back({key, "", "default"});
    }
  }
  return list;
}

/// What stands for a key that nothing decides.
std::string_view usual(std::string_view key) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 8> k_usual{
      {{"glands", "built-in, invented"},
       {"prefer", "price"},
       {"units", "mm"},
       {"step_mm", "0.05"},
       {"mpe_mm", "by the step"},
       {"zero_mm", "0"},
       {"rules", "strict"},
       {"slack_mm", "0"}}};
  for (const auto& [name, value] : k_usual) {
    if (name == key) return value;
  }
  return "none";
}

std::string as_text(const std::vector<InForce>& list, const std::string& path) {
  std::string text = path.empty() ? "Nothing is remembered.\n" : "Remembered in " + path + ".\n";
  constexpr std::size_t k_key = 20;
  for (const InForce& each : list) {
    std::string line = "  " + std::string(each.key);
    line.resize(std::max(line.size() + 1, k_key), ' ');
    text += line + (each.value.empty() ? std::string(usual(each.key)) : each.value) + "  (" +
            each.from + ")\n";
  }
  return text;
}

std::string as_json(const std::vector<InForce>& list) {
  nlohmann::ordered_json result;
  result["cutback"] = CUTBACK_VERSION;
  result["format"] = 1;
  result["in_force"] = nlohmann::ordered_json::array();
  for (const InForce& each : list) {
    nlohmann::ordered_json item;
    item["key"] = each.key;
    item["value"] =
        each.value.empty() ? nlohmann::ordered_json() : nlohmann::ordered_json(each.value);
    item["from"] = each.from;
    result["in_force"].push_back(std::move(item));
  }
  return result.dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace) + "\n";
}

/// Puts `KEY=VALUE` in; the gland list is found again from any folder.
void set(io::Profile& profile, const std::string& word) {
  const std::size_t equals = word.find('=');
  if (equals == std::string::npos || equals + 1 == word.size()) {
    throw InputError(make_fault(ErrorCode::bad_syntax, "a value is set as KEY=VALUE", "--set", word,
                                "for example step_mm=0.01", "--forget KEY takes one away"));
  }
  const std::string key = word.substr(0, equals);
  std::string value = word.substr(equals + 1);
  if (key == "glands") {
    std::vector<std::string> paths;
    for (const std::string& path : io::lists_of({.glands = value})) {
      paths.push_back(std::filesystem::absolute(path).lexically_normal().string());
    }
    value = joined(paths, ";");
  }
  io::set_in_profile(profile, key, value, "--set");
}

int run_profile(const ProfileOptions& options, Runtime& runtime) {
  io::Profile profile;
  std::string path = runtime.common.profile.empty() ? runtime.environment.profile.value_or("")
                                                    : runtime.common.profile;
  std::error_code error;
  const bool there = !path.empty() && std::filesystem::exists(path, error);
  const bool writes = !options.set.empty() || !options.forget.empty();
  // A file that is named must be there, unless it is about to be made.
  if (there || (!writes && !runtime.common.profile.empty())) profile = io::load_profile(path);
  if (writes) {
    std::vector<Fault> faults;
    const auto each = [&](const std::vector<std::string>& words, const auto& act) {
      for (const std::string& word : words) {
        try {
          act(word);
        } catch (const InputError& fault) {
          faults.insert(faults.end(), fault.faults().begin(), fault.faults().end());
        }
      }
    };
    each(options.set, [&](const std::string& word) { set(profile, word); });
    each(options.forget,
         [&](const std::string& key) { io::set_in_profile(profile, key, "", "--forget"); });
    if (!faults.empty()) throw InputError(std::move(faults));
    if (path.empty()) {
      throw InputError(make_fault(ErrorCode::missing, "there is no folder to remember in",
                                  "--profile", "", "a file", "set HOME or XDG_CONFIG_HOME"));
    }
    for (const std::string& list : io::lists_of(profile)) {
      static_cast<void>(io::WholeFile(list));  // it can be read
    }
    std::filesystem::create_directories(std::filesystem::path(path).parent_path(), error);
    io::write_file(path, io::write_profile(profile));
    runtime.warn("remembered in " + path);
  } else if (!there) {
    path.clear();
  }
  const std::vector<InForce> list = in_force(profile, runtime);
  runtime.emit(runtime.common.json ? as_json(list) : as_text(list, path));
  return k_exit_fits;
}

}  // namespace

void add_profile(CLI::App& app, Context& context) {
  const auto options = std::make_shared<ProfileOptions>();
  CLI::App* command = app.add_subcommand("profile", k_description);
  command->footer(k_example);
  command->add_option("--set", options->set, "Remember this; as often as needed")
      ->type_name("KEY=VALUE")
      ->group("Profile");
  command->add_option("--forget", options->forget, "Forget this; as often as needed")
      ->type_name("KEY")
      ->group("Profile");
  add_common(*command, context.common, Reads::glands);
  command->callback([options, &context] {
    context.command.run = [options](Runtime& runtime) { return run_profile(*options, runtime); };
  });
}

}  // namespace cutback::cli

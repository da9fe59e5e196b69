#pragma once
// The options that describe one end, made from the field table, for every command that asks for
// one.

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/error.hpp"
#include "cutback/fit/fit.hpp"
#include "cutback/job/input.hpp"

namespace CLI {
class App;
}  // namespace CLI

namespace cutback::cli {

/// What was typed, one text for each field that has an option.
class JobOptions {
 public:
  /// Adds the options of all fields whose section is in `sections`, grouped by section.
  void add(CLI::App& command, std::vector<std::string_view> sections);

  /// Adds the options of the fields with these keys alone.
  void add_keys(CLI::App& command, std::vector<std::string_view> keys);

  /// Puts what was typed into `job`, over what it holds. @return every fault
  /// @param taken  words of the trade and what each was taken for are put behind it
  [[nodiscard]] std::vector<Fault> fill(job::JobInput& job, std::vector<std::string>& taken) const;

 private:
  void add_field(CLI::App& command, const job::Field& field);

  struct Slot {
    const job::Field* field;
    std::string text;
    bool given = false;
  };
  std::vector<std::unique_ptr<Slot>> slots_;
};

void add_prefer(CLI::App& command, std::string& word);
/// --units, for what is printed as text.
void add_units(CLI::App& command, std::string& word);
/// Whether lengths are shown in inches as well; a word that is none is added to `faults`.
[[nodiscard]] bool parse_units(const std::string& word, std::vector<Fault>& faults);
/// --prefer; a word that is none is added to `faults`.
[[nodiscard]] fit::Prefer parse_prefer(const std::string& word, std::vector<Fault>& faults);

}  // namespace cutback::cli

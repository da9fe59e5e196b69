#include "cli/job_options.hpp"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <array>

#include "cutback/error.hpp"
#include "cutback/job/field_text.hpp"
#include "cutback/nearest.hpp"
#include "cutback/written/written.hpp"

namespace cutback::cli {
namespace {

std::string group_of(std::string_view section) {
  if (section.empty()) return "Names";
  if (section == "cable") return "Cable";
  if (section == "entry") return "Entry";
  if (section == "area") return "Area and enclosure";
  if (section == "tails") return "Tails";
  return "Earth fault";
}

std::string type_of(const job::Field& field) {
  switch (field.kind) {
    case job::FieldKind::number:
    case job::FieldKind::whole:
      return field.allowed == "cores" ? "N" : std::string(field.allowed);
    case job::FieldKind::words:
      return "WORD";
    case job::FieldKind::yes_no:
      return "yes|no";
    case job::FieldKind::readings:
      return "READINGS";
    case job::FieldKind::text:
      return "TEXT";
  }
  return "";
}

std::string help_of(const job::Field& field) {
  std::string help(field.help);
  if (field.kind == job::FieldKind::words) help += ": " + job::either_of(job::words_of(field));
  return help;
}

}  // namespace

void JobOptions::add(CLI::App& command, std::vector<std::string_view> sections) {
  for (const job::Field& field : job::fields()) {
    if (std::find(sections.begin(), sections.end(), field.section) == sections.end()) continue;
    add_field(command, field);
  }
}

void JobOptions::add_keys(CLI::App& command, std::vector<std::string_view> keys) {
  for (const job::Field& field : job::fields()) {
    if (std::find(keys.begin(), keys.end(), field.key) != keys.end()) add_field(command, field);
  }
}

void JobOptions::add_field(CLI::App& command, const job::Field& field) {
  if (field.option.empty()) return;
  slots_.push_back(std::make_unique<Slot>(Slot{&field, {}}));
  Slot* slot = slots_.back().get();
  command
      .add_option_function<std::string>(
          std::string(field.option),
          [slot](const std::string& text) {
            slot->text = text;
            slot->given = true;
          },
          help_of(field))
      ->type_name(type_of(field))
      ->group(group_of(field.section));
}

std::vector<Fault> JobOptions::fill(job::JobInput& job, std::vector<std::string>& taken) const {
  std::vector<Fault> faults;
  std::vector<written::Told> told;
  const auto add = [&](const std::vector<Fault>& more) {
    faults.insert(faults.end(), more.begin(), more.end());
  };
  for (const auto& slot : slots_) {
    if (!slot->given) continue;
    const job::Field& field = *slot->field;
    try {
      const written::Taken value =
          written::take_typed(written::asked_of(field), slot->text, field.option);
      add(set_from_text(job, field, value.text, field.option));
      if (!value.says.empty()) taken.push_back(std::string(field.option) + " " + value.says);
      if (!value.also.empty()) told.push_back({value.also, field.option, slot->text});
    } catch (const InputError& error) {
      add(error.faults());
    }
  }
  add(written::put_told(told, job));
  for (const auto& slot : slots_) {
    if (!slot->given || slot->field->key != "protection") continue;
    add(written::faults_of_plate(slot->text, slot->field->option, job));
  }
  return faults;
}

void add_prefer(CLI::App& command, std::string& word) {
  command
      .add_option("--prefer", word,
                  "Order of the glands that fit: price, margin or stock (default price)")
      ->type_name("WORD")
      ->group("Order");
}

void add_units(CLI::App& command, std::string& word) {
  command
      .add_option("--units", word,
                  "Units of what is shown: mm, or in for every length in inches as well "
                  "(default mm)")
      ->type_name("WORD")
      ->group("Order");
}

bool parse_units(const std::string& word, std::vector<Fault>& faults) {
  if (word.empty() || word == "mm") return false;
  if (word != "in") {
    constexpr std::array<std::string_view, 2> k_words{"mm", "in"};
    faults.push_back(make_fault(ErrorCode::bad_value, "not a unit of lengths", "--units", word,
                                "mm or in", did_you_mean(word, k_words)));
  }
  return word == "in";
}

fit::Prefer parse_prefer(const std::string& word, std::vector<Fault>& faults) {
  if (word == "margin") return fit::Prefer::margin;
  if (word == "stock") return fit::Prefer::stock;
  constexpr std::array<std::string_view, 3> k_words{"price", "margin", "stock"};
  if (!word.empty() && word != "price") {
    faults.push_back({.code = ErrorCode::bad_value,
                      .what = "not a choice",
                      .where = "--prefer",
                      .given = word,
                      .allowed = "price, margin or stock",
                      .hint = did_you_mean(word, k_words)});
  }
  return fit::Prefer::price;
}

}  // namespace cutback::cli

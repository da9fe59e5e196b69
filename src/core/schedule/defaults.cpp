#include "cutback/schedule/defaults.hpp"

#include <algorithm>
#include <array>
#include <optional>

#include "core/schedule/meaning.hpp"
#include "cutback/job/field_text.hpp"
#include "cutback/nearest.hpp"

namespace cutback::schedule {
namespace {

constexpr const char* k_option = "--default";

/// Whether every row would get the same name, or cells that belong to several columns.
bool is_refused(const Meaning& meaning) {
  constexpr std::array<std::string_view, 6> k_refused{"tag",       "end",       "cable_size",
                                                      "ambient_c", "area_name", "drawing"};
  if (meaning.field == nullptr) return true;
  return std::find(k_refused.begin(), k_refused.end(), meaning.field->key) != k_refused.end();
}

/// Whether the value fills another column than its own: 4C x 16 for cores.
bool fills_others(const job::JobInput& input, const job::Field& own) {
  const auto fields = job::fields();
  return std::any_of(fields.begin(), fields.end(), [&](const job::Field& field) {
    return field.key != own.key && job::text_of(input, field).has_value();
  });
}

std::vector<Fault> check_value(const Format& format, const Meaning& meaning,
                               const std::string& text) {
  const job::Field& field = *meaning.field;
  Layout layout;
  layout.decimal = format.decimal;
  if (field.key == "quantity") {
    layout.quantity = 0;
    const std::string_view cells[] = {text};
    if (quantity_of(layout, cells)) return {};
    return {make_fault(ErrorCode::bad_number, "not a number of cables", "", text, "1 to 10000")};
  }
  if (field.key == "type") return {};  // what it names is looked up where the types are
  const Column column{.cell = Layout::k_none,
                      .heading = meaning.name(),
                      .side = meaning.side,
                      .field = &field,
                      .inches = false,
                      .metric = false};
  job::JobInput input;
  RowNotes notes;
  auto faults = set_cell(layout, {.text = text, .column = &column}, input, notes);
  if (!faults.empty()) return faults;
  if (fills_others(input, field)) {
    return {make_fault(ErrorCode::bad_value, "the value fills other columns as well", "", text,
                       job::allowed_text(field), "give each column a default of its own")};
  }
  if (job::text_of(input, field) || notes.no_estimate) return {};
  return {make_fault(ErrorCode::bad_value, "the value says nothing certain", "", text,
                     job::allowed_text(field))};
}

}  // namespace

std::vector<Fault> check_defaults(const Format& format) {
  std::vector<Fault> faults;
  std::vector<Meaning> seen;
  for (const OwnValue& each : format.defaults) {
    const std::string given = each.column + "=" + each.text;
    const auto meaning = own_meaning(plain_heading(each.column));
    if (!meaning) {
      const std::string hint = did_you_mean(each.column, column_names());
      faults.push_back(
          make_fault(ErrorCode::unknown_name, "a schedule has no such column", k_option, given, "",
                     hint.empty() ? "cutback schedule --list-columns names them" : hint));
      continue;
    }
    if (is_refused(*meaning)) {
      faults.push_back(make_fault(ErrorCode::bad_value, "this column takes no default", k_option,
                                  given, "a column of one value that is no name",
                                  "of a cable's cores and sizes give cores and csa_mm2"));
      continue;
    }
    if (std::find(seen.begin(), seen.end(), *meaning) != seen.end()) {
      faults.push_back(make_fault(ErrorCode::duplicate, "a column has two defaults", k_option,
                                  given, "", "leave one out"));
      continue;
    }
    seen.push_back(*meaning);
    for (Fault& fault : check_value(format, *meaning, each.text)) {
      fault.where = k_option;
      fault.given = given;
      faults.push_back(std::move(fault));
    }
  }
  if (format.defaults.size() > k_most_defaults) {
    faults.push_back(make_fault(ErrorCode::out_of_range, "too many defaults", k_option,
                                std::to_string(format.defaults.size()),
                                "at most " + std::to_string(k_most_defaults)));
  }
  return faults;
}

std::string defaults_text(std::span<const OwnValue> defaults, std::uint64_t used) {
  std::string text;
  for (std::size_t i = 0; i < defaults.size(); ++i) {
    if ((used >> i & 1U) == 0) continue;
    text += (text.empty() ? "" : "; ") + defaults[i].column + "=" + defaults[i].text;
  }
  return text;
}

void DefaultCounts::add(std::uint64_t used) {
  for (std::size_t i = 0; used != 0; ++i, used >>= 1U) {
    if ((used & 1U) == 0) continue;
    if (counts_.size() <= i) counts_.resize(i + 1);
    ++counts_[i];
  }
}

void DefaultCounts::add(const DefaultCounts& other) {
  if (counts_.size() < other.counts_.size()) counts_.resize(other.counts_.size());
  for (std::size_t i = 0; i < other.counts_.size(); ++i) counts_[i] += other.counts_[i];
}

}  // namespace cutback::schedule

#include "cutback/schedule/cable_types.hpp"

#include <algorithm>

#include "cutback/job/field_text.hpp"
#include "cutback/nearest.hpp"
#include "cutback/schedule/layout.hpp"
#include "cutback/text.hpp"

namespace cutback::schedule {
namespace {

/// Small letters, and no spaces.
std::string key_of(std::string_view name) {
  constexpr std::string_view k_no_break = "\xC2\xA0";
  std::string key;
  for (std::size_t i = 0; i < name.size(); ++i) {
    if (name.substr(i, 2) == k_no_break) {
      ++i;
      continue;
    }
    const char c = name[i];
    if (c >= '\0' && c <= ' ') continue;
    key += small_letter(c);
  }
  return key;
}

bool is_several(const std::optional<measure::Readings>& readings) {
  return readings &&
         (readings->places.size() > 1 || readings->places.front().readings_mm.size() > 1);
}

}  // namespace

const TypeValue* CableType::find(const job::Field& field) const {
  const auto found = std::find_if(values.begin(), values.end(),
                                  [&](const TypeValue& each) { return each.field == &field; });
  return found != values.end() ? &*found : nullptr;
}

std::vector<Fault> CableTypes::add(const Layout& layout, std::vector<std::string_view> cells,
                                   const std::string& place) {
  CableType type;
  type.name = tag_of(layout, cells);
  type.place = place;
  job::JobInput input;
  RowNotes notes;
  auto faults = put_cells(layout, layout.sources(Side::both), cells, {}, input, notes);
  for (const auto* const readings : {&input.sheath_od_mm, &input.bedding_mm, &input.armour_mm}) {
    if (!is_several(*readings)) continue;
    faults.push_back(make_fault(ErrorCode::contradiction, "a type has one figure for a diameter",
                                "type " + type.name, (*readings)->text, "one figure",
                                "several readings are those of one cable: write them in its row"));
  }
  if (input.evidence == measure::Evidence::measured) {
    faults.push_back(make_fault(ErrorCode::contradiction, "a type is not measured",
                                "type " + type.name, "evidence measured", "datasheet, estimated",
                                "write what was measured in the row of its cable"));
  }
  if (type.name.empty()) {
    faults.push_back(make_fault(ErrorCode::missing, "the type has no name", "", "", ""));
  }
  type.evidence = input.evidence.value_or(measure::Evidence::datasheet);
  input.evidence.reset();
  type.no_estimate = notes.no_estimate;
  for (const job::Field& field : job::fields()) {
    if (auto text = job::text_of(input, field)) type.values.push_back({&field, std::move(*text)});
  }
  if (faults.empty()) {
    const auto [at, fresh] = types_.try_emplace(key_of(type.name), type);
    if (!fresh) {
      faults.push_back(make_fault(ErrorCode::duplicate, "two types have one name", "", type.name,
                                  at->second.name + " on " + at->second.place,
                                  "upper case and spaces tell none apart; rename one"));
    }
  }
  for (Fault& fault : faults) {
    fault.where = place + (fault.where.empty() ? "" : ", " + fault.where);
  }
  for (const TypeValue& value : type.values) {
    if (std::find(fields_.begin(), fields_.end(), value.field) == fields_.end()) {
      fields_.push_back(value.field);
    }
  }
  return faults;
}

const CableType* CableTypes::find(std::string_view name) const {
  const auto found = types_.find(key_of(name));
  return found != types_.end() ? &found->second : nullptr;
}

std::string CableTypes::nearest(std::string_view name) const {
  Nearest nearest{std::string(name)};
  for (const auto& [key, type] : types_) nearest.offer(type.name);
  return nearest.best();
}

}  // namespace cutback::schedule

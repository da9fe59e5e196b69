#include "core/schedule/meaning.hpp"

#include <functional>
#include <map>
#include <utility>

namespace cutback::schedule {
namespace {

/// The field whose key, as a heading, is this.
const job::Field* field_of(std::string_view full) {
  static const auto k_fields = [] {
    std::map<std::string, const job::Field*, std::less<>> fields;
    for (const job::Field* field : column_fields())
      fields.emplace(plain_heading(field->key), field);
    return fields;
  }();
  const auto found = k_fields.find(full);
  return found != k_fields.end() ? found->second : nullptr;
}

}  // namespace

std::optional<Meaning> own_meaning(std::string_view full) {
  if (full == "from") return Meaning{Side::from};
  if (full == "to") return Meaning{Side::to};
  if (const job::Field* field = field_of(full)) return Meaning{Side::both, field};
  for (const auto& [prefix, side] : {std::pair("from ", Side::from), std::pair("to ", Side::to)}) {
    if (!full.starts_with(prefix)) continue;
    const job::Field* field = field_of(full.substr(std::string_view(prefix).size()));
    if (field != nullptr && is_of_end(*field)) return Meaning{side, field};
  }
  return std::nullopt;
}

std::optional<Meaning> usual_meaning(const UsualHeadings& usual, std::string_view plain) {
  const auto meaning = [](const UsualHeading& row) -> std::optional<Meaning> {
    if (row.column.empty()) return Meaning{Side::both, nullptr, &row};
    auto own = own_meaning(plain_heading(row.column));
    if (own) own->usual = &row;
    return own;
  };
  if (const UsualHeading* row = usual.find(plain)) return meaning(*row);
  const auto side = sided(usual, plain);
  if (!side) return std::nullopt;
  const Side end = side->from ? Side::from : Side::to;
  std::optional<Meaning> found;
  if (const UsualHeading* row = usual.find(side->rest)) {
    if (row->of_end) return Meaning{end};
    found = meaning(*row);
  } else {
    found = own_meaning(side->rest);
  }
  if (!found || found->side != Side::both) return std::nullopt;
  // The tag of an end is that of what stands there.
  if (found->field != nullptr && found->field->key == "tag") return Meaning{end};
  const bool never = found->field == nullptr && found->usual != nullptr;
  if (!never && (found->field == nullptr || !is_of_end(*found->field))) return std::nullopt;
  found->side = end;
  return found;
}

std::vector<std::string_view> column_names() {
  std::vector<std::string_view> names{"from", "to"};
  for (const job::Field* field : column_fields()) names.push_back(field->key);
  return names;
}

}  // namespace cutback::schedule

#include "cutback/schedule/layout.hpp"

#include <algorithm>
#include <array>

#include "core/schedule/layout_assignment.hpp"
#include "core/schedule/own_fields.hpp"
#include "core/schedule/spaces.hpp"
#include "cutback/nearest.hpp"
#include "cutback/text.hpp"

namespace cutback::schedule {
namespace {

constexpr std::array k_two{Side::from, Side::to};
constexpr std::array k_one{Side::both};

/// Takes off the spaces of word processors, by which two names that look the same would differ.
void trim_wide(std::string_view& text) {
  bool any = true;
  while (any) {
    any = false;
    for (const std::string_view space : k_wide_spaces) {
      if (text.starts_with(space)) {
        text.remove_prefix(space.size());
        any = true;
      } else if (text.ends_with(space)) {
        text.remove_suffix(space.size());
        any = true;
      }
    }
    text = trimmed(text);
  }
}
}  // namespace

std::string column_letter(std::size_t place) {
  std::string text;
  for (std::size_t left = place + 1; left > 0; left = (left - 1) / 26) {
    text.insert(text.begin(), static_cast<char>('A' + (left - 1) % 26));
  }
  return text;
}

std::span<const Side> Layout::ends() const {
  if (two_ends) return k_two;
  return k_one;
}

bool Layout::is_blank_word(std::string_view text) const {
  const std::string small = small_letters(trimmed(text));
  return std::any_of(blanks.begin(), blanks.end(), [&](const std::string& word) {
    return word == small || word == trimmed(text);
  });
}

const OwnWord* Layout::word_of(std::string_view text) const {
  if (words.empty()) return nullptr;
  const std::string plain = plain_heading(text);
  const auto found = std::find_if(words.begin(), words.end(),
                                  [&](const OwnWord& each) { return each.word == plain; });
  return found != words.end() ? &*found : nullptr;
}

std::string_view group_of_row(const Layout& layout, Cells cells, GroupBy by) {
  if (by == GroupBy::nothing) return {};
  std::string_view text = cell(cells, by == GroupBy::drawing ? layout.drawing : layout.area_name);
  trim_wide(text);
  return layout.is_not_given(text) ? std::string_view() : text;
}

std::vector<Source> Layout::sources(Side side) const {
  std::vector<Source> list;
  const auto source_of = [&](const job::Field* field) -> Source& {
    auto known = std::find_if(list.begin(), list.end(),
                              [&](const Source& source) { return source.field == field; });
    if (known == list.end()) known = list.insert(known, {k_none, k_none, k_none, field});
    return *known;
  };
  for (std::size_t i = 0; i < columns.size(); ++i) {
    const Column& column = columns[i];
    if (column.side != Side::both && column.side != side) continue;
    Source& source = source_of(column.field);
    (column.side == Side::both ? source.plain : source.prefixed) = i;
  }
  if (types != nullptr) {
    for (const job::Field* const field : types->fields()) source_of(field);
  }
  for (const bool plain : {true, false}) {  // that of the end comes before that of both
    for (std::size_t i = 0; i < defaults.size(); ++i) {
      const Column& column = defaults[i].column;
      if (plain ? column.side != Side::both : column.side != side || side == Side::both) continue;
      source_of(column.field).by_default = i;
    }
  }
  return list;
}

KnownHeadings known_headings(std::span<const Heading> headings, const Format& format) {
  KnownHeadings known;
  std::vector<Meaning> seen;
  const std::vector<HeadingPlace> places = assign_headings(headings, format);
  for (std::size_t i = 0; i < headings.size(); ++i) {
    const HeadingPlace& place = places[i];
    if (!place.meaning ||
        (place.meaning->usual != nullptr && place.meaning->usual->column.empty())) {
      continue;
    }
    // A merged cell is there several times.
    if (std::find(seen.begin(), seen.end(), *place.meaning) != seen.end()) continue;
    seen.push_back(*place.meaning);
    ++known.count;
    const bool joined = headings[i].forms.size() > 1 && place.form == &headings[i].forms.front();
    if (joined && !place.by_user) ++known.joined;
  }
  return known;
}

std::vector<const job::Field*> column_fields() {
  std::vector<const job::Field*> fields;
  for (const job::Field& field : job::fields()) {
    if (is_column(field)) fields.push_back(&field);
  }
  for (const job::Field& field : own_fields()) fields.push_back(&field);
  return fields;
}

std::vector<Fault> unknown_columns(const Format& format) {
  std::vector<Fault> faults;
  for (const auto& heading : format.headings) {
    const std::string& own = heading.first;
    if (own_meaning(plain_heading(own))) continue;
    const std::string hint = did_you_mean(own, column_names());
    faults.push_back({.code = ErrorCode::unknown_name,
                      .what = "a schedule has no such column",
                      .where = "--column",
                      .given = own,
                      .allowed = {},
                      .hint = hint.empty() ? "cutback schedule --list-columns names them" : hint});
  }
  return faults;
}

bool is_of_end(const job::Field& field) {
  return field.section == "entry" || field.section == "area" || field.section == "tails" ||
         field.section == "fault";
}

bool is_column(const job::Field& field) { return field.key != "gland"; }

std::string_view end_name(const Layout& layout, Cells cells, Side side) {
  if (side == Side::from) return "from";
  if (side == Side::to) return "to";
  for (const Column& column : layout.columns) {
    if (column.field->key == "end") return cell(cells, column.cell);
  }
  return {};
}

}  // namespace cutback::schedule

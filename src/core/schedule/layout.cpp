#include "cutback/schedule/layout.hpp"

#include <algorithm>
#include <array>
#include <optional>

#include "core/schedule/cell_text.hpp"
#include "cutback/job/field_text.hpp"
#include "cutback/nearest.hpp"
#include "cutback/text.hpp"

namespace cutback::schedule {
namespace {

constexpr std::array k_two{Side::from, Side::to};
constexpr std::array k_one{Side::both};

bool same_heading(std::string_view a, std::string_view b) {
  const auto lower = [](char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  };
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [&](char x, char y) { return lower(x) == lower(y); });
}

/// A column by its own name. `field` is absent for `from` and `to`.
struct Meaning {
  std::string_view name;
  Side side = Side::both;
  const job::Field* field = nullptr;
};

std::optional<Meaning> meaning_of(std::string_view name) {
  if (same_heading(name, "from")) return Meaning{"from", Side::from, nullptr};
  if (same_heading(name, "to")) return Meaning{"to", Side::to, nullptr};
  Side side = Side::both;
  std::string_view key = name;
  if (same_heading(name.substr(0, 5), "from_")) {
    side = Side::from;
    key.remove_prefix(5);
  } else if (same_heading(name.substr(0, 3), "to_")) {
    side = Side::to;
    key.remove_prefix(3);
  }
  for (const job::Field& field : job::fields()) {
    if (!is_column(field) || !same_heading(field.key, key)) continue;
    if (side != Side::both && !is_of_end(field)) return std::nullopt;
    return Meaning{field.key, side, &field};
  }
  return std::nullopt;
}

/// What a heading stands for: an own heading first.
std::optional<Meaning> meaning_of(std::string_view heading, const Format& format) {
  for (const auto& [own, theirs] : format.headings) {
    if (trimmed(theirs) == heading) return meaning_of(own);
  }
  const auto meaning = meaning_of(heading);
  if (!meaning) return std::nullopt;
  // A column that has an own heading is not found by its plain name any more.
  for (const auto& [own, theirs] : format.headings) {
    if (same_heading(own, heading)) return std::nullopt;
  }
  return meaning;
}

std::vector<std::string_view> column_names() {
  std::vector<std::string_view> names{"from", "to"};
  for (const job::Field& field : job::fields()) {
    if (is_column(field)) names.push_back(field.key);
  }
  return names;
}

/// Builds a layout and gathers everything that is wrong with the headings.
class Builder {
 public:
  Builder(const Format& format, const std::string& where) : format_(format), where_(where) {}

  Layout build(Cells headings) {
    layout_.width = headings.size();
    layout_.decimal = format_.decimal;
    layout_.evidence = format_.evidence;
    layout_.tag = Layout::k_none;
    for (std::size_t i = 0; i < headings.size(); ++i) take(trimmed(headings[i]), i);
    check_own(headings);
    check_needed();
    if (!faults_.empty()) throw InputError(std::move(faults_));
    return std::move(layout_);
  }

 private:
  void take(std::string_view heading, std::size_t place);
  void check_own(Cells headings);
  void check_needed();
  [[nodiscard]] bool has(std::string_view key) const {
    return std::any_of(layout_.columns.begin(), layout_.columns.end(),
                       [&](const Column& column) { return column.field->key == key; });
  }
  void add(ErrorCode code, std::string what, std::string_view given, std::string allowed,
           std::string hint) {
    faults_.push_back({.code = code,
                       .what = std::move(what),
                       .where = where_,
                       .given = std::string(given),
                       .allowed = std::move(allowed),
                       .hint = std::move(hint)});
  }

  const Format& format_;
  const std::string& where_;
  Layout layout_;
  std::vector<Fault> faults_;
};

void Builder::take(std::string_view heading, std::size_t place) {
  if (heading.empty()) return;
  const auto meaning = meaning_of(heading, format_);
  if (!meaning) {
    std::string warning = where_ + ": the heading \"" + std::string(heading) +
                          "\" is no column of a schedule and is ignored";
    const std::string hint = did_you_mean(heading, column_names());
    layout_.warnings.push_back(warning + (hint.empty() ? "" : "; " + hint));
    return;
  }
  const auto twice = [&](bool taken) {
    if (taken) add(ErrorCode::duplicate, "a column is given twice", heading, "", "leave one out");
    return taken;
  };
  if (meaning->field == nullptr) {
    std::size_t& of = meaning->side == Side::from ? layout_.from : layout_.to;
    if (!twice(of != Layout::k_none)) of = place;
  } else if (meaning->name == "tag") {
    if (!twice(layout_.tag != Layout::k_none)) layout_.tag = place;
  } else if (!twice(std::any_of(
                 layout_.columns.begin(), layout_.columns.end(), [&](const Column& column) {
                   return column.field == meaning->field && column.side == meaning->side;
                 }))) {
    layout_.columns.push_back({place, std::string(heading), meaning->side, meaning->field});
  }
}

void Builder::check_own(Cells headings) {
  const std::vector<Fault> unknown = unknown_columns(format_);
  faults_.insert(faults_.end(), unknown.begin(), unknown.end());
  for (const auto& heading : format_.headings) {
    const std::string& own = heading.first;
    const std::string& theirs = heading.second;
    if (!meaning_of(own)) continue;
    const bool there = std::any_of(headings.begin(), headings.end(), [&](std::string_view text) {
      return trimmed(text) == trimmed(theirs);
    });
    if (there) continue;
    add(ErrorCode::missing, "there is no such heading", theirs, "",
        did_you_mean(theirs, std::vector<std::string_view>(headings.begin(), headings.end())));
  }
}

void Builder::check_needed() {
  const std::string hint = "name your own heading with --column, for example --column ";
  if (layout_.tag == Layout::k_none) {
    add(ErrorCode::missing, "there is no column tag", "", "", hint + "tag=\"Cable No\"");
  }
  const bool construction = has("cores") && has("csa_mm2");
  if (!has("sheath_od_mm") && !has("bedding_mm") && !construction) {
    add(ErrorCode::missing, "nothing tells the sheath diameter", "",
        "sheath_od_mm, or cores and csa_mm2 for an estimate", hint + "sheath_od_mm=\"O/D (mm)\"");
  }
  const bool prefixed = std::any_of(layout_.columns.begin(), layout_.columns.end(),
                                    [](const Column& column) { return column.side != Side::both; });
  const bool places = layout_.from != Layout::k_none || layout_.to != Layout::k_none;
  if (prefixed && has("end")) {
    add(ErrorCode::contradiction, "a row is one end or two, not both", "end", "",
        "leave out the column end, or the columns with from_ and to_");
  }
  layout_.two_ends = prefixed || (places && !has("end"));
}

}  // namespace

std::span<const Side> Layout::ends() const {
  if (two_ends) return k_two;
  return k_one;
}

std::vector<Source> Layout::sources(Side side) const {
  std::vector<Source> list;
  for (std::size_t i = 0; i < columns.size(); ++i) {
    const Column& column = columns[i];
    if (column.side != Side::both && column.side != side) continue;
    auto known = std::find_if(list.begin(), list.end(),
                              [&](const Source& source) { return source.field == column.field; });
    if (known == list.end()) known = list.insert(known, {k_none, k_none, column.field});
    (column.side == Side::both ? known->plain : known->prefixed) = i;
  }
  return list;
}

std::size_t known_headings(Cells headings, const Format& format) {
  return static_cast<std::size_t>(std::count_if(
      headings.begin(), headings.end(),
      [&](std::string_view text) { return meaning_of(trimmed(text), format).has_value(); }));
}

Layout make_layout(Cells headings, const Format& format, const std::string& where) {
  return Builder(format, where).build(headings);
}

std::vector<Fault> set_cell(const Layout& layout, const Given& cell, job::JobInput& input) {
  const std::string where = "column " + cell.column->heading;
  std::string plain_text;
  if (auto fault = to_plain_text(*cell.column->field, cell.text, layout.decimal, plain_text)) {
    fault->where = where;
    return {std::move(*fault)};
  }
  return job::set_from_text(input, *cell.column->field, plain_text, where);
}

bool decides(const job::Field& field) { return field.key != "job" && field.key != "end"; }

job::JobInput input_of(const Layout& layout, Cells cells, Side side, std::vector<Fault>& faults) {
  job::JobInput input;
  for (const Source& source : layout.sources(side)) {
    const Given cell = given(layout, source, cells);
    if (cell.column == nullptr) continue;
    for (Fault& fault : set_cell(layout, cell, input)) faults.push_back(std::move(fault));
  }
  if (!input.evidence) input.evidence = layout.evidence;
  return input;
}

std::vector<Fault> unknown_columns(const Format& format) {
  std::vector<Fault> faults;
  for (const auto& heading : format.headings) {
    const std::string& own = heading.first;
    if (meaning_of(own)) continue;
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

#include "cutback/io/gland_list.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <deque>
#include <map>
#include <optional>
#include <unordered_map>
#include <utility>

#include "cutback/bounds.hpp"
#include "cutback/gland/columns.hpp"
#include "cutback/io/csv.hpp"
#include "cutback/io/files.hpp"
#include "cutback/nearest.hpp"
#include "cutback/number.hpp"
#include "cutback/text.hpp"
#include "cutback/written/written.hpp"
#include "io/embedded.hpp"

namespace cutback::io {
namespace {

using gland::allowed_text;
using gland::Column;
using gland::column_place;
using gland::ColumnKind;
using gland::columns;
using gland::Gland;
using gland::GlandList;

/// Columns that rows are asked about by name, found once for a file.
struct Places {
  std::size_t part = column_place("part");
  std::size_t armour = column_place("armour");
  std::pair<std::size_t, std::size_t> outer = range("outer_min_mm", "outer_max_mm");
  std::pair<std::size_t, std::size_t> inner = range("inner_min_mm", "inner_max_mm");
  std::pair<std::size_t, std::size_t> clamp = range("armour_min_mm", "armour_max_mm");
  std::pair<std::size_t, std::size_t> temperature = range("temp_min_c", "temp_max_c");

  static std::pair<std::size_t, std::size_t> range(std::string_view low, std::string_view high) {
    return {column_place(low), column_place(high)};
  }
};

/// One row: the trimmed cells in the order of columns(), blank where there is none.
struct Row {
  std::size_t line = 0;
  std::vector<std::string_view> cells;
};

/// A row that begins with # is for people.
bool is_remark(const CsvRecord& record) { return trimmed(record.fields.front()).starts_with('#'); }

/// Reads one file and gathers everything that is wrong with it.
class Reading {
 public:
  explicit Reading(const std::string& name) : name_(name) {
    list_.name = name;
    for (const Column& column : columns()) {
      choices_.push_back(words_of(column));
      asked_.push_back(written::asked_of(column));
    }
  }

  GlandList read(std::string_view text);

 private:
  void records(std::string_view text);
  void header(const CsvRecord& record);
  void heading(std::string_view text, std::size_t number);
  void missing_columns();
  void row(const CsvRecord& record);
  bool take_cells(const CsvRecord& record);
  void take_words(std::size_t column);
  void say_taken();
  [[nodiscard]] bool is_plain(std::size_t column) const;
  void set(Gland& gland, std::size_t column);
  std::optional<double> number(const Column& column, std::string_view cell);
  bool words(std::size_t column);
  void across(Gland& gland);
  void ranges();

  /// Of the row at hand.
  [[nodiscard]] std::string place(std::size_t column) const {
    return place(row_.line, columns()[column].name);
  }
  [[nodiscard]] std::string place(std::size_t line, std::string_view column) const {
    return name_ + ", line " + std::to_string(line) + ", column " + std::string(column);
  }
  void add(ErrorCode code, std::string what, std::string where, std::string_view given,
           std::string permitted, std::string hint) {
    faults_.add({.code = code,
                 .what = std::move(what),
                 .where = std::move(where),
                 .given = std::string(given),
                 .allowed = std::move(permitted),
                 .hint = std::move(hint)});
  }

  const std::string& name_;
  std::size_t header_line_ = 1;
  std::vector<std::optional<std::size_t>> column_of_field_;  ///< nothing: ignored
  std::vector<bool> present_ = std::vector<bool>(columns().size());
  std::vector<std::string> unknown_;
  const Places places_;
  std::vector<std::vector<std::string_view>> choices_;  ///< of every column of words
  Row row_;                                             ///< the one at hand
  bool any_row_ = false;
  bool any_armoured_ = false;
  std::unordered_map<std::string, std::size_t> line_of_part_;
  std::vector<written::Asked> asked_;  ///< of every column
  std::deque<std::string> texts_;      ///< cells that were taken for something else
  /// Of each column, what was taken for what, and how often.
  std::map<std::string_view, std::map<std::string, std::pair<std::string, std::size_t>>> taken_;
  GlandList list_;
  FaultList faults_;
};

GlandList Reading::read(std::string_view text) {
  try {
    records(text);
  } catch (const InputError& error) {  // it cannot be read beyond that place
    faults_.add(error.faults());
  }
  faults_.raise(name_);
  return std::move(list_);
}

void Reading::records(std::string_view text) {
  constexpr std::size_t k_usual_row = 64;
  list_.glands.reserve(text.size() / k_usual_row);
  CsvReader reader(text, name_);
  CsvRecord record;
  const auto next = [&] {
    bool more = reader.next(record);
    while (more && is_remark(record)) more = reader.next(record);
    return more;
  };
  if (!next()) {
    add(ErrorCode::bad_syntax, "the file is empty", name_, "", "a gland list as CSV",
        "its first row names the columns; data/README.md lists them");
    return;
  }
  header(record);
  while (next()) row(record);
  missing_columns();
  say_taken();
  if (!any_row_) {
    add(ErrorCode::missing, "the list has no gland", name_, "",
        "a row for each gland below the headings", "");
  }
}

void Reading::header(const CsvRecord& record) {
  header_line_ = record.line;
  const std::string_view first = record.fields.front();
  for (const char separator : {';', '\t'}) {
    if (record.fields.size() == 1 && first.find(separator) != std::string_view::npos) {
      const std::string word = separator == ';' ? "semicolons" : "tabs";
      throw InputError(Fault{.code = ErrorCode::bad_syntax,
                             .what = "the columns are separated by " + word,
                             .where = name_ + ", line " + std::to_string(record.line),
                             .given = {},
                             .allowed = "commas",
                             .hint = "save the table as CSV with commas and decimal points"});
    }
  }
  for (std::size_t i = 0; i < record.fields.size(); ++i) heading(trimmed(record.fields[i]), i + 1);
  if (std::find(present_.begin(), present_.end(), true) != present_.end()) return;
  throw InputError(
      Fault{.code = ErrorCode::missing,
            .what = "this is no gland list: no heading is one of its columns",
            .where = name_ + ", line " + std::to_string(record.line),
            .given = std::string(first),
            .allowed = "part, entry_thread, outer_min_mm, outer_max_mm, armour ...",
            .hint = "the first row names the columns; a table with other headings is made into "
                    "a list with cutback glands --convert"});
}

void Reading::heading(std::string_view text, std::size_t number) {
  column_of_field_.emplace_back();
  const auto known = columns();
  const auto it =
      std::find_if(known.begin(), known.end(), [&](const Column& c) { return c.name == text; });
  if (it != known.end()) {
    const auto index = static_cast<std::size_t>(it - known.begin());
    if (present_[index]) {
      add(ErrorCode::duplicate, "a column is given twice", place(header_line_, text), "", "",
          "keep one of the two");
    }
    present_[index] = true;
    column_of_field_.back() = index;
    return;
  }
  if (text.empty()) {
    list_.warnings.push_back(name_ + ": field " + std::to_string(number) +
                             " has no heading and is ignored");
    return;
  }
  std::vector<std::string_view> names;
  for (const Column& column : known) names.push_back(column.name);
  const std::string hint = did_you_mean(text, names);
  list_.warnings.push_back(name_ + ": column \"" + std::string(text) +
                           "\" is not known and is ignored" + (hint.empty() ? "" : "; " + hint));
  unknown_.emplace_back(text);
}

/// A column that rows need and the header does not have is one fault, not one per row.
void Reading::missing_columns() {
  const std::vector<std::string_view> unknown(unknown_.begin(), unknown_.end());
  for (std::size_t i = 0; i < columns().size(); ++i) {
    const Column& column = columns()[i];
    const bool clamp = i == places_.clamp.first || i == places_.clamp.second;
    if (present_[i] || !(column.required || (clamp && any_armoured_))) continue;
    const std::string like = nearest(column.name, unknown);
    add(ErrorCode::missing,
        clamp ? "a column that armoured glands need is missing" : "a required column is missing",
        place(header_line_, column.name), "", allowed_text(column),
        like.empty() ? "" : "the heading \"" + like + "\" is near to it");
  }
}

/// Makes a record the row at hand. @return false when all of its cells are blank
bool Reading::take_cells(const CsvRecord& record) {
  row_.line = record.line;
  row_.cells.assign(columns().size(), {});
  bool any = false;
  std::size_t last_used = 0;
  for (std::size_t i = 0; i < record.fields.size(); ++i) {
    const std::string_view cell = trimmed(record.fields[i]);
    if (cell.empty()) continue;
    any = true;
    last_used = i + 1;
    if (i < column_of_field_.size() && column_of_field_[i]) row_.cells[*column_of_field_[i]] = cell;
  }
  if (any && last_used > column_of_field_.size()) {
    add(ErrorCode::bad_syntax, "a row has more fields than there are columns",
        name_ + ", line " + std::to_string(record.line), std::to_string(last_used) + " fields",
        "at most " + std::to_string(column_of_field_.size()),
        "a decimal comma makes two fields of one number: write a decimal point; put text that "
        "holds a comma in quotes");
  }
  return any;
}

/// Words of the trade become those of the column, where it does not know the cell as it stands.
void Reading::take_words(std::size_t column) {
  std::string_view& cell = row_.cells[column];
  try {
    written::Taken taken = written::take(asked_[column], cell, place(column));
    if (taken.text == cell) return;
    ++taken_[columns()[column].name][std::string(cell)].second;
    taken_[columns()[column].name][std::string(cell)].first = taken.text;
    cell = texts_.emplace_back(std::move(taken.text));
  } catch (const InputError& error) {
    faults_.add(error.faults());
    cell = {};
  }
}

/// One line for each column in which something was taken for something else.
void Reading::say_taken() {
  for (const auto& [column, cells] : taken_) {
    const auto& [given, taken] = *cells.begin();
    std::size_t count = 0;
    for (const auto& each : cells) count += each.second.second;
    std::string line =
        name_ + ", column " + std::string(column) + ": \"" + given + "\" taken for " + taken.first;
    if (count > 1) line += ", and " + std::to_string(count - 1) + " more of that kind";
    list_.warnings.push_back(std::move(line));
  }
}

void Reading::row(const CsvRecord& record) {
  if (!take_cells(record)) return;
  any_row_ = true;
  Gland& gland = list_.glands.emplace_back();
  const auto known = columns();
  for (std::size_t i = 0; i < known.size(); ++i) {
    if (!row_.cells[i].empty()) {
      set(gland, i);
    } else if (known[i].required && present_[i]) {
      add(ErrorCode::missing, "a required value is missing", place(i), "", allowed_text(known[i]),
          "");
    }
  }
  across(gland);
}

/// Whether the column knows the cell as it stands.
bool Reading::is_plain(std::size_t column) const {
  const std::string_view cell = row_.cells[column];
  const std::vector<std::string_view>& choices = choices_[column];
  const auto is_choice = [&](std::string_view word) {
    return std::find(choices.begin(), choices.end(), word) != choices.end();
  };
  const auto all = [&](const auto& known) {
    const std::vector<std::string_view> parts = split_words(cell);
    return std::all_of(parts.begin(), parts.end(), known);
  };
  switch (columns()[column].kind) {
    case ColumnKind::number:
    case ColumnKind::whole:
      return parse_number(cell).has_value();
    case ColumnKind::word:
      return is_choice(cell);
    case ColumnKind::words:
      return all(is_choice);
    case ColumnKind::ip:
      return all([](std::string_view word) { return area::parse_ip_code(word).has_value(); });
    case ColumnKind::thread:
      return entry::parse_thread(cell).has_value();
    case ColumnKind::text:
      break;
  }
  return true;
}

/// Checks one cell that is not blank, and puts it into the gland when it is good.
void Reading::set(Gland& gland, std::size_t place_of_column) {
  if (!is_plain(place_of_column)) take_words(place_of_column);
  if (row_.cells[place_of_column].empty()) return;
  const Column& column = columns()[place_of_column];
  const std::string_view cell = row_.cells[place_of_column];
  if (column.kind == ColumnKind::number || column.kind == ColumnKind::whole) {
    if (const auto value = number(column, cell)) put(gland, column, *value);
    return;
  }
  bool good = true;
  if (column.kind == ColumnKind::thread) {
    good = entry::parse_thread(cell).has_value();
    if (!good) {
      add(ErrorCode::bad_value, "not a thread", place(place_of_column), cell, allowed_text(column),
          entry::thread_advice(cell));
    }
  } else if (column.kind != ColumnKind::text) {
    good = words(place_of_column);
  }
  if (good) put(gland, column, cell);
}

std::optional<double> Reading::number(const Column& column, std::string_view cell) {
  const auto value = parse_number(cell);
  const auto refuse = [&](ErrorCode code, std::string what, std::string hint) {
    add(code, std::move(what), place(row_.line, column.name), cell, allowed_text(column),
        std::move(hint));
  };
  if (!value) {
    std::string pointed(cell);
    std::replace(pointed.begin(), pointed.end(), ',', '.');
    const bool comma = pointed != cell && parse_number(pointed).has_value();
    refuse(ErrorCode::bad_number, "not a number",
           comma ? "write a decimal point: " + pointed : "a figure, with its unit or without");
    return std::nullopt;
  }
  if (*value < column.min || *value > column.max) {
    refuse(ErrorCode::out_of_range, "a number outside its limits", "");
    return std::nullopt;
  }
  if (column.kind == ColumnKind::whole && *value != std::floor(*value)) {
    refuse(ErrorCode::bad_value, "not a whole number", "");
    return std::nullopt;
  }
  return value;
}

bool Reading::words(std::size_t place_of_column) {
  const Column& column = columns()[place_of_column];
  const std::string_view cell = row_.cells[place_of_column];
  const std::vector<std::string_view>& choices = choices_[place_of_column];
  const std::vector<std::string_view> given =
      column.kind == ColumnKind::word ? std::vector<std::string_view>{cell} : split_words(cell);
  bool good = true;
  for (const std::string_view word : given) {
    const bool ip = column.kind == ColumnKind::ip;
    if (ip ? area::parse_ip_code(word).has_value()
           : std::find(choices.begin(), choices.end(), word) != choices.end()) {
      continue;
    }
    good = false;
    std::string hint = did_you_mean(word, choices, is_graded(column));
    if (word.starts_with("IP")) hint = "leave out the letters IP";
    add(ErrorCode::bad_value, ip ? "not a degree of protection" : "not a word that is known here",
        place(place_of_column), word, allowed_text(column), std::move(hint));
  }
  return good;
}

/// What cells of one row ask of each other, and of other rows.
void Reading::across(Gland& gland) {
  if (!gland.part.empty()) {
    const auto [it, fresh] = line_of_part_.emplace(gland.part, row_.line);
    if (!fresh) {
      add(ErrorCode::duplicate, "a part is given twice", place(places_.part), gland.part, "",
          "it stands first on line " + std::to_string(it->second));
    }
  }
  ranges();
  if (gland.price && *gland.price == 0.0) {
    gland.price.reset();
    list_.warnings.push_back(place(column_place("price")) +
                             ": a price of 0 is no price: it counts as not stated");
  }
  const auto blank = [&](std::size_t column) { return row_.cells[column].empty(); };
  if (blank(places_.inner.first) != blank(places_.inner.second)) {
    const std::size_t missing =
        blank(places_.inner.first) ? places_.inner.first : places_.inner.second;
    add(ErrorCode::missing, "an inner seal needs both of its limits", place(missing), "",
        allowed_text(columns()[missing]), "leave both blank where there is no inner seal");
  }
  const bool armoured = gland.armour != cable::ArmourKind::none;
  any_armoured_ = any_armoured_ || armoured;
  for (const std::size_t limit : {places_.clamp.first, places_.clamp.second}) {
    if (armoured && blank(limit) && present_[limit]) {
      add(ErrorCode::missing, "an armoured gland needs the limits of its clamp", place(limit), "",
          allowed_text(columns()[limit]), "or the armour is none");
    } else if (!armoured && !blank(limit) && row_.cells[places_.armour] == "none") {
      list_.warnings.push_back(place(limit) + ": the armour is none, so this is ignored");
    }
  }
}

void Reading::ranges() {
  for (const auto& [low_column, high_column] :
       {places_.outer, places_.inner, places_.clamp, places_.temperature}) {
    const auto low = parse_number(row_.cells[low_column]);
    const auto high = parse_number(row_.cells[high_column]);
    if (!low || !high || *low <= *high) continue;
    add(ErrorCode::contradiction, "the smallest is above the largest",
        place(low_column) + " and " + std::string(columns()[high_column].name),
        plain(*low) + " and " + plain(*high), "the smaller figure first", "");
  }
}

}  // namespace

GlandList read_gland_list(std::string_view text, const std::string& name) {
  return Reading(name).read(text);
}

GlandList load_gland_list(const std::string& path) {
  const WholeFile file(path, bounds::k_glands_bytes);
  return read_gland_list(file.text(), path);
}

GlandList demo_gland_list() {
  const std::span<const embedded::File> files = embedded::demo();
  try {
    return read_gland_list(files.front().content, "built-in demonstration list (invented)");
  } catch (const InputError& error) {
    throw InternalError(std::string("the built-in gland list is broken: ") + error.what());
  }
}

}  // namespace cutback::io

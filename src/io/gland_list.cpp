#include "cutback/io/gland_list.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <optional>
#include <utility>

#include "cutback/error.hpp"
#include "cutback/io/csv.hpp"
#include "cutback/io/files.hpp"
#include "cutback/nearest.hpp"
#include "cutback/number.hpp"
#include "io/embedded.hpp"
#include "io/gland_columns.hpp"

namespace cutback::io {
namespace {

using gland::Gland;
using gland::GlandList;

constexpr std::array<std::pair<std::string_view, std::string_view>, 4> k_ranges{
    {{"outer_min_mm", "outer_max_mm"},
     {"inner_min_mm", "inner_max_mm"},
     {"armour_min_mm", "armour_max_mm"},
     {"temp_min_c", "temp_max_c"}}};

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view k_space = " \t\r\n";
  const std::size_t first = text.find_first_not_of(k_space);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(k_space) - first + 1);
}

/// One row: the trimmed cells in the order of gland_columns(), blank where there is none.
struct Row {
  std::size_t line = 0;
  std::vector<std::string_view> cells;

  [[nodiscard]] std::string_view cell(std::string_view column) const {
    return cells[gland_column(column)];
  }
};

/// Reads one file and gathers everything that is wrong with it.
class Reading {
 public:
  explicit Reading(const std::string& name) : name_(name) { list_.name = name; }

  GlandList read(std::string_view text);

 private:
  void records(std::string_view text);
  void header(const CsvRecord& record);
  void heading(std::string_view text, std::size_t number);
  void missing_columns();
  void row(const CsvRecord& record);
  std::optional<Row> cells_of(const CsvRecord& record);
  void set(Gland& gland, const GlandColumn& column, const Row& row, std::string_view cell);
  std::optional<double> number(const GlandColumn& column, const Row& row, std::string_view cell);
  bool words(const GlandColumn& column, const Row& row, std::string_view cell);
  void across(const Gland& gland, const Row& row);
  void ranges(const Row& row);

  [[nodiscard]] bool present(std::string_view column) const {
    return present_[gland_column(column)];
  }
  [[nodiscard]] std::string place(std::size_t line, std::string_view column) const {
    return name_ + ", line " + std::to_string(line) + ", column " + std::string(column);
  }
  void add(ErrorCode code, std::string what, std::string where, std::string_view given,
           std::string allowed_text, std::string hint) {
    faults_.push_back({.code = code,
                       .what = std::move(what),
                       .where = std::move(where),
                       .given = std::string(given),
                       .allowed = std::move(allowed_text),
                       .hint = std::move(hint)});
  }

  const std::string& name_;
  std::size_t header_line_ = 1;
  std::vector<std::optional<std::size_t>> column_of_field_;  ///< nothing: ignored
  std::vector<bool> present_ = std::vector<bool>(gland_columns().size());
  std::vector<std::string> unknown_;
  bool any_row_ = false;
  bool any_armoured_ = false;
  std::map<std::string, std::size_t, std::less<>> line_of_part_;
  GlandList list_;
  std::vector<Fault> faults_;
};

GlandList Reading::read(std::string_view text) {
  try {
    records(text);
  } catch (const InputError& error) {  // it cannot be read beyond that place
    faults_.insert(faults_.end(), error.faults().begin(), error.faults().end());
  }
  if (!faults_.empty()) throw InputError(std::move(faults_));
  return std::move(list_);
}

void Reading::records(std::string_view text) {
  CsvReader reader(text, name_);
  CsvRecord record;
  if (!reader.next(record)) {
    add(ErrorCode::bad_syntax, "the file is empty", name_, "", "a gland list as CSV",
        "its first row names the columns; data/README.md lists them");
    return;
  }
  header(record);
  while (reader.next(record)) row(record);
  missing_columns();
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
}

void Reading::heading(std::string_view text, std::size_t number) {
  column_of_field_.emplace_back();
  const auto columns = gland_columns();
  const auto it = std::find_if(columns.begin(), columns.end(),
                               [&](const GlandColumn& c) { return c.name == text; });
  if (it != columns.end()) {
    const auto index = static_cast<std::size_t>(it - columns.begin());
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
  for (const GlandColumn& column : columns) names.push_back(column.name);
  const std::string hint = did_you_mean(text, names);
  list_.warnings.push_back(name_ + ": column \"" + std::string(text) +
                           "\" is not known and is ignored" + (hint.empty() ? "" : "; " + hint));
  unknown_.emplace_back(text);
}

/// A column that rows need and the header does not have is one fault, not one a row.
void Reading::missing_columns() {
  const std::vector<std::string_view> unknown(unknown_.begin(), unknown_.end());
  for (const GlandColumn& column : gland_columns()) {
    const bool clamp = column.name == "armour_min_mm" || column.name == "armour_max_mm";
    if (present(column.name) || !(column.required || (clamp && any_armoured_))) continue;
    const std::string like = nearest(column.name, unknown);
    add(ErrorCode::missing,
        clamp ? "a column that armoured glands need is missing" : "a required column is missing",
        place(header_line_, column.name), "", allowed(column),
        like.empty() ? "" : "the heading \"" + like + "\" is near to it");
  }
}

/// The cells of a record, or nothing when all of them are blank.
std::optional<Row> Reading::cells_of(const CsvRecord& record) {
  Row row{.line = record.line, .cells = std::vector<std::string_view>(gland_columns().size())};
  bool any = false;
  std::size_t last_used = 0;
  for (std::size_t i = 0; i < record.fields.size(); ++i) {
    const std::string_view cell = trimmed(record.fields[i]);
    if (cell.empty()) continue;
    any = true;
    last_used = i + 1;
    if (i < column_of_field_.size() && column_of_field_[i]) row.cells[*column_of_field_[i]] = cell;
  }
  if (!any) return std::nullopt;
  if (last_used > column_of_field_.size()) {
    add(ErrorCode::bad_syntax, "a row has more fields than there are columns",
        name_ + ", line " + std::to_string(record.line), std::to_string(last_used) + " fields",
        "at most " + std::to_string(column_of_field_.size()),
        "a decimal comma makes two fields of one number: write a decimal point; put text that "
        "holds a comma in quotes");
  }
  return row;
}

void Reading::row(const CsvRecord& record) {
  const std::optional<Row> row = cells_of(record);
  if (!row) return;
  any_row_ = true;
  Gland gland;
  const auto columns = gland_columns();
  for (std::size_t i = 0; i < columns.size(); ++i) {
    if (!row->cells[i].empty()) {
      set(gland, columns[i], *row, row->cells[i]);
    } else if (columns[i].required && present_[i]) {
      add(ErrorCode::missing, "a required value is missing", place(row->line, columns[i].name), "",
          allowed(columns[i]), "");
    }
  }
  across(gland, *row);
  list_.glands.push_back(std::move(gland));
}

/// Checks one cell that is not blank, and puts it into the gland when it is good.
void Reading::set(Gland& gland, const GlandColumn& column, const Row& row, std::string_view cell) {
  if (const auto* put = std::get_if<GlandColumn::SetNumber>(&column.set)) {
    if (const auto value = number(column, row, cell)) (*put)(gland, *value);
    return;
  }
  bool good = true;
  if (column.kind == GlandKind::thread) {
    good = entry::parse_thread(cell).has_value();
    if (!good) {
      add(ErrorCode::bad_value, "not a thread", place(row.line, column.name), cell, allowed(column),
          "");
    }
  } else if (column.kind != GlandKind::text) {
    good = words(column, row, cell);
  }
  if (good) std::get<GlandColumn::SetText>(column.set)(gland, cell);
}

std::optional<double> Reading::number(const GlandColumn& column, const Row& row,
                                      std::string_view cell) {
  const std::string where = place(row.line, column.name);
  const auto value = parse_number(cell);
  if (!value) {
    std::string pointed(cell);
    std::replace(pointed.begin(), pointed.end(), ',', '.');
    const bool comma = pointed != cell && parse_number(pointed).has_value();
    add(ErrorCode::bad_number, "not a number", where, cell, allowed(column),
        comma ? "write a decimal point: " + pointed : "digits only, without a unit");
    return std::nullopt;
  }
  if (*value < column.min || *value > column.max) {
    add(ErrorCode::out_of_range, "a number outside its limits", where, cell, allowed(column), "");
    return std::nullopt;
  }
  if (column.kind == GlandKind::whole && *value != std::floor(*value)) {
    add(ErrorCode::bad_value, "not a whole number", where, cell, allowed(column), "");
    return std::nullopt;
  }
  return value;
}

bool is_ip(std::string_view word) {
  constexpr std::string_view k_solids = "0123456X";
  constexpr std::string_view k_water = "0123456789X";
  return word.size() == 2 && k_solids.find(word[0]) != std::string_view::npos &&
         k_water.find(word[1]) != std::string_view::npos;
}

bool Reading::words(const GlandColumn& column, const Row& row, std::string_view cell) {
  const std::vector<std::string_view> choices = split_words(column.words);
  const std::vector<std::string_view> given =
      column.kind == GlandKind::word ? std::vector<std::string_view>{cell} : split_words(cell);
  bool good = true;
  for (const std::string_view word : given) {
    const bool ip = column.kind == GlandKind::ip;
    if (ip ? is_ip(word) : std::find(choices.begin(), choices.end(), word) != choices.end()) {
      continue;
    }
    good = false;
    std::string hint = did_you_mean(word, choices);
    if (word.starts_with("IP")) hint = "leave out the letters IP";
    add(ErrorCode::bad_value, ip ? "not a degree of protection" : "not a word that is known here",
        place(row.line, column.name), word, allowed(column), std::move(hint));
  }
  return good;
}

/// What cells of one row ask of each other, and of other rows.
void Reading::across(const Gland& gland, const Row& row) {
  if (!gland.part.empty()) {
    const auto [it, fresh] = line_of_part_.emplace(gland.part, row.line);
    if (!fresh) {
      add(ErrorCode::duplicate, "a part is given twice", place(row.line, "part"), gland.part, "",
          "it stands first on line " + std::to_string(it->second));
    }
  }
  ranges(row);
  if (row.cell("inner_min_mm").empty() != row.cell("inner_max_mm").empty()) {
    const bool low = row.cell("inner_min_mm").empty();
    add(ErrorCode::missing, "an inner seal needs both of its limits",
        place(row.line, low ? "inner_min_mm" : "inner_max_mm"), "",
        allowed(gland_columns()[gland_column(low ? "inner_min_mm" : "inner_max_mm")]),
        "leave both blank where there is no inner seal");
  }
  const bool armoured = gland.armour != cable::ArmourKind::none;
  any_armoured_ = any_armoured_ || armoured;
  for (const std::string_view name : {"armour_min_mm", "armour_max_mm"}) {
    const bool blank = row.cell(name).empty();
    if (armoured && blank && present(name)) {
      add(ErrorCode::missing, "an armoured gland needs the limits of its clamp",
          place(row.line, name), "", allowed(gland_columns()[gland_column(name)]),
          "or the armour is none");
    } else if (!armoured && !blank && row.cell("armour") == "none") {
      list_.warnings.push_back(place(row.line, name) + ": the armour is none, so this is ignored");
    }
  }
}

void Reading::ranges(const Row& row) {
  for (const auto& [low_name, high_name] : k_ranges) {
    const auto low = parse_number(row.cell(low_name));
    const auto high = parse_number(row.cell(high_name));
    if (!low || !high || *low <= *high) continue;
    add(ErrorCode::contradiction, "the smallest is above the largest",
        place(row.line, low_name) + " and " + std::string(high_name),
        plain(*low) + " and " + plain(*high), "the smaller figure first", "");
  }
}

}  // namespace

GlandList read_gland_list(std::string_view text, const std::string& name) {
  return Reading(name).read(text);
}

GlandList load_gland_list(const std::string& path) {
  const MappedFile file(path);
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

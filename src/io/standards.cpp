#include "cutback/io/standards.hpp"

#include <algorithm>
#include <array>
#include <filesystem>

#include "cutback/bounds.hpp"
#include "cutback/error.hpp"
#include "cutback/io/files.hpp"
#include "cutback/nearest.hpp"
#include "cutback/sha256.hpp"
#include "io/embedded.hpp"
#include "io/json_strict.hpp"

namespace cutback::io {
namespace {

using nlohmann::ordered_json;
using tables::Cell;
using tables::Standards;
using tables::Status;
using tables::Table;

constexpr std::array<std::string_view, 9> k_keys{"id",       "schema", "status",  "title", "source",
                                                 "interval", "notes",  "columns", "rows"};
constexpr std::array<std::string_view, 5> k_source_keys{"document", "edition", "clause",
                                                        "transcribed", "checked"};

InputError table_error(const std::string& name, const std::string& what, const std::string& where) {
  return InputError(Fault{.code = ErrorCode::bad_value,
                          .what = what,
                          .where = name + ": " + where,
                          .given = {},
                          .allowed = {},
                          .hint = "the form of a table is in data/README.md"});
}

template <std::size_t N>
void check_keys(const ordered_json& object, const std::array<std::string_view, N>& keys,
                const std::string& name, const std::string& where) {
  if (!object.is_object()) throw table_error(name, "an object is needed", where);
  for (const auto& item : object.items()) {
    if (std::find(keys.begin(), keys.end(), item.key()) == keys.end()) {
      throw table_error(name, "unknown key", where + "." + item.key());
    }
  }
  for (const std::string_view key : keys) {
    if (!object.contains(key))
      throw table_error(name, "a key is missing", where + "." + std::string(key));
  }
}

std::string text_of(const ordered_json& object, const char* key, const std::string& name) {
  const ordered_json& value = object.at(key);
  if (!value.is_string()) throw table_error(name, "text is needed", key);
  return value.get<std::string>();
}

Status status_of(const std::string& word, const std::string& name) {
  for (const Status status :
       {Status::checked, Status::secondary, Status::own, Status::derived, Status::from_memory}) {
    if (word == to_string(status)) return status;
  }
  throw table_error(name,
                    "the status is not one of checked, secondary, users-own, derived, from-memory",
                    "status");
}

Cell cell_of(const ordered_json& value, const std::string& name, const std::string& where) {
  if (value.is_null()) return std::monostate{};
  if (value.is_number()) return value.get<double>();
  if (value.is_string()) return value.get<std::string>();
  throw table_error(name, "a cell is neither number, text nor null", where);
}

/// A table is trusted no further than the weakest of its rows.
void check_status(const Table& table, const std::string& name) {
  const auto column = std::find(table.columns.begin(), table.columns.end(), "status");
  if (column == table.columns.end()) return;
  Status weakest = Status::checked;
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    const Cell& cell = table.rows[i][static_cast<std::size_t>(column - table.columns.begin())];
    const auto* const word = std::get_if<std::string>(&cell);
    weakest = std::max(weakest, status_of(word != nullptr ? *word : std::string(), name));
  }
  if (table.status == weakest) return;
  throw table_error(name,
                    "the status is not that of the weakest row, " + std::string(to_string(weakest)),
                    "status");
}

/// What the user says of a table of their own has not been checked here: it is theirs, or weaker.
void make_own(Table& table) {
  table.status = std::max(table.status, Status::own);
  const auto column = std::find(table.columns.begin(), table.columns.end(), "status");
  if (column == table.columns.end()) return;
  for (std::vector<Cell>& row : table.rows) {
    Cell& cell = row[static_cast<std::size_t>(column - table.columns.begin())];
    const std::string word = std::get<std::string>(cell);
    cell = std::string(to_string(std::max(status_of(word, table.id), Status::own)));
  }
}

/// Cells of the kinds that the built-in table has in the same column: what is worked out from them
/// counts on that.
void check_kinds(const Table& table, const Table& builtin, const std::string& name) {
  for (std::size_t c = 0; c < table.columns.size(); ++c) {
    for (std::size_t r = 0; r < table.rows.size(); ++r) {
      const std::size_t kind = table.rows[r][c].index();
      if (std::any_of(builtin.rows.begin(), builtin.rows.end(),
                      [&](const std::vector<Cell>& row) { return row[c].index() == kind; })) {
        continue;
      }
      constexpr std::array<const char*, 3> k_kinds{"an empty cell", "a number", "text"};
      throw table_error(name,
                        std::string(k_kinds[kind]) + " stands where the built-in table has none",
                        "row " + std::to_string(r + 1) + ", column " + table.columns[c]);
    }
  }
}

InputError folder_error(ErrorCode code, const std::string& what, const std::string& folder,
                        const std::string& given) {
  return InputError(make_fault(code, what, folder, given, "every table, one in each file",
                               "copy the folder standards that is installed with this program, and "
                               "change what is to differ"));
}

/// The tables that the core reads as rows of its own types, from their generic form.
void make_typed(Standards& standards) {
  const Table& limits = standards.table("caliper_limits");
  standards.caliper_limits.clear();
  for (std::size_t i = 0; i < limits.rows.size(); ++i) {
    standards.caliper_limits.push_back({limits.number(i, "step_max_mm"),
                                        limits.number(i, "length_max_mm"),
                                        limits.number(i, "mpe_mm")});
  }
  standards.wire_bands.clear();
  for (const bool iec : {false, true}) {
    const Table& wires = standards.table(iec ? "iec_wire_bands" : "armour_wire_bands");
    for (std::size_t i = 0; i < wires.rows.size(); ++i) {
      standards.wire_bands.push_back({wires.number(i, "nominal_mm"), wires.number(i, "min_mm"),
                                      wires.number(i, "max_mm"), iec});
    }
  }
  const Table& oversheath = standards.table("oversheath_rules");
  standards.oversheath_rules.clear();
  for (std::size_t i = 0; i < oversheath.rows.size(); ++i) {
    standards.oversheath_rules.push_back(
        {oversheath.text(i, "pattern"), oversheath.number(i, "slope"),
         oversheath.number(i, "constant_mm"), oversheath.number(i, "least_armoured_mm")});
  }
}

}  // namespace

Table read_table(std::string_view json, const std::string& name) {
  const ordered_json root = parse_json(json, name);
  check_keys(root, k_keys, name, "table");
  if (root.at("schema") != 1) throw table_error(name, "the schema is not 1", "schema");
  const ordered_json& source = root.at("source");
  check_keys(source, k_source_keys, name, "source");
  Table table;
  table.id = text_of(root, "id", name);
  table.status = status_of(text_of(root, "status", name), name);
  table.title = text_of(root, "title", name);
  table.document = text_of(source, "document", name);
  table.edition = text_of(source, "edition", name);
  table.clause = text_of(source, "clause", name);
  table.interval = text_of(root, "interval", name);
  table.notes = text_of(root, "notes", name);
  if (!root.at("columns").is_array() || !root.at("rows").is_array()) {
    throw table_error(name, "lists are needed", "columns, rows");
  }
  for (const ordered_json& column : root.at("columns")) {
    if (!column.is_string()) throw table_error(name, "text is needed", "columns");
    table.columns.push_back(column.get<std::string>());
  }
  for (std::size_t r = 0; r < root.at("rows").size(); ++r) {
    const ordered_json& row = root.at("rows")[r];
    const std::string where = "row " + std::to_string(r + 1);
    if (!row.is_array() || row.size() != table.columns.size()) {
      throw table_error(name, "a row does not have one cell for each column", where);
    }
    std::vector<Cell> cells;
    for (const ordered_json& value : row) cells.push_back(cell_of(value, name, where));
    table.rows.push_back(std::move(cells));
  }
  if (table.rows.empty()) throw table_error(name, "the table is empty", "rows");
  check_status(table, name);
  return table;
}

Standards builtin_standards() {
  Standards standards;
  for (const embedded::File& file : embedded::standards()) {
    standards.tables.push_back(read_table(file.content, std::string(file.name)));
    standards.tables.back().checksum = file.sha256;
  }
  make_typed(standards);
  return standards;
}

Standards load_standards(const std::string& folder) {
  namespace fs = std::filesystem;
  std::error_code error;
  std::vector<std::string> paths;
  for (const auto& entry : fs::directory_iterator(folder, error)) {
    if (entry.path().extension() == ".json") paths.push_back(entry.path().string());
  }
  if (error) {
    throw FileError(Fault{.code = ErrorCode::cannot_read,
                          .what = "the folder of tables cannot be read",
                          .where = folder,
                          .given = {},
                          .allowed = {},
                          .hint = error.message()});
  }
  if (paths.empty()) {
    throw folder_error(ErrorCode::missing, "the folder holds no table (.json)", folder, "");
  }
  std::sort(paths.begin(), paths.end());
  Standards standards = builtin_standards();
  standards.folder = folder;
  std::vector<std::string_view> ids;
  for (const Table& table : standards.tables) ids.push_back(table.id);
  std::vector<bool> found(ids.size());
  for (const std::string& path : paths) {
    const WholeFile file(path, bounds::k_table_bytes);
    Table table = read_table(file.text(), path);
    table.checksum = sha256(file.text());
    const auto it = std::find(ids.begin(), ids.end(), table.id);
    if (it == ids.end()) {
      throw InputError(Fault{.code = ErrorCode::unknown_name,
                             .what = "no table has this id",
                             .where = path + ": id",
                             .given = table.id,
                             .allowed = {},
                             .hint = did_you_mean(table.id, ids)});
    }
    const auto place = static_cast<std::size_t>(it - ids.begin());
    if (found[place]) {
      throw InputError(make_fault(ErrorCode::duplicate, "two files hold one table", path + ": id",
                                  table.id, "", "keep one of the two"));
    }
    found[place] = true;
    Table& builtin = standards.tables[place];
    if (builtin.columns != table.columns)
      throw table_error(path, "the columns are not those of the built-in table", "columns");
    if (table.checksum == builtin.checksum) continue;
    check_kinds(table, builtin, path);
    make_own(table);
    standards.own.push_back(table.id);
    builtin = std::move(table);  // the view of its id stays good: it says the same
    ids[place] = builtin.id;
  }
  std::string lost;
  for (std::size_t i = 0; i < ids.size(); ++i) {
    if (!found[i]) lost += (lost.empty() ? "" : ", ") + std::string(ids[i]);
  }
  if (!lost.empty()) {
    throw folder_error(ErrorCode::missing, "the folder lacks tables", folder, "without " + lost);
  }
  make_typed(standards);
  return standards;
}

}  // namespace cutback::io

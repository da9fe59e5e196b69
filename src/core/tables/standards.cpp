#include "cutback/tables/standards.hpp"

#include <algorithm>

#include "cutback/error.hpp"

namespace cutback::tables {
namespace {

const Cell& cell_at(const Table& table, std::size_t row, std::string_view column) {
  const auto it = std::find(table.columns.begin(), table.columns.end(), column);
  if (it == table.columns.end() || row >= table.rows.size()) {
    throw InternalError("table " + table.id + " has no column " + std::string(column) + " in row " +
                        std::to_string(row + 1));
  }
  return table.rows[row][static_cast<std::size_t>(it - table.columns.begin())];
}

}  // namespace

std::string Table::source() const {
  std::string text = document;
  if (!edition.empty()) text += " (" + edition + ")";
  if (!clause.empty()) text += ", " + clause;
  return text;
}

double Table::number(std::size_t row, std::string_view column) const {
  const Cell& cell = cell_at(*this, row, column);
  if (const double* value = std::get_if<double>(&cell)) return *value;
  throw InternalError("table " + id + ": " + std::string(column) + " in row " +
                      std::to_string(row + 1) + " is not a number");
}

std::string Table::text(std::size_t row, std::string_view column) const {
  const Cell& cell = cell_at(*this, row, column);
  if (const std::string* value = std::get_if<std::string>(&cell)) return *value;
  if (std::holds_alternative<std::monostate>(cell)) return {};
  throw InternalError("table " + id + ": " + std::string(column) + " in row " +
                      std::to_string(row + 1) + " is not text");
}

std::optional<std::size_t> Table::find(std::string_view column, std::string_view words,
                                       std::size_t from) const {
  for (std::size_t i = from; i < rows.size(); ++i) {
    if (text(i, column) == words) return i;
  }
  return std::nullopt;
}

std::size_t Table::row(std::string_view column, std::string_view words, std::size_t from) const {
  if (const auto found = find(column, words, from)) return *found;
  throw InternalError("table " + id + " has no row for " + std::string(words));
}

const Table& Standards::table(std::string_view id) const {
  const auto it =
      std::find_if(tables.begin(), tables.end(), [&](const Table& t) { return t.id == id; });
  if (it == tables.end()) throw InternalError("there is no table " + std::string(id));
  return *it;
}

}  // namespace cutback::tables

#include <fmt/format.h>
#include <algorithm>

#include "cutback/number.hpp"
#include "cutback/print/rules.hpp"
#include "print/layout.hpp"
#include "cutback/print/words.hpp"

namespace cutback::print {
namespace {

using tables::Cell;
using tables::Table;

std::string cell_text(const Cell& value) {
  constexpr int k_decimals = 9;  // more than any table has
  if (const double* number = std::get_if<double>(&value)) return plain(*number, k_decimals);
  if (const std::string* words = std::get_if<std::string>(&value)) return clean(*words);
  return {};
}

bool is_number(const Cell& value) { return std::holds_alternative<double>(value); }

std::string counted(std::size_t rows) {
  return fmt::format("{} row{}", rows, rows == 1 ? "" : "s");
}

/// Width of each column: of its name and of its widest cell.
std::vector<std::size_t> widths_of(const Table& table) {
  std::vector<std::size_t> widths;
  for (std::size_t c = 0; c < table.columns.size(); ++c) {
    std::size_t width = table.columns[c].size();
    for (const auto& row : table.rows) width = std::max(width, cell_text(row[c]).size());
    widths.push_back(width);
  }
  return widths;
}

/// One line a row; a column of numbers is set to the right.
std::string grid(const Table& table, const std::vector<std::size_t>& widths) {
  std::vector<bool> to_right;
  for (std::size_t c = 0; c < widths.size(); ++c) {
    to_right.push_back(std::any_of(table.rows.begin(), table.rows.end(),
                                   [c](const auto& row) { return is_number(row[c]); }));
  }
  const auto set = [&](std::string_view words, std::size_t c) {
    return (c > 0 ? "  " : "") + (to_right[c] ? right(words, widths[c]) : cell(words, widths[c]));
  };
  std::string head;
  for (std::size_t c = 0; c < widths.size(); ++c) head += set(table.columns[c], c);
  std::string text = line_of(head);
  for (const auto& row : table.rows) {
    std::string line;
    for (std::size_t c = 0; c < widths.size(); ++c) line += set(cell_text(row[c]), c);
    text += line_of(line);
  }
  return text;
}

/// One line a cell, for rows that are too wide for one; an empty cell is left out.
std::string records(const Table& table) {
  std::size_t widest = 0;
  for (const std::string& column : table.columns) widest = std::max(widest, column.size());
  std::string text;
  for (std::size_t r = 0; r < table.rows.size(); ++r) {
    if (r > 0) text += "\n";
    std::string number = std::to_string(r + 1);
    for (std::size_t c = 0; c < table.columns.size(); ++c) {
      const std::string value = cell_text(table.rows[r][c]);
      if (value.empty()) continue;
      text += wrapped(cell(number, 4) + cell(table.columns[c], widest) + "  ", value);
      number.clear();
    }
  }
  return text;
}

}  // namespace

std::string rules_text(const tables::Standards& standards, const Style& style) {
  std::string text =
      wrapped("", fmt::format("{} tables of published values. \"cutback rules NAME\" prints one.",
                              standards.tables.size()));
  text += heading("tables", style);
  for (const Table& table : standards.tables) {
    text += line_of(cell(table.id, 28) + cell(to_string(table.status), 13) +
                    counted(table.rows.size()));
    text += wrapped("    ", clean(table.title));
    text += wrapped("    ", clean(table.source()));
  }
  return text;
}

std::string rule_table_text(const Table& table, const Style& style) {
  std::string text = wrapped("Table     ", table.id);
  text += wrapped("          ", clean(table.title));
  text += wrapped("Source    ", clean(table.source()));
  text += wrapped("Status    ", to_string(table.status));
  if (!table.interval.empty()) text += wrapped("Limits    ", clean(table.interval));
  if (!table.notes.empty()) text += wrapped("Notes     ", clean(table.notes));
  text += wrapped("Checksum  ", table.checksum);
  text += heading(counted(table.rows.size()), style);
  const std::vector<std::size_t> widths = widths_of(table);
  std::size_t total = 2 * (widths.size() - 1);
  for (const std::size_t width : widths) total += width;
  return text + (total <= k_columns ? grid(table, widths) : records(table));
}

}  // namespace cutback::print

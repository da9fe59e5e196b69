#pragma once
// Finding rows of published tables.

#include <cmath>
#include <optional>
#include <string>
#include <string_view>

#include "cutback/compare.hpp"
#include "cutback/error.hpp"
#include "cutback/number.hpp"
#include "cutback/tables/standards.hpp"

namespace cutback::cable::detail {

/// The number in a cell, or nothing when the cell is empty.
[[nodiscard]] inline std::optional<double> number_or_empty(const tables::Table& table,
                                                           std::size_t row,
                                                           std::string_view column) {
  for (std::size_t c = 0; c < table.columns.size(); ++c) {
    if (table.columns[c] == column && std::holds_alternative<std::monostate>(table.rows[row][c])) {
      return std::nullopt;
    }
  }
  return table.number(row, column);
}

/// The first row whose limit is at or above `value`; an empty limit holds everything.
[[nodiscard]] inline std::size_t row_up_to(const tables::Table& table, std::string_view limit,
                                           double value) {
  for (std::size_t r = 0; r < table.rows.size(); ++r) {
    const auto max = number_or_empty(table, r, limit);
    if (!max || at_most(value, *max)) return r;
  }
  throw InternalError("table " + table.id + " has no row for " + plain(value));
}

/// The row of a size, or nothing.
[[nodiscard]] inline std::optional<std::size_t> row_of(const tables::Table& table,
                                                       std::string_view column, double value) {
  for (std::size_t r = 0; r < table.rows.size(); ++r) {
    if (std::abs(table.number(r, column) - value) < 1e-9) return r;
  }
  return std::nullopt;
}

/// The numbers of a column as words: `1.5, 2.5, 4`.
[[nodiscard]] inline std::string listed(const tables::Table& table, std::string_view column) {
  std::string text;
  for (std::size_t r = 0; r < table.rows.size(); ++r) {
    text += (r == 0 ? "" : ", ") + plain(table.number(r, column));
  }
  return text;
}

[[nodiscard]] inline InputError unknown_size(const tables::Table& table, double csa_mm2) {
  return InputError(Fault{.code = ErrorCode::bad_value,
                          .what = "not a standard cross-section",
                          .where = "csa_mm2",
                          .given = plain(csa_mm2),
                          .allowed = listed(table, "csa_mm2") + " mm2",
                          .hint = {}});
}

}  // namespace cutback::cable::detail

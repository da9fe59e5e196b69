#pragma once
// What the tables of a place say, as values: the source of one row of a table that gives each row
// its own status, and a cell by its word.

#include <string>

#include "cutback/error.hpp"
#include "cutback/tables/standards.hpp"
#include "cutback/words.hpp"

namespace cutback::area::detail {

/// "document (edition), clause", and the status of the row where it is not `checked`.
[[nodiscard]] inline std::string source_of(const tables::Table& table, tables::Status status) {
  std::string text = table.source();
  if (status != tables::Status::checked) text += " [" + std::string(to_string(status)) + "]";
  return text;
}

/// The value whose word stands in a cell. @throws InternalError for a word that is none
template <class Value>
[[nodiscard]] Value value_in(const tables::Table& table, std::size_t row, std::string_view column) {
  const std::string word = table.text(row, column);
  if (const auto value = value_of<Value>(word)) return *value;
  throw InternalError("table " + table.id + ", column " + std::string(column) + ": no word " +
                      word);
}

/// The same of a cell that may be empty.
template <class Value>
[[nodiscard]] std::optional<Value> maybe_in(const tables::Table& table, std::size_t row,
                                            std::string_view column) {
  if (table.text(row, column).empty()) return std::nullopt;
  return value_in<Value>(table, row, column);
}

[[nodiscard]] inline tables::Status status_in(const tables::Table& table, std::size_t row,
                                              std::string_view column = "status") {
  return value_in<tables::Status>(table, row, column);
}

[[nodiscard]] inline std::string source_of(const tables::Table& table, std::size_t row) {
  return source_of(table, status_in(table, row));
}

[[nodiscard]] inline bool from_memory(const tables::Table& table, std::size_t row) {
  return status_in(table, row) == tables::Status::from_memory;
}

}  // namespace cutback::area::detail

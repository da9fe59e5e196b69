#pragma once
// The source of one row of a table that gives each row its own status.

#include <string>

#include "cutback/tables/standards.hpp"

namespace cutback::area::detail {

/// "document (edition), clause", and the status of the row where it is not `checked`.
[[nodiscard]] inline std::string source_of(const tables::Table& table, std::string_view status) {
  std::string text = table.source();
  if (status != to_string(tables::Status::checked)) text += " [" + std::string(status) + "]";
  return text;
}

[[nodiscard]] inline std::string source_of(const tables::Table& table, std::size_t row) {
  return source_of(table, table.text(row, "status"));
}

[[nodiscard]] inline bool from_memory(const tables::Table& table, std::size_t row) {
  return table.text(row, "status") == to_string(tables::Status::from_memory);
}

}  // namespace cutback::area::detail

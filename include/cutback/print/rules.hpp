#pragma once
// The tables of published values as text of 80 columns and as JSON.

#include <string>

#include "cutback/print/print.hpp"
#include "cutback/tables/standards.hpp"

namespace cutback::print {

/// Every table with its source and status.
[[nodiscard]] std::string rules_text(const tables::Standards& standards, const Style& style);
[[nodiscard]] std::string rules_json(const tables::Standards& standards);

/// One table in full: a row on a line where that fits, else a cell on a line.
[[nodiscard]] std::string rule_table_text(const tables::Table& table, const Style& style);
[[nodiscard]] std::string rule_table_json(const tables::Table& table);

}  // namespace cutback::print

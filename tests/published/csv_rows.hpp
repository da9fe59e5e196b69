#pragma once
// A committed table of expected values, row by row.

#include <map>
#include <stdexcept>
#include <string>
#include <vector>

#include "cutback/io/csv.hpp"
#include "cutback/io/files.hpp"
#include "cutback/number.hpp"

namespace published {

class CsvRow {
 public:
  explicit CsvRow(std::map<std::string, std::string> cells) : cells_(std::move(cells)) {}
  const std::string& operator[](const std::string& column) const { return cells_.at(column); }
  double number(const std::string& column) const {
    return cutback::parse_number(cells_.at(column)).value();
  }

 private:
  std::map<std::string, std::string> cells_;
};

/// All rows of tests/published/NAME; a row with too few or too many fields is an error.
class CsvRows {
 public:
  explicit CsvRows(const std::string& name) {
    const cutback::io::WholeFile file(std::string(CUTBACK_SOURCE_DIR "/tests/published/") + name);
    cutback::io::CsvReader reader(file.text(), name);
    cutback::io::CsvRecord record;
    if (!reader.next(record)) throw std::runtime_error(name + " is empty");
    const std::vector<std::string> columns(record.fields.begin(), record.fields.end());
    while (reader.next(record)) {
      if (record.fields.size() != columns.size()) throw std::runtime_error(name + ": odd row");
      std::map<std::string, std::string> cells;
      for (std::size_t i = 0; i < columns.size(); ++i)
        cells[columns[i]] = std::string(record.fields[i]);
      rows_.emplace_back(std::move(cells));
    }
  }
  auto begin() const { return rows_.begin(); }
  auto end() const { return rows_.end(); }

 private:
  std::vector<CsvRow> rows_;
};

}  // namespace published

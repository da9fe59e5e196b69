#pragma once
// A file of several sheets, whatever its format.

#include <cstddef>
#include <memory>
#include <string>
#include <vector>

#include "cutback/io/rows.hpp"

namespace cutback::io {

struct SheetName {
  std::string name;
  bool hidden = false;
  bool has_cells = true;  ///< a chart has none
};

class Workbook {
 public:
  Workbook() = default;
  Workbook(const Workbook&) = delete;
  Workbook& operator=(const Workbook&) = delete;
  virtual ~Workbook() = default;

  /// In the order of the workbook.
  [[nodiscard]] virtual const std::vector<SheetName>& sheets() const = 0;
  /// Sheets may be open side by side; they are read one after the other. A sheet may outlive this
  /// object.
  /// @param sheet  its place in sheets(), one that has cells
  /// @throws InputError where the file is damaged
  [[nodiscard]] virtual std::unique_ptr<RowSource> open(std::size_t sheet) = 0;
};

}  // namespace cutback::io

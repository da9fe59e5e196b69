#pragma once
// The merged cells of a sheet.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace cutback::io {

/// A rectangle of cells that is one cell, whose text stands in its first. Rows from 1, columns
/// from 0, both ends included.
struct XlsxMerge {
  std::size_t top = 0;
  std::size_t left = 0;
  std::size_t bottom = 0;
  std::size_t right = 0;
  /// Of the first cell, once its row has been read. Written by whoever reads that row, and read by
  /// others only after it (XlsxMerges::cross).
  mutable std::string text;
  mutable bool struck = false;  ///< the same
};

/// All of them, ascending by their first row.
class XlsxMerges {
 public:
  /// @param reference  such as A2:B7. @return false where it is none
  bool add(std::string_view reference);
  void sort();
  [[nodiscard]] bool empty() const { return list_.empty(); }
  [[nodiscard]] const std::vector<XlsxMerge>& list() const { return list_; }
  /// Whether one begins in rows [from, to) and goes on behind them.
  [[nodiscard]] bool cross(std::size_t from, std::size_t to) const;

 private:
  std::vector<XlsxMerge> list_;
};

/// The column of a reference such as AB12, from 0, and how many letters it has; no letters where
/// there is none, or one beyond what a sheet has.
struct XlsxColumnName {
  std::size_t column = 0;
  std::size_t letters = 0;
};
[[nodiscard]] XlsxColumnName xlsx_column(std::string_view reference);

}  // namespace cutback::io

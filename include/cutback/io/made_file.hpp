#pragma once
// The register of finished ends: one row for each, appended whole or not at all.

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/error.hpp"
#include "cutback/measure/reading.hpp"

namespace cutback::io {

/// Columns of a register, in their order: `tag`, `end`, `made_at` ... `remark`.
[[nodiscard]] std::span<const std::string_view> made_columns();

/// One row: a text for each of made_columns(), empty where nothing stands. A row with a `part` is a
/// finished end, one without is a measurement.
struct MadeRow {
  std::size_t line = 0;
  std::vector<std::string> cells;
  [[nodiscard]] const std::string& cell(std::string_view column) const;
  void set(std::string_view column, std::string text);
  /// A row without any cell.
  MadeRow();
};

/// What is wrong with the values of a row, each fault with its column as `where`.
[[nodiscard]] std::vector<Fault> faults_of(const MadeRow& row);

/// Puts readings and figures into the register's own units where they came with a unit: `25Nm`,
/// `0.59"`. What is no figure stays as it is. @return what was taken for what
std::vector<std::string> take_units(MadeRow& row);

struct MadeFile {
  std::vector<MadeRow> rows;          ///< in file order; tags and ends in their first spelling
  std::vector<std::string> warnings;  ///< for instance a row at the end that was half written
};

/// @param name  of the file, for messages
/// @throws InputError with every fault
[[nodiscard]] MadeFile read_made(std::string_view text, const std::string& name);
[[nodiscard]] MadeFile load_made(const std::string& path);

/// An end of the file whose name is the row's but for spaces and hyphens, where none has the row's
/// in whichever case: the fault names it. The row would count as another end.
[[nodiscard]] std::optional<Fault> same_end_otherwise(const MadeFile& file, const MadeRow& row);

/// The sheath as it was read on each drum that is named, one place for each end: its last row.
[[nodiscard]] std::vector<measure::Drum> drums_of(const MadeFile& file);

/// Puts a row at the end of a register, which is made where it is not there. Writers wait for each
/// other; the row is on the disk when this returns, and what a writer that was killed left of its
/// row is taken away by the next.
/// @return remarks: where something was taken away, and where the row's end has another case there
/// @throws InputError where the row has faults, its end stands there under a name that differs by
/// spaces or hyphens, or the file is no register; FileError, and then the file is as before
[[nodiscard]] std::vector<std::string> append_made(const std::string& path, MadeRow row);

}  // namespace cutback::io

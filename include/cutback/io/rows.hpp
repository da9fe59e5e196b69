#pragma once
// A table that is read piece by piece, whatever kind of file it comes from.

#include <cstddef>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/io/csv.hpp"
#include "cutback/schedule/row_kind.hpp"

namespace cutback::io {

/// A text of a schedule that speaks of a hazardous place: "ZONE 1 AREA".
struct PlaceText {
  std::size_t line = 0;
  std::string text;
};

/// What a title says of all rows under it.
struct TitleSays {
  std::string place;  ///< it tells a hazardous place; empty where it does not
  std::string away;   ///< it takes cables away: "DELETED CABLES"; the same
  /// Not a title: a sheet that lists whole cables, which the rows may be of; the same.
  std::string beside = {};
};
struct TitleRow {
  std::size_t line = 0;
  TitleSays says;
};

/// A text that stands beside the cells of a sheet.
struct Aside {
  std::string where;  ///< "comment on D2", "text box", "page header"
  std::string text;   ///< on one line
};

/// Some rows of a table, in its order. Storage is used again from one piece to the next.
struct RowBlock {
  /// `rows` of them are filled; `line` counts as the file's own program does, from 1. The fields
  /// are views into `text`, into the source, or into `reader`.
  std::vector<CsvRecord> records;
  std::size_t rows = 0;
  /// What the fields are views into, where the source does not keep it. To be reserved larger than
  /// a string's own storage before there are views, so that they stay good when the block is moved.
  std::string text;
  std::string_view piece;  ///< what finish() has still to split into rows
  /// Of a CSV source, the line of the piece's first character; of a sheet, the row behind the
  /// piece.
  std::size_t line = 1;
  std::unique_ptr<CsvReader> reader;
  bool is_ready = false;                      ///< nothing is left to be done with it
  std::vector<schedule::SkippedRow> skipped;  ///< rows of a schedule that are no ends
  std::vector<PlaceText> places;              ///< where it is looked for: ScheduleFile
  std::vector<TitleRow> titles;               ///< all of them
};

/// Gives out a table's rows. Rows without a cell that says anything may be among them.
class RowSource {
 public:
  RowSource() = default;
  RowSource(const RowSource&) = delete;
  RowSource& operator=(const RowSource&) = delete;
  virtual ~RowSource() = default;

  /// Takes the next piece, of a size that suits the source; one thread at a time.
  /// @return false at the end; the block is empty then
  /// @throws InputError where the file is not what it should be; FileError
  virtual bool read(RowBlock& block) = 0;
  /// Does what read() left to be done, on any thread; only then the rows are there.
  /// @throws InputError
  virtual void finish(RowBlock& block) const { static_cast<void>(block); }
  /// Goes back to the first row, where the source can; false where it cannot, and nothing changes.
  virtual bool restart() { return false; }
  /// In these columns a number is wanted as the sheet shows it (0012), not as it is kept (12).
  virtual void show_as_text(const std::vector<std::size_t>& columns) { static_cast<void>(columns); }
  /// Texts that stand in no cell; before the first read().
  /// @throws InputError where a part that holds them is damaged
  [[nodiscard]] virtual std::vector<Aside> asides() { return {}; }
  /// The columns that the sheet does not show, from 0, ascending; before the first read().
  [[nodiscard]] virtual std::vector<std::size_t> hidden_columns() { return {}; }
  /// How much of the file has been taken, 0 to 1; nothing where its size is not known (a pipe).
  [[nodiscard]] virtual std::optional<double> taken() const = 0;
  /// What a row is called in messages: `line` or `row`.
  [[nodiscard]] virtual std::string_view row_word() const = 0;
};

}  // namespace cutback::io

#pragma once
// What of a row is not certain, whatever gland fits its ends: how often they are wanted, and
// whether their place is the plain one that the row tells.

#include <optional>
#include <string>
#include <vector>

#include "cutback/io/schedule_file.hpp"
#include "cutback/schedule/decide.hpp"
#include "cutback/schedule/row_place.hpp"

namespace cutback::run {

/// What stands outside of a row and speaks against it.
struct OutsideRow {
  std::string above;  ///< names the row on which its tag stands already; empty where there is none
  io::TitleSays title;  ///< what stands over it
};

/// Why an end needs a person, whatever fits it.
struct EndDoubt {
  std::optional<schedule::CountDoubt> count;  ///< how often it is wanted
  std::string place;                          ///< the text that tells another place

  [[nodiscard]] bool any() const { return count || !place.empty(); }
  /// Puts it into what was decided of the end.
  void say(schedule::Decision& decision) const;
};

/// Finds the doubts of the rows of one table.
class RowDoubts {
 public:
  /// @param layout  borrowed
  explicit RowDoubts(const schedule::Layout& layout);

  [[nodiscard]] EndDoubt of(schedule::Cells cells, schedule::Side side,
                            const schedule::RowCount& count, const OutsideRow& outside = {}) const;
  /// Whether a title that tells a hazardous place speaks against the row: all of its ends are told
  /// plain. Where one end is in the place that the title names, the other may well lie outside.
  [[nodiscard]] bool is_place_against(const io::TitleSays& title, schedule::Cells cells) const {
    return !title.place.empty() && places_.whole_row(cells);
  }

 private:
  /// A figure in a column that is not read and may ask more of a gland.
  [[nodiscard]] std::optional<schedule::CountDoubt> unread_figure(schedule::Cells cells) const;

  const schedule::Layout& layout_;
  schedule::PlainPlaces places_;
  std::vector<const schedule::UnreadColumn*> asking_;
  const bool any_plain_ = places_.any();
};

/// The title over each row of the tables, in their order.
class TitleOver {
 public:
  /// Of a new table.
  void begin(const io::ScheduleFile& file);
  /// Of its next piece. @param block  borrowed until the next
  void begin(const io::RowBlock& block);
  /// What the titles over a row of the piece say. A title ends what those before it said, where
  /// cables stand between them.
  /// @param line  of the row, ascending
  [[nodiscard]] const io::TitleSays& over(std::size_t line);
  /// All rows of the piece are done.
  void end();

 private:
  void take_until(std::size_t line);

  const std::vector<io::TitleRow>* titles_ = nullptr;
  std::size_t next_ = 0;
  io::TitleSays above_;  ///< over the whole table
  io::TitleSays says_;
  bool cables_ = false;  ///< since the last title
};

}  // namespace cutback::run

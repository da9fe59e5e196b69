#pragma once
// Texts of a schedule that speak of a hazardous place, and ends that are told to be in a plain one.

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "cutback/schedule/layout.hpp"

namespace cutback::schedule {

/// What the texts of a note or title say of a place.
struct PlaceSaid {
  std::string text;   ///< the first that speaks of a hazardous place; empty where none does
  bool told = false;  ///< false: it speaks of an area that often is one, a petrol store
};
/// Label and value may stand in two cells beside each other: "Zone:", "1".
[[nodiscard]] PlaceSaid place_in_note(const Layout& layout, Cells cells);

/// The same of rows that follow each other and are no cables: a label may stand above its values.
class NoteRows {
 public:
  /// @param layout  borrowed
  explicit NoteRows(const Layout& layout) : layout_(layout) {}
  [[nodiscard]] PlaceSaid next(Cells cells);

 private:
  const Layout& layout_;
  std::vector<std::string> labels_;  ///< of the columns
};

/// The text of a cable's row that speaks of a hazardous place, or of an area that often is one:
/// names of its ends and of its area, and columns that nobody reads. Empty where none does.
[[nodiscard]] std::string place_in_row(const Layout& layout, Cells cells);

/// Whether some rows tell in cells that ends are in a plain place, and never that one is in
/// another.
[[nodiscard]] bool all_told_plain(const Layout& layout, Sample rows);

/// The ends of rows that a cell, or a default, tells to be in a plain place (zone `none`).
class PlainPlaces {
 public:
  /// @param layout  borrowed
  explicit PlainPlaces(const Layout& layout);
  /// Whether any end may be told so.
  [[nodiscard]] bool any() const;
  /// Whether every end of the row is.
  [[nodiscard]] bool whole_row(Cells cells) const;
  /// The text of the row by which an end that is told plain is in a hazardous place; empty where
  /// there is none, or the end is not told plain.
  [[nodiscard]] std::string told_otherwise(Cells cells, Side side) const;

 private:
  [[nodiscard]] bool is_told(Cells cells, Side side) const;

  const Layout& layout_;
  std::array<std::optional<Source>, 3> zones_;  ///< by side
};

}  // namespace cutback::schedule

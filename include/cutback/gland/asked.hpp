#pragma once
// What is copied off a gland's packet: the questions, a template, and a range in one cell.

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/gland/gland.hpp"

namespace cutback::gland {

/// One question: a column, or the two of a range.
struct Asked {
  std::string_view column;  ///< as its answer is called: `part`, `outer_mm`
  std::string_view low;     ///< columns of the list; of one column the same twice
  std::string_view high;
  std::string_view asks;
  std::string_view example;
  bool needed = false;
  bool of_armoured = false;    ///< not asked of a gland without armour
  bool of_barrier = false;     ///< asked of a gland alone that may seal by compound
  std::string_view cost = {};  ///< what it means that it is not stated; may be empty
  /// A blank says that the gland has no such part, so that nobody may leave it open.
  bool blank_is_none = false;

  [[nodiscard]] bool is_range() const { return low != high; }
};

/// In the order in which a packet is read.
[[nodiscard]] std::span<const Asked> asked();

/// A range in one cell: `11-16`, `11 to 16`, `11...16`, `0.43-0.63in`, `7/16-5/8"`. Inches become
/// mm. @return nothing for anything else, a single figure among it
struct Ends {
  double low = 0.0;
  double high = 0.0;
};
[[nodiscard]] std::optional<Ends> read_range(std::string_view text);

/// A list without a gland: the columns that decide, with a remark on each.
[[nodiscard]] std::string template_text();
/// The headings of such a list.
[[nodiscard]] std::vector<std::string_view> template_columns();

}  // namespace cutback::gland

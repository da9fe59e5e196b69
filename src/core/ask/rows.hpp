#pragma once
// The questions in plain words.

#include <span>
#include <string_view>

#include "cutback/cable/armour.hpp"

namespace cutback::ask::detail {

struct Row {
  std::string_view key;
  std::string_view name;  ///< in a few words, for the summary
  std::string_view asks;
  std::string_view example;
  std::string_view usual;
  std::string_view not_known;  ///< what `?` costs
  std::string_view drawing = {};
  bool always = false;    ///< also where no gland lacks it
  bool may_skip = false;  ///< an empty line goes on
};

/// In the order in which they are asked. A fact that is lacked and has no row comes after them.
[[nodiscard]] std::span<const Row> rows();

/// That of `armour_mm` in the words of the armour at hand.
[[nodiscard]] const Row& piece_row(cable::ArmourKind armour);

/// @return null where the key has none
[[nodiscard]] const Row* row_of(std::string_view key);

}  // namespace cutback::ask::detail

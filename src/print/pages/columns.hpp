#pragma once
// Blocks one after another in columns.

#include <cstddef>
#include <functional>
#include <span>
#include <vector>

namespace cutback::print {

struct Measured {
  double height = 0.0;
  bool may_end = true;  ///< the column may end behind it
};

/// Fills columns one after another and gives the column of each block. What is higher than a whole
/// column stands alone in one. @param room  of the column of that number, from 0
[[nodiscard]] std::vector<std::size_t> fill_columns(std::span<const Measured> blocks,
                                                    const std::function<double(std::size_t)>& room);

/// The least height in which `columns` of them hold all blocks; more than `most` where it takes
/// more.
[[nodiscard]] double balanced_height(std::span<const Measured> blocks, std::size_t columns,
                                     double most);

}  // namespace cutback::print

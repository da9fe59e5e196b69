#pragma once
// Set cover made small: rows are groups of ends, columns are parts.

#include <cstddef>
#include <cstdint>
#include <vector>

#include "cutback/schedule/groups.hpp"

namespace cutback::schedule::detail {

/// Rows that are covered by any one of their columns.
struct Cover {
  std::vector<EndGroup> rows;
  /// The columns that stand in a row, by part code.
  [[nodiscard]] std::vector<std::size_t> columns(const std::vector<Part>& parts) const;
};

/// A cover after what needs no search.
struct Reduced {
  std::vector<std::size_t> forced;  ///< columns that every best cover has
  std::vector<Cover> components;    ///< no row of one shares a column with another
};

/// To choose a kit: dominated rows and columns are left out, again and again.
[[nodiscard]] Reduced reduce_for_kit(const Wanted& wanted);

/// To serve the most ends by so many parts: every end counts, and no price does.
[[nodiscard]] std::vector<Cover> reduce_for_curve(const Wanted& wanted);

}  // namespace cutback::schedule::detail

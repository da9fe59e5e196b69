#pragma once
// What checks read of glands.

#include <cstdint>
#include <span>
#include <vector>

#include "cutback/fit/check.hpp"
#include "cutback/gland/gland.hpp"

namespace cutback::fit::detail {

/// The columns of many glands, as numbers that are the same where glands are alike.
class GlandColumns {
 public:
  /// @param glands  null where there is none: those are alike
  explicit GlandColumns(std::span<const gland::Gland* const> glands);

  /// Numbers the glands by all that a check reads of them, as the columns of the list are marked;
  /// from 0, a new number for the first of its kind. Where there is no gland the number means
  /// nothing.
  [[nodiscard]] std::vector<std::uint32_t> told_apart_by(CheckName check) const;

 private:
  std::span<const gland::Gland* const> glands_;
  /// By column of the list and gland; empty where all glands are alike.
  std::vector<std::vector<std::uint32_t>> values_;
};

}  // namespace cutback::fit::detail

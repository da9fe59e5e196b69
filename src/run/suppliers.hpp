#pragma once
// Which of several gland lists a gland is of.

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "cutback/gland/gland.hpp"

namespace cutback::run {

class Suppliers {
 public:
  Suppliers() = default;
  /// @param glands  of all lists, one behind the other; borrowed
  /// @param ends    of each list, the place behind its last gland and its name
  Suppliers(std::span<const gland::Gland> glands,
            std::vector<std::pair<std::size_t, std::string>> ends)
      : glands_(glands), ends_(std::move(ends)) {}

  /// Empty for no gland, and where there is one list.
  [[nodiscard]] std::string_view of(const gland::Gland* gland) const {
    if (gland == nullptr || ends_.size() < 2) return {};
    const auto place = static_cast<std::size_t>(gland - glands_.data());
    for (const auto& [end, name] : ends_) {
      if (place < end) return name;
    }
    return {};
  }

 private:
  std::span<const gland::Gland> glands_;
  std::vector<std::pair<std::size_t, std::string>> ends_;
};

}  // namespace cutback::run

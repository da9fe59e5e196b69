#pragma once
// What the blank cells of a column are taken for, where a user says so.

#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "cutback/error.hpp"
#include "cutback/schedule/layout.hpp"

namespace cutback::schedule {

/// At most so many: they are the bits of Decision::defaults.
inline constexpr std::size_t k_most_defaults = 64;

/// A fault for each default whose column a schedule does not have, or has for names alone; whose
/// value the column does not take; and that is given twice. `where` is --default.
[[nodiscard]] std::vector<Fault> check_defaults(const Format& format);

/// `zone=1; wall_mm=2`: those of a decision.
[[nodiscard]] std::string defaults_text(std::span<const OwnValue> defaults, std::uint64_t used);

/// How many cells each default filled: those of rows that are answered.
class DefaultCounts {
 public:
  /// @param used  in one row
  void add(std::uint64_t used);
  void add(const DefaultCounts& other);
  [[nodiscard]] std::uint64_t of(std::size_t number) const {
    return number < counts_.size() ? counts_[number] : 0;
  }

 private:
  std::vector<std::uint64_t> counts_;
};

}  // namespace cutback::schedule

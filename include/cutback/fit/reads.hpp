#pragma once
// Which checks read a column of the gland list or a field of an end.

#include <cstdint>
#include <initializer_list>

#include "cutback/fit/check.hpp"

namespace cutback::fit {

/// A set of checks. A column or field that no check reads is marked so: `Reads::none()`.
class Reads {
 public:
  constexpr Reads(std::initializer_list<CheckName> checks) {
    for (const CheckName check : checks) bits_ |= bit(check);
  }
  [[nodiscard]] static constexpr Reads none() { return Reads(0U); }
  [[nodiscard]] static constexpr Reads all() { return Reads(~0U); }
  [[nodiscard]] constexpr bool has(CheckName check) const { return (bits_ & bit(check)) != 0; }
  [[nodiscard]] constexpr bool any() const { return bits_ != 0; }
  friend constexpr Reads operator|(Reads a, Reads b) { return Reads(a.bits_ | b.bits_); }

 private:
  explicit constexpr Reads(std::uint32_t bits) : bits_(bits) {}
  static constexpr std::uint32_t bit(CheckName check) {
    return std::uint32_t{1} << static_cast<unsigned>(check);
  }
  std::uint32_t bits_ = 0;
};

}  // namespace cutback::fit

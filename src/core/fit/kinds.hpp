#pragma once
// Glands that a rule cannot tell apart.

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "core/fit/gland_set.hpp"
#include "cutback/gland/gland.hpp"

namespace cutback::fit::detail {

/// Which places hold glands that are alike in every column that a rule reads.
class Kinds {
 public:
  Kinds() = default;
  /// @param of_place  from 0; k_none at an empty place
  /// @param members   one gland of each kind; borrowed
  Kinds(std::vector<std::uint32_t> of_place, std::vector<const gland::Gland*> members);
  static constexpr std::uint32_t k_none = 0xffffffff;

  [[nodiscard]] std::size_t count() const { return members_.size(); }
  [[nodiscard]] const std::vector<const gland::Gland*>& members() const { return members_; }
  /// @param place  not empty
  [[nodiscard]] std::uint32_t of(std::size_t place) const { return of_place_[place]; }
  [[nodiscard]] std::span<const std::uint32_t> places(std::size_t kind) const {
    return std::span(places_).subspan(first_[kind], first_[kind + 1] - first_[kind]);
  }
  /// Of a set of places, in words.
  [[nodiscard]] std::size_t words() const { return (of_place_.size() + k_word - 1) / k_word; }
  void put_all(GlandSet& set, std::size_t kind) const {
    for (const std::uint32_t place : places(kind)) put(set, place);
  }

 private:
  std::vector<std::uint32_t> of_place_;
  std::vector<const gland::Gland*> members_;
  std::vector<std::uint32_t> places_;  ///< those of the first kind, then of the next
  std::vector<std::uint32_t> first_;   ///< where those of a kind begin
};

}  // namespace cutback::fit::detail

#pragma once
// A gland list laid out for searching.

#include <array>
#include <cstddef>
#include <cstdint>
#include <map>
#include <memory>
#include <mutex>
#include <span>
#include <string>
#include <unordered_map>
#include <vector>

#include "core/fit/gland_set.hpp"
#include "core/fit/limit_sets.hpp"
#include "core/fit/rules.hpp"
#include "cutback/fit/select.hpp"

namespace cutback::fit::detail {

/// Places of glands: those that the same ends ask for lie together (same armour, same thread), in
/// order of preference and part code, and begin with a word of their own. That decides nothing but
/// how much of a set has to be looked at.
struct GlandIndex {
  /// @param list  borrowed
  GlandIndex(std::span<const gland::Gland> list, Prefer preferred);

  std::span<const gland::Gland> glands;
  Prefer prefer;
  std::vector<const gland::Gland*> places;  ///< null where a place is empty
  std::vector<double> preference;           ///< by place
  std::vector<Kinds> kinds;                 ///< by rule
  GlandSet taken;                           ///< the places that are not empty

  std::vector<std::uint32_t> place_of;  ///< by gland of the list

  [[nodiscard]] std::size_t words() const { return taken.size(); }
  /// @param rule  one of rules()
  [[nodiscard]] const Kinds& kinds_of(const Rule& rule) const {
    return kinds[static_cast<std::size_t>(&rule - rules().data())];
  }
  /// @param gland  of the list
  [[nodiscard]] std::size_t place(const gland::Gland& gland) const {
    return place_of[static_cast<std::size_t>(&gland - glands.data())];
  }
};

}  // namespace cutback::fit::detail

#pragma once
// A gland list laid out for searching: in order of preference within each entry thread.

#include <cstddef>
#include <cstdint>
#include <map>
#include <span>
#include <vector>

#include "core/fit/limit_sets.hpp"
#include "cutback/fit/select.hpp"

namespace cutback::fit::detail {

/// Places of one entry thread: whole blocks, in order of preference, the last places empty.
struct ThreadPlaces {
  entry::Thread thread;
  std::size_t first_word = 0;
  std::size_t end_word = 0;
};

/// Limits of one diameter.
struct RangeSets {
  LimitSets low;
  LimitSets high;
};

struct GlandIndex {
  /// @param glands  borrowed
  GlandIndex(std::span<const gland::Gland> list, Prefer preferred);

  std::span<const gland::Gland> glands;
  Prefer prefer;
  std::vector<ThreadPlaces> threads;
  std::vector<const gland::Gland*> places;  ///< null where a place is empty
  std::vector<double> preference;           ///< by place
  std::vector<std::uint32_t> kind;          ///< by place: alike in all but diameters and price
  std::size_t kinds = 0;
  std::map<cable::ArmourKind, GlandSet> armour;
  /// A range that is asked for but states neither limit: no set tells, each is looked at.
  GlandSet without_range;
  RangeSets outer;
  RangeSets inner;            ///< of the glands that are certainly not filled with compound
  RangeSets inner_or_either;  ///< and of those that may be filled or not
  LimitSets bore;
  RangeSets clamp;

  [[nodiscard]] std::size_t words() const { return without_range.size(); }
};

}  // namespace cutback::fit::detail

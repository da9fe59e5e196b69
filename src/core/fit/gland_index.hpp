#pragma once
// A gland list laid out for searching: in order of preference within each section.

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "core/fit/limit_sets.hpp"
#include "cutback/fit/select.hpp"

namespace cutback::fit::detail {

/// Limits of one diameter.
struct RangeSets {
  LimitSets low;
  LimitSets high;
};

/// Glands with the same entry thread, kind of armour, sealing and clamp. Their places are whole
/// blocks of words, in order of preference, the last places empty.
struct Section {
  entry::Thread thread;
  cable::ArmourKind armour = cable::ArmourKind::none;
  gland::Sealing sealing = gland::Sealing::compression;
  measure::Range clamp;
  std::size_t first_word = 0;
  std::size_t end_word = 0;
  // The words of these sets are those of the section:
  RangeSets outer;
  RangeSets inner;
  LimitSets bore;
};

struct GlandIndex {
  /// @param list  borrowed
  GlandIndex(std::span<const gland::Gland> list, Prefer preferred);

  std::span<const gland::Gland> glands;
  Prefer prefer;
  std::vector<Section> sections;
  std::vector<const gland::Gland*> places;  ///< null where a place is empty
  std::vector<double> preference;           ///< by place
  std::vector<std::uint32_t> kind;          ///< by place: alike in all but diameters and price
  std::size_t kinds = 0;
  GlandSet taken;  ///< the places that are not empty
  /// A range that is asked for but states neither limit: no set tells, each is looked at.
  GlandSet without_range;

  [[nodiscard]] std::size_t words() const { return taken.size(); }
};

}  // namespace cutback::fit::detail

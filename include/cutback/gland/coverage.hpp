#pragma once
// What a gland list covers, and what it leaves out.

#include <cstddef>
#include <span>
#include <string_view>
#include <vector>

#include "cutback/gland/gland.hpp"

namespace cutback::gland {

/// A closed range of sheath diameters [mm].
struct Span {
  double low_mm;
  double high_mm;
};

/// Glands for one kind of armour that seal in one way; a gland whose sealing is `either` stands in
/// both groups of its armour.
struct Group {
  cable::ArmourKind armour;
  Sealing sealing;                   ///< compression or barrier
  std::vector<const Gland*> glands;  ///< by outer seal, then part; borrowed
  std::vector<Span> covered;         ///< sheaths that at least one outer seal takes, ascending
  std::vector<Span> gaps;            ///< between them: sheaths that none takes (limits excluded)
};

/// The glands with one entry thread, of whatever kind.
struct EntryGroup {
  entry::Thread thread;
  std::size_t glands;
  std::vector<Span> covered;
};

/// A column that some glands leave blank though it applies to them.
struct NotStated {
  std::string_view column;
  std::size_t blank;
  std::size_t applies;
};

struct Coverage {
  std::vector<Group> groups;          ///< those with a gland: by armour, compression first
  std::vector<EntryGroup> entries;    ///< metric, NPT, PG; small to large
  std::vector<NotStated> not_stated;  ///< those with a blank
};

/// @param glands  borrowed: must outlive the result
[[nodiscard]] Coverage coverage(std::span<const Gland> glands);

}  // namespace cutback::gland

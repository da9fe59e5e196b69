#pragma once
// Which cells of a row decide what, and cells as the key to what is remembered of rows like it.

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/job/job.hpp"
#include "cutback/schedule/layout.hpp"

namespace cutback::schedule::detail {

/// Some cells of a row that are one key to what is remembered: rows with the same key have the same
/// cells there.
class KeyCells {
 public:
  KeyCells() = default;
  KeyCells(const Layout& layout, std::vector<Source> sources);

  [[nodiscard]] const std::vector<Source>& sources() const { return sources_; }

  /// @param store  holds the key where it does not stand in the row as it is
  [[nodiscard]] std::string_view key(const Layout& layout, const Row& row,
                                     std::string& store) const;

 private:
  /// Cells beside each other, from the first to the last.
  struct Run {
    std::size_t first;
    std::size_t last;
  };
  static std::string_view text_of(const Run& run, Cells cells);

  std::vector<Source> sources_;
  std::vector<Run> runs_;
};

struct DiameterSource {
  Source source;
  job::Layer layer;
};

/// Where the cells of one end stand that decide anything.
struct EndSources {
  EndSources() = default;
  EndSources(const Layout& layout, Side side);

  KeyCells all;
  KeyCells family;  ///< all but diameters and routes
  std::vector<DiameterSource> diameters;
  std::vector<Source> routes;
};

}  // namespace cutback::schedule::detail

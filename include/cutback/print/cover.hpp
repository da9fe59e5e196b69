#pragma once
// The pairs of sheath and bedding that a gland list serves: a map in characters, as SVG, as JSON.

#include <span>
#include <string>

#include "cutback/fit/cover_map.hpp"
#include "cutback/print/print.hpp"

namespace cutback::print {

/// What a map is of.
struct CoverTitle {
  std::string list;        ///< of the glands
  std::size_t glands = 0;  ///< in it
  std::string asked;       ///< `wire 0.9 mm, M20, clearance hole`
};

/// Cells that fit a terminal of 80 columns and 24 lines.
inline constexpr std::size_t k_cover_columns = 66;
inline constexpr std::size_t k_cover_rows = 14;

[[nodiscard]] std::string cover_text(const fit::CoverMap& map, std::span<const fit::CoverGap> gaps,
                                     const CoverTitle& title, const Style& style);
[[nodiscard]] std::string cover_json(const fit::CoverMap& map, std::span<const fit::CoverGap> gaps,
                                     const CoverTitle& title);
/// Readable without colour: none is hatched, one is light, two and more are dark.
[[nodiscard]] std::string cover_svg(const fit::CoverMap& map, std::span<const fit::CoverGap> gaps,
                                    const CoverTitle& title);

}  // namespace cutback::print

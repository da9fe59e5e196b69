#pragma once
// What a gland list covers, as text and as JSON.

#include <string>

#include "cutback/gland/coverage.hpp"
#include "cutback/print/print.hpp"

namespace cutback::print {

/// Counts, a bar for each outer seal over an axis in mm, gaps, entries and blanks, in 80 columns.
[[nodiscard]] std::string glands_text(const gland::GlandList& list, const gland::Coverage& coverage,
                                      const Style& style);
[[nodiscard]] std::string glands_json(const gland::GlandList& list,
                                      const gland::Coverage& coverage);

/// One gland in lines, and what of it sits where, to scale.
[[nodiscard]] std::string gland_part_text(const gland::Gland& gland, const Style& style);
[[nodiscard]] std::string gland_part_json(const gland::Gland& gland);

}  // namespace cutback::print

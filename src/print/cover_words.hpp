#pragma once
// What text and drawing of a coverage map both say.

#include <span>
#include <string>

#include "cutback/fit/cover_map.hpp"

namespace cutback::print {

std::string gap_words(const fit::CoverGap& gap, bool armoured);
/// The first of them in one sentence, and how many more.
std::string gaps_words(const fit::CoverMap& map, std::span<const fit::CoverGap> gaps,
                       std::size_t most);

}  // namespace cutback::print

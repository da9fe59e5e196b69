#pragma once
// Words that text and pages share, not yet set in lines.

#include <string>
#include <string_view>

#include "cutback/area/area.hpp"
#include "cutback/cable/cable.hpp"
#include "cutback/entry/entry.hpp"
#include "cutback/sheet/sheet.hpp"

namespace cutback::print {

/// `text` without control characters, which could reach a terminal or a page from a file.
[[nodiscard]] std::string clean(std::string_view text);

/// The diameters with their spread and evidence.
[[nodiscard]] std::string cable_words(const cable::Cable& cable);
/// Thread, hole, wall and the adaptors at hand.
[[nodiscard]] std::string entry_words(const entry::Entry& entry);
/// What is said of the place and the enclosure; empty in an ordinary place.
[[nodiscard]] std::string place_words(const area::Area& area);
/// Why nothing may be cut, in a few words; empty where everything may.
[[nodiscard]] std::string stop_words(const sheet::Sheet& sheet);
/// Whether a cut of its plan has no figure, so that it must be taken from the gland in hand.
[[nodiscard]] bool lacks_marks(const sheet::Sheet& sheet);
/// Whether a measurement can still prove the gland, so that nothing is to be ordered yet.
[[nodiscard]] bool measure_first(const sheet::Sheet& sheet);

}  // namespace cutback::print

#pragma once
// Words that text and pages share, not yet set in lines.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/area/area.hpp"
#include "cutback/cable/cable.hpp"
#include "cutback/entry/entry.hpp"
#include "cutback/sheet/sheet.hpp"

namespace cutback::print {

/// `text` without control characters, which could reach a terminal or a page from a file.
[[nodiscard]] std::string clean(std::string_view text);

/// Small letters of the alphabet a to z as capitals.
[[nodiscard]] std::string capitals(std::string_view text);

/// The tag, or words for that there is none.
[[nodiscard]] std::string tag_words(const std::string& tag);
/// A part with its note.
[[nodiscard]] std::string part_words(const sheet::Part& part);
/// The diameters with their spread and evidence.
[[nodiscard]] std::string cable_words(const cable::Cable& cable);
/// Thread, hole, wall and the adaptors at hand.
/// @param gland  for which a hole will be made, where the entry is made to suit; may be null
[[nodiscard]] std::string entry_words(const entry::Entry& entry,
                                      const gland::Gland* gland = nullptr);
/// What is said of the place and the enclosure; empty in an ordinary place.
[[nodiscard]] std::string place_words(const area::Area& area);
/// What of the armour the caliper is put on: `one wire`, `strip thickness`.
[[nodiscard]] std::string_view piece_words(cable::ArmourKind armour);

/// The same in a few words, as a plate has it: `zone 1, Ex e IIB, IP66`.
[[nodiscard]] std::string plate_words(const area::Area& area);
/// What one diameter must read before anything is cut.
struct GateLine {
  /// `sheath`, `bedding`, piece_words(); empty: another size of wire that would do
  std::string what;
  std::string must;  ///< "11.5 to 16.5 mm"
  std::string also;  ///< what its readings, or sheath less bedding, must keep to besides
};
[[nodiscard]] std::vector<GateLine> gate_lines(const sheet::Sheet& sheet);

/// "11.5 to 16.5 mm", "at most 12.7 mm"; "any" for one without limits.
[[nodiscard]] std::string gate_words(const fit::Gate& gate, int decimals);

/// What sheath less bedding must be for the plan's depths, where the gates do not see to it [mm].
[[nodiscard]] std::optional<double> depths_from_mm(const sheet::Sheet& sheet);

/// What must be measured or looked up at the end besides the diameters, each with a blank.
struct OpenBlank {
  std::string loud;   ///< what to do
  std::string words;  ///< where
  std::string name;   ///< in the sums of the marks; may be empty
  std::string unit;
};
[[nodiscard]] std::vector<OpenBlank> open_blanks(const sheet::Sheet& sheet);

/// That the metals of gland and wall stand far apart; empty where they do not.
[[nodiscard]] std::string metals_words(const fit::GlandFit& fit);

/// Each missing fact by itself, once, without what may be typed for it; some of their names have
/// commas.
[[nodiscard]] std::string missing_words(const std::vector<fit::Lack>& lacks);

/// CUT, MEASURE FIRST, NOT YET, NONE.
[[nodiscard]] std::string_view state_words(sheet::State state);

/// Why nothing may be cut, in a few words; empty where everything may.
[[nodiscard]] std::string stop_words(const sheet::Sheet& sheet);
/// Whether a cut of its plan has no figure, so that it must be taken from the gland in hand.
[[nodiscard]] bool lacks_marks(const sheet::Sheet& sheet);
/// What to do about an end of which nothing may be cut: `Instead`, `Measure` or `Order`, and what.
/// Nothing is to be ordered where a measurement can still prove the gland.
struct Help {
  const char* label;
  std::string words;
};
[[nodiscard]] std::vector<Help> help_words(const sheet::Sheet& sheet);

}  // namespace cutback::print

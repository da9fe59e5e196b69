#pragma once
// One rule applied to one gland, cable and entry.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/verdict.hpp"

namespace cutback::fit {

enum class CheckName {
  outer_seal,
  inner_seal,
  bore,
  armour,
  build_up,
  entry,
  thread,
  joint,
  bend,
  protection,
  level,
  group,
  ingress,
  temperature,
  sealing,
  metals,
  earth,
  fault,
};

[[nodiscard]] constexpr std::string_view to_string(CheckName name) {
  switch (name) {
    case CheckName::outer_seal:
      return "outer-seal";
    case CheckName::inner_seal:
      return "inner-seal";
    case CheckName::bore:
      return "bore";
    case CheckName::armour:
      return "armour";
    case CheckName::build_up:
      return "build-up";
    case CheckName::entry:
      return "entry";
    case CheckName::thread:
      return "thread";
    case CheckName::joint:
      return "joint";
    case CheckName::bend:
      return "bend";
    case CheckName::protection:
      return "protection";
    case CheckName::level:
      return "level";
    case CheckName::group:
      return "group";
    case CheckName::ingress:
      return "ingress";
    case CheckName::temperature:
      return "temperature";
    case CheckName::sealing:
      return "sealing";
    case CheckName::metals:
      return "metals";
    case CheckName::earth:
      return "earth";
    case CheckName::fault:
      return "fault";
  }
  return "";
}

/// The question that a check belongs to. A question that is not asked is named beside the verdict.
enum class Topic { cable, entry, joint, place, earth, fault };

[[nodiscard]] constexpr std::string_view to_string(Topic topic) {
  switch (topic) {
    case Topic::cable:
      return "cable";
    case Topic::entry:
      return "entry";
    case Topic::joint:
      return "joint";
    case Topic::place:
      return "place";
    case Topic::earth:
      return "earth";
    case Topic::fault:
      return "fault";
  }
  return "";
}

/// A fact without which a check is not proven.
struct Lack {
  /// Where it is found.
  enum class Where {
    at_the_end,  ///< with caliper and rule at the cable's end: a diameter, wall, hole, route
    elsewhere,   ///< on paper only: the place, a gland's figure, the fault, a standard
  };
  std::string fact;      ///< in a few words: "wall", "bedding", "bore of the gland"
  std::string_view key;  ///< of the field or of the gland's column; empty where there is neither
  Where where = Where::elsewhere;
  friend bool operator==(const Lack&, const Lack&) = default;
};

/// The outcome of one rule, with everything needed to redo it by hand. Lengths in mm; a check of
/// something else says its unit in `says`. An absent figure does not apply or is not known.
struct Check {
  CheckName name = CheckName::outer_seal;
  Verdict verdict = Verdict::not_known;
  std::optional<double> value;
  std::optional<double> low;
  std::optional<double> high;
  std::optional<double> margin_mm;
  std::optional<double> probability;
  /// True when the margin says how near a measured diameter is to a limit, so that it counts for
  /// the gland's smallest margin.
  bool counts_for_margin = false;
  std::vector<Lack> lacks;  ///< what it is not proven without, where that can be named
  std::string says;         ///< one plain sentence
  std::string source;       ///< rule or document, with its status where that is not "checked"
};

}  // namespace cutback::fit

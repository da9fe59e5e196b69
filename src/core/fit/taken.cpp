#include "cutback/fit/taken.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string_view>
#include <utility>

#include "cutback/compare.hpp"

namespace cutback::fit {
namespace {

/// An assumption that a screen may have to show.
struct Doubt {
  std::string_view fact;
  std::string_view words;  ///< empty: its own fact and what is taken for it
  CheckName check;         ///< that another value could fail
  /// In mm: with more than this to spare no likely value fails the check; absent: no margin helps.
  std::optional<double> outweighed_by_mm;
};

// The thicknesses are those of stout parts, the caliper's that of a tape measure read to 1 mm.
// Common practice, no source.
constexpr std::array k_doubts{
    Doubt{"step_mm", "a caliper of 0.05 mm that closes at 0", CheckName::outer_seal, 1.0},
    Doubt{"step_mm", "a caliper of 0.05 mm that closes at 0", CheckName::inner_seal, 1.0},
    Doubt{"tag_mm", "no earth tag", CheckName::thread, 3.0},
    Doubt{"serrated_mm", "no serrated washer", CheckName::thread, 2.0},
    Doubt{"undercut_mm", "no undercut", CheckName::thread, 3.0},
    Doubt{"hole_dia_mm", "a hole made for the thread", CheckName::joint, std::nullopt},
    Doubt{"bore_mm", "a bore as wide as the inner seal's range", CheckName::bore, 1.0},
    Doubt{"max_cores", "any number of cores in the chamber", CheckName::sealing, std::nullopt},
    Doubt{"ambient_min_c", "", CheckName::temperature, std::nullopt},
    Doubt{"ambient_max_c", "", CheckName::temperature, std::nullopt},
    Doubt{"entry_temp_c", "", CheckName::temperature, std::nullopt},
};

std::string words_of(const Doubt& doubt, const Assumption& assumption) {
  if (!doubt.words.empty()) return std::string(doubt.words);
  if (doubt.fact == "ambient_min_c") return "ambient down to " + assumption.taken;
  if (doubt.fact == "ambient_max_c") return "ambient up to " + assumption.taken;
  return "entry " + assumption.taken;
}

/// Of what a profile decided: what moves a figure or a mark.
std::string words_of_profile(const Assumption& decided) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 6> k_names{
      {{"step_mm", "caliper step"},
       {"mpe_mm", "caliper error"},
       {"zero_mm", "caliper zero"},
       {"slack_mm", "slack"},
       {"rules", "rules"},
       {"adaptor", "adaptor"}}};
  for (const auto& [fact, name] : k_names) {
    if (fact != decided.fact) continue;
    return std::string(name) + " " + decided.taken + (fact.ends_with("_mm") ? " mm" : "") +
           " (your profile)";
  }
  return {};
}

bool could_fail(const Doubt& doubt, const GlandFit& fit) {
  const Check* const check = fit.find(doubt.check);
  if (check == nullptr) return false;
  if (!doubt.outweighed_by_mm || !check->margin_mm) return true;
  return !at_least(*check->margin_mm, *doubt.outweighed_by_mm);
}

}  // namespace

std::vector<std::string> taken_that_may_fail(const std::vector<Assumption>& assumptions,
                                             const GlandFit& fit) {
  std::vector<std::string> words;
  for (const Assumption& assumption : assumptions) {
    if (assumption.why == k_of_profile) {
      std::string text = words_of_profile(assumption);
      if (!text.empty()) words.push_back(std::move(text));
      continue;
    }
    for (const Doubt& doubt : k_doubts) {
      if (doubt.fact != assumption.fact || !could_fail(doubt, fit)) continue;
      std::string text = words_of(doubt, assumption);
      if (std::find(words.begin(), words.end(), text) == words.end())
        words.push_back(std::move(text));
    }
  }
  return words;
}

}  // namespace cutback::fit

#pragma once
// What in a set of readings calls for a second look, and what keeps them from ever proving a fit.

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/measure/budget.hpp"
#include "cutback/measure/estimate.hpp"

namespace cutback::detail {

/// "; ..." to put behind a source: above 25 mm the published method is the tape, not the caliper.
[[nodiscard]] std::string tape_note(double diameter_mm);

/// The step [mm] with which a diameter of a sheath or bedding is known: above 25 mm IEC 60811-203
/// 4.2 reads it to 0.5 mm, however fine the instrument; jaws on so soft and so large a section tell
/// no more.
[[nodiscard]] double step_for(double step_mm, double diameter_mm);

/// Places with a single reading: adds the term for the unknown angle where an ovality is known,
/// and a cap where none is.
void add_uncrossed(std::span<const PlaceFigures> places, std::optional<double> ovality_mm,
                   std::vector<Term>& terms, std::vector<measure::Cap>& caps);

/// A place less round than the limit: a warning with its figures for each, and one cap.
/// @param label  put before "place 2" in a warning, as "drum D1, "; may be empty
void look_at_ovality(std::span<const PlaceFigures> places, double limit_ratio,
                     measure::Section section, const std::string& label,
                     std::vector<measure::Cap>& caps, std::vector<std::string>& warnings);

/// "14.9, 15.1 mm and 3 more": the first few of many, with the unit behind them.
[[nodiscard]] std::string listed(std::span<const double> readings_mm, std::string_view unit);

/// Readings that the caliper cannot have shown: one warning that names them.
void look_at_steps(std::span<const measure::Place> places, double step_mm, const std::string& label,
                   std::vector<std::string>& warnings);

}  // namespace cutback::detail

#pragma once
// A diameter with its spread and where it comes from.

#include <array>
#include <limits>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/measure/caliper.hpp"
#include "cutback/measure/reading.hpp"

namespace cutback::measure {

enum class Evidence { measured, datasheet, estimated };

/// In the order in which a user is told of them.
[[nodiscard]] constexpr auto all_values(Evidence) {
  using enum Evidence;
  return std::array{measured, datasheet, estimated};
}

[[nodiscard]] constexpr std::string_view to_string(Evidence evidence) {
  switch (evidence) {
    case Evidence::measured:
      return "measured";
    case Evidence::datasheet:
      return "datasheet";
    case Evidence::estimated:
      return "estimated";
  }
  return "";
}

/// How the true value is spread about the estimate.
enum class Spread {
  student,      ///< scaled and shifted t distribution (normal when the degrees are infinite)
  rectangular,  ///< anywhere in value +- expanded, alike
};

/// Why an estimate never earns better than marginal-inside, and what to do about it.
struct Cap {
  std::string reason;
  /// What would take it away, to go behind the name of the diameter: "once more, at right angles".
  std::string_view wanted = "again";
};

/// An estimated diameter. All lengths in mm, unrounded.
struct Estimate {
  double value_mm = 0.0;     ///< D
  double standard_mm = 0.0;  ///< u
  double expanded_mm = 0.0;  ///< U = k u
  double k = 0.0;            ///< coverage factor; 0 for a rectangular spread
  double degrees_of_freedom = std::numeric_limits<double>::infinity();  ///< as used, whole
  Evidence evidence = Evidence::measured;
  Spread spread = Spread::student;
  std::vector<double> readings_mm;    ///< every reading less the zero, for the caps of a judgement
  std::vector<Cap> caps;              ///< reasons that hold whatever the range
  std::vector<std::string> warnings;  ///< things to look at that do not change the verdict
  std::string source;                 ///< how value and spread were found, for the printed result

  [[nodiscard]] double low_mm() const { return value_mm - expanded_mm; }
  [[nodiscard]] double high_mm() const { return value_mm + expanded_mm; }
};

/// What is being measured decides what one single reading is worth.
enum class Section {
  oval,   ///< sheath or bedding: one uncrossed reading is capped
  round,  ///< a drawn wire is round: one reading is a place mean
};

/// Readings of one place that differ by more than this share of their mean are not those of a round
/// cable (IEC 60227-1 and others, from memory).
inline constexpr double k_ovality_limit_ratio = 0.15;
/// Above it IEC 60811-203:2012 4.2 measures the circumference by tape, to 0.5 mm.
inline constexpr double k_tape_above_mm = 25.0;

struct MeasureInput {
  std::vector<Place> places;  ///< at least one
  Caliper caliper;
  Section section = Section::oval;
  double ovality_limit_ratio = k_ovality_limit_ratio;
  double level_ratio = 0.95;                  ///< coverage of the interval
  std::optional<double> declared_ovality_mm;  ///< max - min width, where it is known
};

/// The diameter where the gland will sit, from readings (facts: JCGM 100:2008 4.2, F.2.2.1, G.4.1).
/// One place: that place is where the gland will sit, u is the caliper's alone, k = 1.959964.
/// Several places: the spread between places counts in full and a new place is predicted,
/// u^2 = s^2 (1 + 1/n) + u_B^2, k = t at the Welch-Satterthwaite degrees of freedom.
/// @param limits  permissible-error rows for a caliper without a stated one
/// @throws InputError for a reading that is no diameter once the zero is taken off, for a caliper
/// with negative figures, and for a step without a permissible error
[[nodiscard]] Estimate measure_here(const MeasureInput& in, std::span<const CaliperLimit> limits);

/// A figure from a datasheet, +- `half_width_mm` with nothing known inside (JCGM 100:2008 4.3.7).
[[nodiscard]] Estimate from_datasheet(double nominal_mm, double half_width_mm);

/// A figure from a model, +- its stated error, treated in the same way. It is capped: no estimate
/// alone passes a gland.
[[nodiscard]] Estimate from_model(double value_mm, double half_width_mm, std::string source);

/// "15.00 +/- 0.07 mm": U rounded up, D to the same decimal, one or two of them
/// (JCGM 100:2008 7.2.6).
[[nodiscard]] std::string with_spread(const Estimate& estimate);

}  // namespace cutback::measure

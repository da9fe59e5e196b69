#pragma once
// What a set of readings says about whole drums, measured or not.

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "cutback/measure/estimate.hpp"
#include "cutback/measure/judge.hpp"
#include "cutback/measure/reading.hpp"

namespace cutback::measure {

struct DrumsInput {
  std::vector<Drum> drums;  ///< at least one
  Caliper caliper;
  /// How far a drum may vary about its own mean, +-; used when no drum has two places.
  std::optional<double> along_mm;
  /// How far the mean of a drum may lie from the mean of all, +-; used for a drum that was not
  /// measured when only one was.
  std::optional<double> between_mm;
  double ovality_limit_ratio = k_ovality_limit_ratio;
  std::optional<double> declared_ovality_mm;  ///< max - min width, where it is known
  Range range;                                ///< without any limit no verdict is given
  bool unmeasured = false;                    ///< the question is about a drum not measured
  double level_ratio = 0.95;                  ///< coverage of the interval, 0.5 to 0.9999
};

/// The readings of one place taken together.
struct PlaceResult {
  double mean_mm = 0.0;
  double ovality_mm = 0.0;  ///< largest less smallest reading
  std::size_t readings = 0;
};

/// Would more places on a drum, like the ones that were measured, decide?
enum class Settling {
  settled,    ///< it is decided already, or there is no range to decide by
  places,     ///< a number of further places would
  no_number,  ///< none would, up to k_most_further_places
  not_known,  ///< one place does not show how the drum varies
};

/// The largest number of further places that is tried.
inline constexpr std::size_t k_most_further_places = 1000;

struct Further {
  Settling settling = Settling::settled;
  std::size_t places = 0;                ///< when `places`: the smallest number
  Verdict verdict = Verdict::not_known;  ///< when `places`: the answer that they would give
};

/// The span that holds at least 95 % of a drum's places, with 95 % confidence: D +- factor s_w.
struct ToleranceInterval {
  double factor = 0.0;
  double low_mm = 0.0;
  double high_mm = 0.0;
};
inline constexpr double k_tolerance_content = 0.95;
inline constexpr double k_tolerance_confidence = 0.95;

/// An estimate of one drum, judged.
struct DrumResult {
  std::string name;
  std::vector<PlaceResult> places;
  Estimate estimate;               ///< of a new place on this drum
  double effective_degrees = 0.0;  ///< before they are made whole; may be infinite
  Judgement judgement;
  std::optional<ToleranceInterval> tolerance;
  Further further;
};

/// Do the drums differ by more than their places do?
struct DrumDifference {
  std::optional<double> f;  ///< nothing when the places do not vary and the drums do: beyond all
  double critical = 0.0;    ///< 0.95 quantile of F
  bool differ = false;
};

struct DrumsResult {
  double caliper_error_mm = 0.0;     ///< permissible error that was used, +-
  double caliper_standard_mm = 0.0;  ///< u_B: the caliper's part of every u
  double pooled_standard_mm = 0.0;   ///< s_w
  double pooled_degrees = 0.0;    ///< nu_w; 0 when no drum has two places; infinite when declared
  std::vector<DrumResult> drums;  ///< in the order in which they were given
  std::optional<DrumDifference> difference;  ///< with two drums or more, and two places on one
  /// The answer as a whole: the drum that was not measured when the question is about one, else the
  /// drum that decides.
  Estimate estimate;
  double effective_degrees = 0.0;
  Judgement judgement;
  std::optional<ToleranceInterval> tolerance;
  /// The drum that decides: worst verdict, then smallest margin (without a range: the widest
  /// interval), then first. Nothing when the question is about a drum not measured.
  std::optional<std::size_t> deciding;
  std::vector<std::string> warnings;
};

/// Estimates a new place on every measured drum, or on a drum not measured, and judges it.
/// The spread between places is pooled over the drums (JCGM 100:2008 4.2.4) and counts in full for
/// a new place; degrees of freedom after JCGM 100:2008 G.4.1; the factor of the tolerance interval
/// is the exact one that ISO 16269-6:2014 Annex F tabulates.
/// @param limits  permissible-error rows for a caliper without a stated one
/// @throws InputError with every fault: no drum, no reading, a reading that is no diameter once the
/// zero is taken off, negative figures, a level out of range, a step without a permissible error
[[nodiscard]] DrumsResult analyse_drums(const DrumsInput& in, std::span<const CaliperLimit> limits);

}  // namespace cutback::measure

#pragma once
// Where each layer is cut, how deep, and how long the tails are.

#include <optional>
#include <string>
#include <vector>

#include "cutback/fit/check.hpp"
#include "cutback/gland/gland.hpp"
#include "cutback/job/job.hpp"
#include "cutback/strip/depths.hpp"

namespace cutback::strip {

/// The lengths along the axis that the marks are made of [mm]. Origin at the face of the gland's
/// shoulder that meets the enclosure (or its washer), positive into the enclosure.
struct Axis {
  std::optional<double> inside_face_mm;  ///< w = washer + wall, and an adaptor before them
  std::optional<double> armour_stop_mm;  ///< a, back from the shoulder to the armour tips
  std::optional<double> exposed_mm;      ///< e
  double exposed_plus_mm = 0.0;          ///< p
  std::optional<double> bedding_end_mm;  ///< b
  std::optional<double> tip_mm;          ///< the longest core's end, a whole millimetre
};

/// Marks from the cable's end [mm]; absent where a figure is missing. The sheath cut is marked
/// from the armour tips: exposed_min to exposed_max behind them.
struct Marks {
  std::optional<double> shoulder_mm;
  std::optional<double> bedding_cut_mm;
  std::optional<double> armour_cut_mm;
  std::optional<double> sheath_cut_mm;
  std::optional<double> exposed_min_mm;
  std::optional<double> exposed_max_mm;
};

/// One core's tail.
struct Tail {
  std::string core;
  double tip_mm = 0.0;              ///< from the shoulder, a whole millimetre
  std::optional<double> length_mm;  ///< beyond the bedding; absent where a figure of it is
  /// The same but for the strip length, where that alone is not known.
  std::optional<double> less_strip_mm;
  double cut_back_mm = 0.0;  ///< taken off after dressing
  std::optional<double> strip_mm;
  std::string route;  ///< how the length was found, for a pencil
};

/// How the gland is made off.
struct Termination {
  bool barrier = false;
  bool adaptor = false;
  std::optional<double> bedding_thickness_mm;
};

struct CutPlan {
  Axis axis;
  Marks marks;
  Depths depths;
  std::vector<Tail> tails;
  std::vector<std::string> missing;  ///< what is not known, what that leaves open, what to do
  /// Of it, what must be read before a cut has its figure; not what is taken from the gland in
  /// hand.
  std::vector<fit::Lack> lacks;
};

/// The cut plan of one end. b = max(entry thread, w + locknut) + bedding past, behind an adaptor
/// max(gland's thread, adaptor + max(adaptor's thread, washer + wall + locknut)) + bedding past;
/// tip_i = w + R_i + s_i + slack rounded up to a whole millimetre. The parts at the entry are those
/// of entry::hardware_of(): what is not known of them is named, and what it decides has no figure.
/// @param how  barrier: compound round the cores, the bedding ends where the gland says; adaptor:
/// the gland sits in a thread adaptor; the bedding's thickness from the construction
/// @throws InputError when the bedding would end behind the armour's tips, or a tail is not longer
/// than its strip length; each names both figures
[[nodiscard]] CutPlan plan_cuts(const job::Job& job, const gland::Gland& gland,
                                const Termination& how);

/// The nominal thickness of the sheath over the armour, where the construction tells it.
[[nodiscard]] std::optional<double> oversheath_thickness_mm(const job::Job& job);

/// The thickness of the bedding, where the construction tells it.
[[nodiscard]] std::optional<double> bedding_thickness_mm(const job::Job& job);

/// What one 90 degree bend of radius r saves against a square corner: 2 r - pi r / 2.
inline constexpr double k_bend_saving = 0.4292036732;

}  // namespace cutback::strip

#pragma once
// The cable from the outer sheath to the end of the bedding at true size, so that it can be laid on
// the paper.

#include "cutback/sheet/sheet.hpp"
#include "print/pages/pen.hpp"

namespace cutback::print {

/// Where the layers stop along the drawing, from its left edge [mm of paper], and how it is scaled.
struct StripPlaces {
  double sheath_cut = 0.0;
  double armour_tips = 0.0;  ///< the sheath cut where there is no armour
  double shoulder = 0.0;
  double bedding_end = 0.0;  ///< the sheath cut where there is no armour
  double end = 0.0;          ///< of the tails as drawn, beyond their break
  double along = 1.0;        ///< mm of paper for a mm of cable; 0: figures are missing
  double across = 1.0;
};

/// @param width  of the paper, at least 40 mm
/// @param most_high  that the cable may be drawn, mm of paper
[[nodiscard]] StripPlaces strip_places(const sheet::Sheet& sheet, double width, double most_high);

/// The least width in which it has its true size along the cable.
[[nodiscard]] double strip_true_size_mm(const sheet::Sheet& sheet);

/// Draws the sheet's plan, which it must have, with its upper left corner at x, y.
/// @return its height [mm]
double put_strip_drawing(const Pen& pen, const sheet::Sheet& sheet, double x, double y,
                         double width, double body_mm, double most_high);

}  // namespace cutback::print

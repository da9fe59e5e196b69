#pragma once
// The cable from the outer sheath to the end of the bedding at true size, so that it can be laid on
// the paper.

#include "cutback/sheet/sheet.hpp"
#include "print/pages/pen.hpp"

namespace cutback::print {

/// The least width in which it has its true size along the cable.
[[nodiscard]] double strip_true_size_mm(const sheet::Sheet& sheet);

/// Draws the sheet's plan, which it must have, with its upper left corner at x, y.
/// @param width  of the paper, at least 40 mm
/// @param most_high  that the cable may be drawn, mm of paper
/// @return its height [mm]
double put_strip_drawing(const Pen& pen, const sheet::Sheet& sheet, double x, double y,
                         double width, double body_mm, double most_high);

}  // namespace cutback::print

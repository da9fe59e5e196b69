#pragma once
// The cable from the outer sheath to the end of the bedding, as a ruler: at true size along an edge
// of the paper, so that the cable lies beside it whatever its diameter.

#include <optional>

#include "cutback/sheet/sheet.hpp"
#include "print/mark_words.hpp"
#include "print/pages/pen.hpp"

namespace cutback::print {

/// Room and type of a drawing. Lengths in mm.
struct StripLook {
  double width = 0.0;      ///< at least 40
  double height = 0.0;     ///< from its top to the edge beside which the cable lies
  double margin = 0.0;     ///< above the edge, where printers leave the paper white: ticks alone
  double figure_mm = 4.2;  ///< type of the figures under the marks
  double small_mm = 2.8;   ///< type of names and notes
  const char* edge = "along this edge";
};

/// Whether every figure along the axis is known, and the width has room for it at true size.
[[nodiscard]] bool is_true_size(const sheet::Sheet& sheet, double width);

/// Heights with the margin [mm]: the least in which the layers can be told apart, and that in which
/// the cable has its true size across as well, as far as that is worth it.
struct StripHeights {
  double least = 0.0;
  double full = 0.0;
};
[[nodiscard]] StripHeights strip_heights(const Pen& pen, const sheet::Sheet& sheet,
                                         const StripLook& look);

/// Draws the sheet's plan, which it must have, with its upper left corner at x, y: at true size in
/// a frame, its marks as ticks that run to the edge; or as a sketch that nobody can take for one.
void put_strip_drawing(const Pen& pen, const sheet::Sheet& sheet, double x, double y,
                       const StripLook& look);

}  // namespace cutback::print

#pragma once
// What every page has around what it is about.

#include <string>
#include <vector>

#include "cutback/print/pages.hpp"
#include "print/pages/pen.hpp"

namespace cutback::print {

/// Room that printers leave free or that the check bars take [mm].
struct Margins {
  double left = 11.0;
  double top = 8.0;
  double right = 6.0;
  double bottom = 5.0;
};

/// A page, or the part of one that becomes a card when it is cut.
struct Frame {
  double x = 0.0;
  double y = 0.0;
  double width = 0.0;
  double height = 0.0;
};

/// Equal parts of the paper, each with margins of its own, so that a card that is cut out is as one
/// that was printed alone.
[[nodiscard]] std::vector<Frame> frames_of(const Paper& paper);

/// Dashed, between the cards; where two frames lie beside each other they are front and back of one
/// card, and the line between them is one to fold.
void put_cut_lines(const Pen& pen, const Paper& paper);

/// Two black bars of exactly 50 mm, one along the upper edge and one down the left, since printers
/// scale the two apart, the words to measure them, and the running head between them.
/// @param running  what the page is: shortened where it is too long
/// @param bars     whether there is anything on it that a cable is laid along
void put_page_head(const Pen& pen, const Frame& frame, const std::string& running,
                   bool bars = true);

/// The day that the pages are dated with; empty where they are not.
[[nodiscard]] std::string day_of(const PageNote& note);

/// What a page says of itself behind its own words: the day where there is one, and the program.
[[nodiscard]] std::string made_by(const PageNote& note);

inline constexpr double k_check_bar_mm = 50.0;

}  // namespace cutback::print

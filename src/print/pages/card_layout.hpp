#pragma once
// A card's blocks placed on one card or, where one does not hold them, on several.

#include <deque>
#include <vector>

#include "print/pages/card_text.hpp"
#include "print/pages/pen.hpp"

namespace cutback::print {

struct Placed {
  const Block* block = nullptr;
  double x = 0.0;
  double y = 0.0;
  double width = 0.0;
};

/// Borrows the text. Lengths in mm from the card's upper left corner.
struct CardLayout {
  double body_mm = 3.0;
  double code_mm = 0.0;  ///< side of the code, at the upper right of the first card; 0: none
  std::vector<std::vector<Placed>> cards;
  std::deque<Block> own;  ///< blocks that only the layout needs
};

/// In the largest type with which all fits on one card, in one column or two; in the smallest over
/// as many cards as it takes.
[[nodiscard]] CardLayout lay_out_card(const Pen& measure, const CardText& text, double width,
                                      double height);

/// All but the code.
void put_card(const Pen& pen, const CardLayout& layout, std::size_t card, double x, double y);

}  // namespace cutback::print

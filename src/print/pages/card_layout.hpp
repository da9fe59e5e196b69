#pragma once
// A card's parts placed on its front and, where that does not hold them, on its back.

#include <functional>
#include <vector>

#include "print/pages/card_parts.hpp"
#include "print/pages/card_text.hpp"
#include "print/pages/card_type.hpp"
#include "print/pages/pen.hpp"

namespace cutback::print {

/// Room on one side of a card. Lengths in mm.
struct CardRoom {
  double width = 0.0;
  double height = 0.0;  ///< down to the paper's edge
  double margin = 0.0;  ///< above the edge, where only ticks stand
  const char* edge = "along this edge";
};

/// Borrows the text and the card.
struct CardLayout {
  struct Placed {
    std::function<void(const CardPen& pen, double x, double y)> put;
    double y = 0.0;      ///< from the upper edge of the room
    double width = 0.0;  ///< less where the code stands beside it
  };
  std::vector<std::vector<Placed>> sides;
  CardType type;          ///< the sizes that it was laid out with
  bool split = false;     ///< the front does not hold the marks, which begin the next side
  double front_mm = 0.0;  ///< height of the front where nothing may be cut: the rest of it is white
  double code_mm = 0.0;   ///< with the white around it, at the upper right of a side; 0: none
  std::size_t code_side = 0;
};

/// Says on the card that letters of its names have no font on this machine, where that is so.
void note_letters(const Pen& measure, CardText& text);

/// Type has its size and is never made larger or smaller to fill a side; names alone are set
/// smaller where they are so long that a mark would not be on the front. The front has all that is
/// cut by, and the cautions before anything else; what goes on the back first is the drawing, then
/// as made, then the tails. A drawing alone makes no back. A code is left out where the front would
/// hold all but for it, and of tails that would take a second sheet of paper what is cut back: one
/// end has one side of paper where that can be, and one sheet.
[[nodiscard]] CardLayout lay_out_card(const Pen& measure, const Card& card, const CardText& text,
                                      const CardType& type, const CardRoom& room);

}  // namespace cutback::print

#pragma once
// The parts of a card from top to bottom. Each is put with its upper left corner at x, y in the
// width that it is given, or only measured where the pen has no page, and says its height with the
// space below it. Lengths in mm.

#include <cstddef>
#include <span>
#include <string>

#include "print/pages/card_text.hpp"
#include "print/pages/card_type.hpp"
#include "print/pages/pen.hpp"

namespace cutback::print {

/// How everything of one card is put.
struct CardPen {
  const Pen& pen;
  const CardType& type;  ///< of the layout
  double width;
};

/// Width of the code with the white around it; 0 where there is none, or none that can be read.
[[nodiscard]] double code_width(const CardText& text, const CardType& type);

/// Below the place of the code. @return the place below the words
double put_code_words(const CardPen& card, double x, double y, double code);

/// Tag, end, state; gland, entry, tools.
double put_head(const CardPen& card, const CardText& text, double x, double y);
/// The head of a further side. @param words  which side it is
double put_head_again(const CardPen& card, const CardText& text, const std::string& words, double x,
                      double y);
double put_first(const CardPen& card, const CardText& text, double x, double y);
double put_notes(const CardPen& card, const CardText& text, double x, double y);
double put_gates(const CardPen& card, const CardText& text, double x, double y);
double put_rear(const CardPen& card, const CardText& text, double x, double y);
double put_blanks(const CardPen& card, const CardText& text, double x, double y);
/// That what is cut by begins the next side.
double put_go_on(const CardPen& card, const CardText& text, double x, double y);
/// @param beside  width that the tails take beside them
double put_marks(const CardPen& card, const CardText& text, double x, double y, double beside);

/// Where the shoulder sits, which is a check and no cut.
double put_check(const CardPen& card, const CardText& text, double x, double y);

/// The width of one column of tails.
[[nodiscard]] double tails_width(const CardPen& card, const CardText& text);
/// What the tails are measured from.
double put_tails_head(const CardPen& card, const CardText& text, double x, double y);
/// One column of them, under the names of its figures.
double put_tails(const CardPen& card, const CardText& text, std::size_t first, std::size_t last,
                 double x, double y);

/// The route that the marks suppose, below the tails.
double put_route(const CardPen& card, const CardText& text, double x, double y);

/// How many of the ends that a type serves go into a height, from `first` on.
[[nodiscard]] std::size_t serves_in(const CardPen& card, const CardText& text, std::size_t first,
                                    double height);
/// Ends that a type serves, each with room for its readings; of those that must not be cut why.
double put_serves(const CardPen& card, const CardText& text, std::size_t first, std::size_t count,
                  double x, double y);

/// One row of lengths in inches is so high.
[[nodiscard]] double inches_row(const CardPen& card);
/// In how many columns they stand: one where a name is too long for half the width.
[[nodiscard]] std::size_t inches_columns(const CardPen& card, const CardText& text);
/// Lengths in inches, in columns under their head.
double put_inches(const CardPen& card, const CardText& text, std::size_t first, std::size_t count,
                  double x, double y);

double put_as_made(const CardPen& card, const CardText& text, double x, double y);
double put_rule(const CardPen& card, const CardText& text, double x, double y);
/// The cautions from `first` on.
double put_cautions(const CardPen& card, const CardText& text, std::size_t first, double x,
                    double y);
/// The rule and the first `most` of the cautions in one paragraph.
double put_rule_and_cautions(const CardPen& card, const CardText& text, std::size_t most, double x,
                             double y);
/// Why nothing may be cut, and what to do.
double put_why(const CardPen& card, const CardText& text, double x, double y);

}  // namespace cutback::print

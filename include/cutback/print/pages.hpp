#pragma once
// Pages at true scale: strip-length cards and sheets as PDF, drawings as SVG. Pages are made with
// Cairo and Pango; a text in a script for which no font is installed shows boxes.

#include <cstddef>
#include <functional>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/print/paper.hpp"
#include "cutback/sheet/sheet.hpp"

namespace cutback::print {

/// What is printed on every page besides what it is about.
struct PageNote {
  std::string program;  ///< and its version
  std::string dated;    ///< `YYYYMMDDHHmmSSZ`; empty: no date anywhere
};

/// An end that a card of a type serves.
struct ServedEnd {
  std::string tag;
  std::string end;
  std::string reach;        ///< mm; empty where it must be measured
  std::string first_mark;   ///< mm from the end, where the route is known
  std::string second_mark;  ///< the same, where two marks are sums
  std::string why;          ///< where nothing may be cut by the card
  std::string place = {};   ///< as a plate has it, where the ends of the card lie in several
};

/// One card: an end with its sheet, or one that cannot be used and why.
struct Card {
  std::string tag;
  std::string end;
  const sheet::Sheet* sheet = nullptr;
  bool not_yet = false;   ///< where there is no sheet: the state is NOT YET, not NONE
  std::string made = {};  ///< not empty: the end is finished, and how; there is no sheet
  std::string why;        ///< in one sentence, where no gland fits or the end cannot be used
  std::string remedy;     ///< what would help, as the exceptions of a schedule say it
  std::string qr_text;    ///< the job; empty: none, as for an end that cannot be used
  std::vector<std::string> notes = {};  ///< what whoever holds it must know: a duplicate tag
  std::vector<ServedEnd> serves = {};   ///< of a type; then `end` says what the type is
  std::size_t number = 0;               ///< of the cards, from 1
  std::size_t of = 0;                   ///< 0: not known, and not printed
  bool inches = false;                  ///< its lengths stand in inches as well
  std::string decided = {};             ///< what a profile decided: `slack 30 mm`; empty: nothing
  std::string schedule = {};            ///< what it is from, with a hash of the content
  std::shared_ptr<const void> keeps = {};  ///< what it borrows, as long as it is not printed
};

/// What a place needs, on a page before its cards.
struct PlacePage {
  std::string place;
  std::string schedule = {};  ///< as on its cards
  std::size_t ends = 0;
  std::size_t without = 0;  ///< ends for which there is no gland, or that cannot be used
  struct Part {
    std::string name;
    std::size_t count = 0;
  };
  std::vector<Part> parts = {};
};

struct CardCount {
  std::size_t ends = 0;
  std::size_t cards = 0;
  std::size_t sides = 0;         ///< more than cards where one has a back
  std::size_t over_a_sheet = 0;  ///< cards that take more than one sheet of paper
  std::size_t pages = 0;         ///< without the contents
  std::size_t contents_pages = 0;
  std::size_t place_pages = 0;    ///< with what a place needs, on the whole page or its upper half
  std::size_t without_gland = 0;  ///< no gland fits: the card says why
  std::size_t not_proven = 0;     ///< a gland, but nothing to be cut yet
  std::size_t without_marks = 0;  ///< a mark has no figure and must be taken from the gland
  std::size_t unusable = 0;       ///< what is known of the end cannot be used
  std::size_t made = 0;           ///< finished: nothing is cut by the card
  std::size_t without_code = 0;   ///< the job is too long for a code that can be read, or its room
                                  ///< is needed by what is cut by
  std::size_t without_glyph = 0;  ///< characters for which no font has a glyph
};

/// Prints card after card into one PDF, in memory that does not grow with their number but for
/// eight bytes for each object of the file.
class CardPrinter {
 public:
  CardPrinter() = default;
  CardPrinter(const CardPrinter&) = delete;
  CardPrinter& operator=(const CardPrinter&) = delete;
  virtual ~CardPrinter() = default;

  /// The card is printed by and by; what it borrows must live as long as `keeps`, or the printer.
  virtual void add(Card card) = 0;
  virtual void add_place(const PlacePage& place) = 0;
  /// Prints what is left, the contents where there are more than ten cards, and the end of the
  /// file. To be called once.
  virtual CardCount finish() = 0;
};

/// @param write    takes the bytes of the file from its beginning to its end
/// @param threads  that lay out and draw; the bytes do not depend on how many
[[nodiscard]] std::unique_ptr<CardPrinter> new_card_printer(
    const Paper& paper, PageNote note, std::function<void(std::string_view)> write,
    unsigned threads);

/// The whole sheet on A4. @param card  of its end
[[nodiscard]] std::string sheet_pdf(const Card& card, const PageNote& note);

/// The strip drawing with its marks, at true size.
[[nodiscard]] std::string sheet_svg(const sheet::Sheet& sheet);

}  // namespace cutback::print

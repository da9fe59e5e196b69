#include <fmt/format.h>

#include "cutback/print/cards.hpp"
#include "print/layout.hpp"

namespace cutback::print {
namespace {

std::string counted(std::size_t number, const char* one) {
  return fmt::format("{} {}{}", number, one, number == 1 ? "" : "s");
}

}  // namespace

std::string cards_summary(const CardsReport& report) {
  const CardCount& count = report.count;
  std::string pages = counted(count.ends, "end") + ", " + counted(count.cards, "card") + ", " +
                      counted(count.sides, "side") + ", " + counted(count.pages, "page");
  if (count.contents_pages > 0) {
    pages += " and " + counted(count.contents_pages, "page") + " of contents";
  }
  std::string text = wrapped("Cards    ", pages);
  text += wrapped("Fits     ", fmt::format("{} of {}, {} of them to cut by", report.fitting,
                                           count.ends, report.cut));
  const auto row = [&](const char* name, std::size_t number, const char* words) {
    if (number > 0) text += wrapped(name, fmt::format("{} {}", number, words));
  };
  row("No gland ", count.without_gland, "whose gland does not fit: the card says what to do");
  row("Not yet  ", count.not_proven, "to be measured first, or not proven: the card says which");
  row("No mark  ", count.without_marks, "with a mark to be taken from the gland in hand");
  row("Made     ", count.made, "finished by the register: the card says with what");
  row("Unusable ", count.unusable, "with figures that cannot be used: the card says why");
  if (count.over_a_sheet > 0) {
    text += wrapped("Paper    ", counted(count.over_a_sheet, "card") +
                                     " of more than one sheet: they fit larger paper, or have "
                                     "long lists");
  }
  if (count.without_code > 0) {
    text += wrapped("No code  ", counted(count.without_code, "card") +
                                     ": the job is too long for one, or the room is needed");
  }
  if (count.without_glyph > 0) {
    text += wrapped("Letters  ", counted(count.without_glyph, "character") +
                                     " for which no font is installed: shown as boxes");
  }
  text +=
      wrapped("Print    ", "at 100 %, not fitted to the page; measure both check bars before use");
  return text;
}

}  // namespace cutback::print

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
                      counted(count.pages, "page");
  if (count.contents_pages > 0) {
    pages += " and " + counted(count.contents_pages, "page") + " of contents";
  }
  std::string text = wrapped("Cards    ", pages);
  text += wrapped("Fits     ", fmt::format("{} of {}", report.fitting, count.ends));
  const auto row = [&](const char* name, std::size_t number, const char* words) {
    if (number > 0) text += wrapped(name, fmt::format("{} {}", number, words));
  };
  row("No gland ", count.without_gland,
      "of them: the card says which is nearest and what to order");
  row("Not yet  ", count.not_proven, "not proven, or not all measured: the card says what to do");
  row("Unusable ", count.unusable, "with figures that cannot be used: the card says why");
  row("No code  ", count.without_code, "jobs too long for a code on a card of this size");
  row("Letters  ", count.without_glyph,
      "characters for which no font is installed: shown as boxes");
  text +=
      wrapped("Print    ", "at 100 %, not fitted to the page; measure both check bars before use");
  return text;
}

}  // namespace cutback::print

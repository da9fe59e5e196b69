#include "cutback/print/cards.hpp"
#include "print/json_number.hpp"

namespace cutback::print {

std::string cards_json(const CardsReport& report) {
  const CardCount& count = report.count;
  nlohmann::ordered_json root = json_head();
  root["ends"] = count.ends;
  root["cards"] = count.cards;
  root["sides"] = count.sides;
  root["over_a_sheet"] = count.over_a_sheet;
  root["pages"] = count.pages;
  root["contents_pages"] = count.contents_pages;
  root["place_pages"] = count.place_pages;
  root["cut"] = report.cut;
  root["fitting"] = report.fitting;
  root["without_gland"] = count.without_gland;
  root["not_proven"] = count.not_proven;
  root["without_marks"] = count.without_marks;
  root["unusable"] = count.unusable;
  root["made"] = count.made;
  root["without_code"] = count.without_code;
  root["without_glyph"] = count.without_glyph;
  return json_text(root);
}

}  // namespace cutback::print

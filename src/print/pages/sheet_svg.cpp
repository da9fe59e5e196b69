#include "cutback/print/pages.hpp"
#include "cutback/xml.hpp"
#include "print/pages/card_parts.hpp"
#include "print/pages/card_text.hpp"
#include "print/pages/page_frame.hpp"
#include "print/pages/strip_drawing.hpp"
#include "print/pages/surface.hpp"
#include "cutback/print/words.hpp"

namespace cutback::print {
namespace {

constexpr double k_width_mm = 190.0;
constexpr double k_edge_mm = 5.0;

std::string name_of(const sheet::Sheet& sheet) {
  const job::Job& job = *sheet.job;
  std::string name = job.tag.empty() ? "Cable end" : job.tag;
  if (!job.end.empty()) name += ", " + job.end;
  if (sheet.fit) name += ": " + sheet.fit->gland->part;
  return clean(name);
}

/// The marks in words, for those who do not see the drawing.
std::string described(const CardText& card) {
  std::string text;
  for (const MarkWords& mark : card.marks) {
    text += std::string(1, mark.number) + " " + mark.layer + " " + mark.before + mark.figure + " " +
            mark.after + " " + mark.depth + "; ";
  }
  return text;
}

/// The bar by which a print is checked, and its words.
double put_check_bar(const CardPen& card, double x, double y) {
  const Font font{.size_mm = card.type.caution};
  const double high = card.pen.height("x", font, card.width);
  card.pen.black({{x, y + high / 2.0, k_check_bar_mm, 0.8}});
  const double from = k_check_bar_mm + 3.0;
  return card.pen.text(x + from, y,
                       "This bar is 50 mm long on a print at 100 %: measure it before use.", font,
                       card.width - from) +
         2.0;
}

/// All of it; the drawing's ticks end at the lower edge. @return the height
double put_all(const CardPen& card, const sheet::Sheet& sheet, const CardText& text) {
  const double x = k_edge_mm;
  double y = k_edge_mm;
  y += put_head(card, text, x, y) + 2.0;
  if (text.is_stop) return y + put_why(card, text, x, y) + k_edge_mm;
  y += put_marks(card, text, x, y, 0.0) + 2.0;
  y += put_check(card, text, x, y) + 1.0;
  y += put_check_bar(card, x, y);
  StripLook look{.width = card.width,
                 .margin = k_edge_mm,
                 .figure_mm = card.type.hand,
                 .small_mm = card.type.caution * 0.9};
  look.height = strip_heights(card.pen, sheet, look).full;
  put_strip_drawing(card.pen, sheet, x, y, look);
  return y + look.height;
}

}  // namespace

std::string sheet_svg(const sheet::Sheet& sheet) {
  const Card card{.tag = sheet.job->tag,
                  .end = sheet.job->end,
                  .sheet = &sheet,
                  .why = {},
                  .remedy = {},
                  .qr_text = {}};
  const CardText text = card_text(card);
  const double width = k_width_mm - 2.0 * k_edge_mm;
  Typesetter set;
  const Pen measure(nullptr, set);
  const double high = put_all({measure, k_large_type, width}, sheet, text);
  Surface surface(Surface::Kind::svg, k_width_mm, high);
  const Pen pen(surface.page(), set);
  pen.area(0.0, 0.0, k_width_mm, high, Fill{}, 0.0);
  put_all({pen, k_large_type, width}, sheet, text);
  std::string document = surface.finish();
  const std::size_t root = document.find("<svg");
  const std::size_t inside = document.find('>', root) + 1;
  document.insert(inside, "\n<title>" + xml_text(name_of(sheet)) + "</title>\n<desc>" +
                              xml_text(described(text)) + "</desc>");
  return document;
}

}  // namespace cutback::print

#include <vector>

#include "cutback/print/pages.hpp"
#include "cutback/print/words.hpp"
#include "print/pages/block.hpp"
#include "print/pages/page_frame.hpp"
#include "print/pages/sheet_blocks.hpp"
#include "print/pages/strip_drawing.hpp"
#include "print/pages/surface.hpp"

namespace cutback::print {
namespace {

constexpr double k_width_mm = 190.0;
constexpr double k_edge_mm = 5.0;
constexpr double k_body_mm = 3.2;

std::string name_of(const sheet::Sheet& sheet) {
  const job::Job& job = *sheet.job;
  std::string name = job.tag.empty() ? "Cable end" : job.tag;
  if (!job.end.empty()) name += ", " + job.end;
  if (sheet.fit) name += ": " + sheet.fit->gland->part;
  return clean(name);
}

std::string escaped(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == '&') {
      out += "&amp;";
    } else if (c == '<') {
      out += "&lt;";
    } else if (c == '>') {
      out += "&gt;";
    } else {
      out += c;
    }
  }
  return out;
}

/// The bar by which a print is checked, and its words.
double put_check(const Pen& pen, double x, double y, double width, double body_mm) {
  pen.black({{x, y + body_mm, k_check_bar_mm, 0.8}});
  const double from = k_check_bar_mm + 3.0;
  return body_mm * 0.5 +
         pen.text(x + from, y + body_mm * 0.5,
                  "This bar is 50 mm long on a print at 100 %: measure it before use.",
                  Font{.size_mm = body_mm * 0.8}, width - from);
}

/// The marks in words, for those who do not see the drawing.
std::string described(const std::vector<Block>& blocks) {
  std::string text;
  for (const Block& block : blocks) {
    const auto* const table = std::get_if<Table>(&block);
    if (table == nullptr) continue;
    for (const std::vector<std::string>& row : table->rows) {
      for (const std::string& cell : row) text += cell + " ";
      text.back() = ';';
      text += ' ';
    }
  }
  return text;
}

}  // namespace

std::string sheet_svg(const sheet::Sheet& sheet) {
  const double width = k_width_mm - 2.0 * k_edge_mm;
  std::vector<Block> blocks;
  blocks.emplace_back(Paragraph{.words = name_of(sheet), .label = {}, .bold = true, .size = 1.3});
  const std::string stop = stop_words(sheet);
  if (!stop.empty()) blocks.emplace_back(Alarm{stop});
  if (sheet.has_marks()) {
    blocks.emplace_back(strip_picture(sheet, width));
    add_marks(blocks, sheet);
    add_depths(blocks, sheet);
  }
  for (const std::string& reason : sheet.not_ready) {
    blocks.emplace_back(Item{.words = reason, .number = {}});
  }
  blocks.emplace_back(Picture{put_check});
  Typesetter text;
  double high = 2.0 * k_edge_mm;
  for (const Block& block : blocks) {
    high += put(Pen(nullptr, text), block, 0.0, 0.0, width, k_body_mm);
  }
  Surface surface(Surface::Kind::svg, k_width_mm, high);
  const Pen pen(surface.page(), text);
  pen.area(0.0, 0.0, k_width_mm, high, Fill{}, 0.0);
  double y = k_edge_mm;
  for (const Block& block : blocks) y += put(pen, block, k_edge_mm, y, width, k_body_mm);
  std::string document = surface.finish();
  const std::size_t root = document.find("<svg");
  const std::size_t inside = document.find('>', root) + 1;
  document.insert(inside, "\n<title>" + escaped(name_of(sheet)) + "</title>\n<desc>" +
                              escaped(described(blocks)) + "</desc>");
  return document;
}

}  // namespace cutback::print

#include "print/pages/card_parts.hpp"

#include <algorithm>
#include <array>
#include <vector>

#include "cutback/text.hpp"

namespace cutback::print {
namespace {

constexpr double k_hair_mm = 0.2;
constexpr double k_rule_mm = 0.5;
constexpr double k_box_mm = 0.35;
constexpr double k_gap_mm = 2.0;

// A module under a quarter of a millimetre is not read from a print by every telephone (common
// practice, no source).
constexpr double k_least_module_mm = 0.25;
constexpr double k_quiet_modules = 4.0;

Font font_of(double size_mm, bool bold = false) { return {.size_mm = size_mm, .bold = bold}; }

/// A name in the largest of some sizes in which it takes so many lines at most; in the smallest it
/// takes as many as it needs. Nothing of it is left out.
struct Fitted {
  Font font;
  double height = 0.0;
};

Fitted fitted(const Pen& pen, const std::string& words, std::span<const double> sizes, bool bold,
              double width, int lines) {
  Fitted best;
  for (const double size : sizes) {
    best.font = font_of(size, bold);
    best.height = pen.height(words, best.font, width);
    if (best.height <= (lines + 0.4) * pen.height("x", best.font, width)) break;
  }
  return best;
}

std::vector<double> sizes_from(double largest, double least) {
  std::vector<double> sizes;
  for (const double share : {1.0, 0.86, 0.72, 0.6, 0.5}) {
    if (largest * share > least) sizes.push_back(largest * share);
  }
  sizes.push_back(least);
  return sizes;
}

double state_height(const CardPen& card) {
  return card.pen.height("X", font_of(card.type.state, true), 200.0) + card.type.state * 0.27;
}

double put_state(const CardPen& card, const CardText& text, double right, double y, bool draw) {
  const Pen& pen = card.pen;
  Font font = font_of(card.type.state, true);
  const double pad = card.type.state * 0.45;
  const double wide = pen.width(text.state, font) + 2.0 * pad;
  const double high = state_height(card);
  if (!draw) return wide;
  const double x = right - wide;
  if (text.is_stop) {
    pen.area(x, y, wide, high, Fill{.grey = 0.0}, 0.0);
    font.grey = 1.0;
  } else {
    constexpr double k_frame_mm = 0.9;
    pen.rectangle(x + k_frame_mm / 2.0, y + k_frame_mm / 2.0, wide - k_frame_mm, high - k_frame_mm,
                  k_frame_mm);
  }
  pen.label(x + pad, y + pad * 0.3, text.state, font);
  return wide;
}

/// A blank with its unit behind it, from x to `to`.
void put_blank(const Pen& pen, double x, double to, double base, const std::string& unit,
               const Font& font) {
  double end = to;
  if (!unit.empty()) {
    end -= pen.width(unit, font) + 0.8;
    pen.on_line(end + 0.8, base, unit, font);
  }
  if (end > x) pen.line(x, base + 0.5, end, base + 0.5, k_hair_mm);
}

}  // namespace

double put_code_words(const CardPen& card, double x, double y, double code) {
  const Font small{.size_mm = card.type.small, .align = Align::centre};
  const double at = y + code - 1.0;
  card.pen.label(x + code / 2.0, at, "job data", small);
  return at + card.pen.height("x", small, 50.0);
}

double code_width(const CardText& text, const CardType& type) {
  if (!text.code || text.code->side == 0) return 0.0;
  const double module = type.code / text.code->side;
  if (module < k_least_module_mm) return 0.0;
  return type.code + 2.0 * k_quiet_modules * module;
}

double put_head(const CardPen& card, const CardText& text, double x, double y) {
  const Pen& pen = card.pen;
  const CardType& type = card.type;
  const double right = x + card.width;
  const double state = put_state(card, text, right, y, pen.draws());
  const double flag = state_height(card) + 0.4;
  const double wide = right - x - state - k_gap_mm;

  // Two tags that differ in one letter must differ on paper: nothing is cut off.
  const Fitted tag = fitted(pen, text.tag, sizes_from(type.tag, type.hand), true, wide, 2);
  pen.text(x, y - type.tag * 0.08, text.tag, tag.font, wide);
  double at = y + tag.height - type.tag * 0.1;
  if (!text.end.empty()) {
    const double one = pen.height("x", tag.font, wide);
    const double from = pen.width(text.tag, tag.font) + type.end * 0.8;
    const Font large = font_of(type.end);
    if (tag.height < one * 1.4 && from + pen.width(text.end, large) <= wide) {
      pen.on_line(x + from, y - type.tag * 0.08 + pen.ascent(tag.font), text.end, large);
    } else {
      const std::array sizes{type.end, type.hand};
      Fitted end = fitted(pen, text.end, sizes, false, wide, 2);
      end.font.most_lines = 4;
      at += pen.text(x, at, text.end, end.font, wide);
    }
  }
  at = std::max(at, y + flag);
  if (!text.gland.empty()) {
    const double room = right - x;
    const Fitted gland = fitted(pen, text.gland, sizes_from(type.gland, type.hand), true, room, 1);
    pen.text(x, at, text.gland, gland.font, room);
    const Font facts = font_of(type.hand);
    const double from = pen.width(text.gland, gland.font) + type.hand * 1.2;
    const auto put_facts = [&](double left, double top, double width, bool draw) {
      double down = top;
      for (const std::string& fact : text.facts) {
        down += draw ? pen.text(left, down, fact, facts, width) : pen.height(fact, facts, width);
      }
      return down - top;
    };
    const double beside = room - from;
    const double below = put_facts(0.0, 0.0, room, false);
    constexpr double k_least_mm = 40.0;
    const double lines = beside < k_least_mm ? below : put_facts(0.0, 0.0, beside, false);
    if (beside >= k_least_mm && std::max(lines, gland.height) < gland.height + below) {
      put_facts(x + from, at + std::max(0.0, (gland.height - lines) / 2.0), beside, true);
      at += std::max(lines, gland.height);
    } else {
      at += gland.height;
      at += put_facts(x, at, room, true);
    }
  }
  pen.line(x, at + 0.6, x + card.width, at + 0.6, k_rule_mm);
  return at + 1.2 - y;
}

double put_head_again(const CardPen& card, const CardText& text, const std::string& words, double x,
                      double y) {
  const Pen& pen = card.pen;
  const CardType& type = card.type;
  const double right = x + card.width;
  const double state = put_state(card, text, right, y, pen.draws());
  const double wide = right - x - state - k_gap_mm;
  const Fitted tag = fitted(pen, text.tag, sizes_from(type.tag, type.hand), true, wide, 2);
  double at = y + pen.text(x, y - type.tag * 0.08, text.tag, tag.font, wide) - type.tag * 0.1;
  std::string again = text.end;
  for (const std::string& word : {text.gland, words}) {
    if (!word.empty()) again += (again.empty() ? "" : ", ") + word;
  }
  Font font = font_of(type.hand);
  font.most_lines = 4;
  at += pen.text(x, at, again, font, wide);
  at = std::max(at, y + state_height(card) + 0.4);
  pen.line(x, at + 0.6, x + card.width, at + 0.6, k_rule_mm);
  return at + 1.8 - y;
}

double put_first(const CardPen& card, const CardText& text, double x, double y) {
  if (text.first.empty()) return 0.0;
  const Font font = font_of(card.type.bar, true);
  return card.pen.text(x, y, text.first, font, card.width) + 0.6;
}

double put_notes(const CardPen& card, const CardText& text, double x, double y) {
  if (text.notes.empty()) return 0.0;
  const Pen& pen = card.pen;
  const Font font = font_of(card.type.hand, true);
  constexpr double k_pad_mm = 1.0;
  double high = 0.0;
  for (const std::string& note : text.notes) {
    high += pen.text(x + k_pad_mm, y + 0.5 + high, "! " + note, font, card.width - 2.0 * k_pad_mm);
  }
  pen.rectangle(x, y, card.width, high + 1.0, k_box_mm);
  return high + 2.0;
}

double put_gates(const CardPen& card, const CardText& text, double x, double y) {
  if (text.gates.empty()) return 0.0;
  const Pen& pen = card.pen;
  const Font head = font_of(card.type.hand, true);
  double at = y +
              pen.text(x, y, "BEFORE CUTTING, mm, on this cable, where the gland will sit", head,
                       card.width) +
              0.3;
  constexpr std::size_t k_boxes = 3;
  const double box = (card.width - (k_boxes - 1) * k_gap_mm) / k_boxes;
  const Font what = font_of(card.type.gate, true);
  const Font must = font_of(card.type.gate);
  const double line = pen.height("x", what, box);
  constexpr double k_pad_mm = 1.5;
  // A reading needs so much room for a pencil.
  constexpr double k_blank_mm = 9.5;
  bool own_line = false;
  const auto blanks_wide = [&](int count) { return count * (k_blank_mm + 1.2); };
  for (const CardText::Gate& gate : text.gates) {
    const double left = box - 2.0 * k_pad_mm - pen.width(gate.must, must) - 1.5;
    own_line = own_line || left < blanks_wide(gate.blanks);
  }
  const double write = own_line ? std::max(5.5, line) : 0.0;
  const double high = 2.0 * line + write + 1.2;
  double left = x;
  for (const CardText::Gate& gate : text.gates) {
    pen.rectangle(left, at, box, high, k_box_mm);
    const double inside = left + k_pad_mm;
    const double ascent = pen.ascent(what);
    pen.on_line(inside, at + 0.4 + ascent, gate.what + " must read", what);
    double base = at + 0.4 + line + ascent;
    const double figures = pen.on_line(inside, base, gate.must, must);
    double from = inside + figures + 1.5;
    if (own_line) {
      base += write;
      from = inside;
    }
    const double to = left + box - k_pad_mm;
    const double each = (to - from + 1.5) / gate.blanks;
    for (int i = 0; i < gate.blanks; ++i) {
      put_blank(pen, from + i * each, from + (i + 1) * each - 1.5, base, "", must);
    }
    left += box + k_gap_mm;
  }
  at += high + 0.8;
  if (!text.gate_notes.empty()) {
    at += pen.text(x, at, text.gate_notes, font_of(card.type.hand), card.width);
  }
  return at + 0.6 - y;
}

double put_rear(const CardPen& card, const CardText& text, double x, double y) {
  if (text.rear.empty()) return 0.0;
  const Pen& pen = card.pen;
  Font font = font_of(card.type.bar, true);
  const double box = card.type.bar * 0.85;
  const double left = box + 3.5;
  const double words = pen.height(text.rear, font, card.width - left - 1.0);
  const double high = words + 1.4;
  pen.area(x, y, card.width, high, Fill{.grey = 0.0}, 0.0);
  pen.area(x + 1.5, y + (high - box) / 2.0, box, box, Fill{}, 0.0);
  font.grey = 1.0;
  pen.text(x + left, y + 0.7, text.rear, font, card.width - left - 1.0);
  return high + 1.0;
}

double put_blanks(const CardPen& card, const CardText& text, double x, double y) {
  const Pen& pen = card.pen;
  const Font loud = font_of(card.type.bar, true);
  const Font words = font_of(card.type.hand);
  constexpr double k_blank_mm = 20.0;
  constexpr double k_most_blank_mm = 60.0;
  const double line = pen.height("x", loud, card.width) + 1.0;
  double at = y;
  for (const OpenBlank& blank : text.blanks) {
    const double name = blank.name.empty() ? 0.0 : pen.width(blank.name, loud) + 1.5;
    double base = at + pen.ascent(loud);
    double left = x + pen.on_line(x, base, blank.loud, loud) + 1.5;
    // Long words have lines of their own, and the blank stands below them.
    if (left + pen.width(blank.words, words) + 1.5 + name + k_blank_mm > x + card.width) {
      const double high =
          pen.text(left, base - pen.ascent(words), blank.words, words, x + card.width - left);
      at += high + 0.6;
      base = at + pen.ascent(loud);
    } else {
      left += pen.on_line(left, base, blank.words, words) + 1.5;
    }
    if (name > 0.0) left += pen.on_line(left, base, blank.name, loud) + 1.5;
    put_blank(pen, left, std::min(left + k_most_blank_mm, x + card.width), base, blank.unit, loud);
    at += line;
  }
  return at - y;
}

double put_marks(const CardPen& card, const CardText& text, double x, double y, double beside) {
  if (text.marks.empty()) return 0.0;
  const Pen& pen = card.pen;
  const CardType& type = card.type;
  const double width = card.width - beside;
  const Font layer = font_of(type.bar, true);
  const Font figure = font_of(type.mark, true);
  const Font words = font_of(type.hand);
  const Font bold = font_of(type.hand, true);
  const Font head = font_of(type.small, true);
  double layer_wide = 0.0;
  double depth_wide = 0.0;
  for (const MarkWords& mark : text.marks) {
    if (!mark.is_cut && mark.layer == "check") continue;
    layer_wide = std::max(layer_wide, pen.width(mark.layer, layer));
    depth_wide = std::max(depth_wide, pen.width(mark.depth, bold));
  }
  depth_wide = std::min(depth_wide, width * 0.32);
  const double radius = type.bar * 0.62;
  const double layer_at = x + 2.0 * radius + 1.5;
  const double place_at = layer_at + layer_wide + 2.5;
  const double depth_at = x + width - depth_wide;
  const double place_wide = depth_at - place_at - 2.0;
  double at = y + pen.height("x", head, width);
  pen.label(layer_at, y, "CUT", head);
  pen.label(place_at, y, "WHERE, mm", head);
  // How deep is told from what the tool meets first, the sheath for mark 1.
  const std::string depth_head =
      "DEPTH FROM OUTSIDE, mm" + (text.spread.empty() ? "" : " " + text.spread);
  pen.label(std::min(depth_at, x + width - pen.width(depth_head, head)), y, depth_head, head);
  for (const MarkWords& mark : text.marks) {
    if (!mark.is_cut && mark.layer == "check") continue;
    const double figure_line = pen.height("x", figure, width);
    const double words_line = pen.height("x", words, width);
    // Sum or figure, then from where; on lines of its own where it does not go beside.
    const double before = mark.before.empty() ? 0.0 : pen.width(mark.before, words) + 1.0;
    const double number = mark.figure.empty() ? 0.0 : pen.width(mark.figure, figure) + 1.5;
    constexpr double k_blank_mm = 20.0;
    const double blank = mark.blank ? k_blank_mm : 0.0;
    const double after = pen.width(mark.after, words);
    const bool on_one = before + number + after + blank <= place_wide;
    std::string after_words = mark.after;
    if (on_one && !mark.from_end.empty()) {
      for (const std::string& more :
           {" (" + mark.from_end + " from the end)", " (" + mark.from_end + ")"}) {
        if (number + pen.width(mark.after + more, words) > place_wide) continue;
        after_words += more;
        break;
      }
    }
    const double after_room = on_one ? place_wide : std::max(10.0, place_wide - blank);
    const double after_high = on_one ? 0.0 : pen.height(mark.after, words, after_room);
    // Figures have nothing below the line that they stand on.
    double high =
        mark.figure.empty() ? std::max(after_high, words_line) : figure_line * 0.93 + after_high;
    const double first_line =
        mark.figure.empty() ? 0.2 + pen.ascent(layer) : pen.ascent(figure) - 0.2;
    const double depth_high = pen.height(mark.depth, bold, depth_wide);
    const double depth_top = std::max(0.0, first_line - pen.ascent(bold));
    high = std::max({high, depth_top + depth_high, 2.0 * radius}) + 0.4;
    const double first = at + first_line;
    pen.disc(x + radius, first - type.bar * 0.36, radius);
    Font white = font_of(type.bar * 0.95, true);
    white.grey = 1.0;
    white.align = Align::centre;
    pen.on_line(x + radius, first, std::string(1, mark.number), white);
    pen.on_line(layer_at, first, mark.layer, layer);
    double left = place_at;
    if (!mark.before.empty()) left += pen.on_line(left, first, mark.before, words) + 1.0;
    if (!mark.figure.empty()) left += pen.on_line(left, first, mark.figure, figure) + 1.5;
    if (on_one) {
      pen.on_line(left, first, after_words, words);
      if (mark.blank) {
        put_blank(pen, left + after + 1.0, std::min(left + after + blank, depth_at - 1.0), first,
                  "", words);
      }
    } else {
      const double top = mark.figure.empty() ? first - pen.ascent(words) : at + figure_line;
      pen.text(place_at, top, mark.after, words, after_room);
      if (mark.blank) {
        put_blank(pen, place_at + after_room + 1.0, depth_at - 1.0,
                  top + after_high - words_line + pen.ascent(words), "", words);
      }
    }
    if (depth_high > pen.height("x", bold, depth_wide) * 1.4) {
      pen.text(depth_at, first - pen.ascent(bold), mark.depth, bold, depth_wide);
    } else {
      pen.on_line(depth_at, first, mark.depth, bold);
    }
    at += high;
    pen.line(x, at - 0.1, x + width, at - 0.1, 0.1, 0.5);
  }
  return at + 0.6 - y;
}

double put_check(const CardPen& card, const CardText& text, double x, double y) {
  for (const MarkWords& mark : text.marks) {
    const std::string check = mark.check();
    if (check.empty()) continue;
    return card.pen.text(x, y, "S: " + check, font_of(card.type.hand), card.width) + 0.4;
  }
  return 0.0;
}

namespace {

struct TailColumns {
  double core = 0.0;
  double cut_back = 0.0;
  double strip = 0.0;
  double length = 0.0;
  [[nodiscard]] double all() const { return core + cut_back + strip + length; }
};

constexpr std::array<const char*, 4> k_tail_heads{"CORE", "CUT BACK", "STRIP", "LENGTH"};

TailColumns tail_columns(const CardPen& card, const CardText& text) {
  const Pen& pen = card.pen;
  const Font font = font_of(card.type.gate);
  const Font bold = font_of(card.type.gate, true);
  const Font head = font_of(card.type.small, true);
  TailColumns columns;
  columns.core = pen.width(k_tail_heads[0], head);
  columns.cut_back = pen.width(k_tail_heads[1], head);
  columns.strip = text.strips ? std::max(pen.width(k_tail_heads[2], head), 9.0) : 0.0;
  columns.length = pen.width(k_tail_heads[3], head);
  const double most_core = card.width * 0.2;
  for (const CardText::Tail& tail : text.tails) {
    columns.core = std::max(columns.core, std::min(most_core, pen.width(tail.core, bold)));
    columns.cut_back = std::max(columns.cut_back, pen.width(tail.cut_back, font));
    if (text.strips) columns.strip = std::max(columns.strip, pen.width(tail.strip, font));
    columns.length = std::max(columns.length, pen.width(tail.length, bold));
  }
  constexpr double k_apart_mm = 2.2;
  columns.cut_back += k_apart_mm;
  if (text.strips) columns.strip += k_apart_mm;
  columns.length += k_apart_mm;
  return columns;
}

double tail_row(const CardPen& card) {
  return card.pen.height("x", font_of(card.type.gate), 100.0) + 0.3;
}

/// What they are, and the names of the columns.
double tails_head(const CardPen& card, const CardText& text) {
  const Font font = font_of(card.type.small, true);
  return card.pen.height(text.tails_head, font, tails_width(card, text)) +
         card.pen.height("x", font, 100.0) + 0.3;
}

}  // namespace

double tails_width(const CardPen& card, const CardText& text) {
  constexpr double k_least_mm = 34.0;
  return std::max(tail_columns(card, text).all(), k_least_mm);
}

std::size_t tails_in(const CardPen& card, const CardText& text, double height) {
  const double room = height - tails_head(card, text);
  return room <= 0.0 ? 0 : static_cast<std::size_t>(room / tail_row(card));
}

double put_tails(const CardPen& card, const CardText& text, std::size_t first, std::size_t last,
                 double x, double y) {
  if (first >= last) return 0.0;
  const Pen& pen = card.pen;
  const TailColumns columns = tail_columns(card, text);
  const Font head = font_of(card.type.small, true);
  Font head_right = head;
  head_right.align = Align::right;
  double at = y + pen.text(x, y, text.tails_head, head, tails_width(card, text));
  const std::array ends{x + columns.core + columns.cut_back,
                        x + columns.core + columns.cut_back + columns.strip, x + columns.all()};
  pen.label(x, at, k_tail_heads[0], head);
  for (std::size_t i = 0; i < ends.size(); ++i) {
    if (i == 1 && !text.strips) continue;
    pen.label(ends[i], at, k_tail_heads[i + 1], head_right);
  }
  at = y + tails_head(card, text);
  Font core = font_of(card.type.gate, true);
  core.most_lines = 1;
  Font cell = font_of(card.type.gate);
  cell.align = Align::right;
  Font bold = cell;
  bold.bold = true;
  for (std::size_t i = first; i < last; ++i) {
    const CardText::Tail& tail = text.tails[i];
    pen.text(x, at, tail.core, core, columns.core + 0.5);
    pen.label(ends[0], at, tail.cut_back, cell);
    if (!text.strips) {
      // One for all: in the head.
    } else if (tail.strip.empty()) {
      const double base = at + pen.ascent(cell);
      pen.line(ends[1] - 8.0, base + 0.5, ends[1], base + 0.5, k_hair_mm);
    } else {
      pen.label(ends[1], at, tail.strip, cell);
    }
    pen.label(ends[2], at, tail.length, bold);
    at += tail_row(card);
  }
  return at - y;
}

double serves_row(const CardPen& card) {
  return card.pen.height("x", font_of(card.type.hand), 100.0) + 0.8;
}

double put_serves(const CardPen& card, std::span<const ServedEnd> ends, double x, double y) {
  if (ends.empty()) return 0.0;
  const Pen& pen = card.pen;
  const Font head = font_of(card.type.small, true);
  Font cell = font_of(card.type.hand);
  Font bold = font_of(card.type.hand, true);
  cell.most_lines = bold.most_lines = 1;
  const double box = card.type.hand * 0.75;
  const double figure = pen.width("0000.5", bold) + 4.0;
  const double mark_at = x + card.width - figure;
  const double reach_at = mark_at - figure - 2.0;
  const double tag_at = x + box + 1.5;
  const double names = reach_at - tag_at - 2.0;
  const double end_at = tag_at + names * 0.4;
  pen.label(tag_at, y, "CABLE", head);
  pen.label(end_at, y, "END", head);
  pen.label(reach_at, y, "REACH, mm", head);
  pen.label(mark_at, y, "FIRST MARK", head);
  double at = y + pen.height("x", head, 100.0) + 0.3;
  for (const ServedEnd& end : ends) {
    const double base = at + pen.ascent(cell);
    pen.rectangle(x, base - box + 0.3, box, box, k_box_mm);
    pen.text(tag_at, at, end.tag, bold, end_at - tag_at - 1.5);
    pen.text(end_at, at, end.end, cell, reach_at - end_at - 1.5);
    if (end.reach.empty()) {
      pen.line(reach_at, base + 0.5, reach_at + figure - 2.0, base + 0.5, k_hair_mm);
    } else {
      pen.on_line(reach_at, base, end.reach, cell);
    }
    if (end.first_mark.empty()) {
      pen.line(mark_at, base + 0.5, mark_at + figure, base + 0.5, k_hair_mm);
    } else {
      pen.on_line(mark_at, base, end.first_mark, bold);
    }
    at += serves_row(card);
  }
  return at + 0.6 - y;
}

double put_as_made(const CardPen& card, const CardText& text, double x, double y) {
  if (text.as_made.empty()) return 0.0;
  const Pen& pen = card.pen;
  const Font font = font_of(card.type.hand);
  const double line = std::max(5.8, card.type.hand * 1.4);  // for a pencil and a cold hand
  constexpr double k_figure_mm = 11.0;
  constexpr double k_name_mm = 30.0;
  constexpr double k_apart_mm = 3.0;
  // As many on a line as have room for what is written in.
  std::vector<std::pair<std::size_t, std::size_t>> rows;
  std::vector<double> needs;
  for (const CardText::Field& field : text.as_made) {
    double need = pen.width(field.words, font) + 1.0 +
                  (field.kind == CardText::Field::Kind::name ? k_name_mm : k_figure_mm);
    if (!field.unit.empty()) need += pen.width(field.unit, font) + 1.0;
    needs.push_back(need);
  }
  for (std::size_t i = 0; i < needs.size();) {
    double used = needs[i];
    std::size_t end = i + 1;
    while (end < needs.size() && used + k_apart_mm + needs[end] <= card.width) {
      used += k_apart_mm + needs[end++];
    }
    rows.emplace_back(i, end);
    i = end;
  }
  double at = y;
  for (const auto& [first, end] : rows) {
    double used = 0.0;
    for (std::size_t i = first; i < end; ++i) used += needs[i];
    const auto count = static_cast<double>(end - first);
    const double more = std::max(0.0, (card.width - used - (count - 1.0) * k_apart_mm) / count);
    double left = x;
    const double base = at + line * 0.78;
    for (std::size_t i = first; i < end; ++i) {
      const CardText::Field& field = text.as_made[i];
      const double wide = needs[i] + more;
      pen.on_line(left, base, field.words, font);
      put_blank(pen, left + pen.width(field.words, font) + 1.0, left + wide, base, field.unit,
                font);
      left += wide + k_apart_mm;
    }
    at += line;
  }
  return at + 0.6 - y;
}

double put_rule(const CardPen& card, const CardText& text, double x, double y) {
  return card.pen.text(x, y, text.rule, font_of(card.type.caution), card.width) + 0.3;
}

double put_cautions(const CardPen& card, const CardText& text, double x, double y) {
  if (text.cautions.empty()) return 0.0;
  const std::string words = joined(text.cautions, " ");
  return card.pen.text(x, y, words, font_of(card.type.caution), card.width) + 0.3;
}

double put_rule_and_cautions(const CardPen& card, const CardText& text, std::size_t most, double x,
                             double y) {
  std::string words = text.rule;
  for (std::size_t i = 0; i < std::min(most, text.cautions.size()); ++i) {
    words += " " + text.cautions[i];
  }
  return card.pen.text(x, y, words, font_of(card.type.caution), card.width) + 0.3;
}

double put_why(const CardPen& card, const CardText& text, double x, double y) {
  const Pen& pen = card.pen;
  double at = y;
  for (const std::string& why : text.why) {
    at += pen.text(x, at, why, font_of(card.type.bar), card.width) + 1.2;
  }
  if (text.remedy.empty()) return at - y;
  at += 1.0;
  pen.line(x, at, x + card.width, at, k_hair_mm);
  at += 1.0 + pen.text(x, at + 1.0, "WHAT TO DO", font_of(card.type.hand, true), card.width);
  for (const std::string& remedy : text.remedy) {
    at += pen.text(x, at, remedy, font_of(card.type.bar, true), card.width) + 1.2;
  }
  return at - y;
}

}  // namespace cutback::print

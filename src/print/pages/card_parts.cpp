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

namespace {

/// The tag, and what is said of it on its line where there is room, else below. @return height
double put_tag(const CardPen& card, const std::string& tag, const std::string& words, double size,
               double x, double y, double wide) {
  const Pen& pen = card.pen;
  const CardType& type = card.type;
  // Two tags that differ in one letter must differ on paper: nothing is cut off.
  const Fitted fit = fitted(pen, tag, sizes_from(type.tag, type.hand), true, wide, 2);
  const double top = y - type.tag * 0.08;
  pen.text(x, top, tag, fit.font, wide);
  const double high = fit.height - type.tag * 0.1;
  if (words.empty()) return high;
  const double from = pen.width(tag, fit.font) + size * 0.8;
  const bool one_line = fit.height < pen.height("x", fit.font, wide) * 1.4;
  if (one_line && from + pen.width(words, font_of(size)) <= wide) {
    pen.on_line(x + from, top + pen.ascent(fit.font), words, font_of(size));
    return high;
  }
  const std::array sizes{size, type.hand};
  Fitted below = fitted(pen, words, sizes, false, wide, 2);
  below.font.most_lines = 4;
  return high + pen.text(x, y + high, words, below.font, wide);
}

}  // namespace

double put_head(const CardPen& card, const CardText& text, double x, double y) {
  const Pen& pen = card.pen;
  const CardType& type = card.type;
  const double right = x + card.width;
  const double state = put_state(card, text, right, y, pen.draws());
  const double flag = state_height(card) + 0.4;
  const double wide = right - x - state - k_gap_mm;

  double at = y + put_tag(card, text.tag, text.end, type.end, x, y, wide);
  at = std::max(at, y + flag);
  if (text.gland.empty()) {
    for (const std::string& fact : text.facts) {
      at += pen.text(x, at, fact, font_of(type.hand), card.width);
    }
  } else {
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
  std::string again = text.end;
  for (const std::string& word : {text.gland, words}) {
    if (!word.empty()) again += (again.empty() ? "" : ", ") + word;
  }
  double at = y + put_tag(card, text.tag, again, type.hand, x, y, wide);
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

namespace {

/// What is ticked first, the place, and what the boxes below are for: in one line where they fit.
double put_ticks(const CardPen& card, const CardText& text, double x, double y) {
  const Pen& pen = card.pen;
  const Font loud = font_of(card.type.hand, true);
  const Font words = font_of(card.type.hand);
  const double line = pen.height("x", loud, card.width);
  const double box = card.type.hand * 0.75;
  constexpr double k_apart_mm = 4.0;
  double at = y;
  double left = x;
  const auto go_on = [&](double wide) {
    if (left > x && left + wide > x + card.width) {
      at += line;
      left = x;
    }
  };
  for (const CardText::Tick& tick : text.ticks) {
    const double before = tick.box ? box + 1.2 : 0.0;
    const double loud_wide = tick.loud.empty() ? 0.0 : pen.width(tick.loud, loud) + 1.2;
    go_on(before + loud_wide + pen.width(tick.words, words));
    const double base = at + pen.ascent(loud);
    if (tick.box) pen.rectangle(left, base - box + 0.2, box, box, k_box_mm);
    left += before;
    if (!tick.loud.empty()) left += pen.on_line(left, base, tick.loud, loud) + 1.2;
    left += pen.on_line(left, base, tick.words, words) + k_apart_mm;
  }
  if (text.gates_head.empty()) return at + line - y;
  // The shorter words where they save a line.
  const std::string* head = &text.gates_head.front();
  for (const std::string& shorter : text.gates_head) {
    if (left + pen.width(shorter, loud) > x + card.width) continue;
    head = &shorter;
    break;
  }
  go_on(pen.width(*head, loud));
  pen.on_line(std::max(left, x), at + pen.ascent(loud), *head, loud);
  return at + line - y;
}

}  // namespace

double put_gates(const CardPen& card, const CardText& text, double x, double y) {
  if (text.gates.empty()) return 0.0;
  const Pen& pen = card.pen;
  double at = y + put_ticks(card, text, x, y) + 0.3;
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
    const double named = inside + pen.on_line(inside, at + 0.4 + ascent, gate.what, what);
    const double right = left + box - 1.0;
    const auto put_small = [&](double from, double base, const std::string& words) {
      Font large = font_of(card.type.hand);
      if (from + pen.width(words, large) > right) large.size_mm = card.type.caution;
      while (large.size_mm > card.type.small && from + pen.width(words, large) > right) {
        large.size_mm *= 0.97;
      }
      pen.on_line(from, base, words, large);
    };
    double base = at + 0.4 + line + ascent;
    const double figures = pen.on_line(inside, base, gate.must, must);
    double from = inside + figures + 1.5;
    std::string how = gate.how.empty() ? "" : ", " + gate.how;
    if (!gate.was.empty() && own_line) {
      put_small(from, base, "(" + gate.was + ")");
    } else if (!gate.was.empty()) {
      how = ", " + gate.was + how;
    }
    if (!how.empty()) put_small(named, at + 0.4 + ascent, how);
    if (own_line) {
      base += write;
      from = inside;
    }
    const double to = left + box - k_pad_mm;
    const double each = (to - from + 1.5) / std::max(1, gate.blanks);
    for (int i = 0; i < gate.blanks; ++i) {
      put_blank(pen, from + i * each, from + (i + 1) * each - 1.5, base, "", must);
    }
    left += box + k_gap_mm;
  }
  at += high + 0.8;
  const Font words = font_of(card.type.hand);
  double from = x;
  if (!text.between.empty()) {
    constexpr double k_write_mm = 14.0;
    const double base = at + pen.ascent(words);
    from += pen.on_line(x, base, text.between, words) + 1.5;
    if (text.between_blank) {
      put_blank(pen, from, from + k_write_mm, base, "", words);
      from += k_write_mm;
    }
    from += 2.5;
  }
  if (!text.gate_notes.empty()) {
    const double one_line = pen.height("x", words, card.width);
    if (from > x && from + pen.width(text.gate_notes, words) > x + card.width) {
      at += one_line;
      from = x;
    }
    at += pen.text(from, at, text.gate_notes, words, x + card.width - from);
  } else if (from > x) {
    at += pen.height("x", words, card.width);
  }
  return at + 0.6 - y;
}

namespace {

/// A black band with a box to be ticked.
double put_band(const CardPen& card, const CardText& text, double x, double y) {
  const Pen& pen = card.pen;
  Font font = font_of(card.type.bar, true);
  const double box = card.type.bar * 0.85;
  // One line where the hand's type makes it one.
  if (pen.width(text.rear, font) > card.width - box - 4.5) font.size_mm = card.type.hand;
  const double left = box + 3.5;
  const double words = pen.height(text.rear, font, card.width - left - 1.0);
  const double high = words + 1.4;
  pen.area(x, y, card.width, high, Fill{.grey = 0.0}, 0.0);
  pen.area(x + 1.5, y + (high - box) / 2.0, box, box, Fill{}, 0.0);
  font.grey = 1.0;
  pen.text(x + left, y + 0.7, text.rear, font, card.width - left - 1.0);
  return high + 1.0;
}

}  // namespace

double put_rear(const CardPen& card, const CardText& text, double x, double y) {
  return text.rear.empty() || text.rear_after > 0 ? 0.0 : put_band(card, text, x, y);
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

double put_go_on(const CardPen& card, const CardText& text, double x, double y) {
  if (text.marks.empty()) return 0.0;
  return card.pen.text(x, y, "GO ON WITH THE NEXT SIDE", font_of(card.type.bar, true), card.width);
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
  double at = y + pen.height("x", head, width);
  pen.label(layer_at, y, "CUT", head);
  pen.label(place_at, y, "WHERE, mm", head);
  // How deep is told from what the tool meets first, the sheath for mark 1.
  const std::string depth_head =
      "DEPTH AT MOST, mm" + (text.spread.empty() ? "" : " (known to " + text.spread + ")");
  Font head_right = head;
  head_right.align = Align::right;
  pen.label(x + width, y, depth_head, head_right);
  std::size_t count = 0;
  for (const MarkWords& mark : text.marks) {
    if (!mark.is_cut && mark.layer == "check") continue;
    if (text.rear_after > 0 && count++ == text.rear_after) {
      at += 0.6 + put_band({pen, type, width}, text, x, at + 0.6);
    }
    // Each depth ends at the right, so that a short one leaves its row more room.
    const double depth_at = x + width - std::min(depth_wide, pen.width(mark.depth, bold));
    const double place_wide = depth_at - place_at - 2.0;
    const double figure_line = pen.height("x", figure, width);
    const double words_line = pen.height("x", words, width);
    // Sum or figure, then from where; on lines of its own where it does not go beside.
    const double before = mark.before.empty() ? 0.0 : pen.width(mark.before, words) + 1.0;
    const double number = mark.figure.empty() ? 0.0 : pen.width(mark.figure, figure) + 1.5;
    constexpr double k_blank_mm = 20.0;
    constexpr double k_least_blank_mm = 13.0;
    const double after = pen.width(mark.after, words);
    const double spare = place_wide - before - number - after;
    const double blank = mark.blank ? std::clamp(spare, k_least_blank_mm, k_blank_mm) : 0.0;
    const bool on_one = blank <= spare;
    std::string after_words = mark.after;
    if (on_one && !mark.from_end.empty()) {
      // A bare figure in brackets could be taken for anything: with its words or not at all.
      const std::string more = " (" + mark.from_end + " from the end)";
      if (number + pen.width(mark.after + more, words) <= place_wide) after_words += more;
    }
    // A blank stands behind its words, which are short where it is a sum's.
    const double after_room =
        on_one
            ? place_wide
            : std::max(10.0, std::min(place_wide - blank, mark.blank ? after + 0.5 : place_wide));
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
        const double begin = place_at + after_room + 1.0;
        put_blank(pen, begin, std::min(begin + 1.5 * k_blank_mm, depth_at - 1.0),
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

/// Above the lengths, which stand in narrow columns where there are many.
const char* length_head(const CardPen& card) {
  return card.type.brief_tails ? "TAIL" : k_tail_heads[3];
}

bool has_cut_backs(const CardPen& card, const CardText& text) {
  return text.cut_backs && !card.type.brief_tails;
}

TailColumns tail_columns(const CardPen& card, const CardText& text) {
  const Pen& pen = card.pen;
  const Font font = font_of(card.type.gate);
  const Font bold = font_of(card.type.gate, true);
  const Font head = font_of(card.type.small, true);
  TailColumns columns;
  const bool cut_backs = has_cut_backs(card, text);
  columns.core = pen.width(k_tail_heads[0], head);
  columns.cut_back = cut_backs ? pen.width(k_tail_heads[1], head) : 0.0;
  columns.strip = text.strips ? std::max(pen.width(k_tail_heads[2], head), 9.0) : 0.0;
  columns.length = pen.width(length_head(card), head);
  const double most_core = card.width * 0.4;
  for (const CardText::Tail& tail : text.tails) {
    columns.core = std::max(columns.core, std::min(most_core, pen.width(tail.core, bold)));
    if (cut_backs) {
      columns.cut_back = std::max(columns.cut_back, pen.width(tail.cut_back, font));
    }
    if (text.strips) columns.strip = std::max(columns.strip, pen.width(tail.strip, font));
    columns.length = std::max(columns.length, pen.width(tail.length, bold));
  }
  constexpr double k_apart_mm = 2.2;
  if (cut_backs) columns.cut_back += k_apart_mm;
  if (text.strips) columns.strip += k_apart_mm;
  columns.length += k_apart_mm;
  return columns;
}

double tail_row(const CardPen& card) {
  return card.pen.height("x", font_of(card.type.gate), 100.0) + 0.3;
}

double tail_names(const CardPen& card) {
  return card.pen.height("x", font_of(card.type.small, true), 100.0) + 0.3;
}

}  // namespace

double tails_width(const CardPen& card, const CardText& text) {
  constexpr double k_least_mm = 34.0;
  return std::max(tail_columns(card, text).all(), card.type.brief_tails ? 0.0 : k_least_mm);
}

double put_tails_head(const CardPen& card, const CardText& text, double x, double y) {
  return card.pen.text(x, y, text.tails_head, font_of(card.type.small, true), card.width);
}

double put_tails(const CardPen& card, const CardText& text, std::size_t first, std::size_t last,
                 double x, double y) {
  if (first >= last) return 0.0;
  const Pen& pen = card.pen;
  const TailColumns columns = tail_columns(card, text);
  const Font head = font_of(card.type.small, true);
  Font head_right = head;
  head_right.align = Align::right;
  double at = y;
  const std::array ends{x + columns.core + columns.cut_back,
                        x + columns.core + columns.cut_back + columns.strip, x + columns.all()};
  pen.label(x, at, k_tail_heads[0], head);
  for (std::size_t i = 0; i < ends.size(); ++i) {
    if ((i == 0 && !has_cut_backs(card, text)) || (i == 1 && !text.strips)) continue;
    pen.label(ends[i], at, i == 2 ? length_head(card) : k_tail_heads[i + 1], head_right);
  }
  at += tail_names(card);
  Font core = font_of(card.type.gate, true);
  core.most_lines = 1;
  Font cell = font_of(card.type.gate);
  cell.align = Align::right;
  Font bold = cell;
  bold.bold = true;
  for (std::size_t i = first; i < last; ++i) {
    const CardText::Tail& tail = text.tails[i];
    Font named = core;
    while (named.size_mm > card.type.small && pen.width(tail.core, named) > columns.core + 0.5) {
      named.size_mm *= 0.92;
    }
    pen.text(x, at, tail.core, named, columns.core + 0.5);
    if (has_cut_backs(card, text)) pen.label(ends[0], at, tail.cut_back, cell);
    if (!text.strips) {
      // Not known of any: the length says so.
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

double put_route(const CardPen& card, const CardText& text, double x, double y) {
  if (text.route.empty()) return 0.0;
  return card.pen.text(x, y, text.route, font_of(card.type.hand), card.width) + 0.3;
}

namespace {

/// The list of the ends that a type serves: names, then what is known or written in for each.
struct ServesColumns {
  struct Column {
    const char* head;
    double wide;
    const std::string ServedEnd::*cell;  ///< null: a blank alone
    bool bold = false;
  };
  double tag = 0.0;  ///< width
  double end = 0.0;
  double why = 0.0;  ///< of ends that must not be cut: nobody works out a mark for them
  std::vector<Column> columns;
};

ServesColumns serves_columns(const CardPen& card, const CardText& text) {
  const double figure = card.pen.width("0000.5", font_of(card.type.hand, true)) + 1.0;
  ServesColumns list;
  double rest = card.width - card.type.hand * 0.75 - 1.5;
  if (text.is_stop) {
    list.why = rest * 0.5;
    rest -= list.why;
  } else {
    list.columns.push_back({"REACH", figure, &ServedEnd::reach});
    if (text.lists_strip) list.columns.push_back({"STRIP", figure * 0.7, nullptr});
    list.columns.push_back({"MARK 1", figure, &ServedEnd::first_mark, true});
    if (text.two_sums) {
      list.columns.back().head = "MARK S";
      list.columns.push_back({"MARK 3", figure, &ServedEnd::second_mark, true});
    }
    for (const CardText::Gate& gate : text.gates) {
      list.columns.push_back({gate.what == "sheath"     ? "SHEATH"
                              : gate.what == "bedding"  ? "BEDDING"
                              : gate.what == "one wire" ? "WIRE"
                                                        : "ARMOUR",
                              figure, nullptr});
    }
    list.columns.push_back({"BY", figure, nullptr});
    for (const auto& column : list.columns) rest -= column.wide + 2.0;
  }
  list.tag = rest * 0.45;
  list.end = rest - list.tag;
  return list;
}

/// What is too long for its column goes on below: of two ends that differ in a letter nothing is
/// left out.
double served_height(const CardPen& card, const ServesColumns& list, const ServedEnd& end) {
  const Font cell = font_of(card.type.hand);
  const Font bold = font_of(card.type.hand, true);
  double high = std::max(card.pen.height(end.tag, bold, list.tag - 1.5),
                         card.pen.height(end.end, cell, list.end - 1.5));
  if (list.why > 0.0) high = std::max(high, card.pen.height(end.why, cell, list.why - 1.5));
  return high + 0.8;
}

double serves_head(const CardPen& card) {
  return card.pen.height("x", font_of(card.type.small, true), 100.0) + 0.3;
}

}  // namespace

std::size_t serves_in(const CardPen& card, const CardText& text, std::size_t first, double height) {
  const ServesColumns list = serves_columns(card, text);
  double used = serves_head(card) + 0.6;
  std::size_t count = 0;
  while (first + count < text.serves.size()) {
    used += served_height(card, list, text.serves[first + count]);
    if (used > height) break;
    ++count;
  }
  return count;
}

double put_serves(const CardPen& card, const CardText& text, std::size_t first, std::size_t count,
                  double x, double y) {
  const auto ends =
      std::span(text.serves).subspan(first, std::min(count, text.serves.size() - first));
  if (ends.empty()) return 0.0;
  const Pen& pen = card.pen;
  const ServesColumns list = serves_columns(card, text);
  const Font head = font_of(card.type.small, true);
  const Font cell = font_of(card.type.hand);
  const Font bold = font_of(card.type.hand, true);
  const double box = card.type.hand * 0.75;
  const double tag_at = x + box + 1.5;
  const double end_at = tag_at + list.tag;
  const double next_at = end_at + list.end;
  pen.label(tag_at, y, "CABLE", head);
  pen.label(end_at, y, "END", head);
  if (list.why > 0.0) pen.label(next_at, y, "WHY", head);
  double left = next_at;
  for (const auto& column : list.columns) {
    pen.label(left, y, column.head, head);
    left += column.wide + 2.0;
  }
  double at = y + serves_head(card);
  for (const ServedEnd& end : ends) {
    const double base = at + pen.ascent(cell);
    pen.rectangle(x, base - box + 0.3, box, box, k_box_mm);
    pen.text(tag_at, at, end.tag, bold, list.tag - 1.5);
    pen.text(end_at, at, end.end, cell, list.end - 1.5);
    if (list.why > 0.0) pen.text(next_at, at, end.why, cell, list.why - 1.5);
    left = next_at;
    for (const auto& column : list.columns) {
      if (column.cell == nullptr || (end.*column.cell).empty()) {
        pen.line(left, base + 0.5, left + column.wide, base + 0.5, k_hair_mm);
      } else {
        pen.on_line(left, base, end.*column.cell, column.bold ? bold : cell);
      }
      left += column.wide + 2.0;
    }
    at += served_height(card, list, end);
  }
  return at + 0.6 - y;
}

namespace {

constexpr double k_between_inches_mm = 8.0;

/// A figure in mm or inches and the space before it.
double inches_figure(const CardPen& card) {
  return card.pen.width("00.0000", font_of(card.type.hand, true)) + 1.5;
}

}  // namespace

double inches_row(const CardPen& card) {
  return card.pen.height("x", font_of(card.type.hand), 100.0) + 0.3;
}

std::size_t inches_columns(const CardPen& card, const CardText& text) {
  // Names may be set a little smaller, and are never cut.
  constexpr double k_least_size = 0.8;
  const Font least = font_of(card.type.hand * k_least_size);
  const double room = (card.width - k_between_inches_mm) / 2.0 - 2.0 * inches_figure(card);
  const bool fits = std::all_of(text.inches.begin(), text.inches.end(), [&](const InchRow& row) {
    return card.pen.width(row.what, least) <= room;
  });
  return fits ? 2 : 1;
}

double put_inches(const CardPen& card, const CardText& text, std::size_t first, std::size_t count,
                  double x, double y) {
  const Pen& pen = card.pen;
  const std::size_t last = std::min(text.inches.size(), first + count);
  const std::size_t columns = inches_columns(card, text);
  const std::size_t rows = (last - first + columns - 1) / columns;
  const Font head = font_of(card.type.small, true);
  Font mm = font_of(card.type.hand);
  mm.align = Align::right;
  Font in = font_of(card.type.hand, true);
  in.align = Align::right;
  Font head_right = head;
  head_right.align = Align::right;
  const double wide = columns == 1 ? card.width : (card.width - k_between_inches_mm) / 2.0;
  const double figure = inches_figure(card);
  const double top = y + pen.height("x", head, 100.0) + 0.3;
  for (std::size_t i = 0; i * rows < last - first && i < columns; ++i) {
    const double left = x + static_cast<double>(i) * (wide + k_between_inches_mm);
    pen.label(left, y, "IN INCHES, 1 in = 25.4 mm", head);
    pen.label(left + wide - figure, y, "mm", head_right);
    pen.label(left + wide, y, "in", head_right);
    double at = top;
    for (std::size_t k = first + i * rows; k < std::min(last, first + (i + 1) * rows); ++k) {
      const InchRow& row = text.inches[k];
      Font named = font_of(card.type.hand);
      while (named.size_mm > card.type.small && pen.width(row.what, named) > wide - 2.0 * figure) {
        named.size_mm *= 0.95;
      }
      pen.label(left, at, row.what, named);
      pen.label(left + wide - figure, at, row.mm, mm);
      pen.label(left + wide, at, row.in, in);
      at += inches_row(card);
    }
  }
  return top - y + static_cast<double>(rows) * inches_row(card) + 1.0;
}

double put_as_made(const CardPen& card, const CardText& text, double x, double y) {
  if (text.as_made.empty()) return 0.0;
  const Pen& pen = card.pen;
  const Font font = font_of(card.type.hand);
  const double line = std::max(5.8, card.type.hand * 1.4);  // for a pencil and a cold hand
  constexpr double k_figure_mm = 10.0;
  constexpr double k_name_mm = 27.0;
  constexpr double k_apart_mm = 2.0;
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

double put_cautions(const CardPen& card, const CardText& text, std::size_t first, double x,
                    double y) {
  if (first >= text.cautions.size()) return 0.0;
  std::string words;
  for (std::size_t i = first; i < text.cautions.size(); ++i) {
    words += (words.empty() ? "" : " ") + text.cautions[i];
  }
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

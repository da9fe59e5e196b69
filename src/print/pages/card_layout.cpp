#include "print/pages/card_layout.hpp"

#include <algorithm>
#include <span>
#include <string>

#include "print/pages/strip_drawing.hpp"

namespace cutback::print {
namespace {

constexpr double k_between_columns_mm = 5.0;
constexpr double k_between_brief_mm = 2.4;
/// The least width for marks beside their tails, in sizes of the hand's type.
constexpr double k_marks_wide = 27.0;

class Layouter {
 public:
  /// @param split  the marks begin a side of their own, as the front does not hold them
  Layouter(const Pen& pen, const Card& card, const CardText& text, const CardType& type,
           const CardRoom& room, bool coded, bool split = false)
      : measure_{pen, type, room.width},
        card_(card),
        text_(text),
        type_(type),
        room_(room),
        split_(split) {
    layout_.type = type;
    layout_.code_mm = coded ? code_width(text, type) : 0.0;
    layout_.code_side = type.code_on_back ? 1 : 0;
    if (layout_.code_mm > 0.0) {
      beside_ = layout_.code_mm;
      down_to_ = put_code_words(measure_, 0.0, 0.0, layout_.code_mm);
    }
    layout_.sides.emplace_back();
  }

  /// Whether everything that is cut by stands on the front.
  [[nodiscard]] bool holds() const { return holds_; }
  /// Whether the drawing to lay the cable along found no place.
  [[nodiscard]] bool lacks_ruler() const { return ruler_ && !drawn_; }

  CardLayout run() {
    put_code_caption();
    add(put_head);
    add(put_first);
    add(put_notes);
    if (text_.is_stop) {
      add(put_why);
      add(put_gates);
      add(put_as_made);
      add(put_rule);
      holds_ = left() >= 0.0;
      made_ = warned_ = true;
      layout_.front_mm = y_;
      add_serves_that_fit();
      fill_backs();
      return std::move(layout_);
    }
    add(put_gates);
    if (split_) {
      layout_.split = true;
      const bool blanks_here = left() >= height(put_blanks) + height(put_go_on);
      if (blanks_here) add(put_blanks);
      add(put_go_on);
      holds_ = left() >= 0.0;
      begin_side();
      if (!blanks_here) {
        add(put_blanks);
        const double marks = put_marks(measure_, text_, 0.0, 0.0, 0.0);
        if (left() < height(put_rear) + marks + height(put_rule)) begin_side();
      }
      add(put_rear);
    } else {
      add(put_rear);
      add(put_blanks);
    }
    add_marks();
    holds_ = holds_ && left() >= height(put_rule);
    fill_front();
    fill_backs();
    return std::move(layout_);
  }

 private:
  using Part = double (*)(const CardPen&, const CardText&, double, double);

  /// Of what begins at the place at hand: the code stands beside the upper parts.
  [[nodiscard]] double width() const {
    return is_code_side() && y_ < down_to_ ? room_.width - beside_ : room_.width;
  }
  [[nodiscard]] double height(Part part) const {
    return part({measure_.pen, measure_.type, width()}, text_, 0.0, 0.0);
  }
  [[nodiscard]] double left() const { return room_.height - room_.margin - y_; }

  void put(double high, std::function<void(const CardPen&, double, double)> part) {
    layout_.sides.back().push_back({std::move(part), y_, width()});
    y_ += high;
  }

  void add(Part part) {
    const double high = height(part);
    if (high <= 0.0) return;
    put(high,
        [part, &text = text_](const CardPen& card, double x, double y) { part(card, text, x, y); });
  }

  [[nodiscard]] bool is_code_side() const { return layout_.sides.size() == layout_.code_side + 1; }
  /// What needs the whole width begins below the code.
  void go_below_code() {
    if (is_code_side()) y_ = std::max(y_, down_to_);
  }
  void put_code_caption() {
    if (beside_ <= 0.0 || !is_code_side()) return;
    layout_.sides.back().push_back({[code = beside_](const CardPen& card, double x, double y) {
                                      put_code_words(card, x + card.width - code, y, code);
                                    },
                                    0.0, room_.width});
  }

  /// The tails beside the marks, where that takes less room than below them.
  void add_marks() {
    go_below_code();
    const double tails = text_.tails.empty() ? 0.0 : tails_width(measure_, text_);
    const double beside = tails + k_between_columns_mm;
    const double high = put_marks(measure_, text_, 0.0, 0.0, beside);
    // A sum and its blank must stay on one line: broken ones add more than a line to the height.
    const double one_line = measure_.pen.height("x", Font{.size_mm = type_.hand}, room_.width);
    const bool breaks = high > put_marks(measure_, text_, 0.0, 0.0, 0.0) + 1.5 * one_line;
    const double head = put_tails_head({measure_.pen, measure_.type, tails}, text_, 0.0, 0.0);
    const double rows = head + put_tails(measure_, text_, 0, text_.tails.size(), 0.0, 0.0) + 0.6;
    const double long_one = rows + put_route({measure_.pen, measure_.type, tails}, text_, 0.0, 0.0);
    const bool fits = tails > 0.0 && !breaks && room_.width - beside >= k_marks_wide * type_.hand &&
                      long_one < high + tails_height(text_.tails.size());
    if (!fits) {
      put(put_marks(measure_, text_, 0.0, 0.0, 0.0),
          [&text = text_](const CardPen& card, double x, double y) {
            put_marks(card, text, x, y, 0.0);
          });
      return;
    }
    tails_put_ = text_.tails.size();
    put(std::max(high, long_one),
        [&text = text_, beside, tails, head, rows](const CardPen& card, double x, double y) {
          put_marks(card, text, x, y, beside);
          const double left = x + card.width - tails;
          put_tails_head({card.pen, card.type, tails}, text, left, y);
          put_tails(card, text, 0, text.tails.size(), left, y + head);
          put_route({card.pen, card.type, tails}, text, left, y + rows);
        });
  }

  [[nodiscard]] StripLook look() const {
    return {.width = room_.width,
            .height = 0.0,
            .margin = room_.margin,
            .figure_mm = type_.hand,
            .small_mm = std::max(type_.small, type_.caution * 0.9),
            .edge = room_.edge};
  }

  [[nodiscard]] StripHeights strip_heights_of() const {
    return strip_heights(measure_.pen, *card_.sheet, look());
  }

  /// With its lower side on the paper's edge, in what is left above it.
  void put_drawing() {
    go_below_code();
    StripLook look = this->look();
    look.height = std::min(room_.height - y_, strip_heights_of().full);
    y_ = room_.height - look.height;
    put(look.height, [&card = card_, look](const CardPen& pen, double x, double y) {
      put_strip_drawing(pen.pen, *card.sheet, x, y, look);
    });
    drawn_ = true;
  }

  /// What else goes on the front, in the order in which it is needed there.
  void fill_front() {
    const double rule = height(put_rule);
    const double made = height(put_as_made);
    const double drawing = text_.has_drawing ? strip_heights_of().least - room_.margin : 0.0;
    double spare = left() - rule;
    const auto take = [&](double high) {
      if (high > spare) return false;
      spare -= high;
      return true;
    };
    // Cautions are read before anything is cut, and give way to nothing.
    warns_ = text_.cautions.size();
    while (warns_ > 0 && !take(rule_height(warns_) - rule)) --warns_;
    warned_ = warns_ == text_.cautions.size();
    // Who signs does it on the side with the marks and the tails. The drawing shows no figure that
    // the marks lack: it has what is left.
    const bool tails = tails_left() > 0 && take(tails_height(tails_left()));
    const bool serves = !text_.serves.empty() && take(serves_height(text_.serves.size()));
    const bool makes = (tails || tails_left() == 0) && made > 0.0 && take(made);
    ruler_ = text_.has_drawing && is_true_size(*card_.sheet, room_.width);
    const bool backs = is_small() || (tails_left() > 0 && !tails) || (made > 0.0 && !makes);
    const bool draws = text_.has_drawing && !(ruler_ && backs) && take(drawing);
    const bool checks = take(height(put_check));
    if (checks) add(put_check);
    if (tails) add_tails(tails_left());
    if (serves) add_serves(text_.serves.size());
    if (makes) add_as_made();
    put(rule_height(warns_),
        [&text = text_, warns = warns_](const CardPen& card, double x, double y) {
          put_rule_and_cautions(card, text, warns, x, y);
        });
    made_ = makes || made == 0.0;
    if (draws) put_drawing();
  }

  [[nodiscard]] double rule_height(std::size_t cautions) const {
    return put_rule_and_cautions(measure_, text_, cautions, 0.0, 0.0);
  }

  /// A further side, under the names of the card.
  void begin_side() {
    layout_.sides.emplace_back();
    y_ = 0.0;
    put_code_caption();
    const std::string words = "side " + std::to_string(layout_.sides.size());
    put(put_head_again({measure_.pen, measure_.type, width()}, text_, words, 0.0, 0.0),
        [&text = text_, words](const CardPen& card, double x, double y) {
          put_head_again(card, text, words, x, y);
        });
  }

  void fill_backs() {
    while (!is_done()) {
      begin_side();
      const double top = y_;
      const bool again = fill_back();
      if (!again && y_ <= top) return;  // cannot be: every part fits an empty side
    }
  }

  /// @return whether anything was put
  bool fill_back() {
    const double begun = y_;
    if (tails_left() > 0) {
      std::size_t rows = tails_left();
      while (rows > 1 && tails_height(rows) > left()) --rows;
      // Some go with as made to the next side: nobody signs below nothing.
      const double signing =
          (made_ ? 0.0 : height(put_as_made)) + (warned_ ? 0.0 : cautions_height());
      const std::size_t held = 2 * tail_columns();
      if (rows == tails_left() && rows > 2 * held && tails_height(rows) + signing > left()) {
        rows -= held;
      }
      add_tails(rows);
      if (tails_left() > 0) return true;
    }
    add_serves_that_fit();
    if (serves_left() > 0) return true;
    const double made = made_ ? 0.0 : height(put_as_made);
    const double cautions = warned_ ? 0.0 : cautions_height();
    if (made + cautions > left() && y_ > begun) return true;
    if (!made_) add_as_made();
    if (!warned_) add_cautions();
    if (!drawn_ && text_.has_drawing) {
      go_below_code();
      if (strip_heights_of().least <= left() + room_.margin) put_drawing();
    }
    add_inches_that_fit();
    return y_ > begun;
  }

  /// A drawing alone is worth no side, but for the back that a card of the small paper has anyway.
  [[nodiscard]] bool is_done() const {
    const bool draws = ruler_ && !drawn_ && is_small() && layout_.sides.size() < 2;
    return tails_left() == 0 && serves_left() == 0 && made_ && warned_ && !draws &&
           inches_left() == 0;
  }
  [[nodiscard]] bool is_small() const { return type_.code_on_back; }

  void add_as_made() {
    add(put_as_made);
    made_ = true;
  }
  /// Those for which the front had no room.
  void add_cautions() {
    put(cautions_height(),
        [&text = text_, first = warns_](const CardPen& card, double x, double y) {
          put_cautions(card, text, first, x, y);
        });
    warned_ = true;
  }
  [[nodiscard]] double cautions_height() const {
    return put_cautions({measure_.pen, measure_.type, width()}, text_, warns_, 0.0, 0.0);
  }

  [[nodiscard]] double between_mm() const {
    return type_.brief_tails ? k_between_brief_mm : k_between_columns_mm;
  }
  [[nodiscard]] std::size_t tails_left() const { return text_.tails.size() - tails_put_; }
  [[nodiscard]] std::size_t tail_columns() const {
    const double one = tails_width(measure_, text_);
    const double columns = (width() + between_mm()) / (one + between_mm());
    return std::max<std::size_t>(1, static_cast<std::size_t>(columns));
  }
  [[nodiscard]] double tails_height(std::size_t count) const {
    const std::size_t columns = tail_columns();
    const CardPen card{measure_.pen, measure_.type, width()};
    return put_tails_head(card, text_, 0.0, 0.0) +
           put_tails(measure_, text_, 0, (count + columns - 1) / columns, 0.0, 0.0) +
           (tails_put_ == 0 ? put_route(card, text_, 0.0, 0.0) : 0.0) + 1.0;
  }

  /// In columns of equal length.
  void add_tails(std::size_t count) {
    const std::size_t columns = tail_columns();
    const std::size_t rows = (count + columns - 1) / columns;
    const double between = between_mm();
    const double wide = tails_width(measure_, text_) + between;
    const std::size_t first = tails_put_;
    const double high = tails_height(count);
    tails_put_ += count;
    put(high, [&text = text_, first, count, rows, wide, between, high](const CardPen& card,
                                                                       double x, double y) {
      double top = y + put_tails_head(card, text, x, y);
      if (first == 0) top += put_route(card, text, x, top);
      for (std::size_t i = 0; i * rows < count; ++i) {
        if (i > 0) {
          const double line = x + static_cast<double>(i) * wide - between / 2.0;
          card.pen.line(line, top, line, y + high - 1.0, 0.15);
        }
        put_tails(card, text, first + i * rows, first + std::min(count, (i + 1) * rows),
                  x + static_cast<double>(i) * wide, top);
      }
    });
  }

  [[nodiscard]] std::size_t serves_left() const { return text_.serves.size() - served_; }
  [[nodiscard]] double serves_height(std::size_t count) const {
    return put_serves({measure_.pen, measure_.type, width()}, text_, served_, count, 0.0, 0.0);
  }
  /// As many of the ends as this side has room for, but no single ones.
  void add_serves_that_fit() {
    constexpr std::size_t k_least = 3;
    if (serves_left() == 0) return;
    go_below_code();
    const std::size_t rows =
        serves_in({measure_.pen, measure_.type, width()}, text_, served_, left());
    if (rows >= std::min(k_least, serves_left())) add_serves(rows);
  }
  void add_serves(std::size_t count) {
    if (count == 0) return;
    const std::size_t first = served_;
    const double high = serves_height(count);
    served_ += count;
    put(high, [&text = text_, first, count](const CardPen& card, double x, double y) {
      put_serves(card, text, first, count, x, y);
    });
  }

  [[nodiscard]] std::size_t inches_left() const { return text_.inches.size() - converted_; }
  /// Below the code, as they take the whole width.
  void add_inches_that_fit() {
    constexpr std::size_t k_least = 6;
    if (inches_left() == 0 || left() <= 0.0) return;
    go_below_code();
    const double room = left() - put_inches(measure_, text_, 0, 0, 0.0, 0.0);
    const auto rows = static_cast<std::size_t>(std::max(0.0, room) / inches_row(measure_));
    const std::size_t first = converted_;
    const std::size_t count = std::min(inches_left(), inches_columns(measure_, text_) * rows);
    if (count < std::min(k_least, inches_left())) return;
    converted_ += count;
    put(put_inches(measure_, text_, first, count, 0.0, 0.0),
        [&text = text_, first, count](const CardPen& card, double x, double y) {
          put_inches(card, text, first, count, x, y);
        });
  }

  CardPen measure_;
  const Card& card_;
  const CardText& text_;
  const CardType& type_;
  CardRoom room_;
  CardLayout layout_;
  double y_ = 0.0;
  std::size_t tails_put_ = 0;
  std::size_t served_ = 0;
  std::size_t converted_ = 0;  ///< rows of inches that were put
  bool made_ = false;
  bool warned_ = false;
  std::size_t warns_ = 0;  ///< cautions on the front
  bool drawn_ = false;
  bool ruler_ = false;  ///< the drawing is cut by
  bool holds_ = true;
  bool split_;
  double beside_ = 0.0;   ///< the code takes so much of the width
  double down_to_ = 0.0;  ///< from the upper edge to here
};

}  // namespace

void note_letters(const Pen& measure, CardText& text) {
  std::size_t without = 0;
  for (const std::string& name : {text.tag, text.end, text.gland}) {
    without += measure.without_glyph(name);
  }
  for (const ServedEnd& end : text.serves) {
    without += measure.without_glyph(end.tag) + measure.without_glyph(end.end);
  }
  if (without == 0) return;
  text.notes.emplace_back(
      "Letters of these names have no font here and stand as boxes: compare them with the "
      "schedule.");
}

CardLayout lay_out_card(const Pen& measure, const Card& card, const CardText& text,
                        const CardType& type, const CardRoom& room) {
  CardLayout layout;
  CardType smaller = type;
  // Only names that are long give way further than that.
  constexpr std::size_t k_long = 60;
  const bool is_long = text.tag.size() + text.end.size() > k_long;
  for (const double names : {1.0, 0.75, 0.5}) {
    if (names < 0.75 && !is_long) break;
    smaller = type;
    for (double* const size : {&smaller.tag, &smaller.end, &smaller.gland}) {
      *size = std::max(type.hand, *size * names);
    }
    Layouter layouter(measure, card, text, smaller, room, true);
    layout = layouter.run();
    if (!layouter.holds()) continue;
    // Of the small paper a card has both sides.
    const std::size_t most = type.code_on_back ? 2 : 1;
    if ((layout.sides.size() > most || layouter.lacks_ruler()) && layout.code_mm > 0.0) {
      Layouter uncoded(measure, card, text, smaller, room, false);
      CardLayout without = uncoded.run();
      const bool helps = without.sides.size() < layout.sides.size() ||
                         (without.sides.size() == layout.sides.size() && !uncoded.lacks_ruler());
      if (helps) layout = std::move(without);
    }
    if (layout.sides.size() <= 2 || text.tails.empty()) return layout;
    // One end, one sheet of paper.
    smaller.brief_tails = true;
    CardLayout brief = Layouter(measure, card, text, smaller, room, false).run();
    return brief.sides.size() < layout.sides.size() ? brief : layout;
  }
  // So many blanks that the marks go on the next side, all of them: none is lost.
  for (const double names : {0.75, 0.5}) {
    smaller = type;
    for (double* const size : {&smaller.tag, &smaller.end, &smaller.gland}) {
      *size = std::max(type.hand, *size * names);
    }
    Layouter layouter(measure, card, text, smaller, room, false, true);
    layout = layouter.run();
    if (layouter.holds()) break;
  }
  return layout;
}

}  // namespace cutback::print

#include "print/pages/card_layout.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>

#include "print/pages/columns.hpp"

namespace cutback::print {
namespace {

/// Sizes of the body's type [mm], largest first. The smallest is the least that is read on site.
constexpr std::array k_sizes{4.4, 4.0, 3.6, 3.3, 3.0, 2.75, 2.5, 2.3, 2.1};
/// Where all of it needs smaller type than this, a card is compact.
constexpr double k_compact_mm = 2.3;
constexpr double k_two_columns_mm = 120.0;  // the least width for them
constexpr double k_gutter_mm = 4.0;

// A module smaller than 0.32 mm is not read from a print by every telephone (common practice).
constexpr double k_module_mm = 0.42;
constexpr double k_least_module_mm = 0.32;
constexpr double k_code_share = 0.42;  // of the card's width at most

double code_side(const std::optional<QrCode>& code, double width) {
  if (!code) return 0.0;
  const double side = std::min(code->whole() * k_module_mm, width * k_code_share);
  return side / code->whole() < k_least_module_mm ? 0.0 : side;
}

/// What stands over the columns.
struct Head {
  double height = 0.0;
  std::vector<Placed> placed;
};

/// One way to place it all.
struct Trial {
  double body;
  std::size_t columns;
  double height;  ///< of the columns
};

class Layouter {
 public:
  Layouter(const Pen& pen, const CardText& text, double width, double height)
      : pen_(pen), text_(text), width_(width), height_(height) {
    layout_.code_mm = code_side(text.code, width);
    if (text.wants_code && layout_.code_mm == 0.0) {
      facts_after_ = &layout_.own.emplace_back(
          Paragraph{.words = text.code ? "left out: the job is too long for a card of this size"
                                       : "left out: the job is too long for any code",
                    .label = "Code"});
    }
  }

  CardLayout run() {
    Blocks whole = views_of(text_.body);
    for (const Block& block : text_.sources) whole.push_back(&block);
    const std::optional<Trial> all = largest(whole);
    if (all && all->body >= k_compact_mm) return place(whole, *all);
    const Blocks compact = views_of(text_.compact);
    if (const std::optional<Trial> trial = largest(compact)) return place(compact, *trial);
    return spread(compact);
  }

 private:
  using Blocks = std::vector<const Block*>;

  static Blocks views_of(const std::vector<Block>& list) {
    Blocks blocks;
    for (const Block& block : list) blocks.push_back(&block);
    return blocks;
  }

  /// Whether the drawing stands in a column and not over all of them.
  [[nodiscard]] bool draws_in_column(std::size_t columns) const {
    return text_.drawing && columns > 1 && column_width(columns) >= text_.drawing_mm;
  }

  [[nodiscard]] Blocks with_drawing(const Blocks& blocks, bool drawing) const {
    Blocks all;
    if (drawing) all.push_back(&*text_.drawing);
    for (const Block* block : blocks) all.push_back(block);
    return all;
  }

  [[nodiscard]] double column_width(std::size_t columns) const {
    return (width_ - static_cast<double>(columns - 1) * k_gutter_mm) / static_cast<double>(columns);
  }

  [[nodiscard]] std::vector<Measured> measured(const Blocks& blocks, double body,
                                               std::size_t columns) const {
    std::vector<Measured> list;
    const double wide = column_width(columns);
    for (const Block* block : blocks) {
      list.push_back({put(pen_, *block, 0.0, 0.0, wide, body), may_end_page(*block)});
    }
    return list;
  }

  /// Tag and facts beside the code, then what goes across.
  [[nodiscard]] Head head(double body, bool drawing) const {
    Head head;
    const double beside =
        width_ - (layout_.code_mm > 0.0 ? layout_.code_mm + k_gutter_mm / 2.0 : 0.0);
    double& y = head.height;
    const auto add = [&](const Block& block, double width) {
      head.placed.push_back({&block, 0.0, y, width});
      y += put(pen_, block, 0.0, y, width, body);
    };
    for (const Block& fact : text_.facts) add(fact, beside);
    if (facts_after_ != nullptr) add(*facts_after_, beside);
    // The drawing stands beside the code too where it has its true size there.
    const bool in_corner = drawing && layout_.code_mm > 0.0 && beside >= text_.drawing_mm;
    if (!in_corner) y = std::max(y, layout_.code_mm);
    const double wide = in_corner ? beside : width_;
    if (text_.alarm) add(*text_.alarm, wide);
    if (drawing) add(*text_.drawing, wide);
    y = std::max(y, layout_.code_mm);
    return head;
  }

  [[nodiscard]] std::size_t most_columns() const { return width_ >= k_two_columns_mm ? 2 : 1; }

  [[nodiscard]] std::optional<Trial> trial(const Blocks& blocks, double body) const {
    for (std::size_t columns = 1; columns <= most_columns(); ++columns) {
      const bool in_column = draws_in_column(columns);
      const double room = height_ - head(body, text_.drawing && !in_column).height;
      if (room <= 0.0) continue;
      const double needed =
          balanced_height(measured(with_drawing(blocks, in_column), body, columns), columns, room);
      if (needed <= room) return Trial{body, columns, needed};
    }
    return std::nullopt;
  }

  /// The larger the type, the more room it takes: bisection.
  [[nodiscard]] std::optional<Trial> largest(const Blocks& blocks) const {
    std::optional<Trial> best;
    std::size_t low = 0;
    std::size_t high = k_sizes.size();
    while (low < high) {
      const std::size_t middle = (low + high) / 2;
      if (const auto found = trial(blocks, k_sizes[middle])) {
        best = found;
        high = middle;
      } else {
        low = middle + 1;
      }
    }
    return best;
  }

  CardLayout place(const Blocks& body, const Trial& trial) {
    const bool in_column = draws_in_column(trial.columns);
    const Blocks blocks = with_drawing(body, in_column);
    layout_.body_mm = trial.body;
    Head over = head(trial.body, text_.drawing && !in_column);
    layout_.cards.push_back(std::move(over.placed));
    const auto list = measured(blocks, trial.body, trial.columns);
    const auto columns = fill_columns(list, [&](std::size_t) { return trial.height; });
    put_columns(blocks, list, columns, trial.columns, [&](std::size_t) { return over.height; });
    return std::move(layout_);
  }

  /// Over several cards in the smallest type, each with the tag at its head.
  CardLayout spread(const Blocks& compact) {
    const double body = k_sizes.back();
    layout_.body_mm = body;
    const double note = put(pen_, announcement({}), 0.0, 0.0, width_, body);
    // On the first card where that holds it, else in the flow: in a column, or in a single one.
    const bool in_head = text_.drawing && head(body, true).height + note <= height_;
    const bool too_wide = text_.drawing && !in_head && !draws_in_column(most_columns());
    const std::size_t columns = too_wide ? 1 : most_columns();
    const Blocks blocks = with_drawing(compact, text_.drawing && !in_head);
    Head over = head(body, in_head);
    layout_.cards.push_back(std::move(over.placed));
    const double later = go_on(nullptr, {}, body);
    const auto top = [&](std::size_t card) { return card == 0 ? over.height : later; };
    // At the foot of each the next is announced.
    const auto list = measured(blocks, body, columns);
    const auto places = fill_columns(list, [&](std::size_t column) {
      return std::max(0.0, height_ - top(column / columns) - note);
    });
    put_columns(blocks, list, places, columns, top);
    const std::string of = " of " + std::to_string(layout_.cards.size());
    for (std::size_t card = 0; card < layout_.cards.size(); ++card) {
      const std::string number = "card " + std::to_string(card + 1) + of;
      if (card > 0) go_on(&layout_.cards[card], number, body);
      if (card + 1 < layout_.cards.size()) {
        const Block& next = layout_.own.emplace_back(announcement(number));
        layout_.cards[card].push_back({&next, 0.0, height_ - note, width_});
      }
    }
    return std::move(layout_);
  }

  static Paragraph announcement(const std::string& number) {
    return {.words = "This is " + number + ": it goes on on the next",
            .label = {},
            .bold = true,
            .most_lines = 1};
  }

  /// The head of a card that goes on: whose it is, and whether it may be used.
  /// @param placed  may be null: measured only
  /// @return its height
  double go_on(std::vector<Placed>* placed, const std::string& number, double body) {
    std::vector<Block> blocks;
    const auto add = [&](const std::string& words, double size) {
      blocks.emplace_back(
          Paragraph{.words = words, .label = {}, .bold = true, .size = size, .most_lines = 1});
    };
    add(text_.tag, 1.6);
    add((text_.again.empty() ? "" : text_.again + ": ") + number, 1.0);
    if (text_.alarm) blocks.push_back(*text_.alarm);
    double y = 0.0;
    for (Block& block : blocks) {
      const double high = put(pen_, block, 0.0, 0.0, width_, body);
      if (placed != nullptr) {
        placed->push_back({&layout_.own.emplace_back(std::move(block)), 0.0, y, width_});
      }
      y += high;
    }
    return y;
  }

  void put_columns(const Blocks& blocks, const std::vector<Measured>& list,
                   const std::vector<std::size_t>& places, std::size_t columns,
                   const std::function<double(std::size_t)>& top) {
    const double wide = column_width(columns);
    std::size_t column = 0;
    double y = top(0);
    for (std::size_t i = 0; i < blocks.size(); ++i) {
      const std::size_t card = places[i] / columns;
      if (places[i] != column) {
        column = places[i];
        y = top(card);
      }
      while (layout_.cards.size() <= card) layout_.cards.emplace_back();
      const double x = static_cast<double>(column % columns) * (wide + k_gutter_mm);
      layout_.cards[card].push_back({blocks[i], x, y, wide});
      y += list[i].height;
    }
  }

  const Pen& pen_;
  const CardText& text_;
  double width_;
  double height_;
  const Block* facts_after_ = nullptr;
  CardLayout layout_;
};

}  // namespace

CardLayout lay_out_card(const Pen& measure, const CardText& text, double width, double height) {
  return Layouter(measure, text, width, height).run();
}

void put_card(const Pen& pen, const CardLayout& layout, std::size_t card, double x, double y) {
  for (const Placed& placed : layout.cards[card]) {
    put(pen, *placed.block, x + placed.x, y + placed.y, placed.width, layout.body_mm);
  }
}

}  // namespace cutback::print

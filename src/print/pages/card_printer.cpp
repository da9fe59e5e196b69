#include <algorithm>
#include <array>
#include <functional>
#include <memory>
#include <span>
#include <utility>
#include <vector>

#include "cutback/in_parallel.hpp"
#include "cutback/print/pages.hpp"
#include "print/pages/card_layout.hpp"
#include "print/pages/card_text.hpp"
#include "print/pages/card_type.hpp"
#include "print/pages/page_frame.hpp"
#include "print/pages/pdf_file.hpp"
#include "print/pages/surface.hpp"
#include "cutback/print/words.hpp"

namespace cutback::print {
namespace {

constexpr std::size_t k_batch_pages = 32;     // of one document of Cairo's
constexpr std::size_t k_batches_at_once = 4;  // that are in memory at a time, and can be shared out
constexpr std::size_t k_cards_at_once = 128;  // laid out at a time
constexpr std::size_t k_no_contents = 10;     // cards up to which there are none

/// Roman, for the pages of the contents: the cards count from 1 whatever stands before them.
std::string roman(std::size_t number) {
  struct Step {
    std::size_t value;
    const char* letters;
  };
  constexpr std::array<Step, 9> k_steps{{{100, "c"},
                                         {90, "xc"},
                                         {50, "l"},
                                         {40, "xl"},
                                         {10, "x"},
                                         {9, "ix"},
                                         {5, "v"},
                                         {4, "iv"},
                                         {1, "i"}}};
  std::string text;
  for (const Step& step : k_steps) {
    for (; number >= step.value; number -= step.value) text += step.letters;
  }
  return text;
}

/// What is drawn on one page, not yet drawn. Each part returns PDF content for below the page.
struct PageJob {
  std::vector<std::function<std::string(const Pen& pen)>> parts;
};

/// Draws so many pages into one document.
struct Batch {
  std::string document;
  std::vector<std::string> under;
};

Batch draw(std::span<const PageJob> pages, const Paper& paper, Typesetter& text) {
  Batch batch;
  Surface surface(Surface::Kind::pdf, paper.width_mm, paper.height_mm);
  for (const PageJob& page : pages) {
    std::string& under = batch.under.emplace_back();
    const Pen pen(surface.page(), text);
    for (const auto& part : page.parts) under += part(pen);
    surface.show_page();
  }
  batch.document = surface.finish();
  return batch;
}

/// Pages of one kind. They are drawn in batches of one size, so that the file is the same whatever
/// the number of threads.
class Pages {
 public:
  Pages(const Paper& paper, std::vector<std::unique_ptr<Typesetter>>& texts, PdfFile& file,
        PdfFile::Place place)
      : paper_(paper), texts_(texts), file_(file), place_(place) {}

  void add(PageJob page) {
    ++count_;
    pages_.push_back(std::move(page));
    if (pages_.size() == k_batch_pages * k_batches_at_once) draw_all();
  }

  /// Draws what waits.
  void draw_all() {
    const std::size_t batches = (pages_.size() + k_batch_pages - 1) / k_batch_pages;
    std::vector<Batch> drawn(batches);
    in_parallel(batches, texts_.size(), [&](std::size_t i, std::size_t worker) {
      const auto from = std::span(std::as_const(pages_)).subspan(i * k_batch_pages);
      drawn[i] = draw(from.first(std::min(from.size(), k_batch_pages)), paper_, *texts_[worker]);
    });
    for (const Batch& batch : drawn) file_.add(batch.document, place_, batch.under);
    pages_.clear();
  }

  /// Pages that there are so far.
  [[nodiscard]] std::size_t count() const { return count_; }

 private:
  const Paper& paper_;
  std::vector<std::unique_ptr<Typesetter>>& texts_;
  PdfFile& file_;
  PdfFile::Place place_;
  std::vector<PageJob> pages_;
  std::size_t count_ = 0;
};

/// A line of the contents.
struct Entry {
  std::string tag;
  std::string end;
  std::string gland;
  std::string state;
  std::string page;
  double height_mm = 0.0;  ///< of its line, which wraps what is too long for its column
};

/// A card with its words, laid out; the layout borrows the rest.
struct LaidCard {
  Card card;
  CardText text;
  CardLayout layout;
  double line_mm = 0.0;  ///< height of its line in the contents
};

std::vector<std::unique_ptr<Typesetter>> typesetters(unsigned threads) {
  std::vector<std::unique_ptr<Typesetter>> list(std::max(1U, threads));
  for (auto& one : list) one = std::make_unique<Typesetter>();
  return list;
}

class PdfCards : public CardPrinter {
 public:
  PdfCards(const Paper& paper, PageNote note, std::function<void(std::string_view)> write,
           unsigned threads)
      : paper_(paper),
        note_(std::move(note)),
        frames_(frames_of(paper)),
        page_{.width = paper.width_mm, .height = paper.height_mm},
        room_{.width = frames_.front().width - margins_.left - margins_.right,
              .height = frames_.front().height - margins_.top,
              .margin = margins_.bottom},
        type_(paper.small ? k_small_type : k_large_type),
        texts_(typesetters(threads)),
        file_(std::move(write)),
        cards_(paper_, texts_, file_, PdfFile::Place::next),
        contents_(paper_, texts_, file_, PdfFile::Place::front) {}

  void add(Card card) override {
    waiting_.push_back(std::make_shared<LaidCard>());
    waiting_.back()->card = std::move(card);
    if (waiting_.size() == k_cards_at_once) put_waiting();
  }

  /// On a new page, so that it can be pinned up at the place: on the upper half of it where that
  /// holds it, so that a place of few ends takes no page more.
  void add_place(const PlacePage& place) override {
    put_waiting();
    end_page();
    const std::string name = place.place.empty() ? "No place given" : place.place;
    bookmarks_.push_back({name, cards_.count(), false});
    const auto drawn = [this, place, name](std::size_t first, double height, std::size_t number) {
      const std::string head =
          of_page("page " + std::to_string(number) + " \u00b7 place", place.schedule);
      return [=, this](const Pen& pen) {
        put_place(pen, place, name, first, height);
        put_page_head(pen, page_, head, false);
        return std::string();
      };
    };
    const Pen measure(nullptr, *texts_.front());
    const double upper = frames_.front().height;
    if (paper_.down > 1 && put_place(measure, place, name, 0, upper) >= place.parts.size()) {
      open_.parts.emplace_back(drawn(0, upper, cards_.count() + 1));
      next_frame_ = static_cast<std::size_t>(paper_.across);
      ++count_.place_pages;
      in_place_ = true;
      return;
    }
    std::size_t first = 0;
    do {
      const std::size_t next = put_place(measure, place, name, first, paper_.height_mm);
      PageJob page;
      page.parts.emplace_back(drawn(first, paper_.height_mm, cards_.count() + 1));
      cards_.add(std::move(page));
      ++count_.place_pages;
      // The next card does not stand on the back of it.
      if (paper_.small && frames_.size() == 1) {
        cards_.add({});
        ++count_.place_pages;
      }
      first = next;
    } while (first < place.parts.size());
    in_place_ = true;
  }

  CardCount finish() override {
    put_waiting();
    end_page();
    cards_.draw_all();
    if (count_.cards > k_no_contents) put_contents(true);
    put_cautions();
    // In front of cards with backs stands an even number of pages.
    if (paper_.small && frames_.size() == 1 && contents_.count() % 2 == 1) contents_.add({});
    contents_.draw_all();
    file_.finish({.title = "Strip-length cards", .program = note_.program, .dated = note_.dated},
                 bookmarks_);
    count_.pages = cards_.count();
    count_.contents_pages = contents_.count();
    for (const auto& text : texts_) count_.without_glyph += text->without_glyph();
    return count_;
  }

 private:
  [[nodiscard]] std::string running(const std::string& words, std::size_t side,
                                    std::size_t sides) const {
    // The number and the side first: what is too long is shortened at its end.
    std::string text;
    const auto add = [&](const std::string& more) {
      if (!more.empty()) text += (text.empty() ? "" : " \u00b7 ") + more;
    };
    if (sides > 1) add("side " + std::to_string(side + 1) + " of " + std::to_string(sides));
    add(words);
    add(day_of(note_));
    return text;
  }

  void count(const Card& card, const CardLayout& layout) {
    ++count_.cards;
    count_.sides += layout.sides.size();
    // Front and back, or two halves of a page.
    if (layout.sides.size() > 2) ++count_.over_a_sheet;
    const std::size_t ends = std::max<std::size_t>(1, card.serves.size());
    count_.ends += ends;
    if (!card.made.empty()) {
      count_.made += ends;
    } else if (card.sheet == nullptr) {
      (card.not_yet ? count_.not_proven : count_.unusable) += ends;
    } else if (card.sheet->state == sheet::State::none) {
      count_.without_gland += ends;
    } else if (card.sheet->state != sheet::State::cut) {
      count_.not_proven += ends;
    }
    if (card.sheet != nullptr && lacks_marks(*card.sheet)) count_.without_marks += ends;
    if (!card.qr_text.empty() && layout.code_mm == 0.0) ++count_.without_code;
  }

  void end_page() {
    if (open_.parts.empty()) return;
    open_.parts.emplace_back([this](const Pen& pen) {
      put_cut_lines(pen, paper_);
      return std::string();
    });
    cards_.add(std::exchange(open_, {}));
    next_frame_ = 0;
  }

  /// Lays out the cards that wait, and puts them on pages in their order.
  void put_waiting() {
    in_parallel(waiting_.size(), texts_.size(),
                [&](std::size_t i, std::size_t worker) { lay_out(*waiting_[i], *texts_[worker]); });
    for (const auto& card : waiting_) put_on_pages(card);
    waiting_.clear();
  }

  void lay_out(LaidCard& laid, Typesetter& set) const {
    const Pen measure(nullptr, set);
    laid.text = card_text(laid.card);
    note_letters(measure, laid.text);
    laid.layout = lay_out_card(measure, laid.card, laid.text, type_, room_);
    laid.line_mm = put_row(measure, 0.0, entry_of(laid.card, laid.text), false);
  }

  void put_on_pages(const std::shared_ptr<LaidCard>& laid) {
    CardLayout& layout = laid->layout;
    count(laid->card, layout);
    // A card of this paper has two sides, so that the next one does not stand on its back.
    if (paper_.small && layout.sides.size() % 2 == 1) layout.sides.emplace_back();
    const std::size_t sides = layout.sides.size();
    // Of several schedules none stands for all.
    if (count_.cards == 1) schedule_ = laid->card.schedule;
    if (schedule_ != laid->card.schedule) schedule_.clear();
    // The sides of one card lie on one sheet of paper where it has room for them.
    if (next_frame_ > 0 && next_frame_ + sides > frames_.size()) end_page();
    list(*laid);
    for (std::size_t side = 0; side < sides; ++side) {
      open_.parts.emplace_back([this, laid, side, page = cards_.count() + 1,
                                &frame = frames_[next_frame_]](const Pen& pen) {
        return put_side(pen, *laid, side, page, frame);
      });
      if (++next_frame_ == frames_.size()) end_page();
    }
  }

  /// @return content for below it: the code
  [[nodiscard]] std::string put_side(const Pen& pen, const LaidCard& laid, std::size_t side,
                                     std::size_t page, const Frame& frame) const {
    const CardLayout& layout = laid.layout;
    if (layout.sides[side].empty()) return {};
    const auto sides =
        static_cast<std::size_t>(std::count_if(layout.sides.begin(), layout.sides.end(),
                                               [](const auto& parts) { return !parts.empty(); }));
    const double x = frame.x + margins_.left;
    const double y = frame.y + margins_.top;
    for (const CardLayout::Placed& part : layout.sides[side]) {
      part.put({pen, layout.type, part.width}, x, y + part.y);
    }
    // The contents name the page.
    std::string words = laid.text.running;
    if (laid.card.of > k_no_contents) words = "page " + std::to_string(page) + " \u00b7 " + words;
    put_page_head(pen, frame, running(words, side, sides), !laid.text.is_stop);
    if (side != layout.code_side || layout.code_mm <= 0.0) return {};
    return qr_content(*laid.text.code, x + room_.width - layout.code_mm, y, layout.code_mm,
                      paper_.height_mm);
  }

  /// Of a page without a card.
  [[nodiscard]] std::string of_page(const std::string& what, const std::string& schedule) const {
    return what + (schedule.empty() ? "" : " \u00b7 ") + schedule + " \u00b7 " + made_by(note_);
  }

  /// What a place needs, from its part `first` on. @return the part that the next page begins with
  std::size_t put_place(const Pen& pen, const PlacePage& place, const std::string& name,
                        std::size_t first, double height) const {
    const double width = paper_.width_mm - margins_.left - margins_.right;
    const double bottom = height - margins_.bottom;
    constexpr double k_line_mm = 6.5;
    constexpr double k_count_mm = 16.0;
    constexpr double k_box_mm = 3.4;
    double y = margins_.top;
    y += pen.text(margins_.left, y, name, Font{.size_mm = type_.tag * 0.8, .bold = true}, width);
    const Font font{.size_mm = type_.hand};
    if (pen.without_glyph(name) > 0) {
      y += pen.text(margins_.left, y, "Letters of this name have no font here and stand as boxes.",
                    font, width);
    }
    std::string ends = std::to_string(place.ends) + (place.ends == 1 ? " end" : " ends");
    if (place.without > 0) {
      ends += ", " + std::to_string(place.without) + " of them without a gland: see their cards";
    }
    y += pen.text(margins_.left, y, ends, font, width) + 2.0;
    y += pen.text(margins_.left, y, "TAKE ALONG", Font{.size_mm = type_.hand, .bold = true}, width);
    const Font count{.size_mm = type_.hand, .bold = true, .align = Align::right};
    Font one = font;
    one.most_lines = 1;
    std::size_t next = first;
    // One at least, however long the place's name.
    for (; next < place.parts.size() && (next == first || y + k_line_mm < bottom); ++next) {
      const PlacePage::Part& part = place.parts[next];
      pen.rectangle(margins_.left, y + 0.8, k_box_mm, k_box_mm, 0.3);
      pen.label(margins_.left + k_count_mm, y, std::to_string(part.count), count);
      pen.text(margins_.left + k_count_mm + 4.0, y, part.name, one, width - k_count_mm - 4.0);
      y += k_line_mm;
    }
    return next;
  }

  /// Where on the paper the card at hand begins.
  [[nodiscard]] std::string page_words() const {
    std::string page = std::to_string(cards_.count() + 1);
    if (frames_.size() == 2) page += next_frame_ == 0 ? ", upper half" : ", lower half";
    if (frames_.size() == 4) page += next_frame_ < 2 ? ", upper half" : ", lower half";
    return page;
  }

  [[nodiscard]] static Entry entry_of(const Card& card, const CardText& text) {
    // Two types can differ in their entry alone.
    const bool type = !card.serves.empty() && card.sheet != nullptr;
    return {
        .tag = text.tag,
        .end = type ? card.end + "; " + text.facts.front().substr(0, text.facts.front().find(';'))
                    : card.end,
        .gland = text.gland,
        .state = text.state,
        .page = {}};
  }

  void list(const LaidCard& laid) {
    const Card& card = laid.card;
    const CardText& text = laid.text;
    Entry& entry = entries_.emplace_back(entry_of(card, text));
    entry.page = page_words();
    entry.height_mm = laid.line_mm;
    entries_high_mm_ += entry.height_mm;
    std::string title = text.tag;
    for (const std::string& word : {text.end, text.state}) {
      if (!word.empty()) title += ", " + word;
    }
    bookmarks_.push_back({std::move(title), cards_.count(), in_place_});
    if (card.sheet != nullptr) {
      for (const std::string& caution : card.sheet->cautions) {
        if (std::find(cautions_.begin(), cautions_.end(), caution) == cautions_.end()) {
          cautions_.push_back(caution);
        }
      }
    }
    // What fills pages is printed at once; the first ones wait until there are enough for any.
    if (count_.cards > k_no_contents && entries_high_mm_ > contents_room()) put_contents(false);
  }

  /// Of the lines of one page of the contents.
  [[nodiscard]] double contents_room() const {
    return paper_.height_mm - margins_.top - margins_.bottom - k_title_mm - k_row_mm;
  }

  /// Every caution of every end, once for all cards.
  void put_cautions() {
    if (cautions_.empty() || count_.cards <= 1) return;
    PageJob page;
    page.parts.emplace_back([this, number = contents_.count() + 1](const Pen& pen) {
      const double width = paper_.width_mm - margins_.left - margins_.right;
      double y = margins_.top;
      y += pen.text(margins_.left, y, "Cautions for all of these cards",
                    Font{.size_mm = 4.4, .bold = true}, width) +
           1.0;
      for (const std::string& caution : cautions_) {
        const Font font{.size_mm = type_.caution};
        pen.label(margins_.left, y, "\u2013", font);
        y += pen.text(margins_.left + 3.5, y, caution, font, width - 3.5) + 0.8;
      }
      put_page_head(pen, page_, of_page("cautions " + roman(number), schedule_), false);
      return std::string();
    });
    contents_.add(std::move(page));
  }

  /// The entries that wait, on full pages; of `all` on as many as they need.
  void put_contents(bool all) {
    auto from = entries_.begin();
    while (from != entries_.end()) {
      double high = from->height_mm;  // one at least, however long its names
      auto to = from + 1;
      while (to != entries_.end() && high + to->height_mm <= contents_room()) {
        high += (to++)->height_mm;
      }
      if (to == entries_.end() && !all) break;
      PageJob page;
      page.parts.emplace_back([this, number = contents_.count() + 1,
                               some = std::vector<Entry>(from, to)](const Pen& pen) {
        put_contents_page(pen, some, number);
        return std::string();
      });
      contents_.add(std::move(page));
      entries_high_mm_ -= high;
      from = to;
    }
    entries_.erase(entries_.begin(), from);
  }

  void put_contents_page(const Pen& pen, const std::vector<Entry>& entries,
                         std::size_t number) const {
    const double x = margins_.left;
    const double width = paper_.width_mm - margins_.left - margins_.right;
    pen.text(x, margins_.top, "Contents", Font{.size_mm = 4.4, .bold = true}, width);
    double y = margins_.top + k_title_mm;
    put_row(pen, y,
            {.tag = "cable", .end = "end", .gland = "gland", .state = "state", .page = "page"},
            true);
    y += k_row_mm;
    pen.line(x, y - 0.6, x + width, y - 0.6, 0.2);
    for (const Entry& entry : entries) y += put_row(pen, y, entry, false);
    put_page_head(pen, page_, of_page("contents " + roman(number), schedule_), false);
  }

  /// @return its height
  double put_row(const Pen& pen, double y, const Entry& entry, bool bold) const {
    const double width = paper_.width_mm - margins_.left - margins_.right;
    constexpr double k_gap_mm = 2.0;
    constexpr double k_box_mm = 2.8;
    Font font{.size_mm = 2.8, .bold = bold};
    double high = 0.0;
    double x = margins_.left;
    if (!bold) pen.rectangle(x, y + 0.3, k_box_mm, k_box_mm, 0.25);
    x += k_box_mm + k_gap_mm;
    const double shared = width - k_box_mm - k_gap_mm;
    const auto cell = [&](const std::string& words, double share) {
      high = std::max(high, pen.text(x, y, words, font, shared * share - k_gap_mm));
      x += shared * share;
    };
    cell(entry.tag, 0.2);
    cell(entry.end, 0.27);
    cell(entry.gland, 0.2);
    cell(entry.state, 0.16);
    font.align = Align::right;
    cell(entry.page, 0.17);
    return std::max(k_row_mm, high + k_row_mm - pen.height("x", font, width));
  }

  static constexpr double k_title_mm = 9.0;
  static constexpr double k_row_mm = 4.8;

  Paper paper_;
  PageNote note_;
  Margins margins_;
  std::vector<Frame> frames_;
  Frame page_;  ///< all of it
  CardRoom room_;
  const CardType& type_;
  std::vector<std::unique_ptr<Typesetter>> texts_;  ///< one for each thread
  PdfFile file_;
  Pages cards_;
  Pages contents_;
  std::vector<std::shared_ptr<LaidCard>> waiting_;
  PageJob open_;  ///< the page at hand
  std::size_t next_frame_ = 0;
  std::vector<Entry> entries_;
  double entries_high_mm_ = 0.0;  ///< all of them
  std::vector<Bookmark> bookmarks_;
  std::string schedule_;               ///< that all cards are from
  bool in_place_ = false;              ///< a place was begun, and the cards stand below it
  std::vector<std::string> cautions_;  ///< of all cards, each once
  CardCount count_;
};

}  // namespace

std::unique_ptr<CardPrinter> new_card_printer(const Paper& paper, PageNote note,
                                              std::function<void(std::string_view)> write,
                                              unsigned threads) {
  return std::make_unique<PdfCards>(paper, std::move(note), std::move(write), threads);
}

}  // namespace cutback::print

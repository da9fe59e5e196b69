#include <array>
#include <optional>
#include <span>
#include <vector>

#include "cutback/print/pages.hpp"
#include "cutback/print/words.hpp"
#include "print/pages/card_layout.hpp"
#include "print/pages/card_text.hpp"
#include "print/pages/card_type.hpp"
#include "print/pages/page_frame.hpp"
#include "print/pages/pdf_file.hpp"
#include "print/pages/surface.hpp"

namespace cutback::print {
namespace {

constexpr std::size_t k_batch_pages = 32;  // that are in memory at a time
constexpr std::size_t k_no_contents = 10;  // cards up to which there are none

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

/// Pages of one kind, drawn in batches.
class Pages {
 public:
  Pages(const Paper& paper, Typesetter& text, PdfFile& file, PdfFile::Place place)
      : paper_(paper), text_(text), file_(file), place_(place) {}

  /// The page at hand; a new one after end_page().
  [[nodiscard]] Pen pen() {
    if (!surface_) surface_.emplace(Surface::Kind::pdf, paper_.width_mm, paper_.height_mm);
    open_ = true;
    return {surface_->page(), text_};
  }

  /// PDF content of the page at hand, below what is drawn.
  void put_under(const std::string& content) { under_[in_batch_] += content; }

  void end_page() {
    if (!open_) return;
    surface_->show_page();
    open_ = false;
    ++count_;
    if (++in_batch_ == k_batch_pages) end_batch();
  }

  void end_batch() {
    if (in_batch_ == 0) return;
    file_.add(surface_->finish(), place_, std::span(under_).first(in_batch_));
    surface_.reset();
    for (std::string& content : under_) content.clear();
    in_batch_ = 0;
  }

  [[nodiscard]] std::size_t count() const { return count_; }
  [[nodiscard]] bool is_open() const { return open_; }

 private:
  const Paper& paper_;
  Typesetter& text_;
  PdfFile& file_;
  PdfFile::Place place_;
  std::optional<Surface> surface_;
  std::array<std::string, k_batch_pages> under_;  ///< of each page of the batch
  bool open_ = false;
  std::size_t in_batch_ = 0;
  std::size_t count_ = 0;
};

/// A line of the contents.
struct Entry {
  std::string tag;
  std::string end;
  std::string gland;
  std::string state;
  std::string page;
};

class PdfCards : public CardPrinter {
 public:
  PdfCards(const Paper& paper, PageNote note, std::function<void(std::string_view)> write)
      : paper_(paper),
        note_(std::move(note)),
        frames_(frames_of(paper)),
        page_{.width = paper.width_mm, .height = paper.height_mm},
        type_(paper.small ? k_small_type : k_large_type),
        file_(std::move(write)),
        cards_(paper_, text_, file_, PdfFile::Place::next),
        contents_(paper_, text_, file_, PdfFile::Place::front) {}

  void add(const Card& card) override {
    const Frame& one = frames_.front();
    const CardText text = card_text(card);
    const Pen measure(nullptr, text_);
    const CardRoom room{.width = one.width - margins_.left - margins_.right,
                        .height = one.height - margins_.top,
                        .margin = margins_.bottom};
    CardLayout layout = lay_out_card(measure, card, text, type_, room);
    count(card, layout);
    // A card of this paper has two sides, so that the next one does not stand on its back.
    if (paper_.small && layout.sides.size() % 2 == 1) layout.sides.emplace_back();
    const std::size_t sides = layout.sides.size();
    // The sides of one card lie on one sheet of paper where it has room for them.
    if (next_frame_ > 0 && next_frame_ + sides > frames_.size()) end_page();
    list(card, text);
    for (std::size_t side = 0; side < sides; ++side) {
      const Pen pen = cards_.pen();
      const Frame& frame = frames_[next_frame_];
      const double x = frame.x + margins_.left;
      const double y = frame.y + margins_.top;
      for (const CardLayout::Placed& part : layout.sides[side]) {
        part.put({pen, layout.type, room.width}, x, y + part.y);
      }
      if (side == layout.code_side && layout.code_mm > 0.0) {
        cards_.put_under(qr_content(*text.code, x + room.width - layout.code_mm, y, layout.code_mm,
                                    paper_.height_mm));
      }
      put_page_head(pen, frame, running(text.running, side, sides));
      if (++next_frame_ == frames_.size()) end_page();
    }
  }

  CardCount finish() override {
    end_page();
    cards_.end_batch();
    if (count_.cards > k_no_contents) {
      put_contents();
      contents_.end_batch();
    }
    file_.finish({.title = "Strip-length cards", .program = note_.program, .dated = note_.dated});
    count_.pages = cards_.count();
    count_.contents_pages = contents_.count();
    count_.without_glyph = text_.without_glyph();
    return count_;
  }

 private:
  [[nodiscard]] std::string running(const std::string& words, std::size_t side,
                                    std::size_t sides) const {
    std::string text = words;
    const auto add = [&](const std::string& more) {
      text += (text.empty() ? "" : " \u00b7 ") + more;
    };
    if (sides > 1) add("side " + std::to_string(side + 1) + " of " + std::to_string(sides));
    add(made_by(note_));
    return text;
  }

  void count(const Card& card, const CardLayout& layout) {
    count_.ends += std::max<std::size_t>(1, card.serves.size());
    ++count_.cards;
    count_.sides += layout.sides.size();
    if (card.sheet == nullptr) {
      ++count_.unusable;
    } else if (card.sheet->state == sheet::State::none) {
      ++count_.without_gland;
    } else if (card.sheet->state != sheet::State::cut) {
      ++count_.not_proven;
    }
    if (card.sheet != nullptr && lacks_marks(*card.sheet)) ++count_.without_marks;
    if (!card.qr_text.empty() && layout.code_mm == 0.0) ++count_.without_code;
  }

  void end_page() {
    if (!cards_.is_open()) return;
    const Pen pen = cards_.pen();
    put_cut_lines(pen, paper_);
    cards_.end_page();
    next_frame_ = 0;
  }

  /// Where on the paper the card at hand begins.
  [[nodiscard]] std::string page_words() const {
    std::string page = std::to_string(cards_.count() + 1);
    if (frames_.size() == 2) page += next_frame_ == 0 ? ", upper half" : ", lower half";
    if (frames_.size() == 4) page += next_frame_ < 2 ? ", upper half" : ", lower half";
    return page;
  }

  void list(const Card& card, const CardText& text) {
    entries_.push_back({.tag = text.tag,
                        .end = card.end,
                        .gland = text.gland,
                        .state = card.sheet == nullptr ? "unusable" : text.state,
                        .page = page_words()});
    // What fills a page is printed at once; the first ones wait until there are enough for any.
    if (entries_.size() >= std::max(k_no_contents + 1, rows_a_page())) put_contents();
  }

  [[nodiscard]] std::size_t rows_a_page() const {
    const double room = paper_.height_mm - margins_.top - margins_.bottom - k_title_mm;
    return static_cast<std::size_t>(room / k_row_mm) - 1;
  }

  /// The entries that wait, on as many pages as they need.
  void put_contents() {
    const std::size_t rows = rows_a_page();
    for (std::size_t first = 0; first < entries_.size(); first += rows) {
      const Pen pen = contents_.pen();
      const double x = margins_.left;
      const double width = paper_.width_mm - margins_.left - margins_.right;
      pen.text(x, margins_.top, "Contents", Font{.size_mm = 4.4, .bold = true}, width);
      double y = margins_.top + k_title_mm;
      put_row(pen, y,
              {.tag = "cable", .end = "end", .gland = "gland", .state = "state", .page = "page"},
              true);
      y += k_row_mm;
      pen.line(x, y - 0.6, x + width, y - 0.6, 0.2);
      for (std::size_t i = first; i < std::min(entries_.size(), first + rows); ++i) {
        put_row(pen, y, entries_[i], false);
        y += k_row_mm;
      }
      put_page_head(pen, page_,
                    "contents " + roman(contents_.count() + 1) + " \u00b7 " + made_by(note_));
      contents_.end_page();
    }
    entries_.clear();
  }

  void put_row(const Pen& pen, double y, const Entry& entry, bool bold) const {
    const double width = paper_.width_mm - margins_.left - margins_.right;
    constexpr double k_gap_mm = 2.0;
    constexpr double k_box_mm = 2.8;
    Font font{.size_mm = 2.8, .bold = bold, .most_lines = 1};
    double x = margins_.left;
    if (!bold) pen.rectangle(x, y + 0.3, k_box_mm, k_box_mm, 0.25);
    x += k_box_mm + k_gap_mm;
    const double shared = width - k_box_mm - k_gap_mm;
    const auto cell = [&](const std::string& words, double share) {
      pen.text(x, y, words, font, shared * share - k_gap_mm);
      x += shared * share;
    };
    cell(entry.tag, 0.2);
    cell(entry.end, 0.27);
    cell(entry.gland, 0.2);
    cell(entry.state, 0.16);
    font.align = Align::right;
    cell(entry.page, 0.17);
  }

  static constexpr double k_title_mm = 9.0;
  static constexpr double k_row_mm = 4.8;

  Paper paper_;
  PageNote note_;
  Margins margins_;
  std::vector<Frame> frames_;
  Frame page_;  ///< all of it
  const CardType& type_;
  Typesetter text_;
  PdfFile file_;
  Pages cards_;
  Pages contents_;
  std::size_t next_frame_ = 0;
  std::vector<Entry> entries_;
  CardCount count_;
};

}  // namespace

std::unique_ptr<CardPrinter> new_card_printer(const Paper& paper, PageNote note,
                                              std::function<void(std::string_view)> write) {
  return std::make_unique<PdfCards>(paper, std::move(note), std::move(write));
}

}  // namespace cutback::print

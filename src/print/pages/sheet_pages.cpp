#include <algorithm>
#include <array>
#include <vector>

#include "cutback/number.hpp"
#include "cutback/print/pages.hpp"
#include "cutback/text.hpp"
#include "print/pages/block.hpp"
#include "print/pages/card_layout.hpp"
#include "print/pages/card_text.hpp"
#include "print/pages/columns.hpp"
#include "print/pages/page_frame.hpp"
#include "print/pages/pdf_file.hpp"
#include "print/pages/qr_code.hpp"
#include "print/pages/sheet_blocks.hpp"
#include "print/pages/surface.hpp"
#include "cutback/print/words.hpp"

namespace cutback::print {
namespace {

using sheet::Sheet;

constexpr double k_gutter_mm = 6.0;
constexpr std::size_t k_columns = 2;
constexpr double k_body_mm = 8.5 * k_point_mm;
constexpr double k_steps_mm = 9.0 * k_point_mm;
/// Sources are read in the office.
constexpr double k_source_size = 7.0 / 8.5;

/// Behind a label in a column of its own.
void add_finding(std::vector<Block>& blocks, std::string label, const std::string& words) {
  constexpr double k_label_size = 6.0;
  if (words.empty()) return;
  blocks.emplace_back(Paragraph{
      .words = paper_words(words), .label = std::move(label), .label_size = k_label_size});
}

void add_list(std::vector<Block>& blocks, const char* heading,
              const std::vector<std::string>& lines) {
  if (lines.empty()) return;
  blocks.emplace_back(Heading{heading});
  for (const std::string& line : lines) {
    blocks.emplace_back(Item{.words = paper_words(without_options(line)), .number = {}});
  }
}

void add_facts(std::vector<Block>& blocks, const Sheet& sheet) {
  const job::Job& job = *sheet.job;
  blocks.emplace_back(Heading{"The cable, its gland and its place"});
  add_finding(blocks, "job", job.name);
  add_finding(blocks, "cable", cable_words(job.cable));
  if (sheet.fit) {
    const gland::Gland& gland = *sheet.fit->gland;
    add_finding(blocks, "gland",
                gland.part + (gland.description.empty() ? "" : ", ") + gland.description);
    add_finding(blocks, "why it", sheet.chosen_because);
    add_finding(blocks, "range", gland.range);
  }
  add_finding(blocks, "entry", entry_words(job.entry, sheet.fit ? sheet.fit->gland : nullptr));
  add_finding(blocks, "place", place_words(job.area));
}

void add_checks(std::vector<Block>& blocks, const Sheet& sheet) {
  if (!sheet.fit) return;
  blocks.emplace_back(Heading{"Checks"});
  for (const fit::Check& check : sheet.fit->checks) {
    std::string words = std::string(to_string(check.verdict)) + ": " + check.says;
    if (check.margin_mm) {
      words += "; margin " + std::string(*check.margin_mm < 0.0 ? "" : "+") +
               fixed(round_down(*check.margin_mm, 0.01), 2) + " mm";
    }
    add_finding(blocks, std::string(to_string(check.name)), words);
  }
}

void add_sealing(std::vector<Block>& blocks, const area::Demand& demand) {
  if (demand.sealing == area::SealingDemand::none) return;
  blocks.emplace_back(Heading{"How it must seal"});
  blocks.emplace_back(Paragraph{.words = paper_words(demand.says), .label = {}});
  for (const area::Answer& answer : demand.path) {
    blocks.emplace_back(Item{
        .words = answer.question + " " + (answer.yes ? "yes" : "no") + " (" + answer.from + ")",
        .number = {}});
  }
  if (!demand.would_change.empty()) {
    blocks.emplace_back(
        Paragraph{.words = "Not known, and could change it: " + joined(demand.would_change, ", "),
                  .label = {}});
  }
  blocks.emplace_back(Paragraph{.words = demand.source, .label = {}, .size = k_source_size});
}

void add_earth(std::vector<Block>& blocks, const Sheet& sheet) {
  if (!sheet.earth) return;
  const earth::EarthResult& earth = *sheet.earth;
  blocks.emplace_back(Heading{"The armour as protective conductor"});
  add_finding(blocks, "area", earth.area.says);
  add_finding(blocks, "by table", earth.table.says);
  add_finding(blocks, "resistance", earth.resistance.says);
}

void add_inspection(std::vector<Block>& blocks, const Sheet& sheet) {
  if (sheet.inspection.empty()) return;
  blocks.emplace_back(Heading{"Initial inspection, grade detailed (IEC 60079-17)"});
  blocks.emplace_back(Inspected{.words = {}, .head = true});
  for (const area::InspectionItem& item : sheet.inspection) {
    blocks.emplace_back(Inspected{.words = item.text});
  }
}

/// What must be known on the day but not with gloves on: parts, then steps.
std::vector<Block> steps_of(const Sheet& sheet) {
  std::vector<Block> blocks;
  if (!sheet.has_marks()) return blocks;
  blocks.emplace_back(Heading{"Lay out, in the order in which it goes on"});
  for (const sheet::Part& part : sheet.parts) {
    blocks.emplace_back(Item{.words = part_words(part), .number = {}, .tick = true});
  }
  blocks.emplace_back(Heading{"Steps; a box is a hold point: tick it before going on"});
  std::size_t number = 0;
  for (const sheet::Step& step : sheet.steps) {
    blocks.emplace_back(Item{
        .words = paper_words(step.text), .number = std::to_string(++number), .tick = step.hold});
  }
  return blocks;
}

std::vector<Block> rest_of(const Sheet& sheet) {
  std::vector<Block> blocks;
  add_facts(blocks, sheet);
  add_list(blocks, "Why nothing may be cut yet", sheet.not_ready);
  add_help(blocks, sheet);
  if (sheet.has_marks()) add_routes(blocks, sheet);
  add_list(blocks, "Missing or worth a look", sheet.remarks);
  add_checks(blocks, sheet);
  add_sealing(blocks, *sheet.demand);
  add_earth(blocks, sheet);
  std::vector<std::string> tests;
  for (const sheet::Test& test : sheet.tests) tests.push_back(test.name + ": " + test.says);
  add_list(blocks, "Tests, and what they must read", tests);
  add_list(blocks, "Cautions", sheet.cautions);
  if (sheet.has_marks()) {
    add_inspection(blocks, sheet);
    add_write_in(blocks, sheet);
  }
  return blocks;
}

std::vector<Block> inches_of(const Sheet& sheet) {
  const std::vector<InchRow> rows = inch_rows(sheet);
  if (rows.empty()) return {};
  Table table{.columns = {{3.0, Align::left}, {1.0, Align::right}, {1.2, Align::right}},
              .head = {"1 in = 25.4 mm", "mm", "in"},
              .rows = {},
              .bold_column = 2};
  for (const InchRow& row : rows) table.rows.push_back({row.what, row.mm, row.in});
  return {Heading{"In inches"}, std::move(table)};
}

/// Where the figures come from, last and small.
std::vector<Block> sources_of(const Sheet& sheet) {
  std::vector<Block> blocks;
  if (sheet.sources.empty()) return blocks;
  blocks.emplace_back(Heading{"Where the figures come from"});
  for (const std::string& source : sheet.sources) {
    blocks.emplace_back(Item{.words = paper_words(source), .number = {}, .size = k_source_size});
  }
  return blocks;
}

/// On A4: the card on the upper half, to be folded below its ticks; the steps under it; all the
/// rest on further pages. Where nothing may be cut there is nothing to fold: the rest goes on
/// below.
class SheetPages {
 public:
  explicit SheetPages(const Card& card) : card_(card), text_words_(card_text(card)) {
    // It is signed on a further page, beside what is signed for.
    if (!text_words_.is_stop) text_words_.as_made.clear();
    text_words_.running = {};
    append(steps_of(*card.sheet));
    first_rest_ = blocks_.size();
    text_words_.inches.clear();  // they stand on a further page
    append(rest_of(*card.sheet));
    if (card.inches) append(inches_of(*card.sheet));
    append(sources_of(*card.sheet));
  }

  std::string run(const PageNote& note, const std::string& title) {
    place();
    std::string file;
    PdfFile pdf([&](std::string_view bytes) { file += bytes; });
    Surface surface(Surface::Kind::pdf, k_paper.width_mm, k_paper.height_mm);
    draw(surface, note);
    pdf.add(surface.finish(), PdfFile::Place::next, under_);
    pdf.finish({.title = title, .program = note.program, .dated = note.dated});
    return file;
  }

 private:
  static constexpr Paper k_paper{};

  void append(std::vector<Block> list) {
    for (Block& block : list) blocks_.push_back(std::move(block));
  }

  [[nodiscard]] double width() const { return k_paper.width_mm - margins_.left - margins_.right; }
  [[nodiscard]] double column_width() const { return (width() - k_gutter_mm) / 2.0; }
  [[nodiscard]] double half() const { return k_paper.height_mm / 2.0; }
  /// The card laid out above a fold.
  [[nodiscard]] CardLayout card_above(const Pen& pen, double fold_mm) {
    fold_mm_ = fold_mm;
    return lay_out_card(pen, card_, text_words_, k_large_type,
                        {.width = width(),
                         .height = fold_mm - margins_.top,
                         .margin = margins_.bottom,
                         .edge = "along the fold"});
  }

  /// Where the columns of a page begin.
  [[nodiscard]] double top(std::size_t page) const {
    if (page > 0) return margins_.top + k_again_mm;
    return text_words_.is_stop ? margins_.top + layout_.front_mm + 4.0 : fold_mm_ + 4.0;
  }
  /// Every column of the rest has room for the heading of what goes on in it.
  [[nodiscard]] double goes_on_mm(std::size_t block) const {
    return block < first_rest_ ? 0.0 : k_goes_on_mm;
  }
  [[nodiscard]] double room(std::size_t page) const {
    return k_paper.height_mm - margins_.bottom - top(page);
  }
  [[nodiscard]] double size(std::size_t block) const {
    return block < first_rest_ ? k_steps_mm : k_body_mm;
  }

  void place() {
    const Pen pen(nullptr, text_);
    note_letters(pen, text_words_);
    layout_ = card_above(pen, half());
    // Of an end of which much is missing the card takes more of the page, and is folded lower.
    constexpr double k_lower_mm = 205.0;
    if (layout_.split) layout_ = card_above(pen, k_lower_mm);
    if (layout_.sides.size() > 1 && !text_words_.is_stop && !text_words_.tails.empty()) {
      blocks_.insert(blocks_.begin(),
                     Paragraph{.words = "The tails stand on page 2.", .label = {}, .bold = true});
      ++first_rest_;
    }
    std::vector<Measured> list;
    for (std::size_t i = 0; i < blocks_.size(); ++i) {
      list.push_back(
          {put(pen, blocks_[i], 0.0, 0.0, column_width(), size(i)), may_end_page(blocks_[i])});
    }
    const std::span<const Measured> all(list);
    put_columns(all.first(first_rest_), 0, 0.0);
    const std::size_t next = !places_.empty()      ? places_.back() / k_columns + 1
                             : text_words_.is_stop ? 0
                                                   : 1;
    put_columns(all.subspan(first_rest_), next, k_goes_on_mm);
  }

  /// Blocks from a page on, those of their last page in columns of about the same height.
  /// @param less  of each column that is kept free at its top
  void put_columns(std::span<const Measured> list, std::size_t page, double less) {
    if (list.empty()) return;
    const std::size_t first_column = page * k_columns;
    const auto room = [&](std::size_t which) { return this->room(which) - less; };
    auto places =
        fill_columns(list, [&](std::size_t column) { return room(page + column / k_columns); });
    const std::size_t last = places.back() / k_columns;
    const auto at = std::lower_bound(places.begin(), places.end(), last * k_columns);
    const auto first = static_cast<std::size_t>(at - places.begin());
    const std::span<const Measured> ending = list.subspan(first);
    const double high = balanced_height(ending, k_columns, room(page + last));
    if (high <= room(page + last)) {
      const auto columns = fill_columns(ending, [&](std::size_t) { return high; });
      for (std::size_t i = 0; i < columns.size(); ++i) {
        places[first + i] = last * k_columns + columns[i];
      }
    }
    for (const std::size_t column : places) places_.push_back(first_column + column);
  }

  [[nodiscard]] std::size_t pages() const { return places_.back() / k_columns + 1; }

  void draw(const Surface& surface, const PageNote& note) {
    const Pen pen(surface.page(), text_);
    for (const CardLayout::Placed& part : layout_.sides.front()) {
      part.put({pen, layout_.type, part.width}, margins_.left, margins_.top + part.y);
    }
    under_.resize(pages());
    if (layout_.code_mm > 0.0) {
      under_.front() = qr_content(*text_words_.code, margins_.left + width() - layout_.code_mm,
                                  margins_.top, layout_.code_mm, k_paper.height_mm);
    }
    if (!text_words_.is_stop) pen.dashed(0.0, fold_mm_, k_paper.width_mm, fold_mm_, 0.15);
    std::size_t column = 0;
    double y = top(0) + goes_on_mm(0);
    const Heading* section = nullptr;
    for (std::size_t i = 0; i < blocks_.size(); ++i) {
      bool begins = false;
      if (places_[i] != column) {
        const std::size_t page = places_[i] / k_columns;
        while (column / k_columns < page) {
          end_page(surface, note, column / k_columns);
          column = (column / k_columns + 1) * k_columns;
        }
        column = places_[i];
        y = top(page) + goes_on_mm(i);
        begins = true;
      }
      const double x =
          margins_.left + static_cast<double>(column % k_columns) * (column_width() + k_gutter_mm);
      if (const auto* const heading = std::get_if<Heading>(&blocks_[i])) {
        section = heading;
      } else if (begins && section != nullptr && i >= first_rest_) {
        const double above =
            put_again(Pen(nullptr, text_), *section, blocks_[i], x, y, column_width(), size(i));
        put_again(pen, *section, blocks_[i], x, y - std::min(above, goes_on_mm(i)), column_width(),
                  size(i));
      }
      y += put(pen, blocks_[i], x, y, column_width(), size(i));
    }
    end_page(surface, note, column / k_columns);
  }

  void end_page(const Surface& surface, const PageNote& note, std::size_t page) {
    const Pen pen(surface.page(), text_);
    const std::string of = std::to_string(page + 1) + " of " + std::to_string(pages());
    put_page_head(pen, frames_of(k_paper).front(),
                  "Termination sheet, page " + of + " \u00b7 " + card_.schedule +
                      (card_.schedule.empty() ? "" : " \u00b7 ") + made_by(note),
                  page == 0 && !text_words_.is_stop);
    if (page > 0) {
      std::string name = text_words_.tag;
      for (const std::string& word : {text_words_.end, text_words_.gland, text_words_.state}) {
        if (!word.empty()) name += ", " + word;
      }
      Font font{.size_mm = 11.0 * k_point_mm, .bold = true};
      font.most_lines = 1;
      pen.text(margins_.left, margins_.top, name, font, width());
    }
    surface.show_page();
  }

  static constexpr double k_again_mm = 6.0;    ///< the name on a further page
  static constexpr double k_goes_on_mm = 4.6;  ///< a heading once more, or the names of columns

  const Card& card_;
  CardText text_words_;
  std::vector<Block> blocks_;
  std::size_t first_rest_ = 0;  ///< of the blocks: those before it stand below the card
  Typesetter text_;
  Margins margins_;
  CardLayout layout_;
  double fold_mm_ = 0.0;
  std::vector<std::size_t> places_;
  std::vector<std::string> under_;
};

}  // namespace

std::string sheet_pdf(const Card& card, const PageNote& note) {
  const job::Job& job = *card.sheet->job;
  std::string title = "Termination sheet";
  if (!job.tag.empty()) title += " " + job.tag;
  return SheetPages(card).run(note, clean(title));
}

}  // namespace cutback::print

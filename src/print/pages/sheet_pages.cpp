#include <algorithm>
#include <array>
#include <vector>

#include "cutback/number.hpp"
#include "cutback/print/pages.hpp"
#include "cutback/print/words.hpp"
#include "cutback/text.hpp"
#include "print/pages/block.hpp"
#include "print/pages/columns.hpp"
#include "print/pages/page_frame.hpp"
#include "print/pages/pdf_file.hpp"
#include "print/pages/sheet_blocks.hpp"
#include "print/pages/strip_drawing.hpp"
#include "print/pages/surface.hpp"

namespace cutback::print {
namespace {

using sheet::Sheet;

constexpr double k_most_high_mm = 42.0;  // of the cable as drawn
constexpr double k_gutter_mm = 6.0;
constexpr std::size_t k_columns = 2;
constexpr std::size_t k_most_pages = 2;  // where smaller type brings it down to them
constexpr std::array k_sizes{3.1, 2.9, 2.7, 2.5, 2.35};

void add_fact(std::vector<Block>& blocks, const char* label, const std::string& words,
              bool bold = false) {
  if (!words.empty()) blocks.emplace_back(Paragraph{.words = words, .label = label, .bold = bold});
}

/// Behind a longer label.
void add_finding(std::vector<Block>& blocks, std::string label, const std::string& words) {
  constexpr double k_label_size = 6.0;
  if (words.empty()) return;
  blocks.emplace_back(
      Paragraph{.words = words, .label = std::move(label), .label_size = k_label_size});
}

/// What stands over the columns.
std::vector<Block> head_of(const Sheet& sheet) {
  const job::Job& job = *sheet.job;
  std::vector<Block> blocks;
  blocks.emplace_back(Paragraph{.words = "Termination sheet", .label = {}});
  blocks.emplace_back(Paragraph{
      .words = tag_words(job.tag), .label = {}, .bold = true, .size = 2.2, .most_lines = 2});
  add_fact(blocks, "End", job.end, true);
  add_fact(blocks, "Job", job.name);
  if (sheet.fit) {
    const gland::Gland& gland = *sheet.fit->gland;
    add_fact(blocks, "Gland",
             gland.part + (gland.description.empty() ? "" : ", ") + gland.description, true);
    add_fact(blocks, "Why", sheet.chosen_because);
    add_fact(blocks, "Range", gland.range);
  }
  add_fact(blocks, "Cable", cable_words(job.cable));
  add_fact(blocks, "Entry", entry_words(job.entry));
  add_fact(blocks, "Place", place_words(job.area));
  const std::string stop = capitals(stop_words(sheet));
  if (!stop.empty()) blocks.emplace_back(Alarm{stop});
  if (sheet.has_marks()) blocks.emplace_back(strip_picture(sheet, k_most_high_mm));
  return blocks;
}

void add_list(std::vector<Block>& blocks, const char* heading,
              const std::vector<std::string>& lines, double size = 1.0) {
  if (lines.empty()) return;
  blocks.emplace_back(Heading{heading});
  for (const std::string& line : lines) {
    blocks.emplace_back(Item{.words = line, .number = {}, .size = size});
  }
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

void add_steps(std::vector<Block>& blocks, const Sheet& sheet) {
  blocks.emplace_back(Heading{"Steps; a box is a hold point: tick it before going on"});
  std::size_t number = 0;
  for (const sheet::Step& step : sheet.steps) {
    blocks.emplace_back(
        Item{.words = step.text, .number = std::to_string(++number), .tick = step.hold});
  }
}

void add_parts(std::vector<Block>& blocks, const Sheet& sheet) {
  blocks.emplace_back(Heading{"Lay out, in the order in which it goes on"});
  for (const sheet::Part& part : sheet.parts) {
    blocks.emplace_back(Item{.words = part.name + (part.note.empty() ? "" : ": ") + part.note,
                             .number = {},
                             .tick = true});
  }
}

void add_sealing(std::vector<Block>& blocks, const area::Demand& demand) {
  if (demand.sealing == area::SealingDemand::none) return;
  blocks.emplace_back(Heading{"How it must seal"});
  blocks.emplace_back(Paragraph{.words = demand.says, .label = {}});
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
  blocks.emplace_back(Paragraph{.words = demand.source, .label = {}, .size = 0.85});
}

void add_earth(std::vector<Block>& blocks, const Sheet& sheet) {
  if (!sheet.earth) return;
  const earth::EarthResult& earth = *sheet.earth;
  blocks.emplace_back(Heading{"The armour as protective conductor"});
  add_finding(blocks, "area", earth.area.says);
  add_finding(blocks, "by table", earth.table.says);
  add_finding(blocks, "resistance", earth.resistance.says);
}

std::vector<Block> body_of(const Sheet& sheet) {
  std::vector<Block> blocks;
  if (sheet.has_marks()) {
    add_gates(blocks, sheet);
    add_marks(blocks, sheet);
    add_depths(blocks, sheet);
    add_tails(blocks, sheet, Routes::told);
  }
  add_list(blocks, "Why nothing may be cut yet", sheet.not_ready);
  add_help(blocks, sheet);
  if (sheet.has_marks()) add_parts(blocks, sheet);
  add_list(blocks, "Cautions", sheet.cautions);
  if (sheet.has_marks()) add_steps(blocks, sheet);
  add_list(blocks, "Missing or worth a look", sheet.remarks);
  add_sealing(blocks, *sheet.demand);
  add_checks(blocks, sheet);
  add_earth(blocks, sheet);
  if (sheet.has_marks() && !sheet.inspection.empty()) {
    blocks.emplace_back(Heading{"Initial inspection, grade detailed (IEC 60079-17): tick"});
    for (const area::InspectionItem& item : sheet.inspection) {
      blocks.emplace_back(Item{.words = item.text, .number = {}, .tick = true});
    }
  }
  std::vector<std::string> tests;
  for (const sheet::Test& test : sheet.tests) tests.push_back(test.name + ": " + test.says);
  add_list(blocks, "Tests, and what they must read", tests);
  if (sheet.has_marks()) add_write_in(blocks, sheet);
  add_list(blocks, "Where the figures come from", sheet.sources, 0.82);
  return blocks;
}

/// The sheet in columns on A4.
class SheetPages {
 public:
  explicit SheetPages(const Sheet& sheet) : head_(head_of(sheet)), body_(body_of(sheet)) {}

  std::string run(const PageNote& note, const std::string& title) {
    for (const double size : k_sizes) {
      set(size);
      if (pages() <= k_most_pages) break;
    }
    Surface surface(Surface::Kind::pdf, k_paper.width_mm, k_paper.height_mm);
    draw(surface, note);
    std::string file;
    PdfFile pdf([&](std::string_view bytes) { file += bytes; });
    pdf.add(surface.finish(), PdfFile::Place::next);
    pdf.finish({.title = title, .program = note.program, .dated = note.dated});
    return file;
  }

 private:
  static constexpr Paper k_paper{};

  [[nodiscard]] double width() const { return k_paper.width_mm - margins_.left - margins_.right; }
  [[nodiscard]] double column_width() const { return (width() - k_gutter_mm) / 2.0; }
  [[nodiscard]] double height() const { return k_paper.height_mm - margins_.top - margins_.bottom; }

  void set(double size) {
    size_ = size;
    const Pen pen(nullptr, text_);
    head_height_ = 0.0;
    for (const Block& block : head_) head_height_ += put(pen, block, 0.0, 0.0, width(), size_);
    std::vector<Measured> list;
    for (const Block& block : body_) {
      list.push_back({put(pen, block, 0.0, 0.0, column_width(), size_), may_end_page(block)});
    }
    measured_ = std::move(list);
    places_ = fill_columns(measured_, [&](std::size_t column) { return room(column / k_columns); });
    balance_last_page();
  }

  [[nodiscard]] double room(std::size_t page) const {
    return page == 0 ? std::max(0.0, height() - head_height_) : height();
  }

  [[nodiscard]] std::size_t pages() const {
    return places_.empty() ? 1 : places_.back() / k_columns + 1;
  }

  /// The last page's columns end at about the same height.
  void balance_last_page() {
    if (places_.empty()) return;
    const std::size_t first_column = (pages() - 1) * k_columns;
    const auto at = std::lower_bound(places_.begin(), places_.end(), first_column);
    const auto first = static_cast<std::size_t>(at - places_.begin());
    const std::span<const Measured> last = std::span(measured_).subspan(first);
    const double high = balanced_height(last, k_columns, room(pages() - 1));
    if (high > room(pages() - 1)) return;
    const auto columns = fill_columns(last, [&](std::size_t) { return high; });
    for (std::size_t i = 0; i < columns.size(); ++i) places_[first + i] = first_column + columns[i];
  }

  void draw(const Surface& surface, const PageNote& note) {
    const Pen pen(surface.page(), text_);
    double y = margins_.top;
    for (const Block& block : head_) y += put(pen, block, margins_.left, y, width(), size_);
    std::size_t column = 0;
    for (std::size_t i = 0; i < body_.size(); ++i) {
      if (places_[i] != column) {
        const std::size_t page = places_[i] / k_columns;
        if (page != column / k_columns) end_page(surface, note, column / k_columns + 1);
        column = places_[i];
        y = margins_.top + (page == 0 ? head_height_ : 0.0);
      }
      const double x =
          margins_.left + static_cast<double>(column % k_columns) * (column_width() + k_gutter_mm);
      y += put(pen, body_[i], x, y, column_width(), size_);
    }
    end_page(surface, note, column / k_columns + 1);
  }

  void end_page(const Surface& surface, const PageNote& note, std::size_t page) {
    const std::string of = std::to_string(page) + " of " + std::to_string(pages());
    put_check_bars(Pen(surface.page(), text_), frames_of(k_paper).front(), foot_of(note, of));
    surface.show_page();
  }

  std::vector<Block> head_;
  std::vector<Block> body_;
  Typesetter text_;
  Margins margins_;
  double size_ = k_sizes.front();
  double head_height_ = 0.0;
  std::vector<Measured> measured_;
  std::vector<std::size_t> places_;
};

}  // namespace

std::string sheet_pdf(const Sheet& sheet, const PageNote& note) {
  const job::Job& job = *sheet.job;
  std::string title = "Termination sheet";
  if (!job.tag.empty()) title += " " + job.tag;
  return SheetPages(sheet).run(note, clean(title));
}

}  // namespace cutback::print

#include "cutback/schedule/row_kind.hpp"

#include <algorithm>

#include "core/schedule/row_words.hpp"
#include "cutback/text.hpp"

namespace cutback::schedule {
namespace {

constexpr std::size_t k_named_of_a_kind = 10;

/// What the cells of a row have in common, each by itself: those that belong to another cell count
/// as blank here.
class OwnCells {
 public:
  OwnCells(const Layout& layout, const RowLook& row) : layout_(layout), row_(row) {
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
      if (!is_covered(i) && !cell(row.cells, i).empty()) places_.push_back(i);
    }
  }

  [[nodiscard]] const std::vector<std::size_t>& places() const { return places_; }
  [[nodiscard]] bool has(std::size_t place) const {
    return std::find(places_.begin(), places_.end(), place) != places_.end();
  }
  /// Whether its text reaches over other cells of the row.
  [[nodiscard]] bool reaches(std::size_t place) const {
    return std::any_of(row_.covered.begin(), row_.covered.end(), [&](const Covered& each) {
      return !each.above && each.cell > place &&
             cell(row_.cells, each.cell) == cell(row_.cells, place);
    });
  }
  /// Whether something of a cable stands in the row itself: not its names, and nothing that a
  /// subtotal has too.
  [[nodiscard]] bool tell_a_cable() const {
    return std::any_of(layout_.columns.begin(), layout_.columns.end(), [&](const Column& column) {
      const std::string_view key = column.field->key;
      const bool names = key == "job" || key == "end" || key == "length_m" || key == "quantity";
      return !names && has(column.cell);
    });
  }

 private:
  [[nodiscard]] bool is_covered(std::size_t place) const {
    return std::any_of(row_.covered.begin(), row_.covered.end(),
                       [&](const Covered& each) { return each.cell == place; });
  }

  const Layout& layout_;
  const RowLook& row_;
  std::vector<std::size_t> places_;
};

std::string small(std::string_view text) { return plain_heading(text); }

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || static_cast<unsigned char>(c) >= 0x80;
}

/// Whether the first letters are those of a word for a sum. Nearly every tag has others, and is not
/// looked at any further.
bool may_be_sum(std::string_view tag) {
  const auto first = std::find_if(tag.begin(), tag.end(), is_letter);
  const auto begins = [&](std::string_view word) {
    const auto left = static_cast<std::size_t>(tag.end() - first);
    return left >= word.size() && std::equal(word.begin(), word.end(), first, [](char a, char b) {
             return a == (b >= 'A' && b <= 'Z' ? static_cast<char>(b - 'A' + 'a') : b);
           });
  };
  return begins("tot") || begins("sub") || begins("gra") || begins("sum") || begins("car") ||
         begins("bro");
}

/// Words for a sum, which stand where tags do.
bool is_sum(std::string_view tag) {
  if (!may_be_sum(tag)) return false;
  const std::string text = small(tag);
  for (const std::string_view word : {"total", "subtotal", "sub total", "grand total", "sum"}) {
    if (text == word || (text.starts_with(word) && text[word.size()] == ' ')) return true;
  }
  return text.starts_with("carried forward") || text.starts_with("brought forward");
}

/// A tag is one word with a figure in it; titles have neither.
bool may_be_title(std::string_view text) {
  const bool figure = std::any_of(text.begin(), text.end(), is_digit);
  return !figure || text.find(' ') != std::string_view::npos;
}

bool is_headings_again(const Layout& layout, Cells cells) {
  if (small(cell(cells, layout.tag)) != small(layout.tag_heading)) return false;
  return std::any_of(layout.columns.begin(), layout.columns.end(), [&](const Column& column) {
    const std::string_view text = cell(cells, column.cell);
    return !text.empty() && (small(text) == small(column.heading) ||
                             column.heading.ends_with(" / " + std::string(text)));
  });
}

bool is_struck(const Layout& layout, const RowLook& row, const OwnCells& own) {
  const auto struck = [&](std::size_t place) {
    return std::find(row.struck.begin(), row.struck.end(), place) != row.struck.end();
  };
  if (row.struck.empty()) return false;
  return struck(layout.tag) || std::all_of(own.places().begin(), own.places().end(), struck);
}

}  // namespace

RowKind kind_of(const Layout& layout, const RowLook& row) {
  const std::string_view tag = tag_of(layout, row.cells);
  const bool plain = !row.hidden && row.covered.empty() && row.struck.empty();
  // Nearly every row: a tag, and something in the first column that is used.
  if (plain && !tag.empty() && tag.size() != layout.tag_heading.size() && !layout.columns.empty() &&
      !cell(row.cells, layout.columns.front().cell).empty() && !is_sum(tag)) {
    return RowKind::cable;
  }
  const OwnCells own(layout, row);
  const bool says_nothing =
      std::all_of(row.cells.begin(), row.cells.end(),
                  [](std::string_view each) { return trimmed(each).empty(); });
  if (says_nothing) return RowKind::blank;
  if (row.hidden) return RowKind::hidden;
  if (is_struck(layout, row, own)) return RowKind::struck;
  if (own.places().empty()) return RowKind::goes_on;
  const bool alone = own.places().size() == 1;
  if (alone && own.reaches(own.places().front())) return RowKind::title;
  if (tag.empty()) {
    if (alone) {
      const std::string_view text = cell(row.cells, own.places().front());
      return std::any_of(text.begin(), text.end(), is_letter) ? RowKind::title : RowKind::no_tag;
    }
    return own.tell_a_cable() ? RowKind::cable : RowKind::no_tag;
  }
  if (is_headings_again(layout, row.cells)) return RowKind::headings;
  if (!own.tell_a_cable()) {
    if (is_sum(tag)) return RowKind::no_tag;
    if (alone && own.has(layout.tag) && may_be_title(tag)) return RowKind::title;
  }
  return RowKind::cable;
}

std::vector<SkippedRow> look_at_words(const Layout& layout, Cells cells) {
  std::vector<SkippedRow> rows;
  const std::string tag(tag_of(layout, cells));
  if (const RowSays says = says_of_row(layout, cells); says.word != RowWord::none) {
    const std::string text(cell(cells, says.cell));
    const bool deleted = says.word == RowWord::deleted;
    rows.push_back({.line = 0,
                    .kind = deleted ? RowKind::deleted : RowKind::may_be_deleted,
                    .text = says.cell == layout.tag ? tag : tag + ": " + text});
    if (deleted) return rows;
  }
  const auto count = count_of(layout, cells);
  if (count && count->by_tag) {
    rows.push_back({.line = 0,
                    .kind = RowKind::several_cables,
                    .text = tag + ": " + std::to_string(count->cables)});
  } else if (count && !count->unclear.empty()) {
    rows.push_back(
        {.line = 0, .kind = RowKind::count_unclear, .text = tag + ": " + count->unclear});
  }
  return rows;
}

void SkippedRows::add(const SkippedRow& row) {
  std::size_t& count = counts_[static_cast<std::size_t>(row.kind)];
  if (++count <= k_named_of_a_kind && row.kind != RowKind::blank) named_.push_back(row);
}

bool SkippedRows::empty() const {
  return std::all_of(counts_.begin(), counts_.end(), [](std::size_t count) { return count == 0; });
}

/// Puts the rows of one kind behind the text.
void SkippedRows::put(RowKind kind, std::string_view row_word, std::string& text) const {
  constexpr std::array<std::array<const char*, 2>, k_row_kinds> k_words{
      {{"cable", "cables"},
       {"blank", "blank"},
       {"title", "titles"},
       {"without a tag", "without a tag"},
       {"row of headings again", "rows of headings again"},
       {"with nothing of its own", "with nothing of their own"},
       {"hidden", "hidden"},
       {"struck through", "struck through"},
       {"deleted or not used", "deleted or not used"},
       {"may be deleted", "may be deleted"},
       {"with a tag that names several cables", "with a tag that names several cables"},
       {"of an unknown number of cables", "of an unknown number of cables"}}};
  const std::size_t count = this->count(kind);
  if (count == 0) return;
  if (!text.empty()) text += ", ";
  text += std::to_string(count) + " " + k_words[static_cast<std::size_t>(kind)][count == 1 ? 0 : 1];
  std::string names;
  std::size_t named = 0;
  for (const SkippedRow& row : named_) {
    if (row.kind != kind) continue;
    ++named;
    names += (names.empty() ? "" : ", ") + std::string(row_word) + " " + std::to_string(row.line);
    if (!row.text.empty()) names += " \"" + row.text + "\"";
  }
  if (!names.empty()) text += " (" + names + (named < count ? ", ..." : "") + ")";
}

std::string SkippedRows::text(std::string_view row_word) const {
  std::string text;
  const bool any = count(RowKind::title) + count(RowKind::no_tag) + count(RowKind::headings) +
                       count(RowKind::goes_on) + count(RowKind::hidden) + count(RowKind::struck) +
                       count(RowKind::deleted) >
                   0;
  if (!any) return text;  // blank rows alone
  for (std::size_t i = 1; i < k_row_kinds; ++i) {
    const auto kind = static_cast<RowKind>(i);
    if (!is_answered(kind)) put(kind, row_word, text);
  }
  return text;
}

std::string SkippedRows::answered_text(std::string_view row_word) const {
  std::string text;
  for (std::size_t i = 1; i < k_row_kinds; ++i) {
    const auto kind = static_cast<RowKind>(i);
    if (is_answered(kind)) put(kind, row_word, text);
  }
  return text;
}

}  // namespace cutback::schedule

#include "cutback/schedule/row_kind.hpp"

#include <algorithm>

#include "core/schedule/meaning.hpp"
#include "core/schedule/row_words.hpp"
#include "cutback/job/field_text.hpp"
#include "cutback/number.hpp"
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
  /// Whether one of its cells stands in a column that is read.
  [[nodiscard]] bool any_read() const {
    return has(layout_.tag) || has(layout_.from) || has(layout_.to) || has(layout_.quantity) ||
           std::any_of(layout_.columns.begin(), layout_.columns.end(),
                       [&](const Column& column) { return has(column.cell); });
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
         begins("bro") || begins("zwi") || begins("ges") || begins("som");
}

/// Words for a sum, which stand where tags do.
bool is_sum(std::string_view tag) {
  if (!may_be_sum(tag)) return false;
  const std::string text = small(tag);
  for (const std::string_view word :
       {"total", "totals", "subtotal", "sub total", "grand total", "gesamt", "zwischensumme"}) {
    if (text == word || (text.starts_with(word) && text[word.size()] == ' ')) return true;
  }
  // SUM-101 is a tag.
  for (const std::string_view word : {"sum", "summe", "gesamtsumme", "somme"}) {
    if (text == word) return true;
  }
  return text.starts_with("carried forward") || text.starts_with("brought forward");
}

/// A tag is one word with a figure in it; titles have neither.
bool may_be_title(std::string_view text) {
  const bool figure = std::any_of(text.begin(), text.end(), is_digit);
  return !figure || text.find(' ') != std::string_view::npos;
}

/// The number of a note: 1., 2), (3), Note 4.
bool is_note_number(std::string_view text) {
  const std::string plain = plain_heading(text);
  std::string_view rest = plain;
  const bool note = rest.starts_with("note");
  if (note) rest = trimmed(rest.substr(4));
  constexpr std::size_t k_most_digits = 2;
  const bool sign = text.find_first_of(".)") != std::string_view::npos;
  return (note || sign || rest == text) && rest.size() <= k_most_digits &&
         std::all_of(rest.begin(), rest.end(), is_digit) && (note || !rest.empty());
}

/// Whether a text is a heading of a schedule: a column's own name or one that the trade uses.
bool is_heading(const Layout& layout, std::string_view text) {
  const HeadingForm form = heading_form(text);
  if (own_meaning(form.full)) return true;
  if (layout.usual == nullptr) return false;
  const auto usual = usual_meaning(*layout.usual, form.plain);
  return usual && (usual->usual == nullptr || !usual->usual->column.empty());
}

/// Whether the text of a cell is that of the heading above it, or a part of it.
bool is_heading_of(const Layout& layout, std::size_t place, std::string_view text) {
  if (place >= layout.headings.size()) return false;
  const auto& parts = layout.headings[place];
  return std::find(parts.begin(), parts.end(), small(text)) != parts.end();
}

bool has_digit(std::string_view text) { return std::any_of(text.begin(), text.end(), is_digit); }

/// A number of a column: 1, (12).
bool is_short_number(std::string_view text) {
  return text.size() <= 4 && text.find_first_not_of("0123456789()") == std::string_view::npos;
}

/// What stands in the first column of figures that is not blank; nothing where all are.
std::optional<std::string_view> first_figure(const Layout& layout, Cells cells) {
  for (const Column& column : layout.columns) {
    if (column.field->kind != job::FieldKind::readings &&
        column.field->kind != job::FieldKind::number) {
      continue;
    }
    const std::string_view text = cell(cells, column.cell);
    if (!text.empty()) return text;
  }
  return std::nullopt;
}

/// Whether a row has the headings again, or those of other columns, by which what is below it would
/// be misread.
RowKind headings_kind(const Layout& layout, Cells cells) {
  // No heading of a column of figures holds a digit, and nearly every cable does there.
  const auto figure = first_figure(layout, cells);
  if (figure && is_digit(figure->front())) return RowKind::cable;
  std::size_t same = 0;
  std::size_t other = 0;
  bool figures = false;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const std::string_view text = cell(cells, i);
    if (text.empty()) continue;
    if (is_heading_of(layout, i, text)) {
      ++same;
    } else if (is_heading(layout, text)) {
      ++other;
    } else {
      figures = figures || parse_number(text).has_value();
    }
  }
  if (other > 0 && same + other >= 3 && !figures) return RowKind::other_headings;
  const bool tag = is_heading_of(layout, layout.tag, cell(cells, layout.tag));
  return tag && same >= 2 ? RowKind::headings : RowKind::cable;
}

/// Units under the headings (mm, mm2, m), or the numbers of the columns (1, 2, 3 ...).
bool is_below_headings(Cells cells) {
  std::size_t units = 0;
  std::size_t numbers = 0;
  std::size_t all = 0;
  const auto first = std::find_if(cells.begin(), cells.end(),
                                  [](std::string_view each) { return !trimmed(each).empty(); });
  constexpr std::size_t k_longest = 12;  // nearly every tag is longer, or has letters and digits
  if (first == cells.end() || trimmed(*first).size() > k_longest) return false;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const std::string_view text = cell(cells, i);
    if (text.empty()) continue;
    ++all;
    if (text == "-" || !heading_form("x (" + std::string(text) + ")").unit.empty()) ++units;
    std::string_view figure = text;
    if (figure.starts_with('(') && figure.ends_with(')'))
      figure = figure.substr(1, figure.size() - 2);
    const auto number = parse_number(trimmed(figure));
    if (number && *number == static_cast<double>(all)) ++numbers;
  }
  constexpr std::size_t k_columns = 4;
  return all > 0 && ((units == all && all > 1) || (numbers == all && all >= k_columns));
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
  if (plain && has_digit(tag) && !is_short_number(tag) && !layout.columns.empty() &&
      !cell(row.cells, layout.columns.front().cell).empty() && !is_sum(tag)) {
    const auto figure = first_figure(layout, row.cells);
    if (!figure || has_digit(*figure)) return RowKind::cable;
  }
  const OwnCells own(layout, row);
  const bool says_nothing =
      std::all_of(row.cells.begin(), row.cells.end(),
                  [](std::string_view each) { return trimmed(each).empty(); });
  if (says_nothing) return RowKind::blank;
  if (row.hidden) return RowKind::hidden;
  if (is_struck(layout, row, own)) return RowKind::struck;
  // The cores of a cable, each in a row beside its merged cells.
  const bool tag_above =
      std::any_of(row.covered.begin(), row.covered.end(),
                  [&](const Covered& each) { return each.above && each.cell == layout.tag; });
  if (own.places().empty() || (tag_above && !own.any_read())) return RowKind::goes_on;
  if (const RowKind kind = headings_kind(layout, row.cells); kind == RowKind::other_headings) {
    return kind;
  }
  if (is_below_headings(row.cells)) return RowKind::headings;
  const bool alone = own.places().size() == 1;
  if (alone && own.reaches(own.places().front())) return RowKind::title;
  if (tag.empty()) {
    if (alone) {
      const std::string_view text = cell(row.cells, own.places().front());
      return std::any_of(text.begin(), text.end(), is_letter) ? RowKind::title : RowKind::no_tag;
    }
    const bool sum = std::any_of(own.places().begin(), own.places().end(),
                                 [&](std::size_t place) { return is_sum(cell(row.cells, place)); });
    return own.tell_a_cable() && !sum ? RowKind::cable : RowKind::no_tag;
  }
  if (const RowKind kind = headings_kind(layout, row.cells); kind != RowKind::cable) return kind;
  // What stands under a column of figures is summed as well, and no sum has ends.
  if (is_sum(tag) && !own.has(layout.from) && !own.has(layout.to)) return RowKind::no_tag;
  if (!own.tell_a_cable()) {
    if (is_sum(tag)) return RowKind::no_tag;
    // A note at the foot of the list: its number, and its words beside it.
    constexpr std::size_t k_note = 2;
    if (own.places().size() == k_note && is_note_number(tag)) return RowKind::title;
    if (layout.usual != nullptr && is_of_sheet(*layout.usual, tag)) return RowKind::title;
    if (alone && own.has(layout.tag) && may_be_title(tag)) return RowKind::title;
  }
  return RowKind::cable;
}

namespace {

/// 2026-02-01, as a cell is read that a spreadsheet took for a date.
bool is_date(std::string_view text) {
  constexpr std::string_view k_form = "0000-00-00";
  if (text.size() != k_form.size()) return false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (k_form[i] == '0' ? !is_digit(text[i]) : text[i] != k_form[i]) return false;
  }
  return true;
}

}  // namespace

std::string_view title_of_deleted(const Layout& layout, Cells cells) {
  if (layout.usual == nullptr) return {};
  for (const std::string_view text : cells) {
    if (takes_away(*layout.usual, text)) return trimmed(text);
  }
  return {};
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
  if (is_date(tag)) rows.push_back({.line = 0, .kind = RowKind::date_as_tag, .text = tag});
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
       {"row of headings or units", "rows of headings or units"},
       {"with nothing of its own", "with nothing of their own"},
       {"hidden", "hidden"},
       {"struck through", "struck through"},
       {"deleted or not used", "deleted or not used"},
       {"row of other headings", "rows of other headings"},
       {"may be deleted, supplied by others or need another gland",
        "may be deleted, supplied by others or need another gland"},
       {"with a tag that names several cables", "with a tag that names several cables"},
       {"of an unknown number of cables", "of an unknown number of cables"},
       {"with a date for a tag", "with a date for a tag"}}};
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

#include "cutback/io/schedule_file.hpp"

#include <algorithm>
#include <utility>

#include "cutback/schedule/row_place.hpp"
#include "cutback/text.hpp"

namespace cutback::io {
namespace {

using schedule::RowKind;

constexpr std::size_t k_rows_searched = 30;
constexpr std::size_t k_rows_of_headings = 4;
constexpr std::size_t k_sample = 200;          // rows below the headings that are looked at
constexpr std::size_t k_most_columns = 16384;  // more than any spreadsheet has
// What stands for a figure that was crossed out: no reader takes it for a value.
constexpr std::string_view k_struck = "#struck-through";
constexpr std::string_view k_struck_in_part = "#struck-through-in-part";
// What stands for a number of cables that one merged cell says of several rows.
constexpr std::string_view k_shared = "?";

/// A row that was looked at.
struct Seen {
  std::size_t line = 0;
  std::vector<std::string> cells;
  std::vector<std::size_t> beside;  ///< those that a merged cell to their left covers
  bool goes_on = false;             ///< a merged cell of the row above reaches into it
};

/// Where the headings stand among the rows that were looked at.
struct Found {
  std::size_t first = 0;
  std::size_t rows = 0;
  schedule::KnownHeadings known;
};

/// Reads the beginning of a table and finds its headings.
class HeadingSearch {
 public:
  HeadingSearch(RowSource& source, const std::string& name, const schedule::Format& format,
                std::optional<std::size_t> header_row)
      : source_(source), name_(name), format_(format), header_row_(header_row) {}

  /// @param blocks  get what was read from the row of headings on
  void run(std::deque<RowBlock>& blocks) {
    read_beginning(blocks);
    for (std::size_t i = 0; i < seen_.size() && i < k_rows_searched; ++i) {
      look_at(i);
      if (header_row_) break;
    }
    const bool enough = header_row_ ? found_.rows > 0 : found_.known.count >= 2;
    if (!enough) not_found();
    if (!header_row_) refuse_table_above();
  }

  /// With the units that stand in a row under them.
  [[nodiscard]] std::vector<schedule::Heading> headings() const {
    auto headings = headings_of(found_.first, found_.rows);
    const std::size_t below = found_.first + found_.rows;
    if (below >= seen_.size() || !schedule::is_row_of_units(seen_[below].cells)) return headings;
    const auto others = schedule::put_units(seen_[below].cells, headings);
    if (others.empty()) return headings;
    throw InputError(make_fault(
        ErrorCode::contradiction, "a heading has one unit, and the row of units below another",
        name_ + ", " + row_name(seen_[below].line), others.front(), "", "make them alike"));
  }
  /// The rows above the headings: titles.
  [[nodiscard]] std::vector<Seen> above() const {
    std::vector<Seen> rows = above_;
    rows.insert(rows.end(), seen_.begin(),
                seen_.begin() + static_cast<std::ptrdiff_t>(found_.first));
    return rows;
  }
  [[nodiscard]] std::size_t first_line() const { return seen_[found_.first].line; }
  [[nodiscard]] std::size_t last_line() const { return seen_[found_.first + found_.rows - 1].line; }
  /// The cells below, as far as they were looked at.
  [[nodiscard]] std::vector<std::vector<std::string>> below() const {
    std::vector<std::vector<std::string>> rows;
    for (std::size_t i = found_.first + found_.rows; i < seen_.size(); ++i) {
      rows.push_back(seen_[i].cells);
      // A title over the row says nothing of the columns.
      for (const std::size_t cell : seen_[i].beside) {
        if (cell < rows.back().size()) rows.back()[cell].clear();
      }
    }
    return rows;
  }

 private:
  void read_beginning(std::deque<RowBlock>& blocks) {
    while (seen_.size() < k_rows_searched + k_sample) {
      RowBlock& block = blocks.emplace_back();
      if (!source_.read(block)) {
        blocks.pop_back();
        return;
      }
      source_.finish(block);
      for (std::size_t i = 0; i < block.rows; ++i) {
        const CsvRecord& record = block.records[i];
        check_width(record);
        if (header_row_ && record.line < *header_row_) {
          // It heads nothing, but may say something of all that is below.
          const bool last = above_.size() >= k_rows_searched;
          if (!last)
            above_.push_back(
                {record.line, {record.fields.begin(), record.fields.end()}, {}, false});
          continue;
        }
        if (seen_.size() >= k_rows_searched + k_sample) break;
        seen_.push_back({record.line, {record.fields.begin(), record.fields.end()}, {}, false});
        for (const CellMark& mark : record.marks) {
          if (mark.kind == CellMark::Kind::beside) seen_.back().beside.push_back(mark.cell);
          if (mark.kind == CellMark::Kind::above) seen_.back().goes_on = true;
        }
      }
      if (seen_.empty() && header_row_) blocks.pop_back();
    }
  }

  [[nodiscard]] std::vector<schedule::Heading> headings_of(std::size_t first,
                                                           std::size_t rows) const {
    std::vector<std::vector<std::string>> cells;
    for (std::size_t i = first; i < first + rows; ++i) cells.push_back(seen_[i].cells);
    return schedule::join_headings(cells);
  }

  /// More headings are better; then more that only several rows tell; then fewer rows.
  void look_at(std::size_t first) {
    if (header_row_ && seen_[first].line != *header_row_) return;
    for (std::size_t rows = 1; rows <= k_rows_of_headings && first + rows <= seen_.size(); ++rows) {
      // A heading that is merged over two rows is whole in both.
      const bool whole = first + rows >= seen_.size() || !seen_[first + rows].goes_on;
      if (!whole && rows < k_rows_of_headings) continue;
      // Rows of figures, which are most, are no part of headings, and no cable is.
      if (rows > 1 && known_alone(first + rows - 2) < 2 &&
          is_like_a_cable(seen_[first + rows - 2].cells)) {
        return;
      }
      if (rows > 1 && known_alone(first) == 0 && known_alone(first + 1) == 0) return;
      const auto known = schedule::known_headings(headings_of(first, rows), format_);
      if (rows > 1 && is_like_a_title(first) &&
          known.count <=
              schedule::known_headings(headings_of(first + 1, rows - 1), format_).count) {
        continue;
      }
      const auto better = [&] {
        if (found_.rows == 0) return true;
        if (known.count != found_.known.count) return known.count > found_.known.count;
        if (known.joined != found_.known.joined) return known.joined > found_.known.joined;
        return rows < found_.rows;
      };
      if (better()) found_ = {first, rows, known};
    }
  }

  /// One text, above the first column of the row below, and merged with no other: it heads nothing.
  [[nodiscard]] bool is_like_a_title(std::size_t row) const {
    const auto first_filled = [](const std::vector<std::string>& cells) {
      return std::find_if(cells.begin(), cells.end(),
                          [](const std::string& cell) { return !trimmed(cell).empty(); }) -
             cells.begin();
    };
    const auto& cells = seen_[row].cells;
    const auto filled = std::count_if(
        cells.begin(), cells.end(), [](const std::string& cell) { return !trimmed(cell).empty(); });
    return filled == 1 && seen_[row].beside.empty() && row + 1 < seen_.size() &&
           !seen_[row + 1].goes_on && first_filled(cells) == first_filled(seen_[row + 1].cells);
  }

  [[nodiscard]] std::string row_name(std::size_t line) const {
    return std::string(source_.row_word()) + " " + std::to_string(line);
  }

  /// Another row of headings above those that were found, with cables between the two: they would
  /// be lost.
  void refuse_table_above() {
    constexpr std::size_t k_headings = 3;
    for (std::size_t i = 0; i < found_.first; ++i) {
      if (known_alone(i) < k_headings) continue;
      for (std::size_t row = i + 1; row < found_.first; ++row) {
        if (known_alone(row) > 0 || !is_like_a_cable(seen_[row].cells)) continue;
        throw InputError(make_fault(
            ErrorCode::contradiction, "headings stand in two places, with cables between them",
            name_, row_name(seen_[i].line) + " and " + row_name(seen_[found_.first].line),
            "one table per sheet or file", "put each table on a sheet or into a file of its own"));
      }
    }
  }
  static bool is_like_a_cable(const std::vector<std::string>& cells) {
    const auto filled = std::count_if(
        cells.begin(), cells.end(), [](const std::string& cell) { return !trimmed(cell).empty(); });
    return filled >= 3 && std::any_of(cells.begin(), cells.end(), [](const std::string& cell) {
             return !trimmed(cell).empty() && is_digit(trimmed(cell).front());
           });
  }

  /// How many headings one row by itself has.
  std::size_t known_alone(std::size_t row) {
    if (alone_.size() <= row) alone_.resize(row + 1);
    if (!alone_[row]) alone_[row] = schedule::known_headings(headings_of(row, 1), format_).count;
    return *alone_[row];
  }

  void check_width(const CsvRecord& record) const {
    if (record.fields.size() <= k_most_columns) return;
    throw InputError(make_fault(
        ErrorCode::out_of_range, "this is no cable schedule: too many columns",
        name_ + ", " + std::string(source_.row_word()) + " " + std::to_string(record.line),
        std::to_string(record.fields.size()), "", "a row is one cable, a column one figure"));
  }

  /// Whether headings stand in the first column, and each cable in a column of its own.
  [[nodiscard]] bool is_turned() const {
    constexpr std::size_t k_headings = 4;
    std::vector<std::string> first;
    for (const Seen& row : seen_) {
      if (!row.cells.empty()) first.push_back(row.cells.front());
    }
    return schedule::known_headings(schedule::join_headings({&first, 1}), format_).count >=
           k_headings;
  }

  [[noreturn]] void not_found() const {
    if (header_row_) {
      throw InputError(make_fault(ErrorCode::missing,
                                  "no row begins on this " + std::string(source_.row_word()), name_,
                                  "--header-row " + std::to_string(*header_row_), "", ""));
    }
    if (is_turned()) {
      throw InputError(make_fault(
          ErrorCode::missing, "the headings stand below each other, in the first column", name_, "",
          "a row of headings, and a row for each cable below it", "turn the table (transpose it)"));
    }
    // A wrong name in --column is often why.
    if (auto faults = schedule::unknown_columns(format_); !faults.empty()) {
      throw InputError(std::move(faults));
    }
    throw InputError(make_fault(
        ErrorCode::missing, "there is no row of headings such as tag and sheath_od_mm", name_, "",
        "",
        "say where it is with --header-row, and own headings with --column; cutback schedule "
        "--list-columns names the columns"));
  }

  RowSource& source_;
  const std::string& name_;
  const schedule::Format& format_;
  std::optional<std::size_t> header_row_;
  std::vector<Seen> above_;  ///< the row of headings that was said, as far as they are kept
  std::vector<Seen> seen_;
  std::vector<std::optional<std::size_t>> alone_;  ///< of the rows that were asked for
  Found found_;
};

/// The columns whose numbers are names: the sheet may show 0012 where it keeps 12.
std::vector<std::size_t> columns_of_text(const schedule::Layout& layout) {
  std::vector<std::size_t> columns;
  for (const std::size_t place : {layout.tag, layout.from, layout.to}) {
    if (place != schedule::Layout::k_none) columns.push_back(place);
  }
  for (const schedule::Column& column : layout.columns) {
    if (column.field->kind == job::FieldKind::text) columns.push_back(column.cell);
  }
  return columns;
}

/// The row's tag, or the first text of it.
std::string text_of(const schedule::Layout& layout, const CsvRecord& record) {
  std::string_view text = schedule::cell(record.fields, layout.tag);
  for (std::size_t i = 0; text.empty() && i < record.fields.size(); ++i) {
    text = schedule::cell(record.fields, i);
  }
  return shortened(text);
}

/// The most headings that one row, or two, of a text have with this sign between the cells.
std::size_t headings_with(char separator, std::string_view text, const schedule::Format& format) {
  CsvReader reader(text, "", 1, separator);
  CsvRecord record;
  std::vector<std::vector<std::string>> rows;
  try {
    while (rows.size() < k_rows_searched && reader.next(record)) {
      rows.emplace_back(record.fields.begin(), record.fields.end());
    }
  } catch (const InputError&) {
    // What was read before still counts; the fault is told when the table is read.
  }
  std::size_t most = 0;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    for (std::size_t depth = 1; depth <= 2 && i + depth <= rows.size(); ++depth) {
      const schedule::HeadingRows some(rows.data() + i, depth);
      most = std::max(most, schedule::known_headings(schedule::join_headings(some), format).count);
    }
  }
  return most;
}

}  // namespace

std::string shortened(std::string_view text) {
  constexpr std::size_t k_most = 80;
  std::string shown;
  for (const char c : text.substr(0, k_most)) {
    // A character that is cut through is left out with what follows it.
    shown += c >= '\0' && c < ' ' ? ' ' : c;
  }
  if (text.size() > k_most) {
    while (!shown.empty() && (static_cast<unsigned char>(shown.back()) & 0xC0U) == 0x80U) {
      shown.pop_back();
    }
    if (!shown.empty() && static_cast<unsigned char>(shown.back()) >= 0xC0U) shown.pop_back();
    shown += " ...";
  }
  return shown;
}

char find_separator(std::string_view beginning, const schedule::Format& format) {
  constexpr std::string_view k_said = "sep=";
  constexpr std::string_view k_signs = ",;\t|";
  std::string_view text = beginning;
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  if (text.starts_with(k_said) && text.size() > k_said.size() &&
      k_signs.find(text[k_said.size()]) != std::string_view::npos) {
    return text[k_said.size()];
  }
  char best = ',';
  std::size_t most = 0;
  for (const char sign : k_signs) {
    if (sign != ',' && text.find(sign) == std::string_view::npos) continue;
    // Without any other sign nothing is to be found out.
    if (sign == ',' && text.find_first_of(";\t|") == std::string_view::npos) return ',';
    const std::size_t count = headings_with(sign, text, format);
    if (count <= most) continue;
    best = sign;
    most = count;
  }
  return best;
}

ScheduleFile::ScheduleFile(RowSource& source, const std::string& name,
                           const schedule::Format& format, std::optional<std::size_t> header_row)
    : source_(source), row_word_(source.row_word()) {
  HeadingSearch search(source, name, format, header_row);
  search.run(first_);
  last_heading_ = search.last_line();
  const auto below = search.below();
  layout_ = schedule::make_layout(search.headings(), format,
                                  name + ", " + row_name(search.first_line()), below);
  is_told_plain_ = schedule::all_told_plain(layout_, below);
  schedule::NoteRows notes(layout_);
  for (const Seen& row : search.above()) {
    const std::vector<std::string_view> cells(row.cells.begin(), row.cells.end());
    const schedule::PlaceSaid said = notes.next(cells);
    if (!said.text.empty()) places_above_.push_back({row.line, shortened(said.text)});
    if (title_.away.empty()) title_.away = shortened(schedule::title_of_deleted(layout_, cells));
  }
  bool any = false;
  looks_for_places_ = true;  // of rows that may not be read again
  for (RowBlock& block : first_) {
    keep_cables(block);
    block.is_ready = true;
    any = any || block.rows > 0;
  }
  while (!any) {
    RowBlock& block = first_.emplace_back();
    if (!source_.read(block)) {
      throw InputError(
          make_fault(ErrorCode::missing, "there is no cable below the headings", name, "", "", ""));
    }
    finish(block);
    block.is_ready = true;
    any = block.rows > 0;
  }
  looks_for_places_ = false;
  source_.show_as_text(columns_of_text(layout_));
  if (source_.restart()) first_.clear();
}

std::string ScheduleFile::row_name(std::size_t number) const {
  return row_word_ + " " + std::to_string(number);
}

bool ScheduleFile::read(RowBlock& block) {
  block.is_ready = false;
  if (first_.empty()) return source_.read(block);
  block = std::move(first_.front());
  first_.pop_front();
  return true;
}

void ScheduleFile::finish(RowBlock& block) const {
  if (block.is_ready) return;
  source_.finish(block);
  keep_cables(block);
}

/// Takes out the rows up to the headings and those that are no cables. Their storage stays for
/// later.
void ScheduleFile::keep_cables(RowBlock& block) const {
  std::size_t kept = 0;
  block.skipped.clear();
  block.places.clear();
  block.titles.clear();
  for (std::size_t i = 0; i < block.rows; ++i) {
    CsvRecord& record = block.records[i];
    if (record.line <= last_heading_) continue;
    const RowKind kind = kind_of(record);
    if (kind == RowKind::other_headings) {
      throw InputError(make_fault(
          ErrorCode::contradiction, "headings again, in another order or of other columns",
          layout_.where, row_name(record.line), "one order of headings per sheet or file",
          "put the rows below it on a sheet or into a file of their own"));
    }
    if (kind == RowKind::title) note_title(record, block);
    if (looks_for_places_) note_places(record, kind, block);
    if (kind != RowKind::cable) {
      block.skipped.push_back({record.line, kind, text_of(layout_, record)});
      continue;
    }
    bool deleted = false;
    for (schedule::SkippedRow& row : schedule::look_at_words(layout_, record.fields)) {
      row.line = record.line;
      row.text = shortened(row.text);
      deleted = deleted || row.kind == RowKind::deleted;
      block.skipped.push_back(std::move(row));
    }
    if (deleted) continue;
    if (i != kept) std::swap(block.records[i], block.records[kept]);
    ++kept;
  }
  block.rows = kept;
}

void ScheduleFile::note_title(const CsvRecord& record, RowBlock& block) const {
  const schedule::PlaceSaid said = schedule::place_in_note(layout_, record.fields);
  block.titles.push_back({record.line,
                          {said.told ? shortened(said.text) : std::string(),
                           shortened(schedule::title_of_deleted(layout_, record.fields))}});
}

/// A title, a note, or a name in the row that speaks of a hazardous place.
void ScheduleFile::note_places(const CsvRecord& record, RowKind kind, RowBlock& block) const {
  const bool note = kind == RowKind::title || kind == RowKind::no_tag;
  if (!note && kind != RowKind::cable) return;
  const std::string text = note ? schedule::place_in_note(layout_, record.fields).text
                                : schedule::place_in_row(layout_, record.fields);
  if (!text.empty()) block.places.push_back({record.line, shortened(text)});
}

RowKind ScheduleFile::kind_of(CsvRecord& record) const {
  if (record.marks.empty()) {
    return schedule::kind_of(
        layout_, {.cells = record.fields, .covered = {}, .struck = {}, .hidden = record.hidden});
  }
  std::vector<schedule::Covered> covered;
  std::vector<std::size_t> struck;
  for (const CellMark& mark : record.marks) {
    const bool above = mark.kind == CellMark::Kind::above;
    if (above || mark.kind == CellMark::Kind::beside) covered.push_back({mark.cell, above});
    if (mark.kind == CellMark::Kind::struck) struck.push_back(mark.cell);
  }
  const RowKind kind = schedule::kind_of(
      layout_,
      {.cells = record.fields, .covered = covered, .struck = struck, .hidden = record.hidden});
  if (kind != RowKind::cable) return kind;
  for (const CellMark& mark : record.marks) {
    if (mark.cell >= record.fields.size()) continue;
    if (mark.kind == CellMark::Kind::struck) record.fields[mark.cell] = k_struck;
    if (mark.kind == CellMark::Kind::above && mark.cell == layout_.quantity) {
      record.fields[mark.cell] = k_shared;
    }
    if (mark.kind == CellMark::Kind::struck_in_part) record.fields[mark.cell] = k_struck_in_part;
  }
  return kind;
}

}  // namespace cutback::io

#include "io/xlsx_sheet.hpp"

#include <algorithm>
#include <charconv>
#include <utility>

#include "cutback/bounds.hpp"

namespace cutback::io {
namespace {

constexpr std::size_t k_most_rows = 1048576;  // ECMA-376: what spreadsheets take
constexpr std::size_t k_most_columns = 16384;
constexpr std::size_t k_most_row = bounds::k_row_bytes.most;
constexpr std::size_t k_most_text = 4 * k_most_row;  // of a piece, whose rows are not counted
constexpr std::size_t k_rows_per_block = 256;
constexpr std::size_t k_least_text = 4096;  // more than a string's own storage: see RowBlock
// A block ends early when it has this much.
constexpr std::size_t k_much_text = std::size_t{1} << 20U;
constexpr std::size_t k_many_cells = std::size_t{1} << 18U;

bool is_blank(std::string_view text) {
  return std::all_of(text.begin(), text.end(),
                     [](char c) { return c == ' ' || c == '\t' || c == '\r' || c == '\n'; });
}

// A merged cell covers no more columns than this: a title over the whole sheet has no more to say.
constexpr std::size_t k_most_covered = 256;

}  // namespace

XlsxSheetReader::XlsxSheetReader(const XlsxSheetFrame& frame, ByteSource& source, XmlEnd end)
    : frame_(frame), end_(end), parser_(source, frame.file, frame.part, "worksheet", *this, end) {}

bool XlsxSheetReader::read(RowBlock& block) {
  block_ = &block;
  block.rows = 0;
  block.text.clear();
  block.text.reserve(k_least_text);
  ends_.clear();
  row_ends_.clear();
  const bool more = parser_.run();
  set_views();
  return more;
}

void XlsxSheetReader::end_piece(std::size_t next_row) {
  if (place_ != Place::data) throw damaged("its rows do not end where they should");
  ++row_;
  set_row(std::to_string(next_row));
}

void XlsxSheetReader::start(std::string_view element, const XmlAttributes& attributes) {
  switch (place_) {
    case Place::outside:
      if (is_element(element, "sheetData")) place_ = Place::data;
      break;
    case Place::data:
      if (is_element(element, "row")) start_row(attributes);
      break;
    case Place::row:
      if (is_element(element, "c")) start_cell(attributes);
      break;
    case Place::cell:
      start_value(element);
      break;
    case Place::text:
      text_.start(element, attributes);
      break;
    case Place::value:
      break;
  }
}

void XlsxSheetReader::end(std::string_view element) {
  switch (place_) {
    case Place::outside:
      break;
    case Place::data:
      if (is_element(element, "sheetData")) {
        place_ = Place::outside;
        parser_.stop();
      }
      break;
    case Place::row:
      if (is_element(element, "row")) end_row();
      break;
    case Place::cell:
      if (is_element(element, "c")) end_cell();
      break;
    case Place::value:
      if (is_element(element, "v")) place_ = Place::cell;
      break;
    case Place::text:
      if (is_element(element, "is")) {
        place_ = Place::cell;
      } else {
        text_.end(element);
      }
      break;
  }
}

void XlsxSheetReader::text(std::string_view piece) {
  if (place_ != Place::value && !(place_ == Place::text && text_.wants())) return;
  cell_.value += piece;
  if (place_ == Place::text) text_.take(piece);
  if (cell_.value.size() > bounds::k_cell_bytes.most) {
    throw fault(ErrorCode::out_of_range, std::string(bounds::k_cell_bytes.what), "");
  }
}

void XlsxSheetReader::start_row(const XmlAttributes& attributes) {
  ++row_;
  if (const char* given = attributes.find('r')) set_row(given);
  if (row_ > k_most_rows) throw fault(ErrorCode::out_of_range, "more rows than a sheet has", "");
  place_ = Place::row;
  next_column_ = 0;
  first_cell_ = ends_.size();
  row_text_ = block_->text.size();
  // A row without height is not seen either.
  row_hidden_ = attributes.is_true("hidden") || attributes.text("ht") == "0";
  marks_.clear();
}

void XlsxSheetReader::set_row(std::string_view text) {
  std::size_t number = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (error != std::errc{} || end != text.data() + text.size() || number < row_) {
    throw damaged("a row number that does not follow: " + std::string(text));
  }
  row_ = number;
}

void XlsxSheetReader::start_cell(const XmlAttributes& attributes) {
  cell_.column = next_column_;
  if (const char* given = attributes.find('r')) {
    const auto [column, letters] = xlsx_column(given);
    cell_.column = letters == 0 ? k_most_columns : column;
  }
  if (cell_.column >= k_most_columns) {
    throw fault(ErrorCode::out_of_range, "more columns than a sheet has (16,384)",
                std::string(attributes.text("r")));
  }
  if (cell_.column < next_column_) {
    throw damaged("cells that do not follow each other: " + std::string(attributes.text("r")));
  }
  next_column_ = cell_.column + 1;
  const auto type = xlsx_cell_type(attributes.find('t'));
  if (!type) throw damaged("a cell of an unknown kind: " + std::string(attributes.text("t")));
  cell_.type = *type;
  const char* style = attributes.find('s');
  cell_.style = style != nullptr ? style_of(style) : nullptr;
  cell_.as_text = cell_.column < frame_.as_text.size() && frame_.as_text[cell_.column];
  cell_.formula = false;
  cell_.value.clear();
  place_ = Place::cell;
}

const XlsxStyle* XlsxSheetReader::style_of(std::string_view style) const {
  std::size_t index = 0;
  std::from_chars(style.data(), style.data() + style.size(), index);
  return index < frame_.styles->size() ? &(*frame_.styles)[index] : nullptr;
}

void XlsxSheetReader::start_value(std::string_view element) {
  if (is_element(element, "v") && cell_.type != XlsxCellType::text) place_ = Place::value;
  if (is_element(element, "f")) cell_.formula = true;
  if (is_element(element, "is") && cell_.type == XlsxCellType::text) {
    text_ = {};
    place_ = Place::text;
  }
}

void XlsxSheetReader::end_cell() {
  place_ = Place::row;
  std::string& out = block_->text;
  const std::size_t begin = out.size();
  if (!append_xlsx_cell(out, cell_, *frame_.strings, frame_.how)) {
    throw damaged("a cell names a text that is not there: " + cell_.value);
  }
  if (is_blank(std::string_view(out).substr(begin))) {
    out.resize(begin);
    return;
  }
  if (out.size() - row_text_ > k_most_row || out.size() > k_most_text) {
    throw fault(ErrorCode::out_of_range, std::string(bounds::k_row_bytes.what), "");
  }
  ends_.resize(first_cell_ + cell_.column, begin);  // cells that were left out are empty
  ends_.push_back(out.size());
  const bool struck_cell = cell_.style != nullptr && cell_.style->struck;
  XlsxFonts fonts{.struck = false, .plain = false, .of_cell = true};
  if (cell_.type == XlsxCellType::text) fonts = text_.fonts();
  if (cell_.type == XlsxCellType::shared) fonts = frame_.strings->fonts(cell_.value);
  const XlsxStruck struck = fonts.in(struck_cell);
  if (struck == XlsxStruck::all) mark(CellMark::Kind::struck);
  if (struck == XlsxStruck::part) mark(CellMark::Kind::struck_in_part);
}

void XlsxSheetReader::mark(CellMark::Kind kind) {
  marks_.push_back({static_cast<std::uint16_t>(cell_.column), kind});
}

void XlsxSheetReader::end_row() {
  place_ = Place::data;
  if (!frame_.merges.empty()) cover();
  if (ends_.size() == first_cell_) return;
  if (block_->records.size() == block_->rows) block_->records.emplace_back();
  CsvRecord& record = block_->records[block_->rows++];
  record.line = row_;
  record.hidden = row_hidden_;
  record.marks = marks_;
  row_ends_.push_back(ends_.size());
  if (end_ == XmlEnd::cut) return;
  if (block_->rows >= k_rows_per_block || block_->text.size() > k_much_text ||
      ends_.size() > k_many_cells) {
    parser_.pause();
  }
}

/// Puts the texts of merged cells into all the cells of the row that they cover, and keeps those
/// that go on below.
void XlsxSheetReader::cover() {
  const auto& list = frame_.merges.list();
  for (; next_merge_ < list.size() && list[next_merge_].top <= row_; ++next_merge_) {
    if (list[next_merge_].bottom >= row_) open_merges_.push_back(&list[next_merge_]);
  }
  open_merges_.erase(std::remove_if(open_merges_.begin(), open_merges_.end(),
                                    [&](const XlsxMerge* each) { return each->bottom < row_; }),
                     open_merges_.end());
  if (open_merges_.empty()) return;
  std::string& out = block_->text;
  std::vector<std::string> cells;
  std::size_t begin = row_text_;
  for (std::size_t i = first_cell_; i < ends_.size(); ++i) {
    cells.push_back(out.substr(begin, ends_[i] - begin));
    begin = ends_[i];
  }
  for (const XlsxMerge* merge : open_merges_) cover_with(*merge, cells);
  while (!cells.empty() && cells.back().empty()) cells.pop_back();
  out.resize(row_text_);
  ends_.resize(first_cell_);
  for (const std::string& cell : cells) {
    out += cell;
    ends_.push_back(out.size());
  }
  if (out.size() - row_text_ > k_most_row || out.size() > k_most_text) {
    throw fault(ErrorCode::out_of_range, std::string(bounds::k_row_bytes.what), "");
  }
}

void XlsxSheetReader::cover_with(const XlsxMerge& merge, std::vector<std::string>& cells) {
  const bool above = merge.top < row_;
  if (!above) {
    merge.text = merge.left < cells.size() ? cells[merge.left] : std::string();
    merge.struck = std::any_of(marks_.begin(), marks_.end(), [&](const CellMark& each) {
      return each.cell == merge.left && each.kind == CellMark::Kind::struck;
    });
  }
  // Where the first cell is blank, what another one holds is not seen, but it is there.
  if (merge.text.empty()) return;
  const std::size_t end = std::min(merge.right, merge.left + k_most_covered - 1) + 1;
  const std::size_t first = above ? merge.left : merge.left + 1;
  if (cells.size() < end) cells.resize(end);
  for (std::size_t i = first; i < std::min(end, cells.size()); ++i) {
    cells[i] = merge.text;  // what a covered cell holds itself is not seen
    marks_.erase(std::remove_if(marks_.begin(), marks_.end(),
                                [&](const CellMark& each) { return each.cell == i; }),
                 marks_.end());
    marks_.push_back(
        {static_cast<std::uint16_t>(i), above ? CellMark::Kind::above : CellMark::Kind::beside});
    if (merge.struck) marks_.push_back({static_cast<std::uint16_t>(i), CellMark::Kind::struck});
  }
}

/// The block's text does not move any more.
void XlsxSheetReader::set_views() {
  const std::string_view text = block_->text;
  std::size_t cell = 0;
  std::size_t begin = 0;
  for (std::size_t i = 0; i < row_ends_.size(); ++i) {
    auto& fields = block_->records[i].fields;
    fields.clear();
    for (; cell < row_ends_[i]; ++cell) {
      fields.push_back(text.substr(begin, ends_[cell] - begin));
      begin = ends_[cell];
    }
  }
}

std::string XlsxSheetReader::where() const {
  return frame_.file + ", sheet " + frame_.name + ", row " + std::to_string(row_);
}
InputError XlsxSheetReader::damaged(std::string what) const {
  return xlsx_damaged(std::move(what), where());
}
InputError XlsxSheetReader::fault(ErrorCode code, std::string what, std::string given) const {
  return xlsx_fault(code, std::move(what), where(), std::move(given),
                    "a row is one cable, a column one figure");
}

}  // namespace cutback::io

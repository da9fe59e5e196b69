#include "io/xlsx_sheet.hpp"

#include <algorithm>
#include <charconv>
#include <utility>

namespace cutback::io {
namespace {

constexpr std::size_t k_most_rows = 1048576;  // ECMA-376: what spreadsheets take
constexpr std::size_t k_most_columns = 16384;
constexpr std::size_t k_most_cell = std::size_t{128} << 10U;  // 32,767 characters, in UTF-8
constexpr std::size_t k_most_row = std::size_t{16} << 20U;
constexpr std::size_t k_most_text = 4 * k_most_row;  // of a piece, whose rows are not counted
constexpr std::size_t k_rows_a_block = 256;
constexpr std::size_t k_least_text = 4096;  // more than a string's own storage: see RowBlock
// A block ends early when it has this much.
constexpr std::size_t k_much_text = std::size_t{1} << 20U;
constexpr std::size_t k_many_cells = std::size_t{1} << 18U;

bool is_blank(std::string_view text) {
  return std::all_of(text.begin(), text.end(),
                     [](char c) { return c == ' ' || c == '\t' || c == '\r' || c == '\n'; });
}

/// The column of a reference such as AB12, from 0; k_most_columns where there is none.
std::size_t column_of(std::string_view reference) {
  std::size_t column = 0;
  std::size_t letters = 0;
  while (letters < reference.size() && letters < 4 && reference[letters] >= 'A' &&
         reference[letters] <= 'Z') {
    column = column * 26 + static_cast<std::size_t>(reference[letters] - 'A' + 1);
    ++letters;
  }
  return letters == 0 || column > k_most_columns ? k_most_columns : column - 1;
}

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
      text_.start(element);
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
  if (cell_.value.size() > k_most_cell) {
    throw fault(ErrorCode::out_of_range, "a cell holds more text than a cell can", "");
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
  if (const char* given = attributes.find('r')) cell_.column = column_of(given);
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
  cell_.format = style != nullptr ? format_of(style) : XlsxFormat::number;
  cell_.formula = false;
  cell_.value.clear();
  place_ = Place::cell;
}

XlsxFormat XlsxSheetReader::format_of(std::string_view style) const {
  std::size_t index = 0;
  std::from_chars(style.data(), style.data() + style.size(), index);
  return index < frame_.formats.size() ? frame_.formats[index] : XlsxFormat::number;
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
  if (!append_xlsx_cell(out, cell_, frame_.strings, frame_.how)) {
    throw damaged("a cell names a text that is not there: " + cell_.value);
  }
  if (is_blank(std::string_view(out).substr(begin))) {
    out.resize(begin);
    return;
  }
  if (out.size() - row_text_ > k_most_row || out.size() > k_most_text) {
    throw fault(ErrorCode::out_of_range, "a row holds more text than any cable needs", "");
  }
  ends_.resize(first_cell_ + cell_.column, begin);  // cells that were left out are empty
  ends_.push_back(out.size());
}

void XlsxSheetReader::end_row() {
  place_ = Place::data;
  if (ends_.size() == first_cell_) return;
  if (block_->records.size() == block_->rows) block_->records.emplace_back();
  block_->records[block_->rows++].line = row_;
  row_ends_.push_back(ends_.size());
  if (end_ == XmlEnd::cut) return;
  if (block_->rows >= k_rows_a_block || block_->text.size() > k_much_text ||
      ends_.size() > k_many_cells) {
    parser_.pause();
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

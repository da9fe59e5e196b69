// The rows of one sheet.

#include <algorithm>
#include <charconv>
#include <cstdint>
#include <utility>
#include <vector>

#include "cutback/io/xlsx_rows.hpp"
#include "io/xlsx_cell.hpp"
#include "io/xlsx_workbook.hpp"
#include "io/xlsx_xml.hpp"

namespace cutback::io {
namespace {

constexpr std::uint64_t k_most_bytes = std::uint64_t{4} << 30U;
constexpr std::size_t k_most_rows = 1048576;  // ECMA-376: what spreadsheets take
constexpr std::size_t k_most_columns = 16384;
constexpr std::size_t k_most_cell = std::size_t{128} << 10U;  // 32,767 characters, in UTF-8
constexpr std::size_t k_most_row = std::size_t{16} << 20U;
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

class XlsxRows::Reader final : public XmlHandler {
 public:
  Reader(std::string_view bytes, std::string name, const Options& options)
      : package_(bytes, std::move(name)),
        workbook_(read_xlsx_workbook(package_)),
        how_{.from_1904 = workbook_.from_1904, .decimal = options.decimal},
        sheet_(find_xlsx_sheet(workbook_, options.sheet, package_.name())) {
    if (!workbook_.styles.empty()) formats_ = read_xlsx_styles(package_, workbook_.styles);
    if (!workbook_.strings.empty()) strings_ = XlsxStrings(package_, workbook_.strings);
    parser_ = std::make_unique<XmlParser>(package_, sheet_.part, k_most_bytes, "worksheet", *this);
  }

  [[nodiscard]] const std::string& sheet() const { return sheet_.name; }
  [[nodiscard]] double taken() const { return package_.taken(); }

  bool read(RowBlock& block) {
    block_ = &block;
    block.rows = 0;
    block.text.clear();
    block.text.reserve(k_least_text);
    ends_.clear();
    row_ends_.clear();
    if (!at_end_) {
      at_end_ = true;  // also after an error
      at_end_ = !parser_->run();
      if (at_end_ && block.rows == 0 && !any_) throw empty();
      any_ = true;
    }
    set_views();
    return block.rows > 0;
  }

  void start(std::string_view element, const XmlAttributes& attributes) override {
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

  void end(std::string_view element) override {
    switch (place_) {
      case Place::outside:
        break;
      case Place::data:
        if (is_element(element, "sheetData")) {
          place_ = Place::outside;
          parser_->stop();
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

  void text(std::string_view piece) override {
    if (place_ != Place::value && !(place_ == Place::text && text_.wants())) return;
    cell_.value += piece;
    if (cell_.value.size() > k_most_cell) {
      throw fault(ErrorCode::out_of_range, "a cell holds more text than a cell can", "");
    }
  }

 private:
  enum class Place { outside, data, row, cell, value, text };

  void start_row(const XmlAttributes& attributes) {
    ++row_;
    if (const char* given = attributes.find('r')) set_row(given);
    if (row_ > k_most_rows) throw fault(ErrorCode::out_of_range, "more rows than a sheet has", "");
    place_ = Place::row;
    next_column_ = 0;
    first_cell_ = ends_.size();
    row_text_ = block_->text.size();
  }

  void set_row(std::string_view text) {
    std::size_t number = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    if (error != std::errc{} || end != text.data() + text.size() || number < row_) {
      throw damaged("a row number that does not follow: " + std::string(text));
    }
    row_ = number;
  }

  void start_cell(const XmlAttributes& attributes) {
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

  [[nodiscard]] XlsxFormat format_of(std::string_view style) const {
    std::size_t index = 0;
    std::from_chars(style.data(), style.data() + style.size(), index);
    return index < formats_.size() ? formats_[index] : XlsxFormat::number;
  }

  void start_value(std::string_view element) {
    if (is_element(element, "v") && cell_.type != XlsxCellType::text) place_ = Place::value;
    if (is_element(element, "f")) cell_.formula = true;
    if (is_element(element, "is") && cell_.type == XlsxCellType::text) {
      text_ = {};
      place_ = Place::text;
    }
  }

  void end_cell() {
    place_ = Place::row;
    std::string& out = block_->text;
    const std::size_t begin = out.size();
    if (!append_xlsx_cell(out, cell_, strings_, how_)) {
      throw damaged("a cell names a text that is not there: " + cell_.value);
    }
    if (is_blank(std::string_view(out).substr(begin))) {
      out.resize(begin);
      return;
    }
    if (out.size() - row_text_ > k_most_row) {
      throw fault(ErrorCode::out_of_range, "a row holds more text than any cable needs", "");
    }
    ends_.resize(first_cell_ + cell_.column, begin);  // cells that were left out are empty
    ends_.push_back(out.size());
  }

  void end_row() {
    place_ = Place::data;
    if (ends_.size() == first_cell_) return;
    if (block_->records.size() == block_->rows) block_->records.emplace_back();
    block_->records[block_->rows++].line = row_;
    row_ends_.push_back(ends_.size());
    if (block_->rows >= k_rows_a_block || block_->text.size() > k_much_text ||
        ends_.size() > k_many_cells) {
      parser_->pause();
    }
  }

  /// The block's text does not move any more.
  void set_views() {
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

  [[nodiscard]] std::string where() const {
    return package_.name() + ", sheet " + sheet_.name + ", row " + std::to_string(row_);
  }
  [[nodiscard]] InputError damaged(std::string what) const {
    return xlsx_damaged(std::move(what), where());
  }
  [[nodiscard]] InputError fault(ErrorCode code, std::string what, std::string given) const {
    return xlsx_fault(code, std::move(what), where(), std::move(given),
                      "a row is one cable, a column one figure");
  }
  [[nodiscard]] InputError empty() const {
    return InputError(Fault{
        .code = ErrorCode::missing,
        .what = "the sheet is empty",
        .where = package_.name() + ", sheet " + sheet_.name,
        .given = {},
        .allowed = {},
        .hint = "name another with --sheet; the workbook has " + xlsx_sheet_names(workbook_)});
  }

  XlsxPackage package_;
  XlsxWorkbook workbook_;
  XlsxNotation how_;
  const XlsxSheet& sheet_;
  std::vector<XlsxFormat> formats_;
  XlsxStrings strings_;
  std::unique_ptr<XmlParser> parser_;

  Place place_ = Place::outside;
  XlsxText text_;
  XlsxCell cell_;
  std::size_t row_ = 0;
  std::size_t next_column_ = 0;
  std::size_t first_cell_ = 0;  ///< of the row, in ends_
  std::size_t row_text_ = 0;    ///< where the row's text begins

  RowBlock* block_ = nullptr;
  std::vector<std::size_t> ends_;      ///< of the cells, in the block's text
  std::vector<std::size_t> row_ends_;  ///< of the rows, in ends_
  bool any_ = false;
  bool at_end_ = false;
};

XlsxRows::XlsxRows(std::string_view bytes, std::string name, const Options& options)
    : reader_(std::make_unique<Reader>(bytes, std::move(name), options)) {}
XlsxRows::XlsxRows(const std::string& path, const Options& options)
    : mapped_(std::make_unique<MappedFile>(path)),
      reader_(std::make_unique<Reader>(mapped_->text(), path, options)) {}
XlsxRows::~XlsxRows() = default;

const std::string& XlsxRows::sheet() const { return reader_->sheet(); }

bool XlsxRows::read(RowBlock& block) { return reader_->read(block); }

std::optional<double> XlsxRows::taken() const { return reader_->taken(); }

}  // namespace cutback::io

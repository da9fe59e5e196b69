// The rows of the sheets of a workbook, in pieces that can be read on several threads.

#include "cutback/io/xlsx_rows.hpp"

#include <atomic>
#include <cstdint>
#include <optional>
#include <utility>

#include "cutback/io/files.hpp"
#include "io/xlsx_asides.hpp"
#include "io/xlsx_pieces.hpp"
#include "io/xlsx_sheet.hpp"
#include "io/xlsx_workbook.hpp"

namespace cutback::io {
namespace {

/// What the sheets of a workbook share.
struct Book {
  Book(std::string_view bytes, std::string name, char decimal)
      : package(bytes, std::move(name)), workbook(read_xlsx_workbook(package)) {
    how = {.from_1904 = workbook.from_1904, .decimal = decimal};
    if (!workbook.styles.empty()) styles = read_xlsx_styles(package, workbook.styles);
    if (!workbook.strings.empty()) strings = XlsxStrings(package, workbook.strings);
  }

  std::optional<WholeFile> file;  ///< what the package is a view of, where it is a file
  XlsxPackage package;
  XlsxWorkbook workbook;
  XlsxNotation how;
  std::vector<XlsxStyle> styles;
  XlsxStrings strings;
};

class Sheet final : public RowSource {
 public:
  Sheet(std::shared_ptr<Book> book, std::size_t sheet)
      : book_(std::move(book)),
        frame_{.file = book_->package.name(),
               .part = book_->workbook.sheets[sheet].part,
               .name = book_->workbook.sheets[sheet].name,
               .how = book_->how,
               .styles = &book_->styles,
               .strings = &book_->strings,
               .merges = {},
               .as_text = {}},
        pieces_(book_->package, frame_.part) {}

  bool restart() override {
    at_end_ = false;
    begun_ = false;
    rest_.reset();
    return true;
  }

  void show_as_text(const std::vector<std::size_t>& columns) override {
    frame_.as_text.clear();
    for (const std::size_t column : columns) {
      if (frame_.as_text.size() <= column) frame_.as_text.resize(column + 1);
      frame_.as_text[column] = true;
    }
  }

  [[nodiscard]] std::vector<Aside> asides() override {
    look();
    std::vector<Aside> asides = read_xlsx_asides(book_->package, frame_.part);
    for (const std::string& text : page_texts_) asides.push_back({"page header or footer", text});
    return asides;
  }
  [[nodiscard]] std::vector<std::size_t> hidden_columns() override {
    look();
    return hidden_columns_;
  }

  [[nodiscard]] std::optional<double> taken() const override { return pieces_.taken(); }
  [[nodiscard]] std::string_view row_word() const override { return "row"; }

  bool read(RowBlock& block) override {
    block.rows = 0;
    block.piece = {};
    if (at_end_) return false;
    at_end_ = true;  // also after an error
    begin();
    if (auto piece = pieces_.cut()) {
      block.text = std::move(piece->own);
      block.piece = piece->rows.empty() ? std::string_view(block.text) : piece->rows;
      block.line = piece->next_row;
      // What a merged cell says must be known before rows below are read on another thread.
      if (frame_.merges.cross(piece->first_row, piece->next_row)) finish(block);
      at_end_ = false;
      return true;
    }
    if (!rest_) rest_.emplace(frame_, pieces_, XmlEnd::whole);
    at_end_ = !rest_->read(block);
    if (block.rows > 0) any_ = true;
    if (!at_end_ || any_) return block.rows > 0;
    throw xlsx_fault(ErrorCode::missing, "the sheet is empty",
                     frame_.file + ", sheet " + frame_.name, "", "name another with --sheet");
  }

  void finish(RowBlock& block) const override {
    if (block.piece.empty()) return;
    const std::string own = std::exchange(block.text, {});
    // A short text moves with its string.
    const std::string_view rows = own.empty() ? block.piece : std::string_view(own);
    block.piece = {};
    ByteViews bytes(pieces_.head(), rows);
    XlsxSheetReader reader(frame_, bytes, XmlEnd::cut);
    reader.read(block);
    reader.end_piece(block.line);
    if (block.rows > 0) any_ = true;
  }

 private:
  void begin() {
    if (begun_) return;
    look();
    pieces_.begin();
    begun_ = true;
  }

  void look() {
    if (looked_) return;
    XlsxLook found = pieces_.look();
    frame_.merges = std::move(found.merges);
    hidden_columns_ = std::move(found.hidden_columns);
    page_texts_ = std::move(found.page_texts);
    looked_ = true;
  }

  std::shared_ptr<Book> book_;
  XlsxSheetFrame frame_;
  XlsxPieces pieces_;
  std::vector<std::size_t> hidden_columns_;
  std::vector<std::string> page_texts_;
  std::optional<XlsxSheetReader> rest_;  ///< of what cannot be cut into pieces
  bool looked_ = false;
  bool begun_ = false;
  bool at_end_ = false;
  mutable std::atomic<bool> any_ = false;  ///< whether a cell was found that says anything
};

class Xlsx final : public Workbook {
 public:
  explicit Xlsx(std::shared_ptr<Book> book) : book_(std::move(book)) {
    for (const XlsxSheet& sheet : book_->workbook.sheets) {
      sheets_.push_back(
          {.name = sheet.name, .hidden = sheet.hidden, .has_cells = !sheet.part.empty()});
    }
  }

  [[nodiscard]] const std::vector<SheetName>& sheets() const override { return sheets_; }
  [[nodiscard]] std::unique_ptr<RowSource> open(std::size_t sheet) override {
    return std::make_unique<Sheet>(book_, sheet);
  }

 private:
  std::shared_ptr<Book> book_;
  std::vector<SheetName> sheets_;
};

}  // namespace

std::unique_ptr<Workbook> open_xlsx(const std::string& path, char decimal) {
  WholeFile file(path);
  const std::string_view bytes = file.text();
  auto book = std::make_shared<Book>(bytes, path, decimal);
  book->file.emplace(std::move(file));  // no archive is so short that its bytes move with it
  return std::make_unique<Xlsx>(std::move(book));
}

std::unique_ptr<Workbook> open_xlsx(std::string_view bytes, std::string name, char decimal) {
  return std::make_unique<Xlsx>(std::make_shared<Book>(bytes, std::move(name), decimal));
}

}  // namespace cutback::io

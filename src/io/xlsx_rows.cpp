// The rows of one sheet, in pieces that can be read on several threads.

#include "cutback/io/xlsx_rows.hpp"

#include <atomic>
#include <cstdint>
#include <utility>

#include "io/xlsx_pieces.hpp"
#include "io/xlsx_sheet.hpp"
#include "io/xlsx_workbook.hpp"

namespace cutback::io {
namespace {

constexpr std::uint64_t k_most_bytes = std::uint64_t{4} << 30U;

}  // namespace

class XlsxRows::Reader {
 public:
  Reader(std::string_view bytes, std::string name, const Options& options)
      : package_(bytes, std::move(name)),
        workbook_(read_xlsx_workbook(package_)),
        pieces_(package_) {
    const XlsxSheet& sheet = find_xlsx_sheet(workbook_, options.sheet, package_.name());
    frame_.file = package_.name();
    frame_.part = sheet.part;
    frame_.name = sheet.name;
    frame_.how = {.from_1904 = workbook_.from_1904, .decimal = options.decimal};
    if (!workbook_.styles.empty()) frame_.formats = read_xlsx_styles(package_, workbook_.styles);
    if (!workbook_.strings.empty()) frame_.strings = XlsxStrings(package_, workbook_.strings);
    package_.open(sheet.part, k_most_bytes);
  }

  [[nodiscard]] const std::string& sheet() const { return frame_.name; }
  [[nodiscard]] double taken() const { return package_.taken(); }

  bool read(RowBlock& block) {
    block.rows = 0;
    block.piece = {};
    if (at_end_) return false;
    at_end_ = true;  // also after an error
    if (!begun_) pieces_.begin(frame_.part);
    begun_ = true;
    if (auto piece = pieces_.cut()) {
      block.text = std::move(piece->rows);
      block.piece = block.text;
      block.line = piece->next_row;
      at_end_ = false;
      return true;
    }
    if (!rest_) rest_.emplace(frame_, pieces_, XmlEnd::whole);
    at_end_ = !rest_->read(block);
    if (block.rows > 0) any_ = true;
    if (at_end_ && !any_) throw empty();
    return block.rows > 0;
  }

  void finish(RowBlock& block) const {
    if (block.piece.empty()) return;
    const std::string rows = std::exchange(block.text, {});
    block.piece = {};
    ByteViews bytes(pieces_.head(), rows);
    XlsxSheetReader reader(frame_, bytes, XmlEnd::cut);
    reader.read(block);
    reader.end_piece(block.line);
    if (block.rows > 0) any_ = true;
  }

 private:
  [[nodiscard]] InputError empty() const {
    return InputError(Fault{
        .code = ErrorCode::missing,
        .what = "the sheet is empty",
        .where = frame_.file + ", sheet " + frame_.name,
        .given = {},
        .allowed = {},
        .hint = "name another with --sheet; the workbook has " + xlsx_sheet_names(workbook_)});
  }

  XlsxPackage package_;
  XlsxWorkbook workbook_;
  XlsxSheetFrame frame_;
  XlsxPieces pieces_;
  std::optional<XlsxSheetReader> rest_;  ///< of what cannot be cut into pieces
  bool begun_ = false;
  bool at_end_ = false;
  mutable std::atomic<bool> any_ = false;  ///< whether a cell was found that says anything
};

XlsxRows::XlsxRows(std::string_view bytes, std::string name, const Options& options)
    : reader_(std::make_unique<Reader>(bytes, std::move(name), options)) {}
XlsxRows::XlsxRows(const std::string& path, const Options& options)
    : mapped_(std::make_unique<MappedFile>(path)),
      reader_(std::make_unique<Reader>(mapped_->text(), path, options)) {}
XlsxRows::~XlsxRows() = default;

const std::string& XlsxRows::sheet() const { return reader_->sheet(); }

bool XlsxRows::read(RowBlock& block) { return reader_->read(block); }

void XlsxRows::finish(RowBlock& block) const { reader_->finish(block); }

std::optional<double> XlsxRows::taken() const { return reader_->taken(); }

}  // namespace cutback::io

#pragma once
// The rows of a sheet, read from its XML.

#include <cstddef>
#include <string>
#include <vector>

#include "cutback/io/rows.hpp"
#include "io/xlsx_cell.hpp"
#include "io/xlsx_merges.hpp"
#include "io/xlsx_xml.hpp"

namespace cutback::io {

/// What the cells of a sheet refer to.
struct XlsxSheetFrame {
  std::string file;  ///< for messages
  std::string part;
  std::string name;
  XlsxNotation how;
  const std::vector<XlsxStyle>* styles = nullptr;
  const XlsxStrings* strings = nullptr;
  XlsxMerges merges;
  std::vector<bool> as_text;  ///< columns in which numbers are wanted as the sheet shows them
};

/// Puts the rows of a sheet, or of a piece of one, into blocks.
class XlsxSheetReader final : public XmlHandler {
 public:
  /// @param frame, source  borrowed
  XlsxSheetReader(const XlsxSheetFrame& frame, ByteSource& source, XmlEnd end);

  /// Some rows; of a piece all of them.
  /// @param block  its rows are replaced. @return false at the end
  /// @throws InputError
  bool read(RowBlock& block);
  /// After the last row of a piece. @param next_row  number of the row behind it
  /// @throws InputError when the piece does not end with a row, or not before that one
  void end_piece(std::size_t next_row);

  void start(std::string_view element, const XmlAttributes& attributes) override;
  void end(std::string_view element) override;
  void text(std::string_view piece) override;

 private:
  enum class Place { outside, data, row, cell, value, text };
  void start_row(const XmlAttributes& attributes);
  void set_row(std::string_view text);
  void start_cell(const XmlAttributes& attributes);
  [[nodiscard]] const XlsxStyle* style_of(std::string_view style) const;
  void start_value(std::string_view element);
  void end_cell();
  void end_row();
  void mark(CellMark::Kind kind);
  void cover();
  void cover_with(const XlsxMerge& merge, std::vector<std::string>& cells);
  void set_views();
  [[nodiscard]] std::string where() const;
  [[nodiscard]] InputError damaged(std::string what) const;
  [[nodiscard]] InputError fault(ErrorCode code, std::string what, std::string given) const;

  const XlsxSheetFrame& frame_;
  XmlEnd end_;
  XmlParser parser_;
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
  bool row_hidden_ = false;
  std::vector<CellMark> marks_;                ///< of the row
  std::size_t next_merge_ = 0;                 ///< the first that has not begun
  std::vector<const XlsxMerge*> open_merges_;  ///< those that reach the row
};

}  // namespace cutback::io

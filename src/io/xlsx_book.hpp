#pragma once
// An .xlsx workbook that is being written, and tables in it.

#include <xlsxwriter.h>

#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/error.hpp"
#include "cutback/io/files.hpp"
#include "io/xlsx_check.hpp"

namespace cutback::io {

/// How a cell looks. What a verdict means is told by words and weight, never by colour alone.
struct XlsxLooks {
  lxw_format* heading;
  lxw_format* text;
  lxw_format* italic;
  lxw_format* bold;
  lxw_format* wrapped;
  lxw_format* count;
  lxw_format* length_1;  ///< mm with one decimal
  lxw_format* length_3;
  lxw_format* money;
  lxw_format* bold_money;
};

/// The workbook is written where its file will be, with all that the library puts aside, so that a
/// disk that is full is noticed there; finish() reads it through.
class XlsxBook {
 public:
  /// @param file  outlives the workbook; it is put in its place by its owner
  /// @throws FileError when nothing can be written there
  /// @param decimals  of sums of money
  XlsxBook(FileWriter& file, int decimals);
  XlsxBook(const XlsxBook&) = delete;
  XlsxBook& operator=(const XlsxBook&) = delete;
  ~XlsxBook();

  [[nodiscard]] const XlsxLooks& looks() const { return looks_; }
  /// @param name  at most 31 characters, none of []:*?/\ and no apostrophe at its ends
  lxw_worksheet* add_sheet(const std::string& name);
  /// A chart that is not on a sheet yet. @param type  of lxw_chart_type
  lxw_chart* add_chart(std::uint8_t type);
  /// Title, remark and date of the file; without a person, and the date is not that of the clock,
  /// so that its bytes are the same always.
  void describe(const std::string& title, const std::string& remark, std::int64_t created_unix_s);
  /// @throws FileError where `result` is an error of the library
  void check(lxw_error result) const;
  /// Counts a cell of the sheet that was added last. @param text  of it; empty for a number
  void count(std::string_view text) { count_in(sheets_.size() - 1, text); }
  /// The same in a sheet that was added before others. @param sheet  from 0
  void count_in(std::size_t sheet, std::string_view text);
  /// Writes the file, and makes sure that all is in it. @throws FileError
  void finish();

 private:
  struct Close {
    void operator()(std::FILE* file) const { std::fclose(file); }
  };
  lxw_format* format(const char* number_format);
  [[nodiscard]] FileError cannot_write(std::string why) const;

  FileWriter& file_;
  std::unique_ptr<std::FILE, Close> aside_;  ///< what is written first where it goes to a pipe
  std::string place_;                        ///< what the library writes to
  std::vector<XlsxContent> sheets_;          ///< what was put into them
  lxw_workbook* book_ = nullptr;
  XlsxLooks looks_{};
};

struct XlsxColumn {
  const char* name;  ///< in words
  double width;      ///< in characters
};

/// A table with headings that stay in sight. Rows are written one after the other; what is more
/// than a sheet takes goes on in a further one, `Results 2`.
class XlsxTable {
 public:
  /// @param kept  columns that stay in sight
  XlsxTable(XlsxBook& book, std::string name, std::span<const XlsxColumn> columns,
            std::size_t rows_per_sheet, std::size_t kept = 0);

  /// Begins a row; it is in `row()` then.
  void start_row();
  /// The row's number as the sheet shows it.
  [[nodiscard]] std::size_t row() const { return rows_; }
  void put(std::size_t column, std::string_view text, lxw_format* look);
  void put(std::size_t column, double number, lxw_format* look);
  /// A text that may take several lines. Programs do not all find the height of a row by
  /// themselves, and lines that overlap cannot be read: it is set here.
  void put_wrapped(std::size_t column, std::string_view text);
  /// @param result  what it comes to, for programs that do not calculate
  void put_formula(std::size_t column, const std::string& formula, double result, lxw_format* look);
  /// Puts a filter over the rows written so far.
  void set_filter();

 private:
  void start_sheet();

  XlsxBook& book_;
  std::string name_;
  std::span<const XlsxColumn> columns_;
  std::size_t rows_per_sheet_;
  std::size_t kept_;
  lxw_worksheet* sheet_ = nullptr;
  std::size_t sheets_ = 0;
  std::size_t rows_ = 0;   ///< of the sheet, with the headings
  std::size_t lines_ = 1;  ///< of the row
};

/// `text` as a cell can hold it: not too long, and nothing in it that is read as an escape.
[[nodiscard]] std::string xlsx_text(std::string_view text);

}  // namespace cutback::io

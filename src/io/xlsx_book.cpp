#include "io/xlsx_book.hpp"

#include <fcntl.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstring>
#include <new>
#include <utility>

#include "cutback/error.hpp"

namespace cutback::io {
namespace {

constexpr std::uint8_t k_a4 = 9;
constexpr double k_filled = 0.8;
constexpr double k_line_height = 15.0;      // points
constexpr std::size_t k_most_lines = 27;    // a row is at most 409 points high
constexpr const char* k_text_format = "@";  // what is typed there later stays a text too

/// stderr leads nowhere as long as this lives: the library prints there what it also returns.
class Hushed {
 public:
  Hushed() : own_(::dup(STDERR_FILENO)) {
    const int nowhere = ::open("/dev/null", O_WRONLY | O_CLOEXEC);
    if (own_ >= 0 && nowhere >= 0) ::dup2(nowhere, STDERR_FILENO);
    if (nowhere >= 0) ::close(nowhere);
  }
  Hushed(const Hushed&) = delete;
  Hushed& operator=(const Hushed&) = delete;
  ~Hushed() {
    if (own_ < 0) return;
    ::dup2(own_, STDERR_FILENO);
    ::close(own_);
  }

 private:
  int own_;
};

}  // namespace

FileError XlsxBook::cannot_write(std::string why) const {
  return FileError(Fault{.code = ErrorCode::cannot_write,
                         .what = "the workbook cannot be written",
                         .where = file_.path(),
                         .given = {},
                         .allowed = {},
                         .hint = std::move(why)});
}

XlsxBook::XlsxBook(FileWriter& file, int decimals) : file_(file) {
  if (file_.is_special()) {
    aside_.reset(std::tmpfile());
    if (!aside_) throw cannot_write(std::string("no temporary file: ") + std::strerror(errno));
    place_ = "/proc/self/fd/" + std::to_string(::fileno(aside_.get()));
  } else {
    place_ = file_.place();
  }
  std::string folder = file_.folder();  // the library takes it without const, and copies it
  lxw_workbook_options options{};
  options.constant_memory = LXW_TRUE;
  if (!folder.empty()) options.tmpdir = folder.data();
  book_ = workbook_new_opt(place_.c_str(), &options);
  if (book_ == nullptr) throw std::bad_alloc();
  const std::string money = "#,##0." + std::string(static_cast<std::size_t>(decimals), '0');
  looks_ = {.heading = format(k_text_format),
            .text = format(k_text_format),
            .italic = format(k_text_format),
            .bold = format(k_text_format),
            .wrapped = format(k_text_format),
            .count = format("0"),
            .length_1 = format("0.0"),
            .length_3 = format("0.000"),
            .money = format(money.c_str()),
            .bold_money = format(money.c_str())};
  for (lxw_format* look : {looks_.heading, looks_.bold, looks_.bold_money}) format_set_bold(look);
  format_set_bottom(looks_.heading, LXW_BORDER_THIN);
  format_set_italic(looks_.italic);
  format_set_text_wrap(looks_.wrapped);
  for (lxw_format* look : {looks_.text, looks_.italic, looks_.bold, looks_.wrapped, looks_.count,
                           looks_.length_1, looks_.length_3, looks_.money}) {
    format_set_align(look, LXW_ALIGN_VERTICAL_TOP);
  }
}

XlsxBook::~XlsxBook() {
  if (book_ != nullptr) lxw_workbook_free(book_);
}

lxw_format* XlsxBook::format(const char* number_format) {
  lxw_format* made = workbook_add_format(book_);
  if (made == nullptr) throw std::bad_alloc();
  format_set_num_format(made, number_format);
  return made;
}

lxw_worksheet* XlsxBook::add_sheet(const std::string& name) {
  check(workbook_validate_sheet_name(book_, name.c_str()));
  lxw_worksheet* const sheet = [&] {
    const Hushed hushed;
    return workbook_add_worksheet(book_, name.c_str());
  }();
  if (sheet == nullptr) throw cannot_write("no temporary file beside it, or not enough memory");
  sheets_.emplace_back();
  worksheet_set_landscape(sheet);
  worksheet_set_paper(sheet, k_a4);
  worksheet_fit_to_pages(sheet, 1, 0);  // one wide, as many long as it takes
  check(worksheet_set_footer(sheet, "&LRead the sheet Notes first&R&A, page &P of &N"));
  check(worksheet_ignore_errors(sheet, LXW_IGNORE_NUMBER_STORED_AS_TEXT, "A1:XFD1048576"));
  return sheet;
}

lxw_chart* XlsxBook::add_chart(std::uint8_t type) {
  lxw_chart* const chart = workbook_add_chart(book_, type);
  if (chart == nullptr) throw std::bad_alloc();
  return chart;
}

void XlsxBook::describe(const std::string& title, const std::string& remark,
                        std::int64_t created_unix_s) {
  std::string own_title = title;  // the library takes them without const, and copies them
  std::string own_remark = remark;
  lxw_doc_properties properties{};
  properties.title = own_title.data();
  properties.comments = own_remark.data();
  properties.created = std::max<std::int64_t>(created_unix_s, 1);  // 0 would be the clock
  check(workbook_set_properties(book_, &properties));
}

void XlsxBook::check(lxw_error result) const {
  if (result != LXW_NO_ERROR) throw cannot_write(lxw_strerror(result));
}

void XlsxBook::count_in(std::size_t sheet, std::string_view text) {
  ++sheets_.at(sheet).cells;
  sheets_.at(sheet).text_bytes += text.size();
}

void XlsxBook::finish() {
  const lxw_error closed = [&] {
    const Hushed hushed;
    return workbook_close(std::exchange(book_, nullptr));  // frees it in any case
  }();
  const std::string wrong = xlsx_mismatch(place_, sheets_);
  if (closed != LXW_NO_ERROR || !wrong.empty()) {
    const std::string what = wrong.empty() ? lxw_strerror(closed) : wrong;
    throw cannot_write(what + "; look whether the disk is full");
  }
  if (!aside_) return;
  std::array<char, 65536> piece;
  std::rewind(aside_.get());
  while (const std::size_t size = std::fread(piece.data(), 1, piece.size(), aside_.get())) {
    file_.append({piece.data(), size});
  }
  if (std::ferror(aside_.get()) != 0) throw cannot_write("its temporary file cannot be read back");
}

XlsxTable::XlsxTable(XlsxBook& book, std::string name, std::span<const XlsxColumn> columns,
                     std::size_t rows_per_sheet, std::size_t kept)
    : book_(book),
      name_(std::move(name)),
      columns_(columns),
      rows_per_sheet_(rows_per_sheet),
      kept_(kept) {
  start_sheet();
}

void XlsxTable::start_sheet() {
  ++sheets_;
  sheet_ = book_.add_sheet(sheets_ == 1 ? name_ : name_ + " " + std::to_string(sheets_));
  rows_ = 1;
  for (std::size_t i = 0; i < columns_.size(); ++i) {
    const auto column = static_cast<lxw_col_t>(i);
    book_.check(worksheet_set_column(sheet_, column, column, columns_[i].width, nullptr));
    put(i, columns_[i].name, book_.looks().heading);
  }
  worksheet_freeze_panes(sheet_, 1, static_cast<lxw_col_t>(kept_));
  book_.check(worksheet_repeat_rows(sheet_, 0, 0));
}

void XlsxTable::start_row() {
  if (rows_ == rows_per_sheet_) {
    set_filter();
    start_sheet();
  }
  ++rows_;
  lines_ = 1;
}

void XlsxTable::put(std::size_t column, std::string_view text, lxw_format* look) {
  if (text.empty()) return;
  const std::string cell = xlsx_text(text);
  book_.check(worksheet_write_string(sheet_, static_cast<lxw_row_t>(rows_ - 1),
                                     static_cast<lxw_col_t>(column), cell.c_str(), look));
  book_.count(cell);
}

void XlsxTable::put_wrapped(std::size_t column, std::string_view text) {
  put(column, text, book_.looks().wrapped);
  // Bytes are at least as many as characters; lines break at words, before the column is full.
  const auto a_line = static_cast<std::size_t>(columns_[column].width * k_filled);
  const std::size_t lines = std::min((text.size() + a_line - 1) / a_line, k_most_lines);
  if (lines <= lines_) return;
  lines_ = lines;
  book_.check(worksheet_set_row(sheet_, static_cast<lxw_row_t>(rows_ - 1),
                                k_line_height * static_cast<double>(lines), nullptr));
}

void XlsxTable::put(std::size_t column, double number, lxw_format* look) {
  book_.check(worksheet_write_number(sheet_, static_cast<lxw_row_t>(rows_ - 1),
                                     static_cast<lxw_col_t>(column), number, look));
  book_.count({});
}

void XlsxTable::put_formula(std::size_t column, const std::string& formula, double result,
                            lxw_format* look) {
  book_.check(worksheet_write_formula_num(sheet_, static_cast<lxw_row_t>(rows_ - 1),
                                          static_cast<lxw_col_t>(column), formula.c_str(), look,
                                          result));
  book_.count({});
}

void XlsxTable::set_filter() {
  book_.check(worksheet_autofilter(sheet_, 0, 0, static_cast<lxw_row_t>(rows_ - 1),
                                   static_cast<lxw_col_t>(columns_.size() - 1)));
}

}  // namespace cutback::io

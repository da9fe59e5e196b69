#include "cutback/io/csv_rows.hpp"

#include <algorithm>

#include "cutback/io/table_kind.hpp"
#include "io/encoding.hpp"

namespace cutback::io {
namespace {

constexpr std::size_t k_piece = 64 * 1024;
constexpr std::string_view k_byte_order_mark = "\xEF\xBB\xBF";

/// For a character that is rare: std::count looks at every byte by itself.
std::size_t count(std::string_view text, char c) {
  std::size_t number = 0;
  for (std::size_t at = text.find(c); at != std::string_view::npos; at = text.find(c, at + 1)) {
    ++number;
  }
  return number;
}

/// Length of the whole rows at the start of `text`: up to the last line end outside quotes. In a
/// file that breaks the rules of quotes it may be too long, never too short for the error to show.
std::size_t whole_rows(std::string_view text) {
  bool in_quotes = count(text, '"') % 2 != 0;
  for (std::size_t end = text.size(); end > 0;) {
    const std::size_t line_end = text.rfind('\n', end - 1);
    if (line_end == std::string_view::npos) return 0;
    const std::string_view behind = text.substr(line_end, end - line_end);
    if (count(behind, '"') % 2 != 0) in_quotes = !in_quotes;
    if (!in_quotes) return line_end + 1;
    end = line_end;
  }
  return 0;
}

InputError workbook_in_pipe(const std::string& name) {
  return InputError(Fault{.code = ErrorCode::bad_syntax,
                          .what = "a workbook (.xlsx, .xls) cannot be read from a pipe",
                          .where = name,
                          .given = {},
                          .allowed = {},
                          .hint = "give the .xlsx file itself, or CSV"});
}

}  // namespace

CsvRows::CsvRows(const std::string& path) : name_(path) {
  const std::string place = input_place(path);
  auto pipe = std::make_unique<PieceReader>(place);
  if (pipe->is_file()) {
    file_ = std::make_unique<WholeFile>(place, bounds::k_schedule_bytes);
    open_text(file_->text());
  } else {
    pipe_ = std::move(pipe);
  }
}

CsvRows::CsvRows(std::string_view text, std::string name) : name_(std::move(name)) {
  open_text(text);
}

/// @param text  whole; borrowed, where it need not be decoded
void CsvRows::open_text(std::string_view text) {
  rest_ = text;
  if (auto made = decoded(text, name_)) {
    decoded_ = std::move(made->text);
    encoding_ = std::move(made->encoding);
    rest_ = decoded_;
  }
  checked_ = rest_.find('\0') == std::string_view::npos;
  size_ = rest_.size();
}

/// Reads the beginning of a pipe; all of it, where it must be decoded.
/// @return whether it is still a pipe
bool CsvRows::begin_pipe() {
  if (pipe_ == nullptr) return false;
  if (pipe_begun_) return true;
  pipe_begun_ = true;
  pipe_more_ = pipe_->read(carried_, k_piece);
  // A character may be cut through at the end of what was read.
  const std::size_t whole = pipe_more_ ? carried_.rfind('\n') : carried_.size();
  const bool other = table_kind(carried_) == TableKind::text &&
                     needs_decoding(std::string_view(carried_).substr(0, whole));
  if (!other) return true;
  while (pipe_more_) {
    pipe_more_ = pipe_->read(carried_, k_piece);
    if (carried_.size() > bounds::k_file_bytes.most) {
      throw InputError(beyond(bounds::k_file_bytes, name_));
    }
  }
  auto made = decoded(carried_, name_);
  if (!made) return true;
  decoded_ = std::move(made->text);
  encoding_ = std::move(made->encoding);
  rest_ = decoded_;
  size_ = rest_.size();
  checked_ = true;
  carried_.clear();
  pipe_.reset();
  return false;
}

std::string_view CsvRows::beginning() {
  const std::string_view text = begin_pipe() ? std::string_view(carried_) : rest_;
  const bool whole = text.size() <= k_piece && !(pipe_ != nullptr && pipe_more_);
  if (whole) return text;
  const std::string_view first = text.substr(0, k_piece);
  return first.substr(0, whole_rows(first));
}

CsvRows::~CsvRows() = default;

/// Whole rows of about a piece; all of it when no more follows.
/// @throws InputError where a row is longer than any is
std::string_view CsvRows::cut(std::string_view text, bool more) const {
  for (std::size_t length = k_piece;; length *= 2) {
    if (length / 2 > bounds::k_row_bytes.most) {
      throw InputError(beyond(bounds::k_row_bytes, name_ + ", line " + std::to_string(line_)));
    }
    if (length >= text.size()) return more ? text.substr(0, whole_rows(text)) : text;
    const std::size_t whole = whole_rows(text.substr(0, length));
    if (whole > 0) return text.substr(0, whole);
  }
}

/// Reads on until there is a whole row, or the end.
void CsvRows::fill(RowBlock& block) {
  block.text = std::move(carried_);
  block.text.reserve(k_piece);
  carried_.clear();
  bool more = pipe_more_;
  bool first = line_ == 1;
  do {
    if (more && !first) more = pipe_->read(block.text, std::max(k_piece, block.text.size()));
    first = false;
    block.piece = cut(block.text, more);
  } while (more && block.piece.empty());
  carried_ = block.text.substr(block.piece.size());
  pipe_more_ = more;
}

void CsvRows::check_all() const {
  if (pipe_) return;
  CsvReader reader(rest_, name_, 1, separator_, checked_);
  CsvRecord record;
  while (reader.next(record)) {
  }
}

bool CsvRows::read(RowBlock& block) {
  block.rows = 0;
  block.line = line_;
  block.reader.reset();
  if (begin_pipe()) {
    fill(block);
  } else {
    block.piece = cut(rest_, false);
    rest_.remove_prefix(block.piece.size());
  }
  if (line_ == 1 && pipe_) {
    const TableKind kind = table_kind(block.text);
    if (kind == TableKind::xlsx || kind == TableKind::old_workbook || kind == TableKind::locked) {
      throw workbook_in_pipe(name_);
    }
    if (kind != TableKind::text && kind != TableKind::empty) refuse_table(kind, name_);
  }
  if (line_ == 1 && block.piece.starts_with(k_byte_order_mark)) {
    block.piece.remove_prefix(k_byte_order_mark.size());
  }
  line_ += count(block.piece, '\n');
  return !block.piece.empty();
}

namespace {

/// ="0012": how a program keeps a spreadsheet from taking a text for a number.
std::string_view unguarded(std::string_view text) {
  constexpr std::size_t k_guard = 3;
  if (text.size() < k_guard || !text.starts_with("=\"") || !text.ends_with('"')) return text;
  const std::string_view inside = text.substr(2, text.size() - k_guard);
  return inside.find('"') == std::string_view::npos ? inside : text;
}

}  // namespace

void CsvRows::finish(RowBlock& block) const {
  if (block.piece.empty()) return;
  block.reader = std::make_unique<CsvReader>(block.piece, name_, block.line, separator_, checked_);
  block.piece = {};
  for (;; ++block.rows) {
    if (block.records.size() == block.rows) block.records.emplace_back();
    if (!block.reader->next(block.records[block.rows])) return;
    CsvRecord& record = block.records[block.rows];
    if (record.bare) continue;  // there are no quotes in it
    for (std::string_view& field : record.fields) {
      if (field.starts_with('=')) field = unguarded(field);
    }
  }
}

std::optional<double> CsvRows::taken() const {
  if (pipe_ || size_ == 0) return std::nullopt;
  return 1.0 - static_cast<double>(rest_.size()) / static_cast<double>(size_);
}

}  // namespace cutback::io

#include "cutback/io/csv_rows.hpp"

#include "cutback/io/table_kind.hpp"

namespace cutback::io {
namespace {

constexpr std::size_t k_piece = 64 * 1024;
constexpr std::size_t k_longest_row = 64 * 1024 * 1024;
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
    mapped_ = std::make_unique<MappedFile>(place);
    rest_ = mapped_->text();
    size_ = rest_.size();
  } else {
    pipe_ = std::move(pipe);
  }
}

CsvRows::CsvRows(std::string_view text, std::string name)
    : name_(std::move(name)), rest_(text), size_(text.size()) {}

CsvRows::~CsvRows() = default;

/// Whole rows of about a piece; all of it when no more follows.
std::string_view CsvRows::cut(std::string_view text, bool more) const {
  for (std::size_t length = k_piece;; length *= 2) {
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
  bool more = true;
  do {
    more = pipe_->read(block.text, k_piece);
    block.piece = cut(block.text, more);
  } while (more && block.piece.empty() && block.text.size() < k_longest_row);
  if (block.piece.empty()) block.piece = block.text;  // a row that has no end: finish() says so
  carried_ = block.text.substr(block.piece.size());
}

void CsvRows::check_all() const {
  if (pipe_) return;
  CsvReader reader(rest_, name_);
  CsvRecord record;
  while (reader.next(record)) {
  }
}

bool CsvRows::read(RowBlock& block) {
  block.rows = 0;
  block.line = line_;
  block.reader.reset();
  if (pipe_) {
    fill(block);
  } else {
    block.piece = cut(rest_, false);
    rest_.remove_prefix(block.piece.size());
  }
  if (line_ == 1 && table_kind(block.text) != TableKind::text) throw workbook_in_pipe(name_);
  if (line_ == 1 && block.piece.starts_with(k_byte_order_mark)) {
    block.piece.remove_prefix(k_byte_order_mark.size());
  }
  line_ += count(block.piece, '\n');
  return !block.piece.empty();
}

void CsvRows::finish(RowBlock& block) const {
  if (block.piece.empty()) return;
  block.reader = std::make_unique<CsvReader>(block.piece, name_, block.line);
  block.piece = {};
  for (;; ++block.rows) {
    if (block.records.size() == block.rows) block.records.emplace_back();
    if (!block.reader->next(block.records[block.rows])) return;
  }
}

std::optional<double> CsvRows::taken() const {
  if (pipe_ || size_ == 0) return std::nullopt;
  return 1.0 - static_cast<double>(rest_.size()) / static_cast<double>(size_);
}

}  // namespace cutback::io

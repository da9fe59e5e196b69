#include "cutback/io/csv.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "io/utf8.hpp"

namespace cutback::io {
namespace {

constexpr std::string_view k_byte_order_mark = "\xEF\xBB\xBF";

/// True for the bytes that end a field without quotes, or cannot stand in one.
template <char Separator>
constexpr std::array<bool, 256> k_ends_bare = [] {
  std::array<bool, 256> ends{};
  for (const char c : {Separator, '\n', '\r', '"'}) ends[static_cast<unsigned char>(c)] = true;
  return ends;
}();

const std::array<bool, 256>& ends_bare_of(char separator) {
  if (separator == ';') return k_ends_bare<';'>;
  if (separator == '|') return k_ends_bare<'|'>;
  return separator == '\t' ? k_ends_bare<'\t'> : k_ends_bare<','>;
}

bool needs_quotes(std::string_view field) {
  return std::any_of(field.begin(), field.end(),
                     [](char c) { return k_ends_bare<','>[static_cast<unsigned char>(c)]; });
}

std::size_t count_lines(std::string_view text) {
  return static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n'));
}

}  // namespace

CsvReader::CsvReader(std::string_view text, std::string name, std::size_t first_line,
                     char separator, bool checked)
    : text_(text),
      name_(std::move(name)),
      separator_(separator),
      ends_bare_(&ends_bare_of(separator)),
      first_line_(first_line),
      line_(first_line) {
  if (first_line == 1 && text_.starts_with(k_byte_order_mark))
    text_.remove_prefix(k_byte_order_mark.size());
  first_bad_byte_ =
      checked ? std::string_view::npos : std::min(text_.find('\0'), first_invalid_utf8(text_));
}

bool CsvReader::next(CsvRecord& record) {
  if (first_bad_byte_ < text_.size()) throw encoding_fault();
  for (;;) {  // lines without any character
    if (text_.substr(position_, 1) == "\n") {
      position_ += 1;
    } else if (text_.substr(position_, 2) == "\r\n") {
      position_ += 2;
    } else {
      break;
    }
    ++line_;
  }
  if (position_ == text_.size()) return false;
  record.line = line_;
  record.fields.clear();
  record.bare = take_bare_fields(record);
  if (record.bare) return true;
  while (take_field(record)) {
  }
  return true;
}

/// Reads fields without quotes as far as they go. @return whether they were the whole row
bool CsvReader::take_bare_fields(CsvRecord& record) {
  const std::array<bool, 256>& ends_bare = *ends_bare_;
  const char separator = separator_;
  for (std::size_t at = position_; at < text_.size(); ++at) {
    const char c = text_[at];
    if (!ends_bare[static_cast<unsigned char>(c)]) continue;
    if (c != separator && c != '\n') return false;
    record.fields.push_back(text_.substr(position_, at - position_));
    position_ = at + 1;
    if (c == separator) continue;
    ++line_;
    return true;
  }
  return false;
}

/// Reads a field and what ends it. @return whether another field follows
bool CsvReader::take_field(CsvRecord& record) {
  const std::size_t start_line = line_;
  const bool in_quotes = position_ < text_.size() && text_[position_] == '"';
  record.fields.push_back(in_quotes ? quoted() : bare());
  if (position_ == text_.size()) return false;
  const char end = text_[position_];
  if (end == separator_) {
    ++position_;
    return true;
  }
  if (end == '\n' || text_.substr(position_, 2) == "\r\n") {
    position_ += end == '\n' ? 1 : 2;
    ++line_;
    return false;
  }
  const std::string field = ", field " + std::to_string(record.fields.size());
  if (end == '\r') {
    throw fault("a carriage return that no line feed follows" + field, line_,
                "save the file with line ends LF or CRLF");
  }
  if (in_quotes) {
    throw fault(
        "text after a closing quote" + field, line_,
        "inside quotes a quote is written twice; nothing but a separator follows the last one");
  }
  throw fault("a quote inside a field that does not start with one" + field, start_line,
              "put the whole field in quotes and write the quote twice");
}

std::string_view CsvReader::bare() {
  const std::size_t start = position_;
  const char* const data = text_.data();
  const std::size_t size = text_.size();
  std::size_t i = start;
  while (i < size && !(*ends_bare_)[static_cast<unsigned char>(data[i])]) ++i;
  position_ = i;
  return text_.substr(start, i - start);
}

std::string_view CsvReader::quoted() {
  const std::size_t start_line = line_;
  std::size_t start = position_ + 1;
  std::string* owned = nullptr;
  for (;;) {
    const std::size_t quote = text_.find('"', start);
    if (quote == std::string_view::npos) {
      throw fault("a quote is opened and never closed", start_line,
                  "inside quotes a quote is written twice");
    }
    const std::string_view part = text_.substr(start, quote - start);
    line_ += count_lines(part);
    position_ = quote + 1;
    const bool doubled = position_ < text_.size() && text_[position_] == '"';
    if (!doubled && owned == nullptr) return part;
    if (owned == nullptr) owned = &unquoted_.emplace_back();
    owned->append(part);
    if (!doubled) return *owned;
    owned->push_back('"');
    start = position_ + 1;
  }
}

/// The error for the byte that is no text, whatever else may be wrong with the file.
InputError CsvReader::encoding_fault() {
  const std::size_t line = first_line_ + count_lines(text_.substr(0, first_bad_byte_));
  if (text_[first_bad_byte_] == '\0') {
    return fault("this is not a text file: it holds a zero byte", line,
                 "save the table as CSV in UTF-8, not as a workbook and not in UTF-16");
  }
  return fault("bytes that are not UTF-8", line, "save the file as CSV in UTF-8");
}

/// An error, after which the reader is at its end.
InputError CsvReader::fault(std::string what, std::size_t line, std::string hint) {
  position_ = text_.size();
  first_bad_byte_ = std::string_view::npos;
  return InputError(Fault{.code = ErrorCode::bad_syntax,
                          .what = std::move(what),
                          .where = name_ + ", line " + std::to_string(line),
                          .given = {},
                          .allowed = {},
                          .hint = std::move(hint)});
}

void append_csv_field(std::string& out, std::string_view field) {
  const bool spaced = !field.empty() && (field.front() == ' ' || field.back() == ' ');
  if (!spaced && !needs_quotes(field)) {
    out += field;
    return;
  }
  out += '"';
  for (const char c : field) {
    if (c == '"') out += '"';
    out += c;
  }
  out += '"';
}

namespace {

/// Whether a spreadsheet would run it, or it looks as if it had been marked before.
bool is_run(std::string_view text) {
  const std::size_t at = text.find_first_not_of('\'');
  constexpr std::string_view k_run = "=+-@\t\r";
  return at != std::string_view::npos && k_run.find(text[at]) != std::string_view::npos;
}

}  // namespace

void append_csv_text(std::string& out, std::string_view text) {
  if (!is_run(text)) return append_csv_field(out, text);
  append_csv_field(out, "'" + std::string(text));
}

std::string_view text_of_csv(std::string_view field) {
  return field.starts_with('\'') && is_run(field) ? field.substr(1) : field;
}

std::string csv_field(std::string_view field) {
  std::string out;
  append_csv_field(out, field);
  return out;
}

}  // namespace cutback::io

#pragma once
// A strict reader of comma-separated values (RFC 4180), with line numbers.

#include <cstddef>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/error.hpp"

namespace cutback::io {

/// One record: its fields without quotes, and the line of the text on which it began (from 1).
struct CsvRecord {
  std::size_t line = 0;
  std::vector<std::string> fields;
};

/// Reads records one after the other. Fields are separated by commas; a field may stand in quotes
/// and then holds commas, line breaks and doubled quotes; lines end in LF or CRLF; a UTF-8 byte
/// order mark at the start is skipped; lines without any character are skipped.
/// Borrowed, not copied: `text` must outlive the reader.
class CsvReader {
 public:
  /// @param name  of the file, for messages
  CsvReader(std::string_view text, std::string name);

  /// Puts the next record into `record` (its storage is used again).
  /// @return false at the end
  /// @throws InputError{bad_syntax} with the line: a quote that does not close, text after a
  /// closing quote, a quote inside an unquoted field, a NUL byte, a lone CR
  bool next(CsvRecord& record);

 private:
  std::string_view text_;
  std::string name_;
  std::size_t position_ = 0;
  std::size_t line_ = 1;
};

/// `field` quoted where it must be (comma, quote, line break, leading or trailing space).
[[nodiscard]] std::string csv_field(std::string_view field);

}  // namespace cutback::io

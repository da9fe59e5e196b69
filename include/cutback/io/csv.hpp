#pragma once
// A strict reader of comma-separated values (RFC 4180), with line numbers.

#include <array>
#include <cstddef>
#include <cstdint>
#include <deque>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/error.hpp"

namespace cutback::io {

/// What a spreadsheet shows of a cell besides its text.
struct CellMark {
  enum class Kind : std::uint8_t {
    above,           ///< covered by a merged cell that begins in a row above; its text stands here
    beside,          ///< covered by one that begins to the left, in this row
    struck,          ///< struck through
    struck_in_part,  ///< some of its text is
  };
  std::uint16_t cell = 0;
  Kind kind = Kind::struck;
};

/// One record: its fields without quotes, and the line of the text on which it began (from 1).
/// The fields are views into the reader's text, or into the reader itself where a field held
/// doubled quotes: they are valid as long as both live.
struct CsvRecord {
  std::size_t line = 0;
  std::vector<std::string_view> fields;
  /// The fields stand in one text, a separator between every two and none in quotes. Not said of
  /// every such row.
  bool bare = false;
  bool hidden = false;          ///< the row is, in a spreadsheet
  std::vector<CellMark> marks;  ///< of a spreadsheet, by cell
};

/// Reads records one after the other. Fields are separated by commas, or by another sign; a field
/// may stand in quotes and then holds such signs, line breaks and doubled quotes; lines end in LF
/// or CRLF; a UTF-8 byte order mark at the start is skipped; lines without any character are
/// skipped. Borrowed, not copied: `text` must outlive the reader.
class CsvReader {
 public:
  /// @param name        of the file, for messages
  /// @param first_line  number of the text's first line, where the text is a part of a file
  /// @param separator   a comma, a semicolon or a tab
  /// @param checked     the text is known to be UTF-8 without a NUL byte
  CsvReader(std::string_view text, std::string name, std::size_t first_line = 1,
            char separator = ',', bool checked = false);
  CsvReader(const CsvReader&) = delete;
  CsvReader& operator=(const CsvReader&) = delete;

  /// Puts the next record into `record` (its storage is used again).
  /// @return false at the end, and ever after an error
  /// @throws InputError{bad_syntax} with the line: a quote that does not close, text after a
  /// closing quote, a quote inside an unquoted field, a lone CR outside quotes; and before any
  /// record when there is a NUL byte or what is not UTF-8 anywhere in the text
  bool next(CsvRecord& record);

 private:
  bool take_bare_fields(CsvRecord& record);
  bool take_field(CsvRecord& record);
  std::string_view bare();
  std::string_view quoted();
  InputError encoding_fault();
  InputError fault(std::string what, std::size_t line, std::string hint);

  std::string_view text_;
  std::string name_;
  char separator_;
  const std::array<bool, 256>* ends_bare_;  ///< the bytes that a bare field does not hold
  std::size_t position_ = 0;
  std::size_t first_line_;
  std::size_t line_;
  std::size_t first_bad_byte_;        ///< NUL or not UTF-8; past the end when there is none
  std::deque<std::string> unquoted_;  ///< fields that held doubled quotes; never moved
};

/// `field` quoted where it must be (comma, quote, line break, leading or trailing space).
[[nodiscard]] std::string csv_field(std::string_view field);
/// The same, put behind `out`.
void append_csv_field(std::string& out, std::string_view field);

/// A text that may come from anywhere, put behind `out` as a field that no spreadsheet runs: where
/// it begins with = + - @, a tab or a carriage return, with or without apostrophes before it, one
/// apostrophe more stands before it. Numbers are not for this.
void append_csv_text(std::string& out, std::string_view text);
/// What append_csv_text was given.
[[nodiscard]] std::string_view text_of_csv(std::string_view field);

}  // namespace cutback::io

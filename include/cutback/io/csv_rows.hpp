#pragma once
// A CSV file piece by piece, so that several threads can split it into fields.

#include <memory>
#include <string>
#include <string_view>

#include "cutback/io/files.hpp"
#include "cutback/io/rows.hpp"

namespace cutback::io {

/// Gives out whole rows of a CSV text. A file is read whole; of a pipe no more is held than a
/// piece, or its longest row. A text in UTF-16 or Windows-1252 is made UTF-8 first, and held as a
/// whole.
class CsvRows : public RowSource {
 public:
  /// @param path  of a file or a pipe; `-` is standard input
  /// @throws FileError
  explicit CsvRows(const std::string& path);
  /// @param text  borrowed
  /// @param name  for messages
  CsvRows(std::string_view text, std::string name);
  ~CsvRows() override;

  /// Reads a whole file once, so that a fault of it is known before its first row is used. A pipe
  /// is left as it is.
  /// @throws InputError
  void check_all() const;

  /// The beginning of the text, to find out how it is written; some rows where there are as many.
  /// @throws InputError, FileError
  [[nodiscard]] std::string_view beginning();
  /// What stands between the fields; before the first row is read. A comma without it.
  void set_separator(char separator) { separator_ = separator; }
  /// The encoding that the text was in; empty where that is UTF-8.
  [[nodiscard]] const std::string& encoding() const { return encoding_; }

  bool read(RowBlock& block) override;
  void finish(RowBlock& block) const override;
  [[nodiscard]] std::optional<double> taken() const override;
  [[nodiscard]] std::string_view row_word() const override { return "line"; }

 private:
  void fill(RowBlock& block);
  void open_text(std::string_view text);
  bool begin_pipe();
  std::string_view cut(std::string_view text, bool more) const;

  std::string name_;
  std::unique_ptr<WholeFile> file_;
  std::unique_ptr<PieceReader> pipe_;
  std::string_view rest_;  ///< of the whole text
  std::size_t size_ = 0;
  std::string carried_;  ///< of a pipe: what has been read behind the last whole row
  std::string decoded_;  ///< where the text was not UTF-8
  std::string encoding_;
  char separator_ = ',';
  bool checked_ = false;  ///< the whole text is known to be UTF-8 without a NUL byte
  bool pipe_begun_ = false;
  bool pipe_more_ = true;
  std::size_t line_ = 1;
};

}  // namespace cutback::io

#pragma once
// A CSV file piece by piece, so that several threads can split it into fields.

#include <memory>
#include <string>
#include <string_view>

#include "cutback/io/files.hpp"
#include "cutback/io/rows.hpp"

namespace cutback::io {

/// Gives out whole rows of a CSV text. A file is mapped; of a pipe no more is held than a piece, or
/// its longest row.
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

  bool read(RowBlock& block) override;
  void finish(RowBlock& block) const override;
  [[nodiscard]] std::optional<double> taken() const override;
  [[nodiscard]] std::string_view row_word() const override { return "line"; }

 private:
  void fill(RowBlock& block);
  std::string_view cut(std::string_view text, bool more) const;

  std::string name_;
  std::unique_ptr<MappedFile> mapped_;
  std::unique_ptr<PieceReader> pipe_;
  std::string_view rest_;  ///< of the mapped text
  std::size_t size_ = 0;
  std::string carried_;  ///< of a pipe: what has been read behind the last whole row
  std::size_t line_ = 1;
};

}  // namespace cutback::io

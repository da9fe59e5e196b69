#include "cli/open_schedule.hpp"

#include <filesystem>

#include "cutback/error.hpp"
#include "cutback/io/csv_rows.hpp"
#include "cutback/io/files.hpp"
#include "cutback/io/table_kind.hpp"

namespace cutback::cli {
namespace {

bool is_ordinary(const std::string& path) {
  std::error_code error;
  return std::filesystem::is_regular_file(io::input_place(path), error);
}

/// Of an ordinary file. What a pipe holds shows when it is read; nothing of it may be lost before.
io::TableKind kind_of(const std::string& path) {
  if (!is_ordinary(path)) return io::TableKind::text;
  constexpr std::size_t k_enough = 8;
  io::PieceReader file(io::input_place(path));
  std::string first;
  file.read(first, k_enough);
  return io::table_kind(first);
}

InputError no_sheets(const std::string& path, const std::string& sheet) {
  return InputError(Fault{.code = ErrorCode::contradiction,
                          .what = "the file is no workbook (.xlsx) and has no sheets",
                          .where = "--sheet",
                          .given = sheet + " of " + path,
                          .allowed = {},
                          .hint = "leave --sheet out"});
}

}  // namespace

std::unique_ptr<io::RowSource> open_schedule(const std::string& path, const std::string& sheet,
                                             char decimal, const Runtime& runtime,
                                             const io::MappedFile* pipe) {
  const bool to_stdout = runtime.common.output.empty();
  if (kind_of(path) != io::TableKind::text) {
    const auto open = runtime.extras().open_workbook;
    if (to_stdout) {
      const auto rows = open(path, sheet, decimal);
      io::RowBlock block;
      while (rows->read(block)) rows->finish(block);
    }
    return open(path, sheet, decimal);
  }
  if (!sheet.empty()) throw no_sheets(path, sheet);
  auto rows = pipe != nullptr ? std::make_unique<io::CsvRows>(pipe->text(), path)
                              : std::make_unique<io::CsvRows>(path);
  if (to_stdout) rows->check_all();
  return rows;
}

std::optional<io::MappedFile> take_pipe(const std::string& path) {
  if (is_ordinary(path)) return std::nullopt;
  return io::MappedFile(io::input_place(path));
}

}  // namespace cutback::cli

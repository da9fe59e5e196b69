#include "run/open_schedule.hpp"

#include <filesystem>
#include <system_error>

#include "cutback/io/csv_rows.hpp"
#include "cutback/io/table_kind.hpp"

namespace cutback::run {
namespace {

bool is_ordinary(const std::string& path) {
  std::error_code error;
  return std::filesystem::is_regular_file(io::input_place(path), error);
}

}  // namespace

bool is_workbook(const std::string& path) {
  if (!is_ordinary(path)) return false;
  constexpr std::size_t k_enough = 8;
  io::PieceReader file(io::input_place(path));
  std::string first;
  file.read(first, k_enough);
  return io::table_kind(first) != io::TableKind::text;
}

std::unique_ptr<io::RowSource> open_schedule(const std::string& path, const Opening& opening) {
  if (opening.open_workbook != nullptr) {
    if (opening.check_first) {
      const auto rows = opening.open_workbook(path, opening.sheet, opening.decimal);
      io::RowBlock block;
      while (rows->read(block)) rows->finish(block);
    }
    return opening.open_workbook(path, opening.sheet, opening.decimal);
  }
  auto rows = opening.pipe != nullptr ? std::make_unique<io::CsvRows>(opening.pipe->text(), path)
                                      : std::make_unique<io::CsvRows>(path);
  if (opening.check_first) rows->check_all();
  return rows;
}

std::optional<io::MappedFile> take_pipe(const std::string& path) {
  if (is_ordinary(path)) return std::nullopt;
  return io::MappedFile(io::input_place(path));
}

}  // namespace cutback::run

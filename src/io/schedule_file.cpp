#include "cutback/io/schedule_file.hpp"

#include <algorithm>
#include <utility>

namespace cutback::io {
namespace {

constexpr std::size_t k_rows_searched = 30;
constexpr std::size_t k_most_columns = 16384;  // more than any spreadsheet has

bool is_blank(const CsvRecord& record) {
  return std::all_of(record.fields.begin(), record.fields.end(), [](std::string_view text) {
    return text.find_first_not_of(" \t\r\n") == std::string_view::npos;
  });
}

/// Reads on to the row of headings.
class HeadingSearch {
 public:
  HeadingSearch(RowSource& source, const std::string& name, const schedule::Format& format,
                std::optional<std::size_t> header_row)
      : source_(source), name_(name), format_(format), header_row_(header_row) {}

  /// @param block  holds the headings then, as its row `at`
  void run(RowBlock& block, std::size_t& at) {
    while (source_.read(block)) {
      source_.finish(block);
      for (at = 0; at < block.rows; ++at) {
        const CsvRecord& record = block.records[at];
        check_width(record);
        if (header_row_ ? record.line == *header_row_
                        : schedule::known_headings(record.fields, format_) >= 2) {
          return;
        }
        ++searched_;
        if (header_row_ ? record.line > *header_row_ : searched_ >= k_rows_searched) not_found();
      }
    }
    not_found();
  }

 private:
  void check_width(const CsvRecord& record) const {
    if (record.fields.size() <= k_most_columns) return;
    throw InputError(make_fault(
        ErrorCode::out_of_range, "this is no cable schedule: too many columns",
        name_ + ", " + std::string(source_.row_word()) + " " + std::to_string(record.line),
        std::to_string(record.fields.size()), "", "a row is one cable, a column one figure"));
  }

  [[noreturn]] void not_found() const {
    if (header_row_) {
      throw InputError(make_fault(ErrorCode::missing,
                                  "no row begins on this " + std::string(source_.row_word()), name_,
                                  "--header-row " + std::to_string(*header_row_), "", ""));
    }
    // A wrong name in --column is often why.
    if (auto faults = schedule::unknown_columns(format_); !faults.empty()) {
      throw InputError(std::move(faults));
    }
    throw InputError(make_fault(
        ErrorCode::missing, "there is no row of headings such as tag and sheath_od_mm", name_, "",
        "",
        "say where it is with --header-row, and own headings with --column; cutback schedule "
        "--list-columns names the columns"));
  }

  RowSource& source_;
  const std::string& name_;
  const schedule::Format& format_;
  std::optional<std::size_t> header_row_;
  std::size_t searched_ = 0;
};

/// Takes out the rows before `first` and the blank ones. Their storage stays for later.
void keep_rows(RowBlock& block, std::size_t first) {
  std::size_t kept = 0;
  for (std::size_t i = first; i < block.rows; ++i) {
    if (is_blank(block.records[i])) continue;
    if (i != kept) std::swap(block.records[i], block.records[kept]);
    ++kept;
  }
  block.rows = kept;
}

}  // namespace

ScheduleFile::ScheduleFile(RowSource& source, const std::string& name,
                           const schedule::Format& format, std::optional<std::size_t> header_row)
    : source_(source), first_(std::in_place) {
  std::size_t at = 0;
  HeadingSearch(source, name, format, header_row).run(*first_, at);
  const CsvRecord& headings = first_->records[at];
  layout_ = schedule::make_layout(headings.fields, format, name + ", " + row_name(headings.line));
  keep_rows(*first_, at + 1);
  while (first_->rows == 0) {
    if (!source_.read(*first_)) {
      throw InputError(
          make_fault(ErrorCode::missing, "there is no cable below the headings", name, "", "", ""));
    }
    finish(*first_);
  }
}

std::string ScheduleFile::row_name(std::size_t number) const {
  return std::string(source_.row_word()) + " " + std::to_string(number);
}

bool ScheduleFile::read(RowBlock& block) {
  if (!first_) return source_.read(block);
  block = std::move(*first_);
  first_.reset();
  return true;
}

void ScheduleFile::finish(RowBlock& block) const {
  source_.finish(block);
  keep_rows(block, 0);
}

}  // namespace cutback::io

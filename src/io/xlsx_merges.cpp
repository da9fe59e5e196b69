#include "io/xlsx_merges.hpp"

#include <algorithm>
#include <charconv>
#include <optional>

namespace cutback::io {
namespace {

constexpr std::size_t k_most_columns = 16384;

struct CellName {
  std::size_t row = 0;
  std::size_t column = 0;
};

/// A reference such as AB12, with or without $.
std::optional<CellName> cell_name(std::string_view text) {
  std::string plain(text);
  plain.erase(std::remove(plain.begin(), plain.end(), '$'), plain.end());
  const auto [column, letters] = xlsx_column(plain);
  if (letters == 0) return std::nullopt;
  CellName name{.row = 0, .column = column};
  const char* const begin = plain.data() + letters;
  const char* const behind = plain.data() + plain.size();
  const auto [end, error] = std::from_chars(begin, behind, name.row);
  if (error != std::errc{} || end != behind || name.row == 0) return std::nullopt;
  return name;
}

}  // namespace

XlsxColumnName xlsx_column(std::string_view reference) {
  constexpr std::size_t k_most_letters = 4;  // one more than there are, so that XFDA is seen
  std::size_t column = 0;
  std::size_t letters = 0;
  while (letters < reference.size() && letters < k_most_letters && reference[letters] >= 'A' &&
         reference[letters] <= 'Z') {
    column = column * 26 + static_cast<std::size_t>(reference[letters] - 'A' + 1);
    ++letters;
  }
  if (letters == 0 || column > k_most_columns) return {};
  return {column - 1, letters};
}

bool XlsxMerges::add(std::string_view reference) {
  const std::size_t colon = reference.find(':');
  const auto first = cell_name(reference.substr(0, colon));
  const auto last =
      colon == std::string_view::npos ? first : cell_name(reference.substr(colon + 1));
  if (!first || !last || last->row < first->row || last->column < first->column) return false;
  if (last->row == first->row && last->column == first->column) return true;
  list_.push_back({first->row, first->column, last->row, last->column, {}});
  return true;
}

void XlsxMerges::sort() {
  std::stable_sort(list_.begin(), list_.end(),
                   [](const XlsxMerge& a, const XlsxMerge& b) { return a.top < b.top; });
}

bool XlsxMerges::cross(std::size_t from, std::size_t to) const {
  const auto first =
      std::lower_bound(list_.begin(), list_.end(), from,
                       [](const XlsxMerge& merge, std::size_t row) { return merge.top < row; });
  for (auto at = first; at != list_.end() && at->top < to; ++at) {
    if (at->bottom >= to) return true;
  }
  return false;
}

}  // namespace cutback::io

#include <algorithm>

#include "core/schedule/row_words.hpp"
#include "core/schedule/tag_names.hpp"
#include "cutback/schedule/layout.hpp"
#include "cutback/text.hpp"

namespace cutback::schedule {
namespace {

/// What the cell says, else the default; nothing where it holds no such number.
std::optional<std::uint64_t> stated(const Layout& layout, std::string_view text) {
  if (layout.decimal == '.') return count_in(layout.usual, text);
  std::string points(text);
  std::replace(points.begin(), points.end(), ',', '.');
  return count_in(layout.usual, points);
}

}  // namespace

std::optional<RowCount> count_of(const Layout& layout, Cells cells) {
  RowCount count;
  const std::string_view text = cell(cells, layout.quantity);
  const bool given = !layout.is_not_given(text);
  const bool told = given || layout.quantity_default.has_value();
  if (told) {
    const auto number = stated(layout, given ? text : layout.quantity_default->text);
    if (!number) return std::nullopt;
    count.cables = *number;
  }
  const std::string_view tag = cell(cells, layout.tag);
  const TagNames names = names_in_tag(tag, cell(cells, layout.from), cell(cells, layout.to));
  if (names.several() && (!told || count.cables == names.cables)) {
    count.cables = names.cables;
    count.by_tag = !told;
  } else if (names.several()) {
    count.unclear = "the tag names " + std::to_string(names.cables) +
                    " cables, and the quantity is " + std::to_string(count.cables);
  } else if (names.may_be_several && !told) {
    count.unclear = "the tag may name several cables, and is counted as one";
  }
  // A dash says no more than a blank cell.
  const bool asked = std::any_of(text.begin(), text.end(), [](char c) {
    const char small = small_letter(c);
    return c == '?' || (small >= 'a' && small <= 'z');
  });
  if (!told && asked && !count.by_tag && count.unclear.empty()) {
    count.unclear = "the quantity is \"" + std::string(text) + "\", and is counted as one";
  }
  return count;
}

std::optional<std::uint64_t> quantity_of(const Layout& layout, Cells cells) {
  const auto count = count_of(layout, cells);
  return count ? std::optional(count->cables) : std::nullopt;
}

std::uint64_t quantity_default_of(const Layout& layout, Cells cells) {
  if (!layout.quantity_default || !layout.is_not_given(cell(cells, layout.quantity))) return 0;
  return std::uint64_t{1} << layout.quantity_default->number;
}

}  // namespace cutback::schedule

#include "core/schedule/row_count.hpp"

#include <algorithm>
#include <array>
#include <map>

#include "core/schedule/row_words.hpp"
#include "core/schedule/tag_names.hpp"
#include "cutback/number.hpp"
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

/// More cables of one tag nobody has laid side by side. Common practice, no source.
constexpr std::uint64_t k_most_likely = 100;

using Words = std::vector<std::string_view>;

Words words_of(std::string_view text) {
  Words words;
  constexpr std::string_view k_between = " .,:;/()#'-";
  while (!text.empty()) {
    const std::size_t end = std::min(text.find_first_of(k_between), text.size());
    if (end > 0) words.push_back(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return words;
}

template <std::size_t N>
bool is_one_of(std::string_view word, const std::array<std::string_view, N>& words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

// Common practice, no source: nobody has laid these headings and words down.
constexpr std::array<std::string_view, 14> k_counting{
    "no",  "nos",      "number", "qty",   "quantity", "count", "reqd",
    "req", "required", "needed", "total", "d",        "off",   "pcs"};
constexpr std::array<std::string_view, 10> k_beside{"of",  "per",  "cable", "each", "row",
                                                    "end", "side", "to",    "be",   "glanded"};
constexpr std::array<std::string_view, 2> k_of_end{"from", "to"};

/// "Glands Required", "No. of Ends", "Gland Qty (From)"; not "Gland No", which may be its code.
std::optional<CountColumn> count_column(const UnreadColumn& column) {
  const std::string heading = small_letters(column.heading);
  bool glands = false;
  bool gland = false;
  bool counting = false;
  bool coded = true;  // by no other word than "No"
  bool one_end = false;
  for (const std::string_view word : words_of(heading)) {
    const bool counts = is_one_of(word, k_counting);
    const bool of_end = is_one_of(word, k_of_end);
    if (word == "glands" || word == "ends") {
      glands = true;
    } else if (word == "gland") {
      gland = true;
    } else if (!counts && !of_end && !is_one_of(word, k_beside)) {
      return std::nullopt;
    }
    counting = counting || counts;
    coded = coded && (!counts || word == "no");
    one_end =
        one_end || word == "from" || (word == "to" && heading.find("to be") == std::string::npos);
  }
  if (!glands && (!gland || !counting || coded)) return std::nullopt;
  return CountColumn{column.cell, column.heading, one_end};
}

bool is_unit_heading(std::string_view text) {
  constexpr std::array<std::string_view, 8> k_headings{
      "unit",    "units", "uom", "u/m", "u.o.m.", "unit of measure", "unit of measurement",
      "qty unit"};
  return is_one_of(small_letters(trimmed(text)), k_headings);
}

void add(std::string& unclear, const std::string& why) {
  if (!unclear.empty()) unclear += "; ";
  unclear += why;
}

/// What a column beside the quantity says that it is of, where that is no number of cables.
std::string_view other_unit(const Layout& layout, Cells cells) {
  const std::string_view unit = cell(cells, layout.quantity_unit);
  if (unit.empty() || layout.is_not_given(cell(cells, layout.quantity))) return {};
  return count_in(layout.usual, "1 " + std::string(unit)) ? std::string_view() : unit;
}

void look_at_counts(const Layout& layout, Cells cells, RowCount& count) {
  for (const CountColumn& column : layout.counts) {
    const std::string_view text = cell(cells, column.cell);
    if (layout.is_not_given(text)) continue;
    const std::uint64_t ends = column.one_end ? 1 : layout.ends().size();
    const auto number = parse_number(text);
    constexpr std::array<std::string_view, 3> k_yes{"y", "yes", "x"};
    const auto is = [&](std::uint64_t wanted) {
      return number && *number == static_cast<double>(wanted);
    };
    if (is(ends) || is(ends * count.cables) || is_one_of(small_letters(text), k_yes)) continue;
    const std::string counted = std::to_string(ends * count.cables);
    add(count.unclear, "the column " + column.heading + " says " + std::string(text) + ", and " +
                           counted + (counted == "1" ? " is counted" : " are counted"));
  }
}

/// P1/P2/P3 (looped): a cable from one to the next has two ends at each.
void look_at_places(const Layout& layout, Cells cells, RowCount& count) {
  for (const std::size_t place : {layout.from, layout.to}) {
    std::string_view text = cell(cells, place);
    if (text.find_first_of("/,;&+\n") == std::string_view::npos) continue;
    text = trimmed(text.substr(0, std::min(text.find('('), text.size())));
    const TagNames names = names_in_tag(text, {}, {});
    if (!names.several()) continue;
    add(count.unclear, "\"" + std::string(text) + "\" may be " + std::to_string(names.cables) +
                           " places, and one end is counted there");
  }
}

}  // namespace

std::optional<RowCount> count_of(const Layout& layout, Cells cells) {
  RowCount count;
  const std::string_view text = cell(cells, layout.quantity);
  const bool given = !layout.is_not_given(text);
  const bool told = given || layout.quantity_default.has_value();
  const std::string_view unit = other_unit(layout, cells);
  if (!unit.empty()) {
    count.unclear = "the quantity is " + std::string(text) + " " + std::string(unit) +
                    ", which is no number of cables; it is counted as one";
  } else if (told) {
    const auto number = stated(layout, given ? text : layout.quantity_default->text);
    if (!number) return std::nullopt;
    count.cables = *number;
  }
  const std::string_view tag = cell(cells, layout.tag);
  const TagNames names =
      names_in_tag(tag, cell(cells, layout.from), cell(cells, layout.to), layout.run_letters);
  if (!unit.empty()) {
    // It says nothing that a tag could contradict.
  } else if (names.several() && (!told || count.cables == names.cables)) {
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
  if (count.unclear.empty() && !count.by_tag && count.cables > k_most_likely) {
    count.unclear = std::to_string(count.cables) + " cables of one tag may be a length";
  }
  look_at_counts(layout, cells, count);
  look_at_places(layout, cells, count);
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

namespace {

/// Instead of what is said of a heading that nobody reads.
void say_of(const std::string& heading, const std::string& says, Layout& layout) {
  const std::string begin = layout.where + ": the heading \"" + heading + "\" is ";
  auto& warnings = layout.warnings;
  warnings.erase(std::remove_if(warnings.begin(), warnings.end(),
                                [&](const std::string& each) { return each.starts_with(begin); }),
                 warnings.end());
  warnings.push_back(begin + says);
}

bool has_column(const Layout& layout, std::string_view key) {
  return std::any_of(layout.columns.begin(), layout.columns.end(),
                     [&](const Column& column) { return column.field->key == key; });
}

/// The cell of a length beside whose figures a unit may stand.
bool is_length(const Layout& layout, std::size_t place) {
  return std::any_of(layout.columns.begin(), layout.columns.end(), [&](const Column& column) {
    return column.cell == place && column.field->key == "length_m";
  });
}

/// The letters that two of three tags at least have before their figure; empty where they have not.
std::string most_run_letters(const Layout& layout, Sample sample) {
  std::map<std::string, std::size_t> counts;
  std::size_t all = 0;
  for (const auto& row : sample) {
    if (layout.tag >= row.size()) continue;
    const std::string_view tag = trimmed(row[layout.tag]);
    if (layout.is_not_given(tag) || std::none_of(tag.begin(), tag.end(), is_digit)) continue;
    ++all;
    const std::string letters = letters_of_run(tag);
    if (!letters.empty()) ++counts[letters];
  }
  const auto most =
      std::max_element(counts.begin(), counts.end(),
                       [](const auto& a, const auto& b) { return a.second < b.second; });
  const bool enough = most != counts.end() && most->second > 1 && 3 * most->second >= 2 * all;
  return enough ? most->first : std::string();
}

/// Whether most tags of some rows stand there twice: each of those rows is one end.
bool are_paired(const Layout& layout, Sample sample) {
  std::map<std::string, std::size_t> tags;
  for (const auto& row : sample) {
    if (layout.tag >= row.size()) continue;
    const std::string_view tag = trimmed(row[layout.tag]);
    if (!layout.is_not_given(tag)) ++tags[small_letters(tag)];
  }
  const auto paired =
      std::count_if(tags.begin(), tags.end(), [](const auto& each) { return each.second == 2; });
  return 2 * static_cast<std::size_t>(paired) > tags.size();
}

}  // namespace

void note_asked(Layout& layout, Sample sample) {
  struct Topic {
    std::string_view word;
    std::array<std::string_view, 4> keys;
  };
  constexpr std::array k_topics{Topic{"joint", {"hole", "wall_mm", "hole_dia_mm", ""}},
                                Topic{"earth", {"material", "", "", ""}},
                                Topic{"fault", {"current_ka", "time_s", "loop_ohm", "device"}}};
  for (const Topic& topic : k_topics) {
    const bool told =
        std::any_of(layout.columns.begin(), layout.columns.end(), [&](const Column& column) {
          return std::find(topic.keys.begin(), topic.keys.end(), column.field->key) !=
                     topic.keys.end() &&
                 std::any_of(sample.begin(), sample.end(), [&](const auto& row) {
                   return column.cell < row.size() &&
                          !layout.is_not_given(trimmed(row[column.cell]));
                 });
        });
    if (told) (layout.asked += layout.asked.empty() ? "" : " ") += topic.word;
  }
}

void note_counts(Layout& layout, Sample sample) {
  if (!layout.own_results.empty()) {
    layout.warnings.push_back(layout.where + ": " + std::to_string(layout.own_results.size()) +
                              " columns of an earlier result are not read");
  }
  for (const UnreadColumn& column : layout.unread) {
    if (auto counts = count_column(column)) {
      say_of(column.heading, "compared with the ends that are counted", layout);
      layout.counts.push_back(std::move(*counts));
    }
    const bool of_length =
        column.cell > 0 && is_length(layout, column.cell - 1) && layout.quantity != column.cell + 1;
    if (layout.quantity == Layout::k_none || of_length || !is_unit_heading(column.heading)) {
      continue;
    }
    layout.quantity_unit = column.cell;
    say_of(column.heading, "taken for what the quantity is of; --ignore it where it is not",
           layout);
  }
  layout.run_letters = most_run_letters(layout, sample);
  if (!layout.ends_not_told) return;
  // Two headings that nobody reads may be those of the two ends, in words that are not known.
  layout.may_be_cables = !are_paired(layout, sample) &&
                         (layout.unread.size() > 1 || layout.quantity != Layout::k_none ||
                          has_column(layout, "length_m") || has_column(layout, "cores") ||
                          has_column(layout, "cable_size"));
  // It is said first: what it is about is half of the order.
  auto& warnings = layout.warnings;
  warnings.push_back(layout.where +
                     ": no heading tells from and to, so that each row is taken for one end and "
                     "gets one gland; say --ends 2 where a row is a whole cable, --ends 1 where it "
                     "is one end, or --column from=... and --column to=...");
  std::rotate(warnings.rbegin(), warnings.rbegin() + 1, warnings.rend());
}

}  // namespace cutback::schedule

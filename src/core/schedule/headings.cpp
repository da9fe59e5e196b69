#include "cutback/schedule/headings.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "core/schedule/spaces.hpp"
#include "cutback/error.hpp"
#include "cutback/text.hpp"
#include "cutback/written/written.hpp"

namespace cutback::schedule {
namespace {

std::string_view unit_of(std::string_view text, bool bare) {
  if (text.starts_with("in ")) text.remove_prefix(3);  // "in mm"
  return written::unit_named(text, bare);
}

/// What shows nothing.
constexpr std::array<std::string_view, 4> k_nothing{"\xE2\x80\x8B", "\xEF\xBB\xBF", "\xC2\xAD",
                                                    "\xE2\x80\x8E"};

/// The signs of multiplication: Cores x Size.
constexpr std::array<std::string_view, 2> k_crosses{"\xC3\x97", "\xE2\x9C\x95"};

/// Signs for a diameter, and the one that stands for all of them.
constexpr std::array<std::string_view, 5> k_diameters{"\xC3\x98", "\xC3\xB8", "\xE2\x8C\x80",
                                                      "\xCE\xA6", "\xCF\x86"};
constexpr std::string_view k_diameter = "\xC3\xB8";

bool take(std::string_view& text, std::span<const std::string_view> what) {
  for (const std::string_view each : what) {
    if (!text.starts_with(each)) continue;
    text.remove_prefix(each.size());
    return true;
  }
  return false;
}

bool is_word(char c) {
  return is_digit(c) || (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80;
}

/// Small letters, one space between words, without points and colons; brackets stay.
std::string smoothed(std::string_view text) {
  std::string out;
  bool space = false;
  const auto put = [&](char c) {
    if (space && !out.empty()) out += ' ';
    space = false;
    out += c;
  };
  while (!text.empty()) {
    if (take(text, k_wide_spaces)) {
      space = true;
      continue;
    }
    if (take(text, k_nothing)) continue;
    if (take(text, k_crosses)) {
      put('x');
      continue;
    }
    if (take(text, k_diameters)) {
      for (const char c : k_diameter) put(c);
      continue;
    }
    const char c = text.front();
    text.remove_prefix(1);
    if (c <= ' ' && c >= '\0') {
      space = true;
    } else if (c == '_') {
      space = true;
    } else if (c == '.' || c == ':' || c == '*' || c == '\'') {
      // A point between two digits is a decimal point.
      if (c == '.' && !out.empty() && !space && is_digit(out.back()) && !text.empty() &&
          is_digit(text.front())) {
        put(c);
      }
    } else {
      put(small_letter(c));
    }
  }
  return out;
}

/// A hyphen between two words is a space, and so is a stroke with a space on a side of it.
std::string without_strokes(std::string text) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char before = i > 0 ? text[i - 1] : ' ';
    const char behind = i + 1 < text.size() ? text[i + 1] : ' ';
    const bool hyphen = text[i] == '-' &&
                        ((is_word(before) && is_word(behind)) || (before == ' ' && behind == ' '));
    const bool stroke = text[i] == '/' && (before == ' ' || behind == ' ');
    const char c = hyphen || stroke ? ' ' : text[i];
    if (c == ' ' && (out.empty() || out.back() == ' ')) continue;
    out += c;
  }
  trim_end(out);
  return out;
}

/// Takes a unit in brackets out of `text`, which is smoothed. Other brackets are opened.
std::string take_units(const std::string& text, std::string& unit, std::string& full) {
  std::string plain;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    const std::size_t close =
        c == '(' || c == '[' || c == '{' ? text.find_first_of(")]}", i) : std::string::npos;
    if (close == std::string::npos) {
      const bool bracket = c == ')' || c == ']' || c == '}' || c == '(' || c == '[' || c == '{';
      plain += bracket ? ' ' : c;
      full += bracket ? ' ' : c;
      continue;
    }
    const std::string_view inside = trimmed(std::string_view(text).substr(i + 1, close - i - 1));
    const std::string_view name = unit_of(inside, false);
    full += ' ';
    full += inside;
    full += ' ';
    plain += ' ';
    if (name.empty()) {
      plain += inside;
      plain += ' ';
    } else {
      unit = name;
    }
    i = close;
  }
  return plain;
}

/// Takes a unit off the end of a heading without brackets: "od mm", "size sq mm".
void take_last_unit(std::string& plain, std::string& unit) {
  for (const std::size_t words : {std::size_t{2}, std::size_t{1}}) {
    std::size_t at = plain.size();
    for (std::size_t i = 0; i < words && at != std::string::npos && at > 0; ++i) {
      at = plain.rfind(' ', at - 1);
    }
    if (at == std::string::npos || at == 0) continue;
    const std::string_view name = unit_of(std::string_view(plain).substr(at + 1), true);
    if (name.empty()) continue;
    unit = name;
    plain.resize(at);
    if (plain.ends_with(" in")) plain.resize(plain.size() - 3);
    return;
  }
}

/// A number for the first two letters of a text, the second of which may be none; 0 where the first
/// is none.
std::size_t start_number(std::string_view text) {
  constexpr std::size_t k_letters = 26;
  const auto place = [&](std::size_t at) {
    const char c = at < text.size() ? small_letter(text[at]) : ' ';
    return c >= 'a' && c <= 'z' ? static_cast<std::size_t>(c - 'a') : k_letters;
  };
  if (place(0) == k_letters) return 0;
  return 1 + place(0) * (k_letters + 1) + place(1);
}

/// Whether a text begins with these small letters; a word, where no letter or digit follows them.
/// A wide space may follow: what does is not looked at here.
/// @param more  something must follow
bool may_begin_with(std::string_view text, std::string_view letters, bool word, bool more) {
  if (text.size() < letters.size() + (more ? 1 : 0)) return false;
  for (std::size_t i = 0; i < letters.size(); ++i) {
    if (small_letter(text[i]) != letters[i]) return false;
  }
  if (!word || text.size() == letters.size()) return true;
  const char next = small_letter(text[letters.size()]);
  return !is_digit(next) && (next < 'a' || next > 'z');
}

ScheduleWord::Means means_of(std::string_view name) {
  using Means = ScheduleWord::Means;
  constexpr std::array<std::pair<std::string_view, Means>, 18> k_names{
      {{"deleted", Means::deleted},
       {"doubt", Means::doubt},
       {"again", Means::again},
       {"leads", Means::leads},
       {"follows", Means::follows},
       {"of cores", Means::of_cores},
       {"code", Means::code},
       {"count", Means::count},
       {"hazard", Means::hazard},
       {"hazard area", Means::hazard_area},
       {"plain place", Means::plain_place},
       {"not", Means::is_not},
       {"hazard heading", Means::hazard_heading},
       {"no hazard heading", Means::no_hazard_heading},
       {"remark heading", Means::remark_heading},
       {"asking heading", Means::asking_heading},
       {"other gland", Means::other_gland},
       {"of sheet", Means::of_sheet}}};
  const auto found = std::find_if(k_names.begin(), k_names.end(),
                                  [&](const auto& each) { return each.first == name; });
  if (found == k_names.end()) {
    throw InternalError("the table schedule_words has no such meaning: " + std::string(name));
  }
  return found->second;
}

}  // namespace

const std::string& Heading::shown() const {
  static const std::string k_none;
  return forms.empty() ? k_none : forms.front().shown;
}

HeadingForm heading_form(std::string_view text) {
  HeadingForm form;
  const std::string smooth = smoothed(text);
  // Line breaks are no part of how it is shown.
  for (const char c : trimmed(text)) form.shown += c == '\n' || c == '\r' || c == '\t' ? ' ' : c;
  std::string full;
  form.plain = without_strokes(take_units(smooth, form.unit, full));
  form.full = without_strokes(full);
  if (form.unit.empty()) take_last_unit(form.plain, form.unit);
  return form;
}

std::string plain_heading(std::string_view text) { return heading_form(text).full; }

std::vector<Heading> join_headings(HeadingRows rows) {
  std::size_t width = 0;
  for (const auto& row : rows) width = std::max(width, row.size());
  const auto cell = [&](std::size_t row, std::size_t column) {
    return column < rows[row].size() ? trimmed(rows[row][column]) : std::string_view{};
  };
  std::vector<Heading> headings(width);
  std::vector<std::string_view> groups(rows.size());
  for (std::size_t column = 0; column < width; ++column) {
    std::vector<std::string_view> parts;
    for (std::size_t row = 0; row < rows.size(); ++row) {
      std::string_view part = cell(row, column);
      const bool last = row + 1 == rows.size();
      if (!last && part.empty() && !cell(row + 1, column).empty()) {
        part = groups[row];
      } else {
        groups[row] = !last && !cell(row + 1, column).empty() ? part : std::string_view{};
      }
      if (part.empty() || (!parts.empty() && parts.back() == part)) continue;
      parts.push_back(part);
      headings[column].rows.emplace_back(part);
    }
    for (std::size_t first = 0; first < parts.size(); ++first) {
      std::string text;
      for (std::size_t i = first; i < parts.size(); ++i) {
        if (i > first) text += " / ";
        text += parts[i];
      }
      HeadingForm form = heading_form(text);
      // The unit of a group counts for what stands under it.
      if (first > 0 && form.unit.empty()) form.unit = headings[column].forms.front().unit;
      headings[column].forms.push_back(std::move(form));
    }
  }
  return headings;
}

namespace {

/// The unit that a cell is, however it is bracketed; empty where it is none.
std::string unit_of_cell(std::string_view text) {
  const std::string_view inside = trimmed(text, " \t\r\n()[]");
  return inside.empty() ? std::string() : heading_form("x (" + std::string(inside) + ")").unit;
}

}  // namespace

bool is_row_of_units(const std::vector<std::string>& row) {
  std::size_t units = 0;
  for (const std::string& cell : row) {
    const std::string_view text = trimmed(cell);
    if (text.empty() || text == "-" || text == "--" || text == "\xE2\x80\x93") continue;
    if (unit_of_cell(text).empty()) return false;
    ++units;
  }
  return units > 1;
}

std::vector<std::string> put_units(const std::vector<std::string>& row,
                                   std::vector<Heading>& headings) {
  std::vector<std::string> others;
  for (std::size_t i = 0; i < std::min(row.size(), headings.size()); ++i) {
    const std::string unit = unit_of_cell(row[i]);
    if (unit.empty() || headings[i].forms.empty()) continue;
    for (HeadingForm& form : headings[i].forms) {
      if (form.unit.empty()) form.unit = unit;
    }
    if (headings[i].forms.front().unit != unit) others.push_back(headings[i].shown());
  }
  return others;
}

const UsualHeading* UsualHeadings::find(std::string_view plain) const {
  const auto found = std::lower_bound(
      headings.begin(), headings.end(), plain,
      [](const UsualHeading& each, std::string_view key) { return each.plain < key; });
  return found != headings.end() && found->plain == plain ? &*found : nullptr;
}

bool UsualHeadings::is_word(ScheduleWord::Means means, std::string_view word) const {
  return std::any_of(words.begin(), words.end(), [&](const ScheduleWord& each) {
    return each.means == means && each.word == word;
  });
}

void UsualHeadings::Starts::add(const ScheduleWord& word, bool whole) {
  // Figures begin too many words: of "2g ex" the second is looked for.
  std::string_view rest = word.word;
  while (is_digit(rest.front()) && rest.find(' ') != std::string_view::npos) {
    rest.remove_prefix(rest.find(' ') + 1);
  }
  Start start{std::string(rest.substr(0, rest.find(' '))), !word.begins,
              whole && rest.find(' ') != std::string_view::npos};
  auto& starts = starts_[start_number(start.letters)];
  const auto is_same = [&](const Start& each) {
    return each.letters == start.letters && each.word == start.word && each.more == start.more;
  };
  if (std::none_of(starts.begin(), starts.end(), is_same)) starts.push_back(std::move(start));
}

bool UsualHeadings::Starts::any_in(std::string_view text) const {
  if (!starts_.front().empty()) return true;
  bool before = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = small_letter(text[i]);
    const bool letter = c >= 'a' && c <= 'z';
    if (letter && !before) {
      const std::string_view rest = text.substr(i);
      for (const Start& start : starts_[start_number(rest)]) {
        if (may_begin_with(rest, start.letters, start.word, start.more)) return true;
      }
    }
    before = letter;
  }
  return false;
}

UsualHeadings usual_headings(const tables::Standards& standards) {
  UsualHeadings usual;
  const tables::Table& table = standards.table("schedule_headings");
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    usual.headings.push_back(
        {.plain = heading_form(table.text(i, "heading")).plain,
         .column = table.text(i, "column"),
         .by_values = table.text(i, "applied") == "values" || table.text(i, "applied") == "words",
         .by_words = table.text(i, "applied") == "words",
         .lone = table.text(i, "applied") == "lone",
         .of_end = table.text(i, "applied") == "of end",
         .instead = table.text(i, "instead"),
         .otherwise = table.text(i, "otherwise")});
  }
  std::sort(usual.headings.begin(), usual.headings.end(),
            [](const UsualHeading& a, const UsualHeading& b) { return a.plain < b.plain; });
  const tables::Table& sides = standards.table("schedule_sides");
  for (std::size_t i = 0; i < sides.rows.size(); ++i) {
    std::string word = heading_form(sides.text(i, "word")).full;
    if (sides.text(i, "side") == "one") {
      usual.one_end.push_back(std::move(word));
    } else {
      usual.sides.push_back({.plain = std::move(word), .from = sides.text(i, "side") == "from"});
    }
  }
  // The longest first, so that "a end" is not taken for "a".
  std::stable_sort(
      usual.sides.begin(), usual.sides.end(),
      [](const SideWord& a, const SideWord& b) { return a.plain.size() > b.plain.size(); });
  const tables::Table& words = standards.table("schedule_words");
  for (std::size_t i = 0; i < words.rows.size(); ++i) {
    const std::string where = words.text(i, "where");
    ScheduleWord& word = usual.words.emplace_back();
    word.word = words.text(i, "word");
    word.means = means_of(words.text(i, "means"));
    word.begins = where == "beginning";
    word.asks = where == "question";
    using Means = ScheduleWord::Means;
    word.strict = word.means == Means::deleted ? where == "alone" : !where.empty() && !word.asks;
    if (word.means == Means::deleted || word.means == Means::doubt ||
        word.means == Means::other_gland) {
      usual.of_deleted.add(word, true);
    }
    if (word.means == Means::hazard || word.means == Means::hazard_area) {
      usual.of_hazard.add(word, true);
    }
    if (word.means == Means::hazard_heading) {
      ScheduleWord label = word;
      label.begins = !word.strict;
      usual.of_labels.add(label);
    }
  }
  for (const char* const zone : {"zon", "zn", "div"}) {
    ScheduleWord label;
    label.word = zone;
    label.begins = true;
    usual.of_labels.add(label);
  }
  return usual;
}

std::optional<SidedHeading> sided(const UsualHeadings& usual, std::string_view plain) {
  for (const SideWord& side : usual.sides) {
    const std::size_t size = side.plain.size();
    if (plain.size() <= size + 1) continue;
    if (plain.starts_with(side.plain) && plain[size] == ' ') {
      return SidedHeading{plain.substr(size + 1), side.from};
    }
    if (plain.ends_with(side.plain) && plain[plain.size() - size - 1] == ' ') {
      return SidedHeading{plain.substr(0, plain.size() - size - 1), side.from};
    }
  }
  return std::nullopt;
}

std::optional<EndInHeading> end_in(const UsualHeadings& usual, std::string_view plain) {
  if (const auto end = sided(usual, plain)) return EndInHeading{std::string(end->rest), end->from};
  for (const SideWord& side : usual.sides) {
    if (plain == side.plain) return EndInHeading{"", side.from};
    // One word may stand in the middle for another reason: "Gland to suit".
    if (side.plain.find(' ') == std::string::npos) continue;
    const std::size_t at = plain.find(" " + side.plain + " ");
    if (at == std::string_view::npos) continue;
    std::string rest(plain.substr(0, at));
    rest += plain.substr(at + side.plain.size() + 1);
    return EndInHeading{std::move(rest), side.from};
  }
  return std::nullopt;
}

bool speaks_of_one_end(const UsualHeadings& usual, std::string_view plain) {
  const std::string text = " " + std::string(plain) + " ";
  const auto has = [&](std::string_view word) {
    return text.find(" " + std::string(word) + " ") != std::string::npos;
  };
  if (has("each") || has("both")) return false;
  return std::any_of(usual.one_end.begin(), usual.one_end.end(), has);
}

}  // namespace cutback::schedule

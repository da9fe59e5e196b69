#include "core/schedule/row_words.hpp"

#include <algorithm>
#include <cmath>

#include "cutback/number.hpp"
#include "cutback/text.hpp"

namespace cutback::schedule {
namespace {

using Means = ScheduleWord::Means;

/// Its words in small letters with one space between two, without any signs.
std::string words_in(std::string_view text) {
  std::string out;
  bool space = false;
  for (const char each : text) {
    const char c = small_letter(each);
    if (!is_digit(c) && !(c >= 'a' && c <= 'z') && static_cast<unsigned char>(c) < 0x80) {
      space = true;
      continue;
    }
    if (space && !out.empty()) out += ' ';
    space = false;
    out += c;
  }
  return out;
}

bool begins(std::string_view text, std::string_view word) {
  return text.starts_with(word) && (text.size() == word.size() || text[word.size()] == ' ');
}

std::string_view first_word(std::string_view text) { return text.substr(0, text.find(' ')); }

/// The text behind its first words.
std::string_view behind(std::string_view text, std::string_view words) {
  return trimmed(text.substr(words.size()));
}

/// The place of whole words in a text; npos where they are not there.
std::size_t place_of(std::string_view text, std::string_view words) {
  for (std::size_t at = text.find(words); at != std::string_view::npos;
       at = text.find(words, at + 1)) {
    if ((at == 0 || text[at - 1] == ' ') && begins(text.substr(at), words)) return at;
  }
  return std::string_view::npos;
}

bool any_word(const UsualHeadings& usual, Means means, std::string_view text) {
  while (!text.empty()) {
    const std::string_view word = first_word(text);
    if (usual.is_word(means, word)) return true;
    text = behind(text, word);
  }
  return false;
}

/// "2 spare cores": the word speaks of the cable.
bool is_of_cores(const UsualHeadings& usual, std::string_view text, std::string_view word,
                 std::size_t at) {
  const std::string_view next = first_word(behind(text.substr(at), word));
  return (at >= 2 && is_digit(text[at - 2])) || usual.is_word(Means::of_cores, next);
}

/// A text that begins with a word for deleted.
RowWord begun_with(const UsualHeadings& usual, const ScheduleWord& word, std::string_view text) {
  const std::string_view rest = behind(text, word.word);
  if (rest.empty()) return RowWord::deleted;
  if (word.strict && is_of_cores(usual, text, word.word, 0)) return RowWord::none;
  const bool goes_on = is_digit(rest.front()) || usual.is_word(Means::follows, first_word(rest));
  if (!goes_on || word.strict || any_word(usual, Means::again, rest))
    return RowWord::may_be_deleted;
  return RowWord::deleted;
}

}  // namespace

RowWord word_of_remark(const UsualHeadings& usual, std::string_view text) {
  if (!usual.of_deleted.any_in(text)) return RowWord::none;
  const std::string all = words_in(text);
  std::string_view rest = all;
  while (usual.is_word(Means::leads, first_word(rest)) && rest.find(' ') != std::string::npos) {
    rest = behind(rest, first_word(rest));
  }
  RowWord found = RowWord::none;
  for (const ScheduleWord& word : usual.words) {
    if (word.means == Means::doubt) {
      const bool there =
          word.strict ? place_of(all, word.word) != std::string::npos : begins(rest, word.word);
      if (there) found = std::max(found, RowWord::may_be_deleted);
    }
    if (word.means != Means::deleted) continue;
    if (begins(rest, word.word)) {
      const RowWord begun = begun_with(usual, word, rest);
      if (begun == RowWord::deleted) return begun;
      found = std::max(found, begun);
      continue;
    }
    const std::size_t at = place_of(all, word.word);
    if (at != std::string::npos && !(word.strict && is_of_cores(usual, all, word.word, at))) {
      found = RowWord::may_be_deleted;
    }
  }
  return found;
}

RowWord word_of_tag(const UsualHeadings& usual, std::string_view text) {
  if (!usual.of_deleted.any_in(text)) return RowWord::none;
  const std::string all = words_in(text);
  RowWord found = RowWord::none;
  for (const ScheduleWord& word : usual.words) {
    if (word.means != Means::deleted && word.means != Means::doubt) continue;
    const std::size_t at = place_of(all, word.word);
    if (at == std::string::npos) continue;
    // A tag may begin so for another reason: VOID-12 stands in a void.
    const bool ends = at + word.word.size() == all.size() && (at == 0 || !word.strict);
    if (word.means == Means::deleted && ends) return RowWord::deleted;
    found = RowWord::may_be_deleted;
  }
  return found;
}

RowWord word_of_place(const UsualHeadings& usual, std::string_view text) {
  if (!usual.of_deleted.any_in(text)) return RowWord::none;
  const std::string all = words_in(text);
  for (const ScheduleWord& word : usual.words) {
    if (all != word.word) continue;
    if (word.means == Means::doubt) return RowWord::may_be_deleted;
    // A cable may go to a spare way.
    if (word.means == Means::deleted)
      return word.strict ? RowWord::may_be_deleted : RowWord::deleted;
  }
  return RowWord::none;
}

bool is_plain_place(const UsualHeadings& usual, std::string_view text) {
  const std::string all = words_in(text);
  return all.empty() ? text == "-" : usual.is_word(Means::plain_place, all);
}

bool tells_hazard(const UsualHeadings& usual, std::string_view text, bool equipment) {
  if (!usual.of_hazard.any_in(text)) return false;
  const std::string all = words_in(text);
  return std::any_of(usual.words.begin(), usual.words.end(), [&](const ScheduleWord& word) {
    if (word.means != Means::hazard || (equipment && !word.strict)) return false;
    const std::size_t at = place_of(all, word.word);
    if (at == std::string::npos) return false;
    const std::string_view before = trimmed(std::string_view(all).substr(0, at));
    const std::string_view word_before = before.substr(before.rfind(' ') + 1);
    return !usual.is_word(Means::is_not, word_before);
  });
}

namespace {

bool is_headed(const ScheduleWord& word, std::string_view all) {
  const bool whole = word.strict || word.means == Means::no_hazard_heading;
  return all.find(" " + word.word + (whole ? " " : "")) != std::string_view::npos;
}

}  // namespace

bool heads_no_hazard(const UsualHeadings& usual, std::string_view heading) {
  const std::string all = " " + words_in(heading) + " ";
  return std::any_of(usual.words.begin(), usual.words.end(), [&](const ScheduleWord& word) {
    return word.means == Means::no_hazard_heading && is_headed(word, all);
  });
}

bool heads_hazard(const UsualHeadings& usual, std::string_view heading) {
  if (heads_no_hazard(usual, heading)) return false;
  const std::string all = " " + words_in(heading) + " ";
  return std::any_of(usual.words.begin(), usual.words.end(), [&](const ScheduleWord& word) {
    return word.means == Means::hazard_heading && is_headed(word, all);
  });
}

bool is_of_sheet(const UsualHeadings& usual, std::string_view text) {
  return usual.is_word(Means::of_sheet, words_in(text));
}

RowSays says_of_row(const Layout& layout, Cells cells) {
  RowSays says;
  if (layout.usual == nullptr) return says;
  const auto look = [&](std::size_t place, auto word_of) {
    const std::string_view text = cell(cells, place);
    if (text.empty() || says.word == RowWord::deleted) return;
    const RowWord word = word_of(*layout.usual, text);
    if (word > says.word) says = {word, place};
  };
  look(layout.tag, word_of_tag);
  look(layout.from, word_of_place);
  look(layout.to, word_of_place);
  for (const UnreadColumn& unread : layout.unread) {
    look(unread.cell, word_of_remark);
    if (!unread.is_status) continue;
    look(unread.cell, [](const UsualHeadings& usual, std::string_view text) {
      return usual.is_word(Means::code, words_in(text)) ? RowWord::may_be_deleted : RowWord::none;
    });
  }
  return says;
}

std::optional<std::uint64_t> count_in(const UsualHeadings* usual, std::string_view text) {
  constexpr double k_most = 10000.0;
  auto number = parse_number(text);
  if (!number && usual != nullptr) {
    const std::string all = words_in(text);
    std::string_view rest = all;
    // "x2"; the figure of "2x" and "2off" ends where the letters begin.
    if (rest.size() > 1 && rest.front() == 'x' && is_digit(rest[1])) rest.remove_prefix(1);
    const std::size_t end = std::min(rest.find_first_not_of("0123456789"), rest.size());
    const std::string_view word = trimmed(rest.substr(end));
    // Another figure or sign among them is something else: 2+1, 2.5, -2.
    const bool clean = text.find_first_of("+./,;:*-") == std::string_view::npos ||
                       (text.find_first_of("+/,;:*-") == std::string_view::npos &&
                        text.find('.') + 1 == text.size());
    if (end > 0 && clean && (word.empty() || usual->is_word(Means::count, word))) {
      number = parse_number(rest.substr(0, end));
    }
  }
  if (!number || *number < 1.0 || *number > k_most || *number != std::floor(*number)) {
    return std::nullopt;
  }
  return static_cast<std::uint64_t>(*number);
}

}  // namespace cutback::schedule

#include "core/schedule/row_words.hpp"

#include <algorithm>
#include <cmath>

#include "core/schedule/spaces.hpp"
#include "cutback/number.hpp"
#include "cutback/text.hpp"

namespace cutback::schedule {
namespace {

using Means = ScheduleWord::Means;

/// Its words in small letters with one space between two, without any signs; 01 is 1.
std::string words_in(std::string_view text) {
  std::string out;
  bool space = true;
  for (std::size_t i = 0; i < text.size(); ++i) {
    char c = small_letter(text[i]);
    const std::size_t wide = wide_space_size(text.substr(i));
    // Figures as wide as a letter of the East: their last byte is 0x90 for 0.
    constexpr std::string_view k_wide_figure = "\xEF\xBC";
    if (text.substr(i).starts_with(k_wide_figure) && i + 2 < text.size()) {
      const auto last = static_cast<unsigned char>(text[i + 2]);
      if (last >= 0x90 && last <= 0x99) {
        c = static_cast<char>('0' + (last - 0x90));
        i += 2;
      }
    }
    const bool sign =
        !is_digit(c) && !(c >= 'a' && c <= 'z') && static_cast<unsigned char>(c) < 0x80;
    if (sign || wide > 0) {
      space = true;
      i += wide > 0 ? wide - 1 : 0;
      continue;
    }
    if (space && c == '0' && i + 1 < text.size() && is_digit(text[i + 1])) continue;
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

/// The same of words that may go on: explosi is there in "explosion-proof".
std::size_t place_of(std::string_view text, const ScheduleWord& word) {
  if (!word.begins) return place_of(text, word.word);
  for (std::size_t at = text.find(word.word); at != std::string_view::npos;
       at = text.find(word.word, at + 1)) {
    if (at == 0 || text[at - 1] == ' ') return at;
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
    if (word.means == Means::other_gland && place_of(all, word.word) != std::string::npos) {
      found = std::max(found, RowWord::may_be_deleted);
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

Hazard hazard_in(const UsualHeadings& usual, std::string_view text, bool equipment) {
  if (!usual.of_hazard.any_in(text)) return Hazard::none;
  const std::string all = words_in(text);
  Hazard found = Hazard::none;
  for (const ScheduleWord& word : usual.words) {
    const bool told = word.means == Means::hazard;
    if (!told && word.means != Means::hazard_area) continue;
    if (equipment && !word.strict && !word.asks) continue;
    const std::size_t at = place_of(all, word);
    if (at == std::string::npos) continue;
    const std::string_view before = trimmed(std::string_view(all).substr(0, at));
    const std::string_view word_before = before.substr(before.rfind(' ') + 1);
    if (usual.is_word(Means::is_not, word_before)) continue;
    if (told && !(equipment && word.asks)) return Hazard::told;
    found = Hazard::by_area;
  }
  return found;
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

bool value_tells_hazard(const UsualHeadings& usual, std::string_view heading,
                        std::string_view text) {
  if (text.empty() || is_plain_place(usual, text)) return false;
  const std::string all = " " + words_in(heading) + " ";
  const auto has = [&](std::string_view word) { return all.find(word) != std::string::npos; };
  const bool zone = has(" zon") || has(" zn ");
  const bool division = has(" div ") || has(" division ");
  const std::string figure = (zone ? "zone " : division ? "div " : "") + std::string(text);
  if (hazard_in(usual, figure, false) == Hazard::told) return true;
  // "Y", "A", "II" under Zone; "HA" under Area; "2G" under Category.
  constexpr std::size_t k_code = 3;
  if (zone && text.size() <= k_code && !heads_no_hazard(usual, heading)) return true;
  const std::string small = small_letters(text);
  if (has(" area ") && small == "ha") return true;
  const bool category =
      small.size() == 2 && is_digit(small[0]) && (small[1] == 'g' || small[1] == 'd');
  if (category && has(" cat")) return true;
  return heads_hazard(usual, heading);
}

bool heads_remark(const UsualHeadings& usual, std::string_view heading) {
  const std::string all = words_in(heading);
  bool any = all.empty();
  for (std::string_view rest = all; !rest.empty();) {
    const std::string_view word = first_word(rest);
    const bool remark = usual.is_word(Means::remark_heading, word);
    any = any || remark;
    if (!remark && !usual.is_word(Means::leads, word) && !usual.is_word(Means::count, word)) {
      return false;
    }
    rest = behind(rest, word);
  }
  return any;
}

bool heads_more(const UsualHeadings& usual, std::string_view heading) {
  const std::string all = " " + words_in(heading) + " ";
  return std::any_of(usual.words.begin(), usual.words.end(), [&](const ScheduleWord& word) {
    return word.means == Means::asking_heading && is_headed(word, all);
  });
}

bool takes_away(const UsualHeadings& usual, std::string_view title) {
  constexpr std::size_t k_most_words = 6;  // longer is a sentence about something
  if (!usual.of_deleted.any_in(title)) return false;
  const std::string all = words_in(title);
  if (std::count(all.begin(), all.end(), ' ') >= static_cast<std::ptrdiff_t>(k_most_words)) {
    return false;
  }
  const auto is_of_cables = [&](std::string_view rest) {
    return rest.empty() || usual.is_word(Means::count, first_word(rest)) ||
           usual.is_word(Means::leads, first_word(rest));
  };
  return std::any_of(usual.words.begin(), usual.words.end(), [&](const ScheduleWord& word) {
    const bool deleted = word.means == Means::deleted;
    if (!deleted && word.means != Means::doubt) return false;
    const std::size_t at = place_of(all, word.word);
    if (at == std::string::npos) return false;
    const std::string_view rest = behind(std::string_view(all).substr(at), word.word);
    // "SPARE CABLES", "EXISTING CABLES (no work)"; not "EXISTING SUBSTATION".
    if (deleted == word.strict) return at == 0 && is_of_cables(rest);
    return true;
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
    look(unread.cell, [&](const UsualHeadings& usual, std::string_view text) {
      const RowWord word = word_of_remark(usual, text);
      return unread.is_of_row ? word : std::min(word, RowWord::may_be_deleted);
    });
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
    const bool clean = text.find_first_of("+./,;:*-%") == std::string_view::npos ||
                       (text.find_first_of("+/,;:*-%") == std::string_view::npos &&
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

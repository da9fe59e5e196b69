#include "core/schedule/tag_names.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <vector>

#include "cutback/number.hpp"
#include "cutback/text.hpp"

namespace cutback::schedule {
namespace {

constexpr std::uint64_t k_most = 200;  // more is no run of cables

bool is_letter(char c) { return c >= 'a' && c <= 'z'; }

/// What may stand between two names.
enum class Joint {
  range,  ///< to, thru, two dots
  dash,   ///< a dash: a range, or a part of the name
  list,   ///< a comma, and
  stroke
};

struct Sign {
  std::string_view written;
  Joint joint;
};

// The longest of one beginning first.
constexpr std::array k_signs{Sign{" to ", Joint::range},
                             Sign{" thru ", Joint::range},
                             Sign{" through ", Joint::range},
                             Sign{"...", Joint::range},
                             Sign{"..", Joint::range},
                             Sign{"\xE2\x80\xA6", Joint::range},
                             Sign{" - ", Joint::dash},
                             Sign{"\xE2\x80\x93", Joint::dash},
                             Sign{"\xE2\x80\x94", Joint::dash},
                             Sign{"~", Joint::dash},
                             Sign{" and ", Joint::list},
                             Sign{",", Joint::list},
                             Sign{";", Joint::list},
                             Sign{"&", Joint::list},
                             Sign{"\n", Joint::list},
                             Sign{"+", Joint::stroke},
                             Sign{"/", Joint::stroke}};

struct Pieces {
  std::vector<std::string> names;
  std::vector<Joint> joints;
};

Pieces split(std::string_view text) {
  Pieces pieces;
  std::string name;
  const auto put = [&] {
    pieces.names.emplace_back(trimmed(name));
    name.clear();
  };
  while (!text.empty()) {
    const auto sign = std::find_if(k_signs.begin(), k_signs.end(), [&](const Sign& each) {
      return text.starts_with(each.written);
    });
    if (sign == k_signs.end()) {
      name += text.front();
      text.remove_prefix(1);
      continue;
    }
    put();
    pieces.joints.push_back(sign->joint);
    text.remove_prefix(sign->written.size());
  }
  put();
  return pieces;
}

/// P-8A: what stands before its last figure, that figure, and one letter behind it.
struct Name {
  std::string before;
  std::optional<std::uint64_t> number;
  char letter = 0;
};

std::optional<Name> name_of(std::string_view text) {
  Name name;
  if (text.empty()) return std::nullopt;
  if (is_letter(text.back()) && (text.size() == 1 || is_digit(text[text.size() - 2]))) {
    name.letter = text.back();
    text.remove_suffix(1);
  }
  std::size_t begin = text.size();
  while (begin > 0 && is_digit(text[begin - 1])) --begin;
  constexpr std::size_t k_most_digits = 9;
  if (text.size() - begin > k_most_digits) return std::nullopt;
  if (begin < text.size())
    name.number = static_cast<std::uint64_t>(*parse_number(text.substr(begin)));
  if (!name.number && name.letter == 0) return std::nullopt;
  name.before = text.substr(0, begin);
  return name;
}

/// How far the second name lies behind the first, where both are of one kind; else nothing.
/// @param full  gets whether the second has all of the name
std::optional<std::uint64_t> step(const Name& a, const Name& b, bool& full) {
  full = b.before == a.before && b.number.has_value();
  const bool short_form = b.before.empty() && !a.before.empty();
  if (!full && !short_form) return std::nullopt;
  const bool letters = a.letter != 0 && b.letter > a.letter;
  if (!b.number || b.number == a.number) {
    if (!letters) return std::nullopt;
    return static_cast<std::uint64_t>(b.letter - a.letter);
  }
  if (!a.number || *b.number <= *a.number || b.letter != a.letter) return std::nullopt;
  return *b.number - *a.number;
}

/// "3 off", "x2", "2 x C-12": a number of cables in the tag itself.
bool holds_count(std::string_view text) {
  const auto figure_before = [&](std::size_t at) {
    while (at > 0 && text[at - 1] == ' ') --at;
    return at > 0 && is_digit(text[at - 1]);
  };
  for (const std::string_view word : {" off", " nos", "off)", "nos)", " of)"}) {
    const std::size_t at = text.find(word);
    if (at != std::string_view::npos && figure_before(at)) return true;
  }
  for (std::size_t at = text.find('x'); at != std::string_view::npos; at = text.find('x', at + 1)) {
    const std::string_view rest = trimmed(text.substr(at + 1));
    const bool apart = at > 0 && (text[at - 1] == ' ' || text[at - 1] == '(');
    if (apart && !rest.empty() && is_digit(rest.front())) return true;
    // 2x C-12, 2 x C-12, 2xC12
    const bool spaced = at + 1 < text.size() && (text[at + 1] == ' ' || is_letter(text[at + 1]));
    if (spaced && figure_before(at) && text.find_first_not_of("0123456789 ") == at) return true;
  }
  return false;
}

/// "C23 (1-3)", "C24(R,Y,B)", "C32 [2 runs]", "C11 C12": several by what stands in brackets, or two
/// names of one kind with a space between them.
bool may_list(std::string_view text) {
  const std::size_t open = text.find_first_of("([");
  if (open != std::string_view::npos) {
    const std::size_t close = std::min(text.find_first_of(")]", open), text.size());
    const std::string_view inside = trimmed(text.substr(open + 1, close - open - 1));
    if (inside.find(" run") != std::string_view::npos) return true;
    const std::size_t sign = inside.find_first_of(",-");
    const bool short_ones = sign != std::string_view::npos && sign > 0 && sign <= 2 &&
                            inside.size() - sign > 1 && inside.size() - sign <= 6;
    return short_ones && is_digit(inside.front()) == is_digit(inside.back());
  }
  const std::size_t space = text.find(' ');
  if (space == std::string_view::npos) return false;
  const auto a = name_of(text.substr(0, space));
  const auto b = name_of(trimmed(text.substr(space + 1)));
  bool full = false;
  return a && b && !a->before.empty() && is_letter(a->before.front()) &&
         step(*a, *b, full).has_value() && full;
}

/// "C1-A/B": names that differ in a letter behind a sign.
bool are_letters(const std::vector<std::string>& names) {
  const std::string& first = names.front();
  const bool letter = first.size() > 2 && is_letter(first.back()) && !is_letter(first.rbegin()[1]);
  return letter && std::all_of(names.begin() + 1, names.end(), [](const std::string& name) {
           return name.size() == 1 && is_letter(name.front());
         });
}

TagNames of_range(const Name& a, const Name& b, Joint joint) {
  bool full = false;
  const auto between = step(a, b, full);
  const bool certain = joint == Joint::range || full;
  if (!between || *between >= k_most) {
    // "P-101 to 05": two names of one kind that do not go up.
    return {1, joint == Joint::range && (a.before == b.before || b.before.empty())};
  }
  return {*between + 1, !certain};
}

/// "C101-C105": it may be a run of cables, or one between two places.
bool is_joined_run(std::string_view text) {
  const std::size_t dash = text.find('-');
  if (dash == std::string_view::npos || dash + 1 >= text.size()) return false;
  if (text[dash + 1] != text.front() || !is_letter(text.front())) return false;
  const auto a = name_of(text.substr(0, dash));
  const auto b = name_of(text.substr(dash + 1));
  bool full = false;
  return a && b && step(*a, *b, full).value_or(0) > 0 && full;
}

/// "C10-12", where other cables are called C9 and C13.
bool is_short_run(std::string_view text, std::string_view run_letters) {
  const std::size_t dash = text.find('-');
  if (run_letters.empty() || dash == std::string_view::npos) return false;
  const auto a = name_of(text.substr(0, dash));
  const std::string_view behind = text.substr(dash + 1);
  const auto b = name_of(behind);
  if (!a || !b || a->before != run_letters || !a->number || !b->number) return false;
  if (!b->before.empty() || a->letter != b->letter) return false;
  // C101-05 is C101 to C105.
  const std::string own = std::to_string(*a->number);
  const std::size_t digits = std::min(behind.size() - (b->letter != 0 ? 1U : 0U), own.size());
  return *b->number > static_cast<std::uint64_t>(*parse_number(own.substr(own.size() - digits)));
}

bool are_ends(std::string_view a, std::string_view b, std::string_view from, std::string_view to) {
  const std::string one = small_letters(trimmed(from));
  const std::string other = small_letters(trimmed(to));
  return (a == one && b == other) || (a == other && b == one);
}

TagNames of_list(const std::vector<Name>& names, bool strokes) {
  bool all_full = true;
  bool consecutive = true;
  for (std::size_t i = 1; i < names.size(); ++i) {
    Name before = names[i - 1];
    before.before = names.front().before;
    if (!before.number) before.number = names.front().number;
    bool full = false;
    const auto between = step(before, names[i], full);
    if (!between) return {};
    all_full = all_full && full;
    consecutive = consecutive && *between == 1;
  }
  const std::string& before = names.front().before;
  const bool named = !before.empty();
  if (named && std::none_of(before.begin(), before.end(), is_letter)) return {};
  const bool certain = named && (!strokes || (names.size() > 2 && (consecutive || all_full)));
  return {names.size(), !certain};
}

}  // namespace

std::string letters_of_run(std::string_view tag) {
  const std::string text = small_letters(tag);
  const auto name = name_of(text);
  if (!name || !name->number) return {};
  const bool letters = std::all_of(name->before.begin(), name->before.end(), is_letter);
  return letters ? name->before : std::string();
}

TagNames names_in_tag(std::string_view tag, std::string_view from, std::string_view to,
                      std::string_view run_letters) {
  // Nearly every tag is one word without such a sign.
  const bool plain = std::all_of(tag.begin(), tag.end(), [](char c) {
    return is_digit(c) || (c >= 'A' && c <= 'Z') || c == '-' || c == '_';
  });
  if (plain && tag.find('-') == std::string_view::npos) return {};
  const std::string text = small_letters(tag);
  if (plain || is_joined_run(text)) {
    const std::size_t dash = text.find('-');
    const bool one = are_ends(std::string_view(text).substr(0, dash),
                              std::string_view(text).substr(dash + 1), from, to);
    return {1, (is_joined_run(text) || is_short_run(text, run_letters)) && !one};
  }
  const Pieces pieces = split(text);
  if (pieces.joints.empty()) {
    return {1, holds_count(text) || may_list(text) || is_short_run(text, run_letters)};
  }
  if (pieces.names.size() == 2 && are_ends(pieces.names[0], pieces.names[1], from, to)) return {};
  std::vector<Name> names;
  for (const std::string& piece : pieces.names) {
    auto name = name_of(piece);
    if (!name) return {1, holds_count(text) || may_list(text) || are_letters(pieces.names)};
    names.push_back(std::move(*name));
  }
  const auto is_range = [](Joint joint) { return joint == Joint::range || joint == Joint::dash; };
  const bool ranges = std::any_of(pieces.joints.begin(), pieces.joints.end(), is_range);
  if (ranges && names.size() == 2) return of_range(names[0], names[1], pieces.joints.front());
  if (ranges) {  // "P-8, P-10 to P-12": several, in a form that is not counted here
    bool full = false;
    return {1, step(names[0], names[1], full).has_value()};
  }
  const bool strokes = std::any_of(pieces.joints.begin(), pieces.joints.end(),
                                   [](Joint joint) { return joint == Joint::stroke; });
  return of_list(names, strokes);
}

}  // namespace cutback::schedule

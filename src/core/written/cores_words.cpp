#include "core/written/cores_words.hpp"

#include <array>

#include "cutback/job/field_text.hpp"
#include "cutback/number.hpp"
#include "cutback/text.hpp"
#include "cutback/written/written.hpp"

namespace cutback::written {
namespace {

struct Known {
  std::string_view written;
  Mark mark;
  std::string_view word = {};
};

// The longest form of a beginning first.
constexpr std::array k_known{
    Known{"square millimetres", Mark::size_unit},
    Known{"square mm", Mark::size_unit},
    Known{"sq. mm.", Mark::size_unit},
    Known{"sq.mm.", Mark::size_unit},
    Known{"sq. mm", Mark::size_unit},
    Known{"sq.mm", Mark::size_unit},
    Known{"sq mm", Mark::size_unit},
    Known{"sqmm", Mark::size_unit},
    Known{"mm sq", Mark::size_unit},
    Known{"mmsq", Mark::size_unit},
    Known{"mm^2", Mark::size_unit},
    Known{"mm\xC2\xB2", Mark::size_unit},
    Known{"mm2", Mark::size_unit},
    Known{"mm", Mark::size_unit},  // of a conductor nobody gives the diameter
    Known{"sqm", Mark::size_unit},
    Known{"cores", Mark::cores},
    Known{"core", Mark::cores},
    Known{"cond", Mark::cores},
    Known{"crs", Mark::cores},
    Known{"cr", Mark::cores},
    Known{"c", Mark::cores},
    Known{"pairs", Mark::pairs},
    Known{"pair", Mark::pairs},
    Known{"prs", Mark::pairs},
    Known{"pr", Mark::pairs},
    Known{"p", Mark::pairs},
    Known{"triads", Mark::triples},
    Known{"triad", Mark::triples},
    Known{"triples", Mark::triples},
    Known{"triple", Mark::triples},
    Known{"tr", Mark::triples},
    Known{"t", Mark::triples},
    Known{"quads", Mark::quads},
    Known{"quad", Mark::quads},
    Known{"earth", Mark::earth},
    Known{"ecc", Mark::earth},
    Known{"cpc", Mark::earth},
    Known{"pe", Mark::earth},
    Known{"e", Mark::earth},
    Known{"g", Mark::green},
    Known{"and", Mark::plus},
    Known{"xlpe", Mark::insulation, "xlpe"},
    Known{"pvc", Mark::insulation, "pvc"},
    Known{"lszh", Mark::sheath},
    Known{"lsoh", Mark::sheath},
    Known{"ls0h", Mark::sheath},
    Known{"lshf", Mark::sheath},
    Known{"lsf", Mark::sheath},
    Known{"hffr", Mark::sheath},
    Known{"swa", Mark::armour, "wire steel"},
    Known{"gswa", Mark::armour, "wire steel"},
    Known{"awa", Mark::armour, "wire aluminium"},
    Known{"swb", Mark::armour, "braid steel"},
    Known{"gswb", Mark::armour, "braid steel"},
    Known{"dsta", Mark::armour, "tape steel"},
    Known{"sta", Mark::armour, "tape steel"},
    Known{"unarmoured", Mark::unarmoured},
    Known{"copper", Mark::metal},
    Known{"cu", Mark::metal},
    Known{"aluminium", Mark::metal},
    Known{"aluminum", Mark::metal},
    Known{"al", Mark::metal},
    Known{"alu", Mark::metal},
    Known{"cable", Mark::filler},
    Known{"of", Mark::filler},
};

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80; }

/// In small letters; crosses as x, no-break spaces as spaces, hyphens between words as spaces.
std::string smoothed(std::string_view text) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 6> k_signs{
      {{"\xC3\x97", "x"},
       {"\xE2\x9C\x95", "x"},
       {"\xC2\xA0", " "},
       {"\xE2\x80\xAF", " "},
       {"\xE2\x80\x93", "-"},
       {"\xE2\x82\x82", "2"}}};
  std::string out;
  while (!text.empty()) {
    bool sign = false;
    for (const auto& [from, to] : k_signs) {
      if (!text.starts_with(from)) continue;
      out += to;
      text.remove_prefix(from.size());
      sign = true;
      break;
    }
    if (sign) continue;
    const char c = text.front();
    out += small_letter(c);
    text.remove_prefix(1);
  }
  return out;
}

/// A word that is known and ends where it should: not inside a longer run of letters.
const Known* known_at(std::string_view text) {
  const Known* longest = nullptr;
  for (const Known& each : k_known) {
    if (!text.starts_with(each.written)) continue;
    const std::string_view rest = text.substr(each.written.size());
    // An x may stand right behind a word: 4cx16.
    const bool cross = rest.starts_with('x') && (rest.size() == 1 || !is_letter(rest[1]));
    if (!rest.empty() && is_letter(rest.front()) && !cross) continue;
    if (longest == nullptr || each.written.size() > longest->written.size()) longest = &each;
  }
  return longest;
}

/// The length of an American size at the beginning of a text: 10 awg, 4/0awg, 250 kcmil; 0 where
/// none is there.
std::size_t american_size(std::string_view text) {
  std::size_t end = std::min(text.find_first_not_of("0123456789"), text.size());
  if (end == 0) return 0;
  if (text.substr(end).starts_with("/0")) end += 2;
  end = std::min(text.find_first_not_of(' ', end), text.size());
  for (const std::string_view unit : {"awg", "kcmil", "mcm"}) {
    if (!text.substr(end).starts_with(unit)) continue;
    const std::string_view rest = text.substr(end + unit.size());
    if (!rest.empty() && is_letter(rest.front()) && rest.front() != 'x') return 0;
    return end + unit.size();
  }
  return 0;
}

/// The length of a voltage at the beginning of a text: 600/1000v, 0.6/1 kv; 0 where none is there.
std::size_t voltage_size(std::string_view text) {
  std::size_t end = 0;
  const auto skip = [&](std::string_view signs) {
    while (end < text.size() && signs.find(text[end]) != std::string_view::npos) ++end;
  };
  constexpr std::size_t k_most_figures = 3;  // 1.8/3 (3.6)kV has three
  for (std::size_t i = 0; i < k_most_figures; ++i) {
    if (end >= text.size() || !is_digit(text[end])) return 0;
    skip("0123456789.,");
    skip(" )");
    if (end >= text.size() || (text[end] != '/' && text[end] != '(')) break;
    ++end;
    skip(" ");
  }
  if (text.substr(end).starts_with('k')) ++end;
  if (!text.substr(end).starts_with('v')) return 0;
  ++end;
  const bool goes_on = end < text.size() && (is_letter(text[end]) || is_digit(text[end]));
  return goes_on ? 0 : end;
}

}  // namespace

std::optional<std::vector<CellWord>> cores_words(std::string_view raw, char decimal,
                                                 std::string& unknown) {
  const std::string smooth = smoothed(raw);
  std::string_view text = smooth;
  std::vector<CellWord> words;
  while (!(text = trimmed(text)).empty()) {
    const char c = text.front();
    if (const std::size_t size = voltage_size(text); size > 0) {
      words.push_back({Mark::voltage, 0.0, std::string(text.substr(0, size))});
      text.remove_prefix(size);
      continue;
    }
    if (const std::size_t size = american_size(text); size > 0) {
      const auto taken =
          take(asked_of(job::field_named("csa_mm2")), text.substr(0, size), std::string());
      if (const auto area_mm2 = parse_number(taken.text)) {
        words.push_back({Mark::number, *area_mm2, std::string(text.substr(0, size))});
        words.push_back({Mark::size_unit, 0.0, "mm2"});
        text.remove_prefix(size);
        continue;
      }
    }
    if (c == '#' && text.size() > 1 && is_digit(text[1])) {  // #10 AWG
      text.remove_prefix(1);
      continue;
    }
    if (is_digit(c)) {
      std::size_t end = 0;
      while (end < text.size() &&
             (is_digit(text[end]) ||
              (text[end] == decimal && end + 1 < text.size() && is_digit(text[end + 1])))) {
        ++end;
      }
      std::string figure(text.substr(0, end));
      for (char& each : figure) {
        if (each == decimal) each = '.';
      }
      const auto number = parse_number(figure);
      if (!number) {
        unknown = figure;
        return std::nullopt;
      }
      words.push_back({Mark::number, *number, figure});
      text.remove_prefix(end);
      continue;
    }
    const bool cross = c == 'x' || c == '*';
    const Known* const known = known_at(text);
    if (known != nullptr) {
      words.push_back(
          {known->mark, 0.0, std::string(known->word.empty() ? known->written : known->word)});
      text.remove_prefix(known->written.size());
    } else if (cross && (text.size() == 1 || !is_letter(text[1]) || text[1] == 'x')) {
      words.push_back({Mark::times, 0.0, "x"});
      text.remove_prefix(1);
    } else if (c == '+' || c == '&') {
      words.push_back({Mark::plus, 0.0, "+"});
      text.remove_prefix(1);
    } else if (c == '/' && !words.empty() && words.back().mark == Mark::number &&
               text.substr(1).starts_with('c') && (text.size() == 2 || !is_letter(text[2]))) {
      text.remove_prefix(1);  // 4/C 16
    } else if (c == '/') {
      words.push_back({Mark::stroke, 0.0, "/"});
      text.remove_prefix(1);
    } else if ((c == '-' || c == '(' || c == ')' || c == ',') && text.size() > 1 &&
               !(is_digit(text[1]) && !words.empty() && words.back().mark == Mark::number)) {
      text.remove_prefix(1);  // joins words, or closes them in
    } else if (c == ')' && text.size() == 1) {
      text.remove_prefix(1);
    } else {
      std::size_t end = 1;
      while (end < text.size() && (is_letter(text[end]) || is_digit(text[end]))) ++end;
      unknown = std::string(text.substr(0, end));
      return std::nullopt;
    }
  }
  return words;
}

}  // namespace cutback::written

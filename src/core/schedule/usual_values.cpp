#include "core/schedule/usual_values.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "cutback/job/field_text.hpp"
#include "cutback/number.hpp"
#include "cutback/text.hpp"
#include "cutback/written/cores.hpp"
#include "cutback/written/written.hpp"

namespace cutback::schedule {
namespace {

/// The runs of letters and those of digits, in small letters: `Zone 1/21` is zone, 1, 21.
std::vector<std::string> runs_of(std::string_view text) {
  std::vector<std::string> runs;
  enum class Kind { none, letters, digits } kind = Kind::none;
  for (const char c : small_letters(text)) {
    const Kind now = is_digit(c) ? Kind::digits : c >= 'a' && c <= 'z' ? Kind::letters : Kind::none;
    if (now != Kind::none && now != kind) runs.emplace_back();
    if (now != Kind::none) runs.back() += c;
    kind = now;
  }
  return runs;
}

bool has_any(const std::vector<std::string>& runs, std::span<const std::string_view> words) {
  return std::any_of(runs.begin(), runs.end(), [&](const std::string& run) {
    return std::find(words.begin(), words.end(), run) != words.end();
  });
}

bool has_digit(std::string_view text) { return std::any_of(text.begin(), text.end(), is_digit); }

bool is_one_of(std::string_view text, const std::vector<std::string_view>& words) {
  return std::any_of(words.begin(), words.end(), [&](std::string_view word) {
    return small_letters(word) == small_letters(text);
  });
}

constexpr std::array<std::string_view, 6> k_zones{"0", "1", "2", "20", "21", "22"};

}  // namespace

bool is_zone_figure(std::string_view text) {
  return std::find(k_zones.begin(), k_zones.end(), text) != k_zones.end();
}

bool may_be(const job::Field& field, std::string_view text) {
  if (is_one_of(text, job::words_of(field))) return true;
  if (field.kind == job::FieldKind::words || field.key == "material") {
    try {
      const auto taken = written::take(written::asked_of(field), text, "");
      if (is_one_of(taken.text, job::words_of(field))) return true;
    } catch (const InputError&) {
      return true;  // a word of this field that is read in two ways
    }
  }
  const std::vector<std::string> runs = runs_of(text);
  if (field.key == "zone") return has_any(runs, k_zones);
  if (field.key == "level") {
    constexpr std::array<std::string_view, 6> k_levels{"ga", "gb", "gc", "da", "db", "dc"};
    return has_any(runs, k_levels);
  }
  if (field.key == "protection") {
    constexpr std::array<std::string_view, 6> k_marks{"ex",  "eex",        "exd",
                                                      "exe", "flameproof", "explosion"};
    return has_any(runs, k_marks) || std::any_of(runs.begin(), runs.end(), [](const auto& run) {
             return run.starts_with("ex") && run.size() <= 5;
           });
  }
  if (field.key == "gas_group" || field.key == "dust_group") {
    return std::any_of(runs.begin(), runs.end(),
                       [](const std::string& run) { return run.starts_with("ii"); });
  }
  if (field.key == "entry") {
    constexpr std::array<std::string_view, 5> k_threads{"m", "npt", "pg", "bsp", "et"};
    return text == "to-suit" || has_any(runs, k_threads);
  }
  // Two voltages: to earth, and between lines.
  if (field.key == "tag") return !written::read_cores(text, '.').cores;
  if (field.key == "cable_size") return !parse_number(text);
  if (field.key == "armour") return !is_digit(text.front());
  if (field.key == "armour_mm" || field.key == "cores") return has_digit(text);
  if (field.key == "quantity") return is_digit(text.front());
  if (field.key == "voltage") return text.find('/') != std::string_view::npos;
  return field.kind != job::FieldKind::words && field.kind != job::FieldKind::yes_no;
}

}  // namespace cutback::schedule

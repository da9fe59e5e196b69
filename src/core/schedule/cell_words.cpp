#include "core/schedule/cell_words.hpp"

#include <algorithm>
#include <array>

#include "core/schedule/row_words.hpp"
#include "cutback/entry/thread.hpp"
#include "cutback/job/field_text.hpp"
#include "cutback/number.hpp"
#include "cutback/text.hpp"
#include "cutback/words.hpp"
#include "cutback/written/written.hpp"

namespace cutback::schedule {
namespace {

bool is_one_of(std::string_view text, const std::vector<std::string_view>& words) {
  return std::find(words.begin(), words.end(), text) != words.end();
}

bool is_of_place(const job::Field& field) {
  constexpr std::array<std::string_view, 5> k_keys{"zone", "protection", "level", "gas_group",
                                                   "dust_group"};
  return std::find(k_keys.begin(), k_keys.end(), field.key) != k_keys.end();
}

/// The word of the field that a text is, by the table or by itself; nothing for anything else.
std::optional<written::Taken> word_of(const job::Field& field, std::string_view text,
                                      const std::string& where) {
  written::Taken taken = written::take(written::asked_of(field), text, where);
  if (!is_one_of(taken.text, job::words_of(field))) return std::nullopt;
  return taken;
}

/// The parts of "Ex db IIC T6 Gb", in small letters.
std::vector<std::string> parts_of(std::string_view text) {
  std::string spaced = small_letters(text);
  std::replace_if(
      spaced.begin(), spaced.end(),
      [](char c) { return c == ',' || c == ';' || c == '/' || c == '(' || c == ')' || c == ':'; },
      ' ');
  std::vector<std::string> parts;
  for (const std::string_view part : split_words(spaced)) parts.emplace_back(part);
  return parts;
}

/// T1 to T6, T85, T135: what it stands for no check here asks.
bool is_temperature_class(std::string_view part) {
  if (part.size() < 2 || part.front() != 't') return false;
  std::string_view rest = part.substr(1);
  for (const std::string_view unit : {"c", "\xC2\xB0"}) {
    if (rest.size() > unit.size() && rest.ends_with(unit)) rest.remove_suffix(unit.size());
  }
  return std::all_of(rest.begin(), rest.end(), is_digit);
}

/// Without the category of equipment (II 2 G, II 2GD), which says no more than the zone.
std::vector<std::string> without_category(const std::vector<std::string>& parts) {
  constexpr std::array<std::string_view, 4> k_kinds{"", "g", "d", "gd"};
  const auto is_kind = [&](std::string_view text) {
    return std::find(k_kinds.begin(), k_kinds.end(), text) != k_kinds.end();
  };
  std::vector<std::string> rest;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const bool category = parts[i] == "ii" && i + 1 < parts.size() && parts[i + 1].front() >= '1' &&
                          parts[i + 1].front() <= '3' && is_kind(parts[i + 1].substr(1));
    if (!category) {
      rest.push_back(parts[i]);
      continue;
    }
    const bool apart = parts[i + 1].size() == 1 && i + 2 < parts.size();
    i += 1;
    if (apart && is_kind(parts[i + 1])) i += 1;
  }
  return rest;
}

/// Zone 1 IIB T4: every part of it must be known, and no field told twice.
std::optional<CellSays> several_of_place(const job::Field& own, std::string_view text,
                                         const std::string& where) {
  constexpr std::array<std::string_view, 8> k_silent{"ex",  "eex",  "zone", "group",
                                                     "gas", "dust", "epl",  "area"};
  constexpr std::array<std::string_view, 5> k_of_place{"zone", "gas_group", "dust_group", "level",
                                                       "protection"};
  // Behind Ex a db is a type of protection; behind the group it is a level.
  constexpr std::array<std::string_view, 5> k_of_mark{"protection", "gas_group", "dust_group",
                                                      "zone", "level"};
  CellSays says;
  bool zone_said = own.key == "zone";
  bool mark = own.key == "protection";
  for (const std::string& part : without_category(parts_of(text))) {
    if (part == "zone") zone_said = true;
    if (part == "ex" || part == "eex") mark = true;
    if (std::find(k_silent.begin(), k_silent.end(), part) != k_silent.end()) continue;
    if (is_temperature_class(part)) {
      mark = false;
      continue;
    }
    bool known = false;
    for (const std::string_view key : mark ? k_of_mark : k_of_place) {
      if (key == "zone" && is_digit(part.front()) && !zone_said) continue;
      const job::Field& field = job::field_named(key);
      const auto taken = word_of(field, part, where);
      if (!taken) continue;
      // Two of one kind: nothing tells which holds.
      const auto before = std::find_if(says.values.begin(), says.values.end(),
                                       [&](const auto& each) { return each.first == &field; });
      if (before != says.values.end() && key == "protection") {
        throw InputError(make_fault(ErrorCode::bad_value,
                                    "the enclosure has parts of two types of protection", where,
                                    text, before->second + "; or " + taken->text,
                                    "write the type of the part that the cable enters"));
      }
      if (before != says.values.end()) return std::nullopt;
      says.values.emplace_back(&field, taken->text);
      if (key == "gas_group" || key == "dust_group") mark = false;
      known = true;
      break;
    }
    if (!known) return std::nullopt;
  }
  if (says.values.empty()) return std::nullopt;
  for (const auto& [field, value] : says.values) {
    says.taken += (says.taken.empty() ? "\"" + std::string(text) + "\" for " : ", ") +
                  std::string(field->key) + " " + value;
  }
  return says;
}

/// IP54 or better, >=IP54, IP54 min: a degree that is asked for is the least one anyhow.
std::string_view least_of(std::string_view text) {
  for (const std::string_view sign : {">=", "\xE2\x89\xA5"}) {
    if (text.starts_with(sign)) text = trimmed(text.substr(sign.size()));
  }
  for (const std::string_view word : {" or better", " or higher", " minimum", " min.", " min"}) {
    if (small_letters(text).ends_with(word))
      text = trimmed(text.substr(0, text.size() - word.size()));
  }
  return text;
}

/// "1 x M25": one entry of this size.
std::string_view without_one(std::string_view text) {
  if (!text.starts_with('1')) return text;
  std::string_view rest = trimmed(text.substr(1));
  for (const std::string_view word : {"x", "X", "no.", "No.", "no", "No", "off", "\xC3\x97"}) {
    if (!rest.starts_with(word)) continue;
    rest = trimmed(rest.substr(word.size()));
    return rest.starts_with('M') || rest.starts_with('m') ? rest : text;
  }
  return text;
}

/// M20, 1 x M25, 20mm, M20 tapped. A bare size is metric where the heading says so.
std::optional<CellSays> of_entry(const Column& column, std::string_view whole,
                                 const std::string& where) {
  CellSays says;
  std::string_view text = without_one(whole);
  std::optional<std::string> hole;
  if (const std::size_t space = text.rfind(' '); space != std::string_view::npos) {
    const job::Field& field = job::field_named("hole");
    if (const auto taken = word_of(field, text.substr(space + 1), where)) {
      says.values.emplace_back(&field, taken->text);
      hole = taken->text;
      text = trimmed(text.substr(0, space));
    }
  }
  // M32 x 1.5mm
  if (text.size() > 2 && small_letters(text.substr(text.size() - 2)) == "mm" &&
      text.find_first_of("xX") != std::string_view::npos) {
    text = trimmed(text.substr(0, text.size() - 2));
  }
  // Box makers have conduit and pipe threads of these sizes as well.
  const std::string small = small_letters(text);
  // Without its sign as well: no metric entry is so small. It may be a number of entries, too.
  const auto figure = parse_number(text);
  const bool bare = text.find_first_not_of("0123456789/ -.") == std::string_view::npos &&
                    (text.find('/') != std::string_view::npos || (figure && *figure < 8.0));
  const bool inches =
      bare || small.ends_with('"') || small.ends_with("in") || small.ends_with("inch");
  if (inches && !text.empty() && is_digit(text.front()) &&
      small_letters(column.heading).find("npt") == std::string::npos) {
    const std::string size(text.substr(0, text.find_first_not_of("0123456789/ .")));
    throw InputError(make_fault(
        ErrorCode::bad_value, "this can be read in two ways", where, text,
        "NPT " + std::string(trimmed(size)) + "; or a conduit or pipe thread of that size",
        "write the one that is meant"));
  }
  const bool digits = std::all_of(text.begin(), text.end(), is_digit);
  const std::string thread =
      digits && column.metric ? "M" + std::string(text)
                              : written::take(written::asked_of(*column.field), text, where).text;
  if (thread != "to-suit" && !entry::parse_thread(thread)) return std::nullopt;
  says.values.emplace_back(column.field, thread);
  if (thread != whole) {
    says.taken = "\"" + std::string(whole) + "\" for " + thread + (hole ? ", " + *hole : "");
  }
  return says;
}

}  // namespace

bool has_words(const job::Field& field) {
  if (field.kind == job::FieldKind::words || field.kind == job::FieldKind::yes_no) return true;
  return field.key == "entry" || field.key == "ip" || field.key == "material" ||
         field.key == "adaptor_material";
}

std::optional<CellSays> words_of_cell(const Layout& layout, const Column& column,
                                      std::string_view text, const std::string& where) {
  const job::Field& field = *column.field;
  if (field.key == "entry" && layout.decimal == ',') {
    std::string points(text);  // M32x1,5
    std::replace(points.begin(), points.end(), ',', '.');
    return of_entry(column, points, where);
  }
  if (field.key == "entry") return of_entry(column, text, where);
  if (field.key == "ip") text = least_of(text);
  if (is_of_place(field) && field.key != "protection" && layout.usual != nullptr &&
      is_plain_place(*layout.usual, text)) {
    // That there is no group says nothing of one; of a type of protection n is one.
    if (field.key != "zone") return CellSays{};
    return CellSays{{{&field, "none"}},
                    small_letters(text) == "none" ? "" : "\"" + std::string(text) + "\" for none"};
  }
  written::Taken taken = written::take(written::asked_of(field), text, where);
  const auto words = job::words_of(field);
  if (!words.empty() && !is_one_of(taken.text, words)) {
    if (is_of_place(field)) return several_of_place(field, text, where);
    return std::nullopt;
  }
  CellSays says;
  says.values.emplace_back(&field, taken.text);
  if (small_letters(taken.text) != small_letters(text)) says.taken = taken.says;
  if (!taken.also.empty()) {
    const std::size_t equals = taken.also.find('=');
    says.values.emplace_back(&job::field_named(taken.also.substr(0, equals)),
                             taken.also.substr(equals + 1));
  }
  return says;
}

bool is_beyond_low_voltage(std::string_view text, bool kilovolts) {
  constexpr double k_low_v = 1000.0;
  // Nobody has a system of so few volts; of so few kilovolts many have.
  constexpr std::array k_few_v{5.0, 9.0, 12.0, 24.0, 36.0, 42.0, 48.0};
  constexpr double k_most_kv_alone = 50.0;
  const std::string small = small_letters(text);
  bool any = false;
  for (std::size_t i = 0; i < small.size();) {
    if (!is_digit(small[i])) {
      ++i;
      continue;
    }
    const std::size_t end = std::min(small.find_first_not_of("0123456789.", i), small.size());
    const auto figure = parse_number(std::string_view(small).substr(i, end - i));
    const std::string_view unit = trimmed(std::string_view(small).substr(end));
    i = end;
    if (unit.starts_with("ph") || unit.starts_with("p ") || unit == "p" || unit.starts_with("hz") ||
        unit.starts_with("w") || unit.starts_with("~") || unit.starts_with("x")) {
      continue;
    }
    if (!figure) return true;
    any = true;
    const bool last_kv = small.find("kv", end) != std::string::npos;
    const bool volts = unit.starts_with("v");
    const bool few = *figure < k_most_kv_alone &&
                     std::find(k_few_v.begin(), k_few_v.end(), *figure) == k_few_v.end() &&
                     small.find('v') == std::string::npos;
    const double factor = !volts && (last_kv || kilovolts || few) ? 1000.0 : 1.0;
    if (*figure * factor > k_low_v) return true;
  }
  if (any) return false;
  const std::string_view word = trimmed(small);
  constexpr std::array<std::string_view, 8> k_low{"lv",   "elv", "slv", "selv",
                                                  "pelv", "ac",  "dc",  "low voltage"};
  return std::find(k_low.begin(), k_low.end(), word) == k_low.end();
}

}  // namespace cutback::schedule

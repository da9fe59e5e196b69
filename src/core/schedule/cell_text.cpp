#include "core/schedule/cell_text.hpp"

#include <algorithm>
#include <array>
#include <initializer_list>

#include "cutback/job/field_text.hpp"
#include "cutback/schedule/headings.hpp"
#include "cutback/text.hpp"
#include "cutback/written/written.hpp"

namespace cutback::schedule {
namespace {

using job::FieldKind;

bool has(std::string_view text, std::string_view part) {
  return text.find(part) != std::string_view::npos;
}

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

/// 2023-02-01, as a cell is read that a spreadsheet took for a date.
bool is_date(std::string_view text) {
  constexpr std::string_view k_form = "0000-00-00";
  if (text.size() < k_form.size()) return false;
  for (std::size_t i = 0; i < k_form.size(); ++i) {
    if (k_form[i] == '0' ? !is_digit(text[i]) : text[i] != k_form[i]) return false;
  }
  return true;
}

/// Two figures with a dash, dots or "to" between them.
bool is_range(std::string_view text) {
  constexpr std::string_view k_en_dash = "\xE2\x80\x93";
  if (text.empty() || !is_digit(text.front())) return false;
  if (has(text, "..") || has(text, " to ") || has(text, k_en_dash)) return true;
  const std::size_t dash = text.find('-');
  return dash != std::string_view::npos && text[dash - 1] != 'e' && text[dash - 1] != 'E';
}

/// A figure followed by letters or a sign that is none of a number's own; `in` is a unit that
/// readings know.
bool has_unit(std::string_view text, FieldKind kind) {
  if (text.empty() || !is_digit(text.front())) return false;
  for (std::size_t i = 1; i < text.size(); ++i) {
    const bool unit = is_letter(text[i]) || text[i] == '"' || text[i] == '%' ||
                      static_cast<unsigned char>(text[i]) >= 0x80;
    if (!unit) continue;
    if (kind == FieldKind::readings && text.substr(i, 2) == "in") {
      ++i;
      continue;
    }
    const bool exponent = (text[i] == 'e' || text[i] == 'E') && i + 1 < text.size() &&
                          (is_digit(text[i + 1]) || text[i + 1] == '-' || text[i + 1] == '+');
    if (!exponent) return true;
  }
  return false;
}

Fault fault_of(ErrorCode code, std::string what, const job::Field& field, std::string_view text,
               std::string hint) {
  return {.code = code,
          .what = std::move(what),
          .where = {},
          .given = std::string(text),
          .allowed = job::allowed_text(field),
          .hint = std::move(hint)};
}

/// Whether the decimal mark is the one of the schedule. A comma between two whole numbers could be
/// either of two things, so it is asked about.
std::optional<Fault> check_marks(const job::Field& field, std::string_view text, char decimal) {
  const bool point = has(text, ".");
  const bool comma = has(text, ",");
  if (decimal == ',') {
    if (!point) return std::nullopt;
    return fault_of(ErrorCode::bad_number, "a decimal point in a schedule with decimal commas",
                    field, text, "write every decimal mark alike, and no thousands sign");
  }
  if (!comma) return std::nullopt;
  if (field.kind == FieldKind::readings) {
    if (point || has(text, "+")) return std::nullopt;  // a comma begins the next place
    return fault_of(ErrorCode::bad_number, "a comma that may be a decimal mark or the next place",
                    field, text, "for decimal commas give --decimal ,; two places as 15.0,12.0");
  }
  return fault_of(ErrorCode::bad_number, "a decimal comma in a schedule with decimal points", field,
                  text, "give --decimal , when all are commas; no thousands sign");
}

std::string with_points(const job::Field& field, std::string_view text, char decimal) {
  std::string plain(text);
  if (decimal == '.') return plain;
  std::replace(plain.begin(), plain.end(), ',', '.');
  if (field.kind == FieldKind::readings) std::replace(plain.begin(), plain.end(), ';', ',');
  return plain;
}

/// Without no-break spaces, signs for a diameter, and spaces round it.
std::string bare_text(std::string_view text) {
  std::string out(text);
  for (const std::string_view space : {"\xC2\xA0", "\xE2\x80\xAF", "\xE2\x80\x89"}) {
    for (std::size_t at = out.find(space); at != std::string::npos; at = out.find(space, at)) {
      out.replace(at, space.size(), " ");
    }
  }
  constexpr std::string_view k_minus = "\xE2\x88\x92";
  if (out.starts_with(k_minus)) out.replace(0, k_minus.size(), "-");
  std::string_view rest = trimmed(out);
  for (const std::string_view sign : {"\xC3\x98", "\xC3\xB8", "\xE2\x8C\x80", "\xCE\xA6",
                                      "\xCF\x86", "dia.", "Dia.", "dia", "Dia"}) {
    if (!rest.starts_with(sign)) continue;
    rest = trimmed(rest.substr(sign.size()));
    break;
  }
  return std::string(rest);
}

bool ends_word(char c) {
  return is_digit(c) || c == '+' || c == ',' || c == ';' || c == '.' || c == '-';
}

/// A figure, or readings, without the column's own unit behind each.
/// @param inches  gets whether a reading says inches, `mm` whether one says millimetres
std::string without_unit(const job::Field& field, std::string_view text, bool& inches, bool& mm) {
  const bool readings = field.kind == FieldKind::readings;
  const std::string_view own = readings ? "mm" : field.allowed;
  std::string out;
  for (std::size_t i = 0; i < text.size();) {
    const bool behind_figure = !out.empty() && (is_digit(out.back()) || out.back() == '.');
    std::size_t begin = i;
    while (begin < text.size() && text[begin] == ' ') ++begin;
    std::size_t end = begin;
    // A 2 or 3 behind a letter, and a point, belong to a unit: mm2, sq.mm.
    const auto goes_on = [&](char c) {
      return !ends_word(c) || (end > begin && (c == '2' || c == '3' || c == '.'));
    };
    while (end < text.size() && goes_on(text[end])) ++end;
    const std::string_view unit =
        end > begin ? written::unit_named(text.substr(begin, end - begin)) : std::string_view();
    if (behind_figure && !unit.empty() && unit == own) {
      mm = mm || readings;
      i = end;
    } else if (behind_figure && readings && unit == "in") {
      out += "in";
      inches = true;
      i = end;
    } else {
      out += text[i++];
    }
  }
  trim_end(out);
  return out;
}

/// Every reading as inches.
std::string as_inches(std::string_view text, char next_place) {
  std::string out;
  std::string reading;
  const auto put = [&] {
    out += reading;
    if (!reading.empty() && !reading.ends_with("in")) out += "in";
    reading.clear();
  };
  for (const char c : text) {
    if (c == '+' || c == next_place) {
      put();
      out += c;
    } else if (c != ' ') {
      reading += c;
    }
  }
  put();
  return out;
}

/// A number with thousands signs that can be nothing else: three digits behind each, and a decimal
/// mark of the other kind behind them.
std::string without_thousands(std::string_view text, char decimal) {
  const char sign = decimal == '.' ? ',' : '.';
  const std::size_t point = text.find(decimal);
  const std::size_t first = text.find(sign);
  const auto is_plain = [&](char c) { return is_digit(c) || c == sign || c == decimal; };
  if (point == std::string_view::npos || first == std::string_view::npos || first == 0 ||
      first > 3 || text.find(sign, point) != std::string_view::npos ||
      !std::all_of(text.begin(), text.end(), is_plain) ||
      text.find(decimal, point + 1) != std::string_view::npos) {
    return std::string(text);
  }
  for (std::size_t at = first; at < point; at += 4) {
    if (text[at] != sign) return std::string(text);
  }
  if ((point - first) % 4 != 0) return std::string(text);
  std::string out(text);
  out.erase(std::remove(out.begin(), out.end(), sign), out.end());
  return out;
}

/// The rated voltages of the built-in constructions, however they are written.
std::string voltage_text(std::string_view text) {
  std::string plain;
  for (const char c : heading_form(text).full) {
    if (c != ' ') plain += c;
  }
  for (const std::string_view unit : {"kv", "v"}) {
    if (plain.ends_with(unit)) plain.resize(plain.size() - unit.size());
  }
  if (plain == "600/1000" || plain == "0.6/1" || plain == "0.6/1.0") return "0.6/1";
  if (plain == "1900/3300" || plain == "1.9/3.3") return "1.9/3.3";
  return std::string(text);
}

}  // namespace

bool is_sheet_error(std::string_view text) {
  if (!text.starts_with('#')) return false;
  constexpr std::array<std::string_view, 12> k_errors{
      "#REF!",  "#N/A",    "#VALUE!", "#DIV/0!",       "#NAME?",          "#NUM!",
      "#NULL!", "#SPILL!", "#CALC!",  "#GETTING_DATA", "#not-calculated", "#####"};
  return text.starts_with("#struck-through") ||
         std::find(k_errors.begin(), k_errors.end(), text) != k_errors.end();
}

std::optional<Fault> to_plain_text(const Column& column, std::string_view raw, char decimal,
                                   std::string& plain) {
  const job::Field& field = *column.field;
  if (is_sheet_error(raw) || (raw.starts_with('#') && field.kind != FieldKind::text)) {
    if (raw.starts_with("#struck-through")) {
      return fault_of(ErrorCode::bad_value, "the cell, or part of it, is struck through", field, "",
                      "write what holds, and strike the whole row out where nothing does");
    }
    if (raw == "#not-calculated") {
      return fault_of(ErrorCode::bad_value, "the cell holds a formula without its value", field, "",
                      "open the workbook in a spreadsheet and save it once");
    }
    return fault_of(ErrorCode::bad_value, "the cell holds a spreadsheet's error, not a value",
                    field, raw, "mend the formula and save again");
  }
  if (field.kind == FieldKind::text) {
    plain = std::string(raw);
    return std::nullopt;
  }
  if (raw.front() == '=' || raw.front() == '@') {
    return fault_of(ErrorCode::bad_value, "the cell holds a formula, not a value", field, raw,
                    "save the schedule with the values in place of the formulas");
  }
  if (field.kind == FieldKind::words || field.kind == FieldKind::yes_no) {
    plain = field.key == "voltage" ? voltage_text(raw) : std::string(raw);
    return std::nullopt;
  }
  // Nearly every cell is a figure and nothing else.
  const bool figure =
      std::all_of(raw.begin(), raw.end(), [](char c) { return is_digit(c) || c == '.'; });
  bool inches = false;
  bool mm = false;
  const std::string bare = figure ? std::string(raw) : bare_text(raw);
  if (is_date(raw)) {
    return fault_of(ErrorCode::bad_number, "the cell holds a date, not a figure", field, raw,
                    "write the figure that the spreadsheet took for a date");
  }
  if (is_range(bare)) {
    return fault_of(ErrorCode::bad_number, "the cell holds a range, not one figure", field, raw,
                    "give the nominal figure, and half of the range as its allowance");
  }
  std::string text = figure ? bare : without_unit(field, bare, inches, mm);
  if (has_unit(text, field.kind)) {
    return fault_of(ErrorCode::bad_number, "the cell holds more than a figure", field, raw,
                    "give the figure alone, or with the unit of its column");
  }
  // In one cell of a schedule stands a figure of a book: what readings are is another matter.
  const bool readings = field.kind == FieldKind::readings;
  const bool several = has(text, "+") || has(text, ",") || has(text, ";");
  const auto first = std::find_if(text.begin(), text.end(),
                                  [](char c) { return !is_digit(c) && c != '.' && c != ' '; });
  const bool plain_inches = has(text, "in");
  const bool negative = first == text.begin() && first != text.end() && *first == '-';
  if (readings && !several && !plain_inches && !negative && first != text.end()) {
    return fault_of(ErrorCode::bad_number, "the cell holds no plain figure", field, raw,
                    "give the figure alone, and its tolerance as 22.5+/-0.5");
  }
  if (column.inches && mm) {
    return fault_of(ErrorCode::contradiction, "millimetres under a heading that says inches", field,
                    raw, "write every reading of the column in one unit");
  }
  if (field.kind != FieldKind::readings) text = without_thousands(text, decimal);
  if (auto fault = check_marks(field, text, decimal)) return fault;
  plain = with_points(field, text, decimal);
  if (column.inches) plain = as_inches(plain, ',');
  return std::nullopt;
}

}  // namespace cutback::schedule

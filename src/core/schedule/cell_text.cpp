#include "core/schedule/cell_text.hpp"

#include <algorithm>

#include "cutback/job/field_text.hpp"
#include "cutback/text.hpp"

namespace cutback::schedule {
namespace {

using job::FieldKind;

bool has(std::string_view text, std::string_view part) {
  return text.find(part) != std::string_view::npos;
}

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }

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

}  // namespace

std::optional<Fault> to_plain_text(const job::Field& field, std::string_view text, char decimal,
                                   std::string& plain) {
  if (field.kind == FieldKind::text) {
    plain = text;
    return std::nullopt;
  }
  if (text.front() == '=' || text.front() == '@') {
    return fault_of(ErrorCode::bad_value, "the cell holds a formula, not a value", field, text,
                    "save the schedule with the values in place of the formulas");
  }
  if (text.front() == '#') {
    return fault_of(ErrorCode::bad_value, "the cell holds a spreadsheet's error, not a value",
                    field, text, "mend the formula and save again");
  }
  if (field.kind == FieldKind::words || field.kind == FieldKind::yes_no) {
    plain = text;
    return std::nullopt;
  }
  if (is_range(text)) {
    return fault_of(ErrorCode::bad_number, "the cell holds a range, not one figure", field, text,
                    "give the nominal figure, and half of the range as its allowance");
  }
  if (has_unit(text, field.kind)) {
    return fault_of(ErrorCode::bad_number, "the cell holds more than a figure", field, text,
                    "give the figure alone, without its unit: the heading says it");
  }
  if (auto fault = check_marks(field, text, decimal)) return fault;
  plain = with_points(field, text, decimal);
  return std::nullopt;
}

}  // namespace cutback::schedule

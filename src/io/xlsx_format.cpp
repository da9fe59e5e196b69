#include "io/xlsx_format.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <chrono>
#include <cmath>
#include <optional>

#include "cutback/number.hpp"
#include "cutback/text.hpp"

namespace cutback::io {
namespace {

constexpr int k_digits = 15;  // that a spreadsheet shows

void append_number(std::string& out, double value, char decimal) {
  std::array<char, 32> buffer;
  if (value == 0.0) value = 0.0;  // drops the sign of -0
  const auto [end, error] = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value,
                                          std::chars_format::general, k_digits);
  const std::size_t start = out.size();
  out.append(buffer.data(), end);
  if (decimal != '.')
    std::replace(out.begin() + static_cast<std::ptrdiff_t>(start), out.end(), '.', decimal);
}

/// Whether a number stands as it would be written again: plain, without zeros that say nothing. A
/// double keeps 15 digits (IEEE 754), so that turning it into one and back changes nothing.
bool is_shortest(std::string_view text) {
  const bool negative = text.starts_with('-');
  if (negative) text.remove_prefix(1);
  const std::size_t point = std::min(text.find('.'), text.size());
  const std::string_view whole = text.substr(0, point);
  const std::string_view behind = text.substr(std::min(point + 1, text.size()));
  const auto are_digits = [](std::string_view part) {
    return std::all_of(part.begin(), part.end(), is_digit);
  };
  if (whole.empty() || whole.size() + behind.size() > static_cast<std::size_t>(k_digits) ||
      !are_digits(whole) || !are_digits(behind)) {
    return false;
  }
  if (point < text.size() && (behind.empty() || behind.back() == '0')) return false;
  if (whole.front() != '0') return true;
  if (whole.size() > 1) return false;
  // Below 0.0001 an exponent is written.
  return behind.empty() ? !negative : behind.find_first_not_of('0') < 4;
}

struct Clock {
  long days;
  long seconds;  ///< of the day
};

Clock split(double serial) {
  constexpr long k_day = 86400;
  Clock clock{static_cast<long>(std::floor(serial)), 0};
  clock.seconds = std::lround((serial - std::floor(serial)) * static_cast<double>(k_day));
  if (clock.seconds == k_day) clock = {clock.days + 1, 0};
  return clock;
}

void append_two(std::string& out, long value) {
  out += static_cast<char>('0' + value / 10);
  out += static_cast<char>('0' + value % 10);
}

void append_day(std::string& out, long days, bool from_1904) {
  using namespace std::chrono;
  // ECMA-376 part 1, 18.17.4.1: the 1900 system has a 29 February 1900, day 60, that never was.
  if (!from_1904 && days == 60) {
    out += "1900-02-29";
    return;
  }
  const sys_days first =
      from_1904 ? sys_days{year{1904} / 1 / 1} : sys_days{year{1899} / 12 / (days < 60 ? 31 : 30)};
  const year_month_day date{first + std::chrono::days{days}};
  out += std::to_string(static_cast<int>(date.year()));
  out += '-';
  append_two(out, static_cast<long>(static_cast<unsigned>(date.month())));
  out += '-';
  append_two(out, static_cast<long>(static_cast<unsigned>(date.day())));
}

constexpr std::size_t k_escape_length = 7;  // _xHHHH_

/// The character that an escape stands for; none where it is no escape, or one of what no text
/// holds.
std::optional<unsigned> escaped_character(std::string_view text) {
  if (text.size() < k_escape_length || text.back() != '_') return std::nullopt;
  unsigned code = 0;
  const char* digits = text.data() + 2;
  const auto [end, error] = std::from_chars(digits, digits + 4, code, 16);
  const bool control = code < 0x20 && code != '\t' && code != '\n' && code != '\r';
  const bool half = code >= 0xD800 && code <= 0xDFFF;  // a surrogate
  if (error != std::errc{} || end != digits + 4 || control || half) return std::nullopt;
  return code;
}

void append_utf8(std::string& out, unsigned code) {
  if (code < 0x80) {
    out += static_cast<char>(code);
    return;
  }
  if (code < 0x800) {
    out += static_cast<char>(0xC0U | (code >> 6U));
  } else {
    out += static_cast<char>(0xE0U | (code >> 12U));
    out += static_cast<char>(0x80U | ((code >> 6U) & 0x3FU));
  }
  out += static_cast<char>(0x80U | (code & 0x3FU));
}

}  // namespace

XlsxFormat xlsx_format(unsigned built_in) {
  // ECMA-376 part 1, 18.8.30; 27 to 36 and 50 to 58 are dates in its lists for East Asia.
  if (built_in == 9 || built_in == 10) return XlsxFormat::percent;
  const bool date = (built_in >= 14 && built_in <= 22) || (built_in >= 27 && built_in <= 36) ||
                    (built_in >= 45 && built_in <= 47) || (built_in >= 50 && built_in <= 58);
  return date ? XlsxFormat::date : XlsxFormat::number;
}

XlsxFormat xlsx_format(std::string_view code) {
  constexpr std::string_view k_date_letters = "dmyhsDMYHS";
  bool percent = false;
  for (std::size_t i = 0; i < code.size(); ++i) {
    const char c = code[i];
    if (c == '\\' || c == '_' || c == '*') {
      ++i;  // the next character is shown, or gives a width
    } else if (c == '"') {
      i = std::min(code.find('"', i + 1), code.size());
    } else if (c == '[') {
      const std::size_t end = std::min(code.find(']', i), code.size());
      const std::string_view inside = code.substr(i + 1, end - i - 1);
      // [h], [mm] and [ss] count on past a day; everything else in brackets is no date.
      if (!inside.empty() && inside.find_first_not_of("hmsHMS") == std::string_view::npos) {
        return XlsxFormat::date;
      }
      i = end;
    } else if (k_date_letters.find(c) != std::string_view::npos) {
      return XlsxFormat::date;
    } else if (c == '%') {
      percent = true;
    }
  }
  return percent ? XlsxFormat::percent : XlsxFormat::number;
}

std::string xlsx_whole_format(std::string_view code) {
  // The first section is that of positive numbers. 0x01 stands before a character that is shown.
  std::string format;
  std::size_t digits = 0;
  bool more = false;
  for (std::size_t i = 0; i < code.size() && code[i] != ';'; ++i) {
    const char c = code[i];
    const auto shown = [&](char what) {
      format += '\x01';
      format += what;
      more = true;
    };
    if (c == '0' || c == '#') {
      if (c == '0') more = more || digits > 0;
      if (c == '#' && digits == 0) continue;  // shows nothing of its own
      ++digits;
      format += '0';
    } else if (c == '"') {
      for (++i; i < code.size() && code[i] != '"'; ++i) shown(code[i]);
    } else if (c == '\\' && i + 1 < code.size()) {
      shown(code[++i]);
    } else if (c == '-' || c == ' ' || c == '/' || c == '(' || c == ')') {
      shown(c);
    } else if (c == '[') {
      const std::size_t end = code.find(']', i);
      const std::string_view inside = code.substr(i + 1, end - i - 1);
      // A colour changes no character; a condition does.
      if (end == std::string_view::npos || inside.find_first_of("<>=$") != std::string_view::npos) {
        return {};
      }
      i = end;
    } else {
      return {};  // decimals, thousands, words: not the digits alone
    }
  }
  return more && digits > 0 ? format : std::string();
}

void append_xlsx_whole(std::string& out, std::string_view text, std::string_view format,
                       char decimal) {
  const bool whole = !text.empty() && text.size() <= static_cast<std::size_t>(k_digits) &&
                     std::all_of(text.begin(), text.end(), is_digit);
  if (!whole) return append_xlsx_number(out, text, decimal);
  std::size_t places = 0;
  for (std::size_t i = 0; i < format.size(); ++i) {
    if (format[i] == '\x01') {
      ++i;
    } else {
      ++places;
    }
  }
  std::size_t used = 0;  // of the places
  for (std::size_t i = 0; i < format.size(); ++i) {
    if (format[i] == '\x01') {
      out += format[++i];
      continue;
    }
    const std::size_t left = places - used++;  // places from here on
    if (used == 1 && text.size() > places) out += text.substr(0, text.size() - places);
    out += left > text.size() ? '0' : text[text.size() - left];
  }
}

void append_xlsx_number(std::string& out, std::string_view text, char decimal) {
  if (is_shortest(text)) {
    out += text;
    const std::size_t point = text.find('.');
    if (point < text.size()) out[out.size() - text.size() + point] = decimal;
  } else if (const auto value = parse_number(text)) {
    append_number(out, *value, decimal);
  } else {
    out += text;
  }
}

void append_xlsx_percent(std::string& out, std::string_view text, char decimal) {
  const auto value = parse_number(text);
  if (!value) {
    out += text;
    return;
  }
  append_number(out, *value * 100.0, decimal);
  out += '%';
}

void append_xlsx_date(std::string& out, std::string_view text, bool from_1904, char decimal) {
  constexpr double k_end = 2958466.0;  // the day after 9999-12-31, counted from 1900
  constexpr double k_end_1904 = k_end - 1462.0;
  const auto value = parse_number(text);
  if (!value || *value < 0.0 || *value >= (from_1904 ? k_end_1904 : k_end)) {
    append_xlsx_number(out, text, decimal);
    return;
  }
  const Clock clock = split(*value);
  const bool time_alone = *value < 1.0 && !(from_1904 && *value == 0.0);
  if (!time_alone) append_day(out, clock.days, from_1904);
  if (!time_alone && clock.seconds == 0) return;
  if (!time_alone) out += 'T';
  append_two(out, clock.seconds / 3600);
  out += ':';
  append_two(out, clock.seconds / 60 % 60);
  out += ':';
  append_two(out, clock.seconds % 60);
}

std::string unescaped_xlsx(std::string_view text) {
  std::string out;
  std::size_t from = 0;
  for (std::size_t at = text.find("_x"); at != std::string_view::npos;
       at = text.find("_x", at + 1)) {
    const auto character = escaped_character(text.substr(at, k_escape_length));
    if (!character) continue;
    out += text.substr(from, at - from);
    append_utf8(out, *character);
    from = at + k_escape_length;
    at = from - 1;
  }
  out += text.substr(from);
  return out;
}

}  // namespace cutback::io

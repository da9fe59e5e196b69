#include "cutback/number.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <cstring>
#include <limits>

namespace cutback {

namespace {

constexpr std::array k_powers{1.0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12};

/// 10^-decimals, each as the nearest double.
constexpr auto k_steps = [] {
  std::array<double, k_powers.size()> steps{};
  for (std::size_t i = 0; i < steps.size(); ++i) steps[i] = 1.0 / k_powers[i];
  return steps;
}();

/// 00, 01 ... 99.
constexpr auto k_pairs = [] {
  std::array<char, 200> pairs{};
  for (std::size_t i = 0; i < pairs.size(); i += 2) {
    pairs[i] = static_cast<char>('0' + i / 20);
    pairs[i + 1] = static_cast<char>('0' + i / 2 % 10);
  }
  return pairs;
}();

// Eight characters at a time, the first in the lowest byte.
constexpr std::uint64_t k_each = 0x0101010101010101;
constexpr std::uint64_t k_highest = k_each << 7;

/// @param text  of one to eight characters; the bytes behind them are zero
std::uint64_t characters(std::string_view text) {
  const std::size_t size = text.size();
  if (size < sizeof(std::uint32_t)) {
    const auto at = [&](std::size_t i) {
      return std::uint64_t{static_cast<unsigned char>(text[i])} << 8 * i;
    };
    return at(0) | at(size / 2) | at(size - 1);
  }
  std::uint32_t first = 0;
  std::uint32_t last = 0;
  std::memcpy(&first, text.data(), sizeof first);
  std::memcpy(&last, text.data() + size - sizeof last, sizeof last);
  return first | std::uint64_t{last} << 8 * (size - sizeof last);
}

/// As parse_figure, for one to eight characters, where the lowest byte comes first. Nothing is
/// decided character by character: branches on them would be mispredicted.
std::optional<double> parse_short(std::string_view text) {
  const std::uint64_t given = characters(text);
  const std::uint64_t unlike = given ^ (k_each * '.');
  const std::uint64_t point = ~(((unlike & ~k_highest) + ~k_highest) | unlike) & k_highest;
  if ((point & (point - 1)) != 0) return std::nullopt;
  const std::size_t count = text.size() - std::size_t{point != 0};
  if (count == 0) return std::nullopt;
  const std::uint64_t before = (point >> 7) - 1;  // all of it where there is no point
  const std::uint64_t without = (given & before) | (given >> 8 & ~before);
  const std::uint64_t noughts = k_each * '0' >> 8 * (count - 1) >> 8;
  std::uint64_t digits = (without << 8 * (sizeof digits - count) | noughts) ^ (k_each * '0');
  if (((digits | (digits + k_each * (0x7f - 9))) & k_highest) != 0) return std::nullopt;
  digits = (digits * 10 + (digits >> 8)) & 0x00ff00ff00ff00ff;
  digits = (digits * 100 + (digits >> 16)) & 0x0000ffff0000ffff;
  digits = (digits * 10000 + (digits >> 32)) & 0xffffffff;
  const std::size_t place = static_cast<std::size_t>(std::countr_zero(point)) / 8;
  return static_cast<double>(digits) / k_powers[point != 0 ? text.size() - 1 - place : 0];
}

}  // namespace

std::optional<double> parse_figure(std::string_view text) {
  if (std::endian::native == std::endian::little && !text.empty() && text.size() <= 8) {
    return parse_short(text);
  }
  constexpr std::size_t k_most_digits = 15;
  std::uint64_t digits = 0;
  std::size_t decimals = 0;
  std::size_t points = 0;
  for (const char c : text) {
    if (c == '.') {
      ++points;
      continue;
    }
    const auto digit = static_cast<std::uint64_t>(static_cast<unsigned char>(c)) - '0';
    if (digit > 9) return std::nullopt;
    digits = 10 * digits + digit;
    decimals += points;
  }
  const bool whole_or_decimal = points <= 1 && text.size() > points;
  if (!whole_or_decimal || text.size() - points > k_most_digits || decimals >= k_powers.size()) {
    return std::nullopt;
  }
  return static_cast<double>(digits) / k_powers[decimals];
}

std::optional<double> parse_number(std::string_view text) {
  if (const auto figure = parse_figure(text)) return figure;
  if (text.size() > 1 && text.front() == '+' && text[1] != '-') text.remove_prefix(1);
  // from_chars takes "inf" and "nan"; a number as people write it starts with a digit or a point.
  const std::size_t first = (!text.empty() && text.front() == '-') ? 1 : 0;
  if (first >= text.size()) return std::nullopt;
  const char head = text[first];
  if (head != '.' && (head < '0' || head > '9')) return std::nullopt;
  double value = 0.0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || end != text.data() + text.size()) return std::nullopt;
  return value;
}

namespace {

/// Steps of a rounded value, half up, with a fraction that is still to be cut off.
double steps_and_fraction(double value, double step) {
  const double steps = std::abs(value) / step;
  // A nudge of a few units in the last place turns 114.99999999999999 into 115.
  constexpr double k_units = 16.0;
  const double nudge = std::max(1.0, steps) * k_units * std::numeric_limits<double>::epsilon();
  return steps + 0.5 + nudge;
}

double whole_steps(double value, double step) {
  return std::floor(steps_and_fraction(value, step));
}

enum class Zeros { keep, trim };

/// Of a figure with so many digits at most on each side of the point.
constexpr std::size_t k_short = 4;
constexpr std::array<std::uint32_t, k_short + 1> k_whole_powers{1, 10, 100, 1000, 10000};

bool is_short(std::uint64_t steps, std::size_t decimals) {
  return decimals <= k_short && steps < k_whole_powers[decimals] * k_whole_powers[k_short];
}

/// Four digits, the first in the lowest byte.
std::uint32_t four_digits(std::uint32_t number) {
  const auto pair = [](std::uint32_t of) {
    std::uint16_t chars = 0;
    std::memcpy(&chars, k_pairs.data() + std::size_t{2} * of, sizeof chars);
    return std::uint32_t{chars};
  };
  return pair(number / 100) | pair(number % 100) << 16;
}

/// As append_steps, for most figures, where the lowest byte comes first. All eight digits are
/// written and those that are not wanted left out: branches on single digits would be mispredicted.
void append_short(std::string& out, std::uint32_t steps, std::size_t decimals, bool negative,
                  Zeros zeros) {
  constexpr std::string_view k_room = "                ";
  const std::uint32_t whole = steps / k_whole_powers[decimals];
  const std::uint32_t behind =
      steps % k_whole_powers[decimals] * k_whole_powers[k_short - decimals];
  const std::size_t noughts =
      std::size_t{whole < 10} + std::size_t{whole < 100} + std::size_t{whole < 1000};
  const std::size_t trimmed = std::size_t{behind % 10 == 0} + std::size_t{behind % 100 == 0} +
                              std::size_t{behind % 1000 == 0} + std::size_t{behind == 0};
  const std::size_t kept = zeros == Zeros::trim ? k_short - trimmed : decimals;
  const std::uint64_t whole_and_point =
      (std::uint64_t{four_digits(whole)} | std::uint64_t{'.'} << 32) >> 8 * noughts;
  const std::uint32_t decimal_digits = four_digits(behind);
  const std::size_t start = out.size();
  out += k_room;
  char* at = out.data() + start;
  if (negative && steps != 0) *at++ = '-';
  std::memcpy(at, &whole_and_point, sizeof whole_and_point);
  at += k_short - noughts;
  std::memcpy(at + 1, &decimal_digits, sizeof decimal_digits);
  at += kept + std::size_t{kept > 0};
  out.resize(static_cast<std::size_t>(at - out.data()));
}

/// Puts a whole number of steps of 10^-decimals behind `out`, the point where it belongs.
void append_steps(std::string& out, std::uint64_t steps, std::size_t decimals, bool negative,
                  Zeros zeros) {
  if (std::endian::native == std::endian::little && is_short(steps, decimals)) {
    append_short(out, static_cast<std::uint32_t>(steps), decimals, negative, zeros);
    return;
  }
  for (; zeros == Zeros::trim && decimals > 0 && steps % 10 == 0; --decimals) steps /= 10;
  std::array<char, 40> buffer;
  char* const end = buffer.data() + buffer.size();
  char* at = end;
  const bool sign = negative && steps != 0;
  for (; decimals > 0; --decimals, steps /= 10) {
    *--at = static_cast<char>('0' + steps % 10);
    if (decimals == 1) *--at = '.';
  }
  do {
    *--at = static_cast<char>('0' + steps % 10);
    steps /= 10;
  } while (steps != 0);
  if (sign) *--at = '-';
  out.append(at, end);
}

void append_figure(std::string& out, double value, int decimals, Zeros zeros) {
  constexpr double k_exact = 9007199254740992.0;  // every whole number up to 2^53 is a double
  if (decimals >= 0 && static_cast<std::size_t>(decimals) < k_powers.size()) {
    const auto places = static_cast<std::size_t>(decimals);
    const double steps = steps_and_fraction(value, k_steps[places]);
    if (steps < k_exact) {
      append_steps(out, static_cast<std::uint64_t>(steps), places, std::signbit(value), zeros);
      return;
    }
  }
  double rounded = round_half_up(value, std::pow(10.0, -decimals));
  if (rounded == 0.0) rounded = 0.0;  // drops the sign of -0
  std::array<char, 400> buffer{};
  const auto result = std::to_chars(buffer.data(), buffer.data() + buffer.size(), rounded,
                                    std::chars_format::fixed, decimals);
  const std::size_t start = out.size();
  out.append(buffer.data(), result.ptr);
  if (zeros == Zeros::keep || out.find('.', start) == std::string::npos) return;
  while (out.back() == '0') out.pop_back();
  if (out.back() == '.') out.pop_back();
}

}  // namespace

void append_fixed(std::string& out, double value, int decimals) {
  append_figure(out, value, decimals, Zeros::keep);
}

std::string fixed(double value, int decimals) {
  std::string text;
  append_fixed(text, value, decimals);
  return text;
}

void append_plain(std::string& out, double value, int decimals) {
  append_figure(out, value, decimals, Zeros::trim);
}

std::string plain(double value, int decimals) {
  std::string text;
  append_plain(text, value, decimals);
  return text;
}

double round_half_up(double value, double step) {
  return std::copysign(whole_steps(value, step) * step, value);
}

namespace {
constexpr double k_same_multiple = 1e-6;
}  // namespace

double round_down(double value, double step) {
  return std::floor((value + k_same_multiple) / step) * step;
}

double round_up(double value, double step) {
  return std::ceil((value - k_same_multiple) / step) * step;
}

RoundedUncertainty round_uncertainty(double expanded) {
  if (!(expanded > 0.0)) return {0.0, 2};
  const int exponent = static_cast<int>(std::floor(std::log10(expanded)));
  const int decimals = std::max(0, 1 - exponent);
  const double step = std::pow(10.0, exponent - 1);
  const double steps = std::ceil(expanded / step - 1e-9);
  const double value = decimals > 0 ? steps / std::pow(10.0, decimals) : steps * step;
  return {value, decimals};
}

}  // namespace cutback

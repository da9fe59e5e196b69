#include "cutback/number.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdint>
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

}  // namespace

std::optional<double> parse_figure(std::string_view text) {
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

/// Steps of a rounded value, half up, with a fraction still to be cut off.
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

/// Puts a whole number of steps of 10^-decimals behind `out`, the point where it belongs.
void append_steps(std::string& out, std::uint64_t steps, std::size_t decimals, bool negative,
                  Zeros zeros) {
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

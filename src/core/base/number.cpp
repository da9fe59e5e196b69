#include "cutback/number.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <limits>

namespace cutback {

std::optional<double> parse_number(std::string_view text) {
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

constexpr std::array k_powers{1.0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12};

/// Steps of a rounded value, half up.
double whole_steps(double value, double step) {
  const double steps = std::abs(value) / step;
  // A nudge of a few units in the last place turns 114.99999999999999 into 115.
  constexpr double k_units = 16.0;
  const double nudge = std::max(1.0, steps) * k_units * std::numeric_limits<double>::epsilon();
  return std::floor(steps + 0.5 + nudge);
}

/// Puts a whole number of steps of 10^-decimals behind `out`, the point where it belongs.
void append_steps(std::string& out, std::uint64_t steps, std::size_t decimals, bool negative) {
  std::array<char, 32> buffer{};
  const auto result = std::to_chars(buffer.data(), buffer.data() + buffer.size(), steps);
  const std::string_view digits(buffer.data(),
                                static_cast<std::size_t>(result.ptr - buffer.data()));
  if (negative && steps != 0) out += '-';
  if (digits.size() <= decimals) {
    out += '0';
  } else {
    out += digits.substr(0, digits.size() - decimals);
  }
  if (decimals == 0) return;
  out += '.';
  if (digits.size() < decimals) out.append(decimals - digits.size(), '0');
  out += digits.size() < decimals ? digits : digits.substr(digits.size() - decimals);
}

void append_fixed(std::string& out, double value, int decimals) {
  constexpr double k_exact = 9007199254740992.0;  // every whole number up to 2^53 is a double
  if (decimals >= 0 && static_cast<std::size_t>(decimals) < k_powers.size()) {
    const auto places = static_cast<std::size_t>(decimals);
    const double steps = whole_steps(value, 1.0 / k_powers[places]);
    if (steps < k_exact) {
      append_steps(out, static_cast<std::uint64_t>(steps), places, std::signbit(value));
      return;
    }
  }
  double rounded = round_half_up(value, std::pow(10.0, -decimals));
  if (rounded == 0.0) rounded = 0.0;  // drops the sign of -0
  std::array<char, 400> buffer{};
  const auto result = std::to_chars(buffer.data(), buffer.data() + buffer.size(), rounded,
                                    std::chars_format::fixed, decimals);
  out.append(buffer.data(), result.ptr);
}

}  // namespace

std::string fixed(double value, int decimals) {
  std::string text;
  append_fixed(text, value, decimals);
  return text;
}

void append_plain(std::string& out, double value, int decimals) {
  const std::size_t start = out.size();
  append_fixed(out, value, decimals);
  if (out.find('.', start) == std::string::npos) return;
  while (out.back() == '0') out.pop_back();
  if (out.back() == '.') out.pop_back();
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

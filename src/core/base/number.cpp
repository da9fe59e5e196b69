#include "cutback/number.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
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

std::string fixed(double value, int decimals) {
  const double step = std::pow(10.0, -decimals);
  double rounded = round_half_up(value, step);
  if (rounded == 0.0) rounded = 0.0;  // drops the sign of -0
  std::array<char, 400> buffer{};
  const auto result = std::to_chars(buffer.data(), buffer.data() + buffer.size(), rounded,
                                    std::chars_format::fixed, decimals);
  return {buffer.data(), result.ptr};
}

std::string plain(double value, int decimals) {
  std::string text = fixed(value, decimals);
  if (text.find('.') == std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

double round_half_up(double value, double step) {
  const double steps = std::abs(value) / step;
  // A nudge of a few units in the last place turns 114.99999999999999 into 115.
  constexpr double k_units = 16.0;
  const double nudge = std::max(1.0, steps) * k_units * std::numeric_limits<double>::epsilon();
  const double rounded = std::floor(steps + 0.5 + nudge) * step;
  return std::copysign(rounded, value);
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

#include "cutback/money.hpp"

#include <cmath>

#include "cutback/error.hpp"
#include "cutback/number.hpp"

namespace cutback {
namespace {

std::int64_t scale_of(int decimals) {
  std::int64_t scale = 1;
  for (int i = 0; i < decimals; ++i) scale *= 10;
  return scale;
}

InputError too_much() {
  return InputError(make_fault(ErrorCode::out_of_range, "the sum of money is too large", "price",
                               "", "", "look for a price or a quantity that is wrong"));
}

}  // namespace

std::optional<int> price_decimals(double price) {
  for (int decimals = k_least_price_decimals; decimals <= k_most_price_decimals; ++decimals) {
    if (parse_number(fixed(price, decimals)) == price) return decimals;
  }
  return std::nullopt;
}

std::int64_t price_units(double price, int decimals) {
  return std::llround(price * static_cast<double>(scale_of(decimals)));
}

std::string money_text(std::int64_t units, int decimals) {
  const std::int64_t scale = scale_of(decimals);
  std::string text = units < 0 ? "-" : "";
  const std::int64_t whole = units / scale;
  const std::int64_t rest = units % scale;
  text += std::to_string(whole < 0 ? -whole : whole);
  if (decimals == 0) return text;
  const std::string digits = std::to_string(rest < 0 ? -rest : rest);
  text += '.';
  text.append(static_cast<std::size_t>(decimals) - digits.size(), '0');
  return text + digits;
}

double money_value(std::int64_t units, int decimals) {
  return static_cast<double>(units) / static_cast<double>(scale_of(decimals));
}

std::int64_t money_times(std::int64_t units, std::uint64_t count) {
  std::int64_t product = 0;
  if (__builtin_mul_overflow(units, count, &product)) throw too_much();
  return product;
}

std::int64_t money_sum(std::int64_t a, std::int64_t b) {
  std::int64_t sum = 0;
  if (__builtin_add_overflow(a, b, &sum)) throw too_much();
  return sum;
}

}  // namespace cutback

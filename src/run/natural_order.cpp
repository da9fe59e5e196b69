#include "run/natural_order.hpp"

#include <algorithm>
#include <cstddef>

#include "cutback/text.hpp"

namespace cutback::run {
namespace {

/// The run of digits at the beginning, without leading zeros.
std::string_view take_number(std::string_view& text) {
  std::size_t end = 0;
  while (end < text.size() && is_digit(text[end])) ++end;
  std::string_view number = text.substr(0, end);
  text.remove_prefix(end);
  number.remove_prefix(std::min(number.find_first_not_of('0'), number.size()));
  return number;
}

}  // namespace

bool natural_less(std::string_view a, std::string_view b) {
  const std::string_view whole_a = a;
  const std::string_view whole_b = b;
  while (!a.empty() && !b.empty()) {
    if (is_digit(a.front()) && is_digit(b.front())) {
      const std::string_view one = take_number(a);
      const std::string_view other = take_number(b);
      if (one.size() != other.size()) return one.size() < other.size();
      if (one != other) return one < other;
    } else if (a.front() != b.front()) {
      return static_cast<unsigned char>(a.front()) < static_cast<unsigned char>(b.front());
    } else {
      a.remove_prefix(1);
      b.remove_prefix(1);
    }
  }
  if (a.empty() != b.empty()) return a.empty();
  return whole_a < whole_b;  // `P-02` and `P-2` have an order too
}

}  // namespace cutback::run

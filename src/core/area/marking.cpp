#include "cutback/area/marking.hpp"

#include <algorithm>

#include "cutback/text.hpp"

namespace cutback::area {
namespace {

bool is_x(char c) { return c == 'X' || c == 'x'; }

/// Takes the next part of a marking off the text; empty where none is left.
std::string_view take_part(std::string_view& text) {
  const std::size_t start = std::min(text.find_first_not_of("/ "), text.size());
  text.remove_prefix(start);
  const std::size_t end = std::min(text.find_first_of("/ "), text.size());
  const std::string_view part = text.substr(0, end);
  text.remove_prefix(end);
  return part;
}

}  // namespace

std::optional<IpCode> parse_ip_code(std::string_view text) {
  const auto good = [](char c, char last) { return (is_digit(c) && c <= last) || is_x(c); };
  if (text.size() != 2 || !good(text[0], '6') || !good(text[1], '9')) return std::nullopt;
  const auto numeral = [](char c) { return is_x(c) ? std::nullopt : std::optional(c - '0'); };
  return IpCode{.solids = numeral(text[0]), .water = numeral(text[1])};
}

std::optional<std::vector<IpCode>> parse_ip_codes(std::string_view text) {
  std::vector<IpCode> codes;
  for (std::string_view part = take_part(text); !part.empty(); part = take_part(text)) {
    if (part.starts_with("IP") || part.starts_with("ip")) part.remove_prefix(2);
    const auto code = parse_ip_code(part);
    if (!code) return std::nullopt;
    codes.push_back(*code);
  }
  if (codes.empty()) return std::nullopt;
  return codes;
}

std::string to_text(const IpCode& code) {
  const auto numeral = [](const std::optional<int>& figure) {
    return figure ? static_cast<char>('0' + *figure) : 'X';
  };
  return {numeral(code.solids), numeral(code.water)};
}

std::string to_text(std::span<const IpCode> codes, std::string_view between) {
  std::string text;
  for (const IpCode& code : codes) {
    if (!text.empty()) text += between;
    text += to_text(code);
  }
  return text;
}

}  // namespace cutback::area

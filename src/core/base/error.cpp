#include "cutback/error.hpp"

#include <utility>

namespace cutback {

const char* to_string(ErrorCode code) {
  switch (code) {
    case ErrorCode::bad_number:
      return "bad-number";
    case ErrorCode::bad_value:
      return "bad-value";
    case ErrorCode::out_of_range:
      return "out-of-range";
    case ErrorCode::missing:
      return "missing";
    case ErrorCode::unknown_name:
      return "unknown-name";
    case ErrorCode::duplicate:
      return "duplicate";
    case ErrorCode::contradiction:
      return "contradiction";
    case ErrorCode::bad_syntax:
      return "bad-syntax";
    case ErrorCode::cannot_read:
      return "cannot-read";
    case ErrorCode::cannot_write:
      return "cannot-write";
    case ErrorCode::internal:
      return "internal";
  }
  return "";
}

Fault make_fault(ErrorCode code, std::string what, std::string_view where, std::string_view given,
                 std::string allowed, std::string hint) {
  return {.code = code,
          .what = std::move(what),
          .where = std::string(where),
          .given = std::string(given),
          .allowed = std::move(allowed),
          .hint = std::move(hint)};
}

namespace {

/// What is longer is a pasted file, not a typing error. Cut between two characters.
std::string shortened(const std::string& text, std::size_t longest) {
  if (text.size() <= longest) return text;
  std::size_t end = longest;
  while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) --end;
  return text.substr(0, end) + "...";
}

}  // namespace

std::string to_line(const Fault& fault) {
  constexpr std::size_t k_longest_value = 120;
  constexpr std::size_t k_longest_place = 300;
  std::string line = fault.what;
  if (!fault.where.empty()) line += ": " + shortened(fault.where, k_longest_place);
  if (!fault.given.empty()) {
    line += ": given \"" + shortened(fault.given, k_longest_value) + "\"";
    if (!fault.allowed.empty()) line += ", allowed " + fault.allowed;
  } else if (!fault.allowed.empty()) {
    line += ": allowed " + fault.allowed;
  }
  if (!fault.hint.empty()) line += "; " + fault.hint;
  std::string shown;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const auto byte = static_cast<unsigned char>(line[i]);
    const std::size_t hidden = hidden_length(std::string_view(line).substr(i));
    if (hidden > 0) i += hidden - 1;
    shown += (hidden > 0 || byte < 0x20 || byte == 0x7f) ? '?' : line[i];
  }
  return shown;
}

std::size_t hidden_length(std::string_view text) {
  const auto byte = [&](std::size_t i) {
    return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U;
  };
  const unsigned lead = byte(0);
  if (lead == 0xC2) return (byte(1) >= 0x80 && byte(1) <= 0x9F) || byte(1) == 0xAD ? 2 : 0;
  if (lead == 0xD8) return byte(1) == 0x9C ? 2 : 0;                            // U+061C
  if (lead == 0xF3) return (byte(1) & 0xFCU) == 0xA0 && byte(3) != 0 ? 4 : 0;  // U+E0000 to E0FFF
  if (lead != 0xE1 && lead != 0xE2 && lead != 0xEF) return 0;
  const unsigned code = ((lead & 0xFU) << 12U) | ((byte(1) & 0x3FU) << 6U) | (byte(2) & 0x3FU);
  const bool hidden = (code >= 0x200B && code <= 0x200F) || (code >= 0x2028 && code <= 0x202E) ||
                      (code >= 0x2060 && code <= 0x206F) || code == 0x180E || code == 0xFEFF ||
                      (code >= 0xFFF9 && code <= 0xFFFB);
  return hidden && byte(2) != 0 ? 3 : 0;
}

namespace {

std::string join_lines(const std::vector<Fault>& faults) {
  std::string text;
  for (const Fault& fault : faults) {
    if (!text.empty()) text += '\n';
    text += to_line(fault);
  }
  return text;
}

}  // namespace

Error::Error(std::vector<Fault> faults)
    : std::runtime_error(join_lines(faults)), faults_(std::move(faults)) {}

}  // namespace cutback

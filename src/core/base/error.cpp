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

std::string to_line(const Fault& fault) {
  // A value longer than this is a pasted file, not a typing error.
  constexpr std::size_t k_longest_value = 120;
  std::string line = fault.what;
  if (!fault.where.empty()) line += ": " + fault.where;
  if (!fault.given.empty()) {
    line += ": given \"" + fault.given.substr(0, k_longest_value) +
            (fault.given.size() > k_longest_value ? "...\"" : "\"");
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
  if (byte(0) == 0xC2 && byte(1) >= 0x80 && byte(1) <= 0x9F) return 2;
  if (byte(0) != 0xE2) return 0;
  const bool direction = byte(1) == 0x80 && ((byte(2) >= 0xAA && byte(2) <= 0xAE) ||
                                             byte(2) == 0x8E || byte(2) == 0x8F);
  const bool isolate = byte(1) == 0x81 && byte(2) >= 0xA6 && byte(2) <= 0xA9;
  return direction || isolate ? 3 : 0;
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

#include "cutback/error.hpp"

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
  for (char& c : line) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte < 0x20 || byte == 0x7f) c = '?';
  }
  return line;
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

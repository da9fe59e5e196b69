#pragma once
// Small things done to text everywhere. No locale.

#include <span>
#include <string>
#include <string_view>

namespace cutback {

/// '0' to '9' and no other.
[[nodiscard]] constexpr bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// A to Z as a to z; any other as it is.
[[nodiscard]] constexpr char small_letter(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}
[[nodiscard]] std::string small_letters(std::string_view text);

/// Without what of `spaces` stands round it.
[[nodiscard]] std::string_view trimmed(std::string_view text, std::string_view spaces = " \t\r\n");

/// As a terminal may show it: control characters but line ends and tabs as \\x1b. What a file holds
/// must not move a cursor or change a colour.
[[nodiscard]] std::string without_controls(std::string_view text);

/// Takes the spaces off its end.
void trim_end(std::string& text);

/// The words with `between` them.
[[nodiscard]] std::string joined(std::span<const std::string> words, std::string_view between);

}  // namespace cutback

#pragma once
// Words that stand for the value of an enumeration.

#include <array>
#include <cstddef>
#include <optional>
#include <string>

namespace cutback::job::detail {

/// The value that `word` stands for; nothing where there is no word, or none of these.
template <class Enum, std::size_t N>
[[nodiscard]] std::optional<Enum> value_of(const std::optional<std::string>& word,
                                           const std::array<Enum, N>& all) {
  for (const Enum value : all) {
    if (word && *word == to_string(value)) return value;
  }
  return std::nullopt;
}

}  // namespace cutback::job::detail

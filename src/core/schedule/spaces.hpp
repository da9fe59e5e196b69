#pragma once
// Spaces as web pages and word processors write them.

#include <array>
#include <string_view>

namespace cutback::schedule {

/// Spaces that are more than one byte in UTF-8.
inline constexpr std::array<std::string_view, 6> k_wide_spaces{
    "\xC2\xA0", "\xE2\x80\xAF", "\xE2\x80\x89", "\xE2\x80\x83", "\xE2\x80\x82", "\xE3\x80\x80"};

/// The bytes of such a space at the beginning of a text; 0 where it begins with anything else.
[[nodiscard]] inline std::size_t wide_space_size(std::string_view text) {
  if (text.empty() || static_cast<unsigned char>(text.front()) < 0x80) return 0;
  for (const std::string_view space : k_wide_spaces) {
    if (text.starts_with(space)) return space.size();
  }
  return 0;
}

}  // namespace cutback::schedule

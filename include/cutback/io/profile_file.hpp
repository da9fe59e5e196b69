#pragma once
// What one user always works with, remembered in a file.

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "cutback/job/input.hpp"

namespace cutback::io {

/// Every member that is absent was not remembered.
struct Profile {
  std::optional<std::string> glands;    ///< the gland list; several with semicolons between them
  std::optional<std::string> supplier;  ///< the list whose glands come first among equals
  std::optional<std::string> prefer;    ///< `price`, `margin` or `stock`
  std::optional<std::string> units;     ///< `mm` or `in`
  job::JobInput end;                    ///< of the fields in profile_fields() alone
};

/// The paths of its gland lists.
[[nodiscard]] std::vector<std::string> lists_of(const Profile& profile);

/// Keys of the fields of an end that a profile may hold: the caliper, the rules, the slack of the
/// tails, the adaptors in the van, a pack of compound. Nothing that belongs to one end, and nothing
/// that a place asks for.
[[nodiscard]] std::span<const std::string_view> profile_fields();

/// @param name  of the file, for messages
/// @throws InputError with every fault
[[nodiscard]] Profile read_profile(std::string_view text, const std::string& name);
[[nodiscard]] Profile load_profile(const std::string& path);

/// As read_profile takes it.
[[nodiscard]] std::string write_profile(const Profile& profile);

/// Puts one value into it, or takes it away where `value` is empty.
/// @param where  for the message
/// @throws InputError for a key that is not known, and for a value that its field refuses
void set_in_profile(Profile& profile, std::string_view key, std::string_view value,
                    std::string_view where);

/// One value of a profile as text; nothing where it is not remembered.
[[nodiscard]] std::optional<std::string> text_in_profile(const Profile& profile,
                                                         std::string_view key);

/// Every key: `glands`, `supplier`, `prefer`, `units` and profile_fields().
[[nodiscard]] std::span<const std::string_view> profile_keys();

}  // namespace cutback::io

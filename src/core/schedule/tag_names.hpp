#pragma once
// How many cables one tag names: "P-8 to P-12" are five.

#include <cstdint>
#include <string_view>

namespace cutback::schedule {

/// What a tag names. Common practice, no source: nobody has laid these forms down.
struct TagNames {
  std::uint64_t cables = 1;
  /// It can be read as one cable too, or its number is not certain: "P-8/9", "C-12 x 2".
  bool may_be_several = false;

  [[nodiscard]] bool several() const { return cables > 1 && !may_be_several; }
};

/// @param from, to  what stands where the equipment of the ends does: "JB-1 to JB-4" is one cable
/// between these two
[[nodiscard]] TagNames names_in_tag(std::string_view tag, std::string_view from,
                                    std::string_view to);

}  // namespace cutback::schedule

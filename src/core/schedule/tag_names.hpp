#pragma once
// How many cables one tag names: "P-8 to P-12" are five.

#include <cstdint>
#include <string>
#include <string_view>

namespace cutback::schedule {

/// What a tag names. Common practice, no source: nobody has laid these forms down.
struct TagNames {
  std::uint64_t cables = 1;
  /// It can be read as one cable too, or its number is not certain: "P-8/9", "C-12 x 2".
  bool may_be_several = false;

  [[nodiscard]] bool several() const { return cables > 1 && !may_be_several; }
};

/// @param from, to     what stands where the equipment of the ends does: "JB-1 to JB-4" is one
/// cable between these two
/// @param run_letters  letters_of_run() of most tags of the schedule: where they are C9 and C13,
/// "C10-12" may be three cables; where they are not, it is the name of one
[[nodiscard]] TagNames names_in_tag(std::string_view tag, std::string_view from,
                                    std::string_view to, std::string_view run_letters = {});

/// The letters of a tag that is letters and a figure, C of C12, in small letters; empty of others.
[[nodiscard]] std::string letters_of_run(std::string_view tag);

}  // namespace cutback::schedule

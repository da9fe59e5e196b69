#pragma once
// A register of finished ends put beside the ends of a schedule.

#include <cstddef>
#include <map>
#include <string>
#include <vector>

#include "cutback/io/made_file.hpp"
#include "cutback/schedule/made.hpp"
#include "run/open_schedule.hpp"

namespace cutback::run {

/// A row of the register that is of no end.
struct NotFound {
  std::size_t line = 0;
  std::string says;
};

struct MadeSchedule {
  schedule::MadeEnds ends;
  std::vector<NotFound> not_found;  ///< in file order
  /// What the results call the end of each row that is of one, by its line: a row may name the
  /// place.
  std::map<std::size_t, std::string> ends_of_rows;
};

/// Finds the end of each row: by its tag, and by the name that the results call the end, or by the
/// place where it lies, where the cable's other end lies elsewhere. Of one end the last row counts
/// that says a thing. Readings of the other end of the same cable are another place: several of
/// them tell of a new place; one does not, and is said as a remark.
/// @param name      of the register, for messages
/// @param schedule  is read to its end
/// @throws what reading throws
[[nodiscard]] MadeSchedule match_made(const io::MadeFile& file, const std::string& name,
                                      const Schedule& schedule);

}  // namespace cutback::run

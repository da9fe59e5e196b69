#pragma once
// A register of finished ends put beside the ends of a schedule.

#include <cstddef>
#include <map>
#include <optional>
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

/// What the register says of one end.
struct MadeJob {
  std::optional<schedule::MadeEnd> end;
  std::string says;                ///< where nothing is taken from it: why
  std::vector<std::size_t> lines;  ///< the rows with its tag
};

/// Of an end that has a file of its own: the rows with its tag and end, as match_made() takes them.
/// @param name  of the register, for the message
[[nodiscard]] MadeJob made_of(const io::MadeFile& file, const std::string& name,
                              const std::string& tag, const std::string& end);

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

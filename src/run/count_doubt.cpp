#include "run/count_doubt.hpp"

namespace cutback::run {

std::string stands_above(const std::string& row) { return "its tag stands on " + row + " already"; }

std::optional<schedule::CountDoubt> count_doubt(const schedule::Layout& layout,
                                                const schedule::RowCount& count,
                                                const std::string* above) {
  if (above != nullptr) {
    return schedule::CountDoubt{*above, "tag stands twice",
                                "say which of the rows holds: take the other out, or give it a tag "
                                "of its own"};
  }
  if (!count.unclear.empty()) return schedule::CountDoubt{count.unclear};
  if (!layout.may_be_cables) return std::nullopt;
  return schedule::CountDoubt{"the row may be a whole cable with two ends, and is counted as one",
                              "number of ends not known",
                              "say whether a row is a whole cable with two ends, or one end"};
}

}  // namespace cutback::run

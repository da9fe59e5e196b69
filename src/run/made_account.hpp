#pragma once
// What a schedule has planned for each end beside what a register says of it.

#include <string>
#include <vector>

#include "cutback/schedule/decide.hpp"
#include "cutback/schedule/made.hpp"
#include "run/open_schedule.hpp"

namespace cutback::run {

struct AccountedEnd {
  std::string tag;
  std::string end;    ///< as the results call it
  std::string place;  ///< where it lies; may be empty
  std::string part;   ///< that the schedule would take by its own figures; empty: none
  std::string made;   ///< the gland that it was finished with; empty: not finished
  /// Each reading that lies outside what it must read for the gland that the end was finished with,
  /// or else is planned, in one sentence; and why the readings cannot be true together.
  std::vector<std::string> outside;
};

/// @param settings  without a register: what is planned goes by the schedule alone
/// @param schedule  is read to its end
[[nodiscard]] std::vector<AccountedEnd> account_of(const Schedule& schedule,
                                                   const schedule::Settings& settings,
                                                   const schedule::MadeEnds& made);

}  // namespace cutback::run

#pragma once
// What stands beside the results of a schedule when they are handed on.

#include <string>
#include <vector>

namespace cutback::run {

/// The program, what it was given, what its words mean, and the cautions; one line each.
/// @param defaults  what was taken for blank cells; empty where nothing was
/// @param about     revision, date, options, counts: what this run alone has
/// @param read      what is to be said of how the schedule was read
[[nodiscard]] std::vector<std::string> schedule_notes(const std::string& schedule,
                                                      const std::string& list,
                                                      const std::string& defaults,
                                                      const std::vector<std::string>& about = {},
                                                      const std::vector<std::string>& read = {});

}  // namespace cutback::run

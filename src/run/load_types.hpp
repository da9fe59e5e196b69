#pragma once
// A file of cable types.

#include <memory>
#include <string>
#include <vector>

#include "cutback/schedule/cable_types.hpp"
#include "run/open_schedule.hpp"

namespace cutback::run {

struct LoadedTypes {
  std::unique_ptr<const schedule::CableTypes> types;  ///< not null
  std::vector<std::string> warnings;  ///< about headings, and rows that are no types
  std::vector<std::string> places;    ///< texts that speak of hazardous places, with their rows
};

/// Reads all of it: CSV, or every visible sheet of a workbook that has the headings. Headings are
/// understood as those of a schedule are, with a column `type` for the names.
/// @param opening  of a schedule; its own headings and defaults are not those of this file
/// @throws InputError with everything that is wrong with it, FileError
[[nodiscard]] LoadedTypes load_types(const std::string& path, const Opening& opening);

}  // namespace cutback::run

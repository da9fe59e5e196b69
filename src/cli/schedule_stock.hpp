#pragma once
// `schedule --use-stock`: the stock of the gland list, shared out over the whole schedule.

#include <string>

#include "cli/extras.hpp"
#include "cutback/gland/gland.hpp"
#include "cutback/io/schedule_file.hpp"
#include "cutback/schedule/decide.hpp"
#include "cutback/schedule/supply.hpp"

namespace cutback::cli {

struct SharedStock {
  schedule::Wanted wanted;
  schedule::Share share;
  schedule::Supplies supplies;
};

/// @param file  is read to its end: to decide its rows it has to be opened again
/// @param name  of the gland list, for messages
/// @throws InputError when no gland states a stock
[[nodiscard]] SharedStock share_stock(io::ScheduleFile& file, const schedule::Settings& settings,
                                      unsigned threads, const Extras& extras,
                                      const std::string& name);

}  // namespace cutback::cli
